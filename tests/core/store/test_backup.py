"""Backups are whole, checked, thinned, and a way back that keeps the present file."""

from __future__ import annotations

import datetime
import sqlite3
from collections.abc import Callable
from contextlib import closing

import pytest

from core.errors import StoreError
from core.store.backup import (
    Backup,
    BackupFailed,
    back_up,
    backups,
    digest_of,
    newest_whole,
    restore,
    set_aside,
    verify,
)
from core.store.commands import RemoveThing
from core.store.faults import Damaged, InUse
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import COAL_BAG, DIPPER, NOON, open_record

HOUR = datetime.timedelta(hours=1)
DAY = datetime.timedelta(days=1)


def test_a_backup_beside_an_open_record_holds_the_same(dipper: Record, dipper_folder: DataFolder) -> None:
    backup = back_up(dipper_folder, NOON)
    verify(backup)
    assert backup.path.name == "fillmark-20260504-120000-000000.sqlite3"
    assert backup.digest_path.read_text() == f"{digest_of(backup.path)}  {backup.path.name}\n"
    assert backups(dipper_folder) == (backup,)
    restored = DataFolder(dipper_folder.folder / "elsewhere")
    restore(restored, backup, NOON)
    with open_record(restored.folder) as copy:
        assert copy.contents() == dipper.contents()
        assert copy.undo_text == dipper.undo_text


def test_nothing_changed_is_no_new_backup(dipper: Record, dipper_folder: DataFolder) -> None:
    first = back_up(dipper_folder, NOON)
    assert back_up(dipper_folder, NOON + HOUR) == first
    dipper.do(RemoveThing("coal_bag"))
    assert back_up(dipper_folder, NOON + 2 * HOUR) != first
    assert len(backups(dipper_folder)) == 2


def test_backups_are_thinned_as_they_are_made(dipper: Record, dipper_folder: DataFolder) -> None:
    for n in range(9):
        (dipper.undo if n % 2 else lambda: dipper.do(RemoveThing("coal_bag")))()
        back_up(dipper_folder, NOON + n * HOUR)
    dipper.undo()
    newest = back_up(dipper_folder, NOON + 5 * DAY)
    left = backups(dipper_folder)
    assert left[0] == newest
    assert len(left) == 5
    assert len(list(dipper_folder.backups.iterdir())) == 10  # each with its digest, nothing else


def test_files_of_others_in_the_backup_folder_are_left_alone(dipper: Record, dipper_folder: DataFolder) -> None:
    dipper_folder.backups.mkdir()
    others = [dipper_folder.backups / name for name in ("fillmark-holiday.sqlite3", "notes.txt", "fillmark-.sqlite3")]
    for other in others:
        other.write_text("mine")
    back_up(dipper_folder, NOON)
    assert len(backups(dipper_folder)) == 1
    assert all(other.read_text() == "mine" for other in others)


def _flip(backup: Backup) -> None:
    content = bytearray(backup.path.read_bytes())
    content[len(content) // 2] ^= 1
    backup.path.write_bytes(content)


def _truncate(backup: Backup) -> None:
    backup.path.write_bytes(backup.path.read_bytes()[:5000])


def _lose_digest(backup: Backup) -> None:
    backup.digest_path.unlink()


def _garble_digest(backup: Backup) -> None:
    backup.digest_path.write_bytes(b"\xff\xfe")


@pytest.mark.parametrize("damage", [_flip, _truncate, _lose_digest, _garble_digest])
def test_a_damaged_backup_is_no_way_back_and_the_one_before_is(
    dipper: Record, dipper_folder: DataFolder, damage: Callable[[Backup], None]
) -> None:
    first = back_up(dipper_folder, NOON)
    dipper.do(RemoveThing("coal_bag"))
    second = back_up(dipper_folder, NOON + HOUR)
    dipper.close()
    assert newest_whole(dipper_folder) == second
    damage(second)
    assert newest_whole(dipper_folder) == first
    before = digest_of(dipper_folder.database)
    with pytest.raises(Damaged, match="not as it was when it was made"):
        restore(dipper_folder, second, NOON)
    assert digest_of(dipper_folder.database) == before


def test_without_backups_there_is_no_way_back(dipper_folder: DataFolder) -> None:
    assert newest_whole(dipper_folder) is None


def test_going_back_keeps_the_present_file(dipper: Record, dipper_folder: DataFolder) -> None:
    backup = back_up(dipper_folder, NOON)
    dipper.do(RemoveThing("coal_bag"))
    dipper.close()
    present = dipper_folder.database.read_bytes()
    aside = restore(dipper_folder, backup, NOON + DAY)
    assert aside is not None
    assert aside.read_bytes() == present
    with open_record(dipper_folder.folder) as record:
        assert record.house() == DIPPER
    later = restore(dipper_folder, Backup(backup.path, backup.made), NOON + 2 * DAY)
    assert later not in (None, aside)


def test_a_file_beyond_repair_is_set_aside_and_a_backup_brings_all_back(
    dipper: Record, dipper_folder: DataFolder
) -> None:
    back_up(dipper_folder, NOON)
    dipper.close()
    dipper_folder.database.write_bytes(b"\xff\xd8\xff\xe0 a photo")
    dipper_folder.journal.write_bytes(b"something")
    with pytest.raises(Damaged):
        open_record(dipper_folder.folder)
    way_back = newest_whole(dipper_folder)
    assert way_back is not None
    aside = restore(dipper_folder, way_back, NOON)
    assert aside is not None
    assert aside.read_bytes() == b"\xff\xd8\xff\xe0 a photo"
    assert aside.with_name(f"{aside.name}-journal").read_bytes() == b"something"
    assert not dipper_folder.journal.exists()
    with open_record(dipper_folder.folder) as record:
        assert COAL_BAG in record.house().things


def test_setting_the_file_aside_makes_room_for_an_empty_record(dipper_folder: DataFolder) -> None:
    present = dipper_folder.database.read_bytes()
    aside = set_aside(dipper_folder, NOON)
    assert aside is not None
    assert aside.read_bytes() == present
    assert not dipper_folder.database.exists()
    assert set_aside(dipper_folder, NOON) is None
    with open_record(dipper_folder.folder) as record:
        assert record.house().things == ()


def test_an_open_record_is_not_replaced(dipper: Record, dipper_folder: DataFolder) -> None:
    backup = back_up(dipper_folder, NOON)
    with pytest.raises(InUse):
        restore(dipper_folder, backup, NOON)
    with pytest.raises(InUse):
        set_aside(dipper_folder, NOON)


def test_a_damaged_record_does_not_push_out_good_backups(dipper: Record, dipper_folder: DataFolder) -> None:
    good = back_up(dipper_folder, NOON)
    dipper.close()
    content = bytearray(dipper_folder.database.read_bytes())
    content[4096:8192] = bytes(4096)
    dipper_folder.database.write_bytes(content)
    with pytest.raises(StoreError):
        back_up(dipper_folder, NOON + HOUR)
    assert backups(dipper_folder) == (good,)
    assert len(list(dipper_folder.backups.iterdir())) == 2


def test_a_row_that_cannot_be_read_is_found_before_going_back(dipper: Record, dipper_folder: DataFolder) -> None:
    dipper.close()
    with closing(sqlite3.connect(dipper_folder.database)) as connection, connection:
        connection.execute("""UPDATE thing SET facts = '{"version":1,"facts":{"is":"ghost"}}' WHERE id = 'stool'""")
    backup = back_up(dipper_folder, NOON)
    with pytest.raises(Damaged, match="thing “stool”.*ghost"):
        verify(backup)


def test_a_backup_that_cannot_be_written_is_told_and_leaves_nothing(dipper: Record, dipper_folder: DataFolder) -> None:
    dipper_folder.backups.write_text("a file where the folder should be")
    with pytest.raises(BackupFailed, match="No backup could be made .* unchanged"):
        back_up(dipper_folder, NOON)
    assert dipper.house() == DIPPER
