"""Every connection has the settings that make a power cut cost at most the last click."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing
from typing import Any

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from core.store.engine import APPLICATION_ID, BUSY_MS, READING, SCHEMA, connect, open_engine
from core.store.paths import DataFolder
from core.store.record import Record
from core.store.rows.tables import METADATA

ALWAYS = {
    "synchronous": 3,  # EXTRA
    "foreign_keys": 1,
    "trusted_schema": 0,
    "cell_size_check": 1,
    "busy_timeout": BUSY_MS,
    "journal_mode": "delete",
    "application_id": APPLICATION_ID,
    "user_version": SCHEMA,
}


def _settings(ask: Callable[[str], Any]) -> dict[str, object]:
    return {name: ask(f"PRAGMA {name}").fetchone()[0] for name in ALWAYS}


@pytest.mark.parametrize("query_only", [False, True])
def test_every_connection_is_set_up_alike(dipper_folder: DataFolder, query_only: bool) -> None:
    with closing(connect(dipper_folder.database, query_only=query_only)) as connection:
        assert _settings(connection.execute) == ALWAYS
    engine = open_engine(dipper_folder.database, query_only=query_only)
    with engine.connect() as opened:
        assert _settings(opened.exec_driver_sql) == ALWAYS
    engine.dispose()


def test_the_connection_of_an_open_record_is_set_up_so(dipper: Record) -> None:
    with dipper._engine.connect() as opened:
        assert _settings(opened.exec_driver_sql) == ALWAYS


def test_a_record_that_was_switched_to_another_journal_is_switched_back(dipper_folder: DataFolder) -> None:
    with closing(connect(dipper_folder.database)) as connection:
        assert connection.execute("PRAGMA journal_mode = WAL").fetchone() == ("wal",)
    with closing(connect(dipper_folder.database)) as connection:
        assert _settings(connection.execute) == ALWAYS


def test_foreign_keys_rest_only_while_migrating(dipper_folder: DataFolder) -> None:
    with closing(connect(dipper_folder.database, migrating=True)) as connection:
        assert _settings(connection.execute) == ALWAYS | {"foreign_keys": 0}


def test_a_transaction_takes_the_write_lock_at_once_and_reading_takes_none(dipper_folder: DataFolder) -> None:
    engine = open_engine(dipper_folder.database)
    with closing(connect(dipper_folder.database)) as other:
        other.execute("PRAGMA busy_timeout = 0")
        with engine.execution_options(**{READING: True}).begin() as reading:
            reading.execute(text("SELECT 1"))
            other.execute("BEGIN IMMEDIATE")
            other.execute("ROLLBACK")
        with engine.begin(), pytest.raises(Exception, match="locked"):
            other.execute("BEGIN IMMEDIATE")
    engine.dispose()


def test_every_table_is_strict_and_has_a_rule(dipper: Record) -> None:
    with dipper._engine.connect() as opened:
        listed = opened.execute(text("SELECT name, strict FROM pragma_table_list WHERE type = 'table'"))
        tables = {row.name: row.strict for row in listed}
    ours = {table.name for table in METADATA.tables.values()} - {"alembic_version"}
    assert ours <= tables.keys()
    assert all(tables[name] for name in ours)


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE thing SET count = 0",
        "UPDATE thing SET name = ''",
        "UPDATE thing SET facts = 'none'",
        "UPDATE thing SET count = 'two'",
        "UPDATE person SET body_mass_kg = 500",
        "UPDATE place SET quiet_end = NULL",
        "UPDATE place SET wet = 2",
        "UPDATE day_wish SET weekday = 7",
        "UPDATE day_wish SET place_id = 'moon'",
        "UPDATE pin SET kind = NULL, exercise_id = NULL",
        "UPDATE settings SET person_id = 'nobody'",
        "UPDATE settings SET ready_on = 'today'",
        "INSERT INTO house SELECT 2, name, fills, cup_l FROM house",
        "DELETE FROM place",
        "DELETE FROM person",
        "UPDATE training_set SET reps = NULL, time_s = NULL, distance_m = NULL",
        "UPDATE step SET done = 2",
    ],
)
def test_the_database_itself_refuses_what_cannot_be(dipper: Record, statement: str) -> None:
    with pytest.raises(IntegrityError), dipper._engine.begin() as opened:
        opened.execute(text(statement))
