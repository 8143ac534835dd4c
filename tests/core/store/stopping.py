"""Runs pieces of work many times in forked children, each stopped at another system call.

`python stopping.py FOLDER WORK:CALL:COUNT:STRIDE...` under `strace -f -e inject=CALL:...:when=COUNT`: strace counts
each process on its own, so a child that first makes COUNT - n calls of no consequence is stopped at the n-th that
matters: the first, the one a STRIDE later and so on. Every child starts from a copy of FOLDER/start (or, for what needs
a backup, of FOLDER/backed_up) in a data folder of its own, FOLDER/WORK-CALL/n, and notes each command it finished in
the file `finished` there.
"""

from __future__ import annotations

import datetime
import gc
import os
import shutil
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from core.errors import StoreError
from core.house.model import House
from core.store.backup import back_up, backups, restore
from core.store.commands import AddThing, Command, LoadHouse, RemovePlace
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import COAL_BAG, INES, NOON, TOWPATH, open_record

COMMANDS: tuple[Command | str, ...] = (
    AddThing(replace(COAL_BAG, id="kettle", name="Kettle")),
    "undo",
    RemovePlace("towpath"),
    LoadHouse(House(name="Heron", places=(TOWPATH,), people=(INES,)), replace_all=True),
)


def carry_out(record: Record, command: Command | str) -> None:
    """A command, or an undo or redo by name."""
    if command == "undo":
        record.undo()
    elif command == "redo":
        record.redo()
    elif not isinstance(command, str):
        record.do(command)


def edit(folder: DataFolder) -> None:
    """Enter all commands and note each one that was saved."""
    noted = os.open(folder.folder / "finished", os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    with open_record(folder.folder) as record:
        for command in COMMANDS:
            carry_out(record, command)
            os.write(noted, b"+")


def make(folder: DataFolder) -> None:
    """Make a new record."""
    folder.database.unlink()
    open_record(folder.folder).close()


def copy(folder: DataFolder) -> None:
    """Make a backup."""
    back_up(folder, NOON + datetime.timedelta(hours=1))


def go_back(folder: DataFolder) -> None:
    """Go back to the backup there is."""
    restore(folder, backups(folder)[0], NOON)


WORK: dict[str, Callable[[DataFolder], None]] = {"edit": edit, "make": make, "copy": copy, "go_back": go_back}
NEED_A_BACKUP = {"copy", "go_back"}
HARMLESS: dict[str, Callable[[int], object]] = {
    "pwrite64": lambda descriptor: os.pwrite(descriptor, b"", 0),
    "fdatasync": os.fdatasync,
    "fsync": os.fsync,
    "unlink": lambda _descriptor: _on_nothing(Path.unlink),
    "rename": lambda _descriptor: _on_nothing(lambda path: path.rename(path)),
}


def _on_nothing(act: Callable[[Path], object]) -> None:
    with suppress(OSError):
        act(Path("/nowhere/at/all"))


def stop(base: Path, work: str, call: str, count: int, stride: int) -> None:
    """Stop at one call after the other, until the work ends by itself."""
    start = base / ("backed_up" if work in NEED_A_BACKUP else "start")
    for at in range(1, count, stride):
        folder = DataFolder(base / f"{work}-{call}" / f"{at:03d}")
        shutil.copytree(start, folder.folder)
        child = os.fork()
        if child == 0:
            _work(folder, work, call, count - at)
        os.waitpid(child, 0)
        if (folder.folder / "ended").exists():
            return
    raise SystemExit(f"{work} makes more than {count} {call} calls")


def _work(folder: DataFolder, work: str, call: str, harmless: int) -> None:
    descriptor = os.open(folder.folder / "scratch", os.O_RDWR | os.O_CREAT)
    for _ in range(harmless):
        HARMLESS[call](descriptor)
    try:
        WORK[work](folder)
    except StoreError:
        os._exit(1)
    (folder.folder / "ended").touch()
    os._exit(0)


def warm_up(folder: DataFolder) -> None:
    """Load and prepare once what every child needs, by reading only: a write would be counted."""
    with Record.look(folder, lambda: NOON) as record:
        record.contents()
    gc.freeze()


if __name__ == "__main__":
    warm_up(DataFolder(Path(sys.argv[1]) / "start"))
    for asked in sys.argv[2:]:
        name, call, count, stride = asked.split(":")
        stop(Path(sys.argv[1]), name, call, int(count), int(stride))
