"""What stands before a record is used: is the file ours, of the form this program knows, and whole?"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from core.errors import shorten
from core.store.engine import APPLICATION_ID, SCHEMA, connect, told_plainly
from core.store.faults import CannotRead, Damaged, Newer

MAGIC = b"SQLite format 3\x00"


def schema_of(path: Path) -> int:
    """The form of the tables in the file; `Damaged` if it is no record of ours, `Newer` if it is too new for us."""
    check_header(path)
    with told_plainly(path), closing(connect(path, query_only=True)) as connection:
        (application_id,) = connection.execute("PRAGMA application_id").fetchone()
        (schema,) = connection.execute("PRAGMA user_version").fetchone()
    if application_id != APPLICATION_ID:
        raise Damaged(path, "it is a database, but not a record of this program")
    if schema > SCHEMA:
        raise Newer(path, schema, SCHEMA)
    if schema < 1:
        raise Damaged(path, "its form is not given")
    return int(schema)


def holds_own_entries(path: Path) -> bool:
    """Whether something was added to the catalog, as far as can be told without opening the record; a fault is no."""
    try:
        with closing(connect(path, query_only=True)) as connection:
            return connection.execute("SELECT 1 FROM own_entry LIMIT 1").fetchone() is not None
    except sqlite3.Error:
        return False  # missing, older or damaged: opening it tells


def check_header(path: Path) -> None:
    """`Damaged` unless the file begins as every SQLite file does; `CannotRead` if it cannot be opened."""
    try:
        with path.open("rb") as file:
            head = file.read(len(MAGIC))
    except OSError as error:
        raise CannotRead(path, error.strerror or str(error)) from error
    if not head:
        raise Damaged(path, "it is empty")
    if head != MAGIC:
        raise Damaged(path, "it is not a database")


def check_whole(path: Path, connection: sqlite3.Connection, *, thorough: bool = False) -> None:
    """`Damaged` unless SQLite finds the pages, rules and mentions in order; `thorough` also compares the indexes."""
    with told_plainly(path):
        pragma = "integrity_check" if thorough else "quick_check"
        (found,) = connection.execute(f"PRAGMA {pragma}(1)").fetchone()
        broken = connection.execute("PRAGMA foreign_key_check").fetchone()
    if found != "ok":
        raise Damaged(path, f"the check found: {shorten(found)}")
    if broken is not None:
        raise Damaged(path, f"an entry in {broken[0]} mentions a {broken[2]} that is not there")
