"""Bringing an older record up to date, one migration after the other in a single transaction, with a backup first.

Migrations work on the raw tables. Foreign keys rest meanwhile (rebuilding a table would otherwise delete what hangs on
it) and are all checked before the change is kept. If anything fails the file is as it was, byte for byte.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from core.errors import StoreError
from core.store.backup import back_up
from core.store.create import revision
from core.store.engine import SCHEMA, open_engine, told_plainly
from core.store.faults import Damaged
from core.store.paths import DataFolder

MIGRATIONS = Path(__file__).parent / "migrations"


class UpdateFailed(StoreError):
    """A migration failed; the file is as it was."""

    def __init__(self, path: Path, backup: Path) -> None:
        self.path = path
        self.backup = backup
        super().__init__(
            f"{path} could not be brought up to date; it is as it was, and a copy is {backup.name} in {backup.parent}. "
            "Use the earlier program until this is mended."
        )


def bring_up_to_date(folder: DataFolder, clock: Callable[[], datetime.datetime]) -> None:
    """Back the record up, then migrate it; a `StoreError` tells why that failed."""
    backup = back_up(folder, clock())
    try:
        migrate(folder.database, MIGRATIONS, SCHEMA)
    except StoreError:
        raise
    except Exception as error:
        raise UpdateFailed(folder.database, backup.path) from error


def migrate(path: Path, scripts: Path, target: int) -> None:
    """Run the migrations in `scripts` that lead from the form of this file to `target`."""
    engine = open_engine(path, migrating=True)
    try:
        with told_plainly(path), engine.begin() as connection:
            _run(connection, ScriptDirectory(str(scripts)), target)
            broken = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
            if broken is not None:
                raise Damaged(path, f"an entry in {broken[0]} mentions a {broken[2]} that is not there")
            connection.exec_driver_sql(f"PRAGMA user_version = {target}")
    finally:
        engine.dispose()


def _run(connection: Connection, scripts: ScriptDirectory, target: int) -> None:
    context = MigrationContext.configure(connection)
    steps = tuple(scripts.iterate_revisions(revision(target), context.get_current_revision() or "base"))
    with Operations.context(context):
        for step in reversed(steps):
            step.module.upgrade()
        context.stamp(scripts, revision(target))
