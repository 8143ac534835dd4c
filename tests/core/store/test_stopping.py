"""Stopped or refused at any system call that changes the disk, the record holds what it held before or after.

The exact stops need strace; without it, the stops at random moments remain.
"""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from core.store.backup import back_up, backups, newest_whole, verify
from core.store.changes import HouseFacts
from core.store.contents import Contents
from core.store.paths import DataFolder
from tests.core.store.examples import NOON, open_record
from tests.core.store.stopping import COMMANDS, carry_out

SCRIPT = Path(__file__).with_name("stopping.py")
ROOT = Path(__file__).parents[3]
COUNTS = {"pwrite64": 400}
"""More than a piece of work makes of these calls; of the others it makes less than a hundred."""
STRIDES = {} if os.environ.get("EVERY_STOP") else {"pwrite64": 17, "fdatasync": 3}
"""A commit writes dozens of pages; every seventeenth of these calls falls on each kind of page in turn.

With EVERY_STOP in the environment none is left out, which takes some minutes.
"""
KILLED = (
    ("edit", "pwrite64"),
    ("edit", "fdatasync"),
    ("edit", "unlink"),
    ("make", "pwrite64"),
    ("make", "rename"),
    ("copy", "fsync"),
    ("copy", "rename"),
    ("go_back", "fsync"),
    ("go_back", "rename"),
    ("go_back", "unlink"),
)
"""What is killed at which calls: all by one strace, whose start costs more than a stop does."""
REFUSED = (("edit", "pwrite64"), ("edit", "fdatasync"), ("copy", "pwrite64"), ("go_back", "fsync"))
"""What goes on with these calls refused, as a full or failing disk would."""
ERRORS = {"pwrite64": "ENOSPC", "fdatasync": "EIO", "fsync": "EIO"}


def _strace_works() -> bool:
    strace = shutil.which("strace")
    return strace is not None and subprocess.run([strace, "-o", "/dev/null", "true"], check=False).returncode == 0


STRACE = _strace_works()


@pytest.fixture(scope="session")
def steps(dipper_database: Path, tmp_path_factory: pytest.TempPathFactory) -> list[Contents]:
    """What the record holds after none, one, two… of the commands."""
    folder = tmp_path_factory.mktemp("steps")
    shutil.copy(dipper_database, folder)
    with open_record(folder) as record:
        held = [record.contents()]
        for command in COMMANDS:
            carry_out(record, command)
            held.append(record.contents())
        return held


def _stop(dipper_database: Path, base: Path, asked: tuple[tuple[str, str], ...], *, kill: bool) -> Path:
    """Carry out each work with a stop at every call; the folder with a data folder for every stop."""
    shutil.copytree(dipper_database.parent, base / "start")
    _back_up(shutil.copytree(base / "start", base / "backed_up"))
    calls = sorted({call for _, call in asked})
    counts = {call: COUNTS.get(call, 100) for call in calls}
    injected = (
        f"inject={call}:signal=KILL:when={counts[call]}"
        if kill
        else f"inject={call}:error={ERRORS[call]}:when={counts[call]}+"
        for call in calls
    )
    quick = [] if kill else ["--seccomp-bpf"]  # with it, strace refuses calls but never sends a signal
    tracing = ["strace", "-f", *quick, "-qqq", "-o", os.devnull, "-e", f"trace={','.join(calls)}"]
    tracing += [word for inject in injected for word in ("-e", inject)]
    works = [f"{work}:{call}:{counts[call]}:{STRIDES.get(call, 1)}" for work, call in asked]
    clean = os.environ | {"PYTHONPATH": str(ROOT), "PYTHONDONTWRITEBYTECODE": "1"}
    subprocess.run([*tracing, sys.executable, str(SCRIPT), str(base), *works], check=True, env=clean, timeout=900)
    return base


def _back_up(path: Path) -> None:
    """A backup, and a record one command further."""
    with open_record(path) as record:
        back_up(DataFolder(path), NOON)
        carry_out(record, COMMANDS[0])


def _stops(base: Path, work: str, call: str) -> list[DataFolder]:
    return [DataFolder(folder) for folder in sorted((base / f"{work}-{call}").iterdir())]


def _finished(folder: DataFolder) -> int:
    noted = folder.folder / "finished"
    return noted.stat().st_size if noted.exists() else 0


def _held(folder: DataFolder) -> Contents:
    with open_record(folder.folder) as record:
        return record.contents()


def test_stopped_at_a_random_moment_the_record_is_old_or_new(
    dipper_database: Path, steps: list[Contents], tmp_path: Path
) -> None:
    chance = random.Random(1)
    for turn in range(8):
        folder = DataFolder(tmp_path / str(turn))
        shutil.copytree(dipper_database.parent, folder.folder)
        child = os.fork()
        if child == 0:
            from tests.core.store.stopping import edit

            edit(folder)
            os._exit(0)
        time.sleep(chance.uniform(0, 0.25))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        finished = _finished(folder)
        assert _held(folder) in steps[finished : finished + 2]


if STRACE:

    @pytest.fixture(scope="session")
    def stops(dipper_database: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
        """The folder of all killed works and that of all refused ones."""
        folder = tmp_path_factory.mktemp("stops")
        return {
            "killed": _stop(dipper_database, folder / "killed", KILLED, kill=True),
            "refused": _stop(dipper_database, folder / "refused", REFUSED, kill=False),
        }

    def cases(work: str) -> list[tuple[str, str]]:
        """Every call of this work that is stopped, and how."""
        stopped = {"killed": KILLED, "refused": REFUSED}
        return [(how, call) for how, asked in stopped.items() for name, call in asked if name == work]

    @pytest.mark.parametrize(("how", "call"), cases("edit"))
    def test_stopped_at_any_call_while_editing_the_record_is_old_or_new(
        stops: dict[str, Path], steps: list[Contents], how: str, call: str
    ) -> None:
        stopped = _stops(stops[how], "edit", call)
        assert len(stopped) > 3
        for folder in stopped:
            finished = _finished(folder)
            assert _held(folder) in steps[finished : finished + 2]

    @pytest.mark.parametrize(("how", "call"), cases("make"))
    def test_stopped_while_it_is_made_the_record_is_made_at_the_next_start(
        stops: dict[str, Path], how: str, call: str
    ) -> None:
        stopped = _stops(stops[how], "make", call)
        assert len(stopped) > 1
        for folder in stopped:
            assert _held(folder) == Contents(house=HouseFacts(name="Home"))

    @pytest.mark.parametrize(("how", "call"), cases("copy"))
    def test_stopped_while_copying_every_backup_is_whole_and_so_is_the_record(
        stops: dict[str, Path], steps: list[Contents], how: str, call: str
    ) -> None:
        stopped = _stops(stops[how], "copy", call)
        assert len(stopped) > 1
        for folder in stopped:
            for backup in backups(folder):
                verify(backup)
            assert newest_whole(folder) is not None
            assert _held(folder) == steps[1]

    @pytest.mark.parametrize(("how", "call"), cases("go_back"))
    def test_stopped_while_going_back_the_record_is_the_present_or_the_earlier_one(
        stops: dict[str, Path], steps: list[Contents], how: str, call: str
    ) -> None:
        held = [_held(folder) for folder in _stops(stops[how], "go_back", call)]
        assert held[0] == steps[1]
        assert held[-1] == steps[0]
        assert all(contents in (steps[0], steps[1]) for contents in held)
