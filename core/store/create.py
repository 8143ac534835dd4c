"""Making a new record: whole or not at all, under a name of its own first and renamed when it is complete."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from core.store.changes import HouseFacts
from core.store.engine import APPLICATION_ID, SCHEMA, open_engine, told_plainly
from core.store.files import disk_told, sync_folder
from core.store.paths import DataFolder
from core.store.rows.history import RevisionRow
from core.store.rows.house import HouseRow, SettingsRow
from core.store.rows.tables import METADATA
from core.store.values import Settings

FIRST_NAME = "Home"


def create(folder: DataFolder) -> None:
    """Make an empty record in a folder that has none."""
    unfinished = folder.database.with_suffix(".new")
    with told_plainly(folder.database), disk_told(folder.folder):
        for leftover in (unfinished, Path(f"{unfinished}-journal")):
            leftover.unlink(missing_ok=True)
        if folder.journal.exists():
            # Left by a record that is no longer here; SQLite would play it into the new one.
            folder.journal.replace(folder.folder / "left-over-journal")
        unfinished.touch(mode=0o600)
        engine = open_engine(unfinished)
        try:
            _fill(engine)
        finally:
            engine.dispose()
        unfinished.replace(folder.database)
        sync_folder(folder.folder)


def _fill(engine: Engine) -> None:
    with engine.begin() as connection:
        METADATA.create_all(connection, checkfirst=False)
        with Session(connection) as session:
            session.add(RevisionRow(version_num=revision(SCHEMA)))
            session.add(HouseRow.to_row(HouseFacts(name=FIRST_NAME)))
            session.add(SettingsRow.to_row(Settings()))
            session.flush()
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA}")


def revision(schema: int) -> str:
    """The name of the migration that leads to this form of the tables."""
    return f"{schema:04d}"
