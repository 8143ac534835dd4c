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
KILL = "signal=KILL"
NO_SPACE = "error=ENOSPC"
DISK_ERROR = "error=EIO"


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


def _stop(database: Path, base: Path, work: str, call: str, how: str) -> list[DataFolder]:
    """Run the work with a stop at every call; the folders in which it was stopped."""
    count = COUNTS.get(call, 100)
    injected = f"inject={call}:{how}:when={count}{'' if how == KILL else '+'}"
    quick = [] if how == KILL else ["--seccomp-bpf"]  # with it, strace refuses calls but never sends a signal
    tracing = ["strace", "-f", *quick, "-qqq", "-o", os.devnull, "-e", f"trace={call}", "-e", injected]
    command = [*tracing, sys.executable, str(SCRIPT), str(database), str(base), work, call]
    command += [str(count), str(STRIDES.get(call, 1))]
    clean = os.environ | {"PYTHONPATH": str(ROOT), "PYTHONDONTWRITEBYTECODE": "1"}
    subprocess.run(command, check=True, env=clean, timeout=300)
    return [DataFolder(folder) for folder in sorted(base.iterdir())]


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

    @pytest.mark.parametrize(
        ("call", "how"),
        [
            ("pwrite64", KILL),
            ("fdatasync", KILL),
            ("unlink", KILL),
            ("pwrite64", NO_SPACE),
            ("fdatasync", DISK_ERROR),
        ],
    )
    def test_stopped_at_any_call_while_editing_the_record_is_old_or_new(
        dipper_database: Path, steps: list[Contents], tmp_path: Path, call: str, how: str
    ) -> None:
        stopped = _stop(dipper_database, tmp_path, "edit", call, how)
        assert len(stopped) > 3
        for folder in stopped:
            finished = _finished(folder)
            assert _held(folder) in steps[finished : finished + 2]

    @pytest.mark.parametrize("call", ["pwrite64", "rename"])
    def test_stopped_while_it_is_made_the_record_is_made_at_the_next_start(
        dipper_database: Path, tmp_path: Path, call: str
    ) -> None:
        stopped = _stop(dipper_database, tmp_path, "make", call, KILL)
        assert len(stopped) > 1
        for folder in stopped:
            assert _held(folder) == Contents(house=HouseFacts(name="Home"))

    @pytest.mark.parametrize(("call", "how"), [("fsync", KILL), ("rename", KILL), ("pwrite64", DISK_ERROR)])
    def test_stopped_while_copying_every_backup_is_whole_and_so_is_the_record(
        dipper_database: Path, steps: list[Contents], tmp_path: Path, call: str, how: str
    ) -> None:
        stopped = _stop(_with_backup(dipper_database, tmp_path), tmp_path / "stopped", "copy", call, how)
        assert len(stopped) > 1
        for folder in stopped:
            for backup in backups(folder):
                verify(backup)
            assert newest_whole(folder) is not None
            assert _held(folder) == steps[1]

    @pytest.mark.parametrize(
        ("call", "how"), [("fsync", KILL), ("rename", KILL), ("unlink", KILL), ("fsync", DISK_ERROR)]
    )
    def test_stopped_while_going_back_the_record_is_the_present_or_the_earlier_one(
        dipper_database: Path, steps: list[Contents], tmp_path: Path, call: str, how: str
    ) -> None:
        stopped = _stop(_with_backup(dipper_database, tmp_path), tmp_path / "stopped", "go_back", call, how)
        held = [_held(folder) for folder in stopped]
        assert held[0] == steps[1]
        assert held[-1] == steps[0]
        assert all(contents in (steps[0], steps[1]) for contents in held)


def _with_backup(database: Path, base: Path) -> Path:
    """A record one command further than its backup."""
    (base / "stopped").mkdir()
    folder = DataFolder(base / "whole")
    folder.make()
    shutil.copyfile(database, folder.database)
    with open_record(folder.folder) as record:
        back_up(folder, NOON)
        carry_out(record, COMMANDS[0])
    return folder.database
