"""Connections to the record, each with the settings that keep it safe, and the engine over one of them.

A rollback journal with synchronous EXTRA (also the folder is synced) costs a few milliseconds a commit and survives a
power cut. Nothing is opened at import.
"""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Iterator
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import StaticPool

from core.store import faults

APPLICATION_ID = 0x466D726B
"""“Fmrk”, in the header of every record: tells it from any other SQLite file."""
SCHEMA = 4
"""The form of the tables this program reads and writes, kept as user_version; one higher with every migration."""
BUSY_MS = 5000
READING = "fillmark_reading"
"""Execution option of a connection that only reads: it must not ask for the write lock, which a full disk refuses."""


def connect(path: Path, *, migrating: bool = False, query_only: bool = False) -> sqlite3.Connection:
    """A connection to an existing file. Transactions are begun by hand; foreign keys rest while `migrating`.

    It may be used from any thread, but by one at a time: whoever shares it sees to that.
    """
    address = f"{path.absolute().as_uri()}?mode=rw"
    connection = sqlite3.connect(address, uri=True, isolation_level=None, check_same_thread=False)
    settings = [
        f"busy_timeout = {BUSY_MS}",
        "trusted_schema = OFF",
        "cell_size_check = ON",
        f"foreign_keys = {'OFF' if migrating else 'ON'}",
        "synchronous = EXTRA",
        *(["query_only = ON"] if query_only else ["journal_mode = DELETE"]),
    ]
    try:
        for setting in settings:
            connection.execute(f"PRAGMA {setting}").close()
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def open_engine(path: Path, *, migrating: bool = False, query_only: bool = False) -> Engine:
    """An engine over a single connection, for one thread at a time; dispose it when done."""

    def creator() -> sqlite3.Connection:
        return connect(path, migrating=migrating, query_only=query_only)

    engine = create_engine("sqlite://", creator=creator, poolclass=StaticPool, execution_options={READING: query_only})
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    """Take the write lock at once, so that a transaction cannot fail half-way for want of it."""
    reading = connection.get_execution_options().get(READING, False)
    connection.exec_driver_sql("BEGIN" if reading else "BEGIN IMMEDIATE")


@contextlib.contextmanager
def told_plainly(path: Path) -> Iterator[None]:
    """Turn errors of the disk or of a damaged file into a `StoreError` with one sentence; let our mistakes through."""
    try:
        yield
    except faults.RowUnreadable as error:
        raise faults.Damaged(path, error.why) from error
    except UnicodeDecodeError as error:  # a name in the file that SQLite put into its own message
        raise faults.Damaged(path, "a text in it is not readable") from error
    except DBAPIError as error:
        fault = faults.from_sqlite(path, error.orig) if isinstance(error.orig, sqlite3.Error) else None
        if fault is None:
            raise
        raise fault from error
    except sqlite3.Error as error:
        fault = faults.from_sqlite(path, error)
        if fault is None:
            raise
        raise fault from error
