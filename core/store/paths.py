"""Where the record lives: one folder with the database, its lock and its backups.

The lock is held on an open file by the operating system, which drops it when the process ends, however it ends.
"""

from __future__ import annotations

import hashlib
import os
import sys
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Self

from core.store.faults import FolderUnusable, InUse

APP_NAME = "fillmark"


@dataclass(frozen=True, slots=True)
class DataFolder:
    """The data folder and the names inside it."""

    folder: Path

    @classmethod
    def chosen(cls, data: Path | None = None) -> DataFolder:
        """The folder given with `--data`, else the platform's own place for a program's data."""
        if data is not None:
            return cls(data.expanduser().absolute())
        from platformdirs import user_data_path  # not needed when a folder is given

        return cls(user_data_path(APP_NAME, appauthor=False))

    @property
    def database(self) -> Path:
        """The record itself."""
        return self.folder / "fillmark.sqlite3"

    @property
    def journal(self) -> Path:
        """What SQLite keeps beside the record while it writes; after a crash it puts the record right again."""
        return self.folder / "fillmark.sqlite3-journal"

    @property
    def lock_file(self) -> Path:
        """The file whose lock says that a window is open."""
        return self.folder / "fillmark.lock"

    @property
    def backups(self) -> Path:
        """The folder of dated backups."""
        return self.folder / "backups"

    @property
    def socket_name(self) -> str:
        """Name of the local socket on which the first window listens to be raised; the same for the same folder."""
        digest = hashlib.sha256(os.fsencode(self.folder.resolve())).hexdigest()
        return f"{APP_NAME}-{digest[:16]}"

    def make(self) -> None:
        """Make the folder if it is missing; `FolderUnusable` if that fails."""
        try:
            self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        except OSError as error:
            raise FolderUnusable(self.folder, error.strerror or str(error)) from error


class FolderLock:
    """The right to write in a data folder; one window has it at a time. `InUse` when another has it."""

    def __init__(self, folder: DataFolder) -> None:
        folder.make()
        try:
            self._descriptor = os.open(folder.lock_file, os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o600)
        except OSError as error:
            raise FolderUnusable(folder.folder, error.strerror or str(error)) from error
        if not _try_lock(self._descriptor):
            os.close(self._descriptor)
            raise InUse(folder.folder, folder.socket_name)
        self._held = True

    def release(self) -> None:
        """Give the folder free. The file stays: removing it could take away a lock that another window just got."""
        if self._held:
            self._held = False
            os.close(self._descriptor)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.release()


if sys.platform == "win32":
    import msvcrt

    def _try_lock(descriptor: int) -> bool:
        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _try_lock(descriptor: int) -> bool:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
