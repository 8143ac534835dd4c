"""A file that is not a sound record is recognised, told in one sentence and left as it is."""

from __future__ import annotations

import random
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from core.errors import StoreError
from core.store.backup import digest_of
from core.store.engine import SCHEMA
from core.store.faults import Damaged, Newer
from core.store.opening import holds_own_entries
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import clock, open_record


def _sql(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for statement in statements:
            connection.execute(statement)


def _loosely(path: Path, *statements: str) -> None:
    """As a damaged disk would: past every rule."""
    _sql(path, "PRAGMA ignore_check_constraints = ON", *statements)


def _another_database(path: Path) -> None:
    path.unlink()
    _sql(path, "CREATE TABLE recipe (name TEXT)")


CASES: tuple[tuple[str, Callable[[Path], object], type[StoreError], str], ...] = (
    ("empty", lambda path: path.write_bytes(b""), Damaged, "it is empty"),
    ("photo", lambda path: path.write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" * 400), Damaged, "it is not a database"),
    ("text", lambda path: path.write_text("SQLite format 2"), Damaged, "it is not a database"),
    ("header only", lambda path: path.write_bytes(path.read_bytes()[:16]), Damaged, "damaged"),
    ("one page", lambda path: path.write_bytes(path.read_bytes()[:4096]), Damaged, "damaged"),
    ("half", lambda path: path.write_bytes(path.read_bytes()[: path.stat().st_size // 2]), Damaged, "damaged"),
    ("zeros inside", lambda path: path.write_bytes(_zeroed(path.read_bytes())), Damaged, "damaged"),
    ("another database", _another_database, Damaged, "not a record of this program"),
    ("no form", lambda path: _sql(path, "PRAGMA user_version = 0"), Damaged, "its form is not given"),
    ("newer", lambda path: _sql(path, f"PRAGMA user_version = {SCHEMA + 1}"), Newer, "update the program. Nothing was"),
    ("no table", lambda path: _sql(path, "DROP TABLE scale_reading"), Damaged, "no such table"),
    ("no column", lambda path: _sql(path, "ALTER TABLE place DROP COLUMN walk_m"), Damaged, "no such column"),
    ("no house", lambda path: _sql(path, "DELETE FROM house"), Damaged, "the entry for house is missing"),
    ("no settings", lambda path: _sql(path, "DELETE FROM settings"), Damaged, "the entry for settings is missing"),
    ("orphan", lambda path: _sql(path, "DELETE FROM person WHERE id = 'ines'"), Damaged, "mentions a person"),
    ("rule broken", lambda path: _loosely(path, "UPDATE thing SET count = -1"), Damaged, "CHECK constraint"),
    ("odd word", lambda path: _sql(path, "UPDATE person SET experience = 'keen'"), Damaged, "person “ines”.*“keen”"),
    ("odd demand", lambda path: _sql(path, "UPDATE spare SET demand = 'x' WHERE demand = 'impact'"), Damaged, "“x”"),
    ("odd facts", lambda path: _sql(path, "UPDATE thing SET facts = '{}'"), Damaged, "thing “carrier”"),
    (
        "odd level",
        lambda path: _sql(path, "UPDATE scale_reading SET at_level = '{]}'"),
        Damaged,
        "not readable as JSON",
    ),
    ("odd number", lambda path: _sql(path, "UPDATE place SET walk_m = 9e999"), Damaged, "place “cabin”.walk_m"),
    (
        "odd time",
        lambda path: _sql(path, "UPDATE place SET quiet_end = '7' WHERE id = 'cabin'"),
        Damaged,
        "is not a time",
    ),
    ("odd name", lambda path: _sql(path, "UPDATE place SET name = 'a' || char(8238)"), Damaged, "cannot be shown"),
    ("no text", lambda path: _sql(path, "UPDATE place SET name = CAST(x'ff41' AS TEXT)"), Damaged, "not readable"),
)


def _zeroed(content: bytes) -> bytes:
    return content[:8192] + bytes(8192) + content[16384:]


@pytest.mark.parametrize(("damage", "fault", "words"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_a_damaged_file_is_recognised_and_left_as_it_is(
    dipper_folder: DataFolder, damage: Callable[[Path], object], fault: type[StoreError], words: str
) -> None:
    damage(dipper_folder.database)
    before = digest_of(dipper_folder.database)
    for way_in in (Record.open, Record.look):
        with pytest.raises(fault, match=words) as told:
            way_in(dipper_folder, clock)
        assert "\n" not in str(told.value)
    assert digest_of(dipper_folder.database) == before
    assert not dipper_folder.journal.exists()


def test_after_a_refusal_the_folder_is_free(dipper_folder: DataFolder) -> None:
    whole = dipper_folder.database.read_bytes()
    dipper_folder.database.write_bytes(b"")
    with pytest.raises(Damaged):
        open_record(dipper_folder.folder)
    dipper_folder.database.write_bytes(whole)
    open_record(dipper_folder.folder).close()


def test_a_logged_session_that_cannot_be_read_is_named_when_it_is_asked_for(dipper_folder: DataFolder) -> None:
    _sql(dipper_folder.database, "UPDATE session SET note = 'a' || char(7)")
    with open_record(dipper_folder.folder) as record, pytest.raises(Damaged, match="session “s1”.note"):
        record.sessions()


def test_a_step_that_cannot_be_read_cannot_be_taken_back_and_nothing_else_suffers(dipper_folder: DataFolder) -> None:
    _sql(dipper_folder.database, "UPDATE step SET changes = '[7]'")
    with open_record(dipper_folder.folder) as record:
        before = record.contents()
        with pytest.raises(StoreError, match="“Logged a test of Ines on 2026-05-04” can no longer be taken back"):
            record.undo()
        assert record.contents() == before


def _damaged(content: bytes, seed: int) -> bytes:
    """Bits flipped, bytes overwritten, or the end cut off."""
    chance = random.Random(seed)
    changed = bytearray(content)
    if seed % 4 == 0:
        return bytes(changed[: chance.randrange(len(changed))])
    for _ in range(chance.choice((1, 1, 8, 200))):
        spot = chance.randrange(len(changed))
        changed[spot] = changed[spot] ^ (1 << chance.randrange(8)) if seed % 2 else chance.randrange(256)
    return bytes(changed)


@pytest.mark.parametrize("seed", range(60))
def test_random_damage_is_either_harmless_or_told_in_one_sentence(dipper_folder: DataFolder, seed: int) -> None:
    content = _damaged(dipper_folder.database.read_bytes(), seed)
    dipper_folder.database.write_bytes(content)
    try:
        with Record.look(dipper_folder, clock) as record:
            record.contents()
    except StoreError as told:
        fault = str(told)
    else:
        fault = ""
    assert "\n" not in fault
    assert dipper_folder.database.read_bytes() == content


def test_whether_there_are_own_entries_is_told_of_any_file(dipper_database: Path, tmp_path: Path) -> None:
    assert holds_own_entries(dipper_database)
    with open_record(tmp_path) as record:
        assert not holds_own_entries(record.path)
    odd = tmp_path / "odd.sqlite3"
    assert not holds_own_entries(odd)
    for content in (b"", b"SQLite format 3\0", b"no database at all"):
        odd.write_bytes(content)
        assert not holds_own_entries(odd)
        assert odd.read_bytes() == content
