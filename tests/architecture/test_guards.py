"""The test suite's own guards work: no network, no skips, no Qt when it is blocked, one zone, folders of its own."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
from pathlib import Path

import pytest
from hypothesis import settings

ROOT = Path(__file__).parents[2]


def run_pytest(folder: Path, test: str, *options: str) -> subprocess.CompletedProcess[str]:
    """Run one test file under the suite's own conftest, in a process of its own."""
    (folder / "test_it.py").write_text(test, encoding="utf-8")
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-c",
        "pyproject.toml",
        "-p",
        "no:cacheprovider",
        *options,
        "-p",
        "tests.conftest",
    ]
    return subprocess.run([*command, str(folder)], cwd=ROOT, capture_output=True, text=True, check=False)


@pytest.mark.parametrize("kind", [socket.SOCK_STREAM, socket.SOCK_DGRAM])
def test_a_test_cannot_reach_a_host(kind: socket.SocketKind) -> None:
    with socket.socket(socket.AF_INET, kind) as there, pytest.raises(RuntimeError, match="127"):
        there.connect(("127.0.0.1", 9))
    with pytest.raises(RuntimeError, match="looked up"):
        socket.getaddrinfo("example.invalid", 80)


def test_a_skipped_test_fails_the_run_and_blocked_qt_cannot_be_imported(tmp_path: Path) -> None:
    test = (
        "import pytest\n"
        "def test_it(): pytest.skip('not here')\n"
        "def test_qt():\n"
        "    with pytest.raises(ImportError):\n"
        "        import PySide6.QtCore\n"
    )
    done = run_pytest(tmp_path, test, "-p", "tests.block_qt")
    assert done.returncode == pytest.ExitCode.TESTS_FAILED
    assert "1 skipped: a skipped test fails the run" in done.stdout
    assert "1 passed, 1 skipped" in done.stdout


def test_a_warning_fails_the_test(tmp_path: Path) -> None:
    done = run_pytest(tmp_path, "import warnings\ndef test_it(): warnings.warn('old')\n")
    assert done.returncode == pytest.ExitCode.TESTS_FAILED
    assert "UserWarning: old" in done.stdout


def test_examples_are_the_same_on_every_run() -> None:
    assert settings.default is not None
    assert settings.default.derandomize
    assert settings.default.deadline is None


def test_the_zone_is_fixed_and_has_summer_time() -> None:
    assert time.tzname == ("GMT", "BST")


def test_the_persons_own_folders_are_out_of_reach(data_dir: Path) -> None:
    assert Path.home().parent.name.startswith("fillmark-tests-")
    assert os.environ["XDG_DATA_HOME"].startswith(str(Path.home().parent))
    assert list(data_dir.iterdir()) == []
