"""A record keeps everything across closing and opening; reading needs no lock and changes nothing."""

from __future__ import annotations

import datetime
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from core.errors import InputError, StoreError
from core.house.model import House
from core.house.wishes import WeekWishes
from core.store.backup import digest_of
from core.store.commands import AddSession, AddThing, RemoveThing, SetFill
from core.store.faults import CannotRead, CannotWrite
from core.store.paths import DataFolder
from core.store.record import Record
from core.store.values import Settings
from core.things.model import Fill
from tests.core.store.examples import BLOCK, COAL_BAG, DIPPER, MONDAY, SESSION, TEST, WEEK, WISHES, clock, open_record


def test_a_new_record_is_empty(record: Record) -> None:
    assert record.house() == House(name="Home")
    assert record.settings() == Settings()
    assert (record.wishes(), record.week(), record.sessions(), record.tests()) == (WeekWishes(), None, (), ())
    assert (record.undo_text, record.redo_text) == (None, None)


def test_what_was_entered_is_there_after_opening_again(dipper: Record, data_dir: Path) -> None:
    dipper.close()
    with open_record(data_dir) as opened:
        assert opened.house() == DIPPER
        assert (opened.wishes(), opened.wishes("tomas")) == (WISHES, WeekWishes())
        assert (opened.week(), opened.week("tomas")) == (WEEK, None)
        assert (opened.block(), opened.block("tomas")) == (BLOCK, None)
        assert (opened.sessions(), opened.tests()) == ((SESSION,), (TEST,))


def test_the_state_in_memory_is_the_one_on_disk(dipper: Record, data_dir: Path) -> None:
    with Record.look(DataFolder(data_dir), clock) as reader:
        assert reader.state() == dipper.state()


def test_undo_and_redo_survive_closing(dipper: Record, data_dir: Path) -> None:
    dipper.do(RemoveThing("coal_bag"))
    dipper.do(SetFill("carrier", None))
    dipper.undo()
    dipper.close()
    with open_record(data_dir) as opened:
        assert (opened.undo_text, opened.redo_text) == ("Removed Coal bag", "Emptied Water carrier")
        opened.undo()
        assert COAL_BAG in opened.house().things
        opened.redo()
        opened.redo()
        assert opened.house().thing("carrier").fill is None


def test_a_new_command_drops_what_was_taken_back(dipper: Record) -> None:
    dipper.do(RemoveThing("coal_bag"))
    dipper.undo()
    dipper.do(SetFill("carrier", None))
    assert dipper.redo_text is None
    with pytest.raises(InputError, match="nothing to repeat"):
        dipper.redo()


def test_an_empty_history_has_nothing_to_take_back(record: Record) -> None:
    with pytest.raises(InputError, match="nothing to take back"):
        record.undo()


def test_only_the_newest_steps_are_kept(dipper: Record, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("core.store.undo.MOST_STEPS", 3)
    for litres in range(5):
        dipper.do(SetFill("carrier", Fill(material_id="water", volume_l=litres)))
    for _ in range(3):
        dipper.undo()
    assert dipper.undo_text is None
    fill = dipper.house().thing("carrier").fill
    assert fill is not None
    assert fill.volume_l == 1


def test_sessions_are_read_by_person_and_day(dipper: Record) -> None:
    later = replace(SESSION, id="s0", person_id="tomas", date=MONDAY + datetime.timedelta(days=2))
    dipper.do(AddSession(later))
    assert dipper.sessions() == (SESSION, later)
    assert dipper.sessions("tomas") == (later,)
    assert dipper.sessions(since=MONDAY + datetime.timedelta(days=1)) == (later,)


def test_reading_beside_an_open_window_needs_no_lock_and_cannot_write(dipper: Record, data_dir: Path) -> None:
    before = digest_of(dipper.path)
    with Record.look(DataFolder(data_dir), clock) as reader:
        assert reader.house() == DIPPER
        with pytest.raises(CannotWrite):
            reader.do(RemoveThing("coal_bag"))
    assert digest_of(dipper.path) == before
    dipper.do(RemoveThing("coal_bag"))
    with Record.look(DataFolder(data_dir), clock) as reader:
        assert COAL_BAG not in reader.house().things


def test_reading_where_nothing_is_makes_nothing(data_dir: Path) -> None:
    with pytest.raises(CannotRead, match="check that it is there"):
        Record.look(DataFolder(data_dir), clock)
    assert list(data_dir.iterdir()) == []


def test_a_failed_command_leaves_no_trace(dipper: Record, data_dir: Path) -> None:
    before = digest_of(dipper.path)
    with pytest.raises(InputError):
        dipper.do(AddThing(replace(COAL_BAG, id="x", name="two\nlines")))
    assert digest_of(dipper.path) == before


def test_the_record_is_private(record: Record, data_dir: Path) -> None:
    assert record.path.stat().st_mode & 0o077 == 0


def test_a_journal_without_its_record_is_not_played_into_a_new_one(data_dir: Path) -> None:
    folder = DataFolder(data_dir)
    folder.journal.write_bytes(b"left over")
    with open_record(data_dir) as record:
        assert record.house() == House(name="Home")
    assert (data_dir / "left-over-journal").read_bytes() == b"left over"


def test_a_record_half_made_is_made_anew(data_dir: Path) -> None:
    (data_dir / "fillmark.new").write_bytes(b"half")
    with open_record(data_dir) as record:
        assert record.house() == House(name="Home")


def test_a_data_folder_that_is_a_file_is_told_in_one_sentence(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.touch()
    with pytest.raises(StoreError, match="cannot be used .* choose another one with --data"):
        Record.open(DataFolder(file), clock)


def test_values_and_commands_load_without_the_database_library() -> None:
    code = (
        "import sys, core.store.commands, core.store.contents, core.store.paths, core.store.values\n"
        "print([name for name in ('sqlalchemy', 'alembic', 'platformdirs') if name in sys.modules])"
    )
    assert _run(code) == "[]"


def test_opening_a_record_of_today_loads_no_migrations(data_dir: Path) -> None:
    open_record(data_dir).close()
    code = (
        "import sys, datetime, pathlib\n"
        "now = lambda: datetime.datetime.now(datetime.UTC)\n"
        "from core.store.record import Record\n"
        "from core.store.paths import DataFolder\n"
        f"Record.open(DataFolder(pathlib.Path({str(data_dir)!r})), now).close()\n"
        "print([name for name in ('alembic', 'pydantic', 'numpy', 'PySide6') if name in sys.modules])"
    )
    assert _run(code) == "[]"


def _run(code: str) -> str:
    return subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True).stdout.strip()
