"""Why the record cannot be used: one error type per way it can fail, each with its sentence."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from core.errors import StoreError, shorten


class InUse(StoreError):
    """Another window has this data folder open; `socket_name` is the local socket that raises it."""

    def __init__(self, folder: Path, socket_name: str) -> None:
        self.folder = folder
        self.socket_name = socket_name
        super().__init__(f"Fillmark is already open for {folder}; use that window, or close it first.")


class FolderUnusable(StoreError):
    """The data folder cannot be made or written to."""

    def __init__(self, folder: Path, why: str) -> None:
        self.folder = folder
        self.why = why
        super().__init__(
            f"The data folder {folder} cannot be used ({why}); allow writing there, or choose another one with --data."
        )


class CannotWrite(StoreError):
    """The disk is full, read-only or failing. Nothing that was saved before is lost."""

    def __init__(self, path: Path, why: str) -> None:
        self.path = path
        self.why = why
        super().__init__(
            f"{path} cannot be written ({why}); this change was not saved, all earlier ones are. "
            "Make room or allow writing, then try again, or export to another disk."
        )


class CannotRead(StoreError):
    """The file or folder cannot be opened."""

    def __init__(self, path: Path, why: str) -> None:
        self.path = path
        self.why = why
        super().__init__(f"{path} cannot be opened ({why}); check that it is there and that you may read it.")


class Newer(StoreError):
    """The file was written by a newer program."""

    def __init__(self, path: Path, found: int, known: int) -> None:
        self.path = path
        self.found = found
        self.known = known
        super().__init__(
            f"{path} was written by a newer Fillmark (its form is {found}, this program knows up to {known}); "
            "update the program. Nothing was changed."
        )


class Older(StoreError):
    """The file must be brought up to date, which only a program that may write it can do."""

    def __init__(self, path: Path, found: int, known: int) -> None:
        self.path = path
        self.found = found
        self.known = known
        super().__init__(
            f"{path} has the form {found} of an older Fillmark, this one uses {known}; "
            "open the window once to bring it up to date."
        )


class Damaged(StoreError):
    """The file is not a record, or parts of it cannot be trusted. It is left untouched until the person decides."""

    def __init__(self, path: Path, why: str) -> None:
        self.path = path
        self.why = why
        super().__init__(f"{path} is damaged ({why}); it was left as it is. Go back to a backup, or set it aside.")


class RowUnreadable(StoreError):
    """An entry does not read back as a value; where the file is known, this becomes `Damaged`."""

    def __init__(self, why: str) -> None:
        self.why = why
        super().__init__(f"An entry cannot be read: {why}")


class UndoLost(StoreError):
    """A step of the history no longer matches what is stored."""

    def __init__(self, sentence: str) -> None:
        super().__init__(f"“{sentence}” can no longer be taken back or repeated; everything else is as it was.")


_WRITING = {
    sqlite3.SQLITE_FULL: "the disk is full",
    sqlite3.SQLITE_READONLY: "it is read-only",
    sqlite3.SQLITE_IOERR: "the disk reports an error",
    sqlite3.SQLITE_BUSY: "another program is using it",
    sqlite3.SQLITE_LOCKED: "another program is using it",
    sqlite3.SQLITE_PERM: "writing is not allowed",
    sqlite3.SQLITE_CANTOPEN: "no file can be made beside it",
}
_DAMAGED = {
    sqlite3.SQLITE_CORRUPT: "its pages do not fit together",
    sqlite3.SQLITE_NOTADB: "it is not a database",
    sqlite3.SQLITE_FORMAT: "it is not a database",
    sqlite3.SQLITE_SCHEMA: "its tables have changed",
}

_NOT_THERE = ("no such ", "malformed ", "error in ")
"""How SQLite begins when a table or column that every record has is missing."""


def from_sqlite(path: Path, error: sqlite3.Error) -> StoreError | None:
    """The fault behind an error of SQLite; None when it is a mistake of ours (a broken constraint, wrong SQL)."""
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF  # the low byte is the primary code
    if code in _DAMAGED:
        return Damaged(path, _DAMAGED[code])
    if code in _WRITING:
        return CannotWrite(path, _WRITING[code])
    if "decode to UTF-8" in str(error):
        return Damaged(path, "a text in it is not readable")
    if code == sqlite3.SQLITE_ERROR and str(error).startswith(_NOT_THERE):
        return Damaged(path, shorten(error))
    return None
