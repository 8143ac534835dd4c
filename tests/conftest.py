"""What every test gets: a fixed zone and language, folders of its own, no network, repeatable examples, no skips."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

TESTS = Path(__file__).parent

settings.register_profile(
    "fillmark",
    derandomize=True,  # the same examples on every run, so that a failure can be had again
    deadline=None,  # a busy machine is no fault of the code
    max_examples=60,
    suppress_health_check=[HealthCheck.too_slow],  # see deadline
)
settings.register_profile("deep", deadline=None, max_examples=2000, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("fillmark")

# A zone with summer time, so that a test which mixes up local and universal time fails for half of the year's dates.
os.environ.update(TZ="Europe/London", LANG="C.UTF-8", LC_ALL="C.UTF-8", LANGUAGE="")
time.tzset()

_home = Path(tempfile.mkdtemp(prefix="fillmark-tests-"))
for _variable in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME", "XDG_RUNTIME_DIR"):
    _folder = _home / _variable.lower()
    _folder.mkdir(mode=0o700)
    os.environ[_variable] = str(_folder)


class NetworkUsed(RuntimeError):
    """A test reached for the network; Fillmark never does."""


def _refuse_network(event: str, arguments: tuple[object, ...]) -> None:
    """Audit hook: let sockets speak to files on this machine only (address is a path), never to a host."""
    if event == "socket.getaddrinfo":
        raise NetworkUsed(f"looked up the host {arguments[0]!r}")
    if event in {"socket.connect", "socket.sendto", "socket.bind"} and isinstance(arguments[1], tuple):
        raise NetworkUsed(f"{event} with {arguments[1]!r}")


sys.addaudithook(_refuse_network)


@pytest.fixture
def data_dir(tmp_path: Path) -> Path:
    """An empty folder, as `--data DIR` would name it."""
    folder = tmp_path / "data"
    folder.mkdir()
    return folder


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """tests/gui needs Qt, so a run with Qt blocked never looks there."""
    if collection_path == TESTS / "gui" and sys.modules.get("PySide6", config) is None:
        return True
    return None


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Count the tests by folder: a part of the suite that silently stopped running would show."""
    reports = terminalreporter.getreports("passed") + terminalreporter.getreports("failed")
    counts = Counter(report.nodeid.split("/")[1] for report in _calls(reports) if report.nodeid.count("/") > 1)
    if counts:
        terminalreporter.write_line("ran " + ", ".join(f"{folder} {n}" for folder, n in sorted(counts.items())))


def _calls(reports: Iterable[object]) -> list[pytest.TestReport]:
    return [report for report in reports if isinstance(report, pytest.TestReport) and report.when == "call"]


@pytest.hookimpl(wrapper=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> object:
    """A skipped test is a rule nobody checked: it fails the run."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if reporter and exitstatus == pytest.ExitCode.OK and (skipped := reporter.stats.get("skipped")):
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
        reporter.write_line(f"\n{len(skipped)} skipped: a skipped test fails the run", red=True)
    return (yield)


def pytest_unconfigure() -> None:
    shutil.rmtree(_home, ignore_errors=True)
