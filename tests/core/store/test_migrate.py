"""Updating the program never loses data: every earlier form is read, and a migration that fails changes nothing."""

from __future__ import annotations

import json
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from core.store import migrate as migrating
from core.store.backup import BackupFailed, backups, digest_of, verify
from core.store.contents import contents_from_json
from core.store.engine import APPLICATION_ID, SCHEMA, connect
from core.store.faults import Damaged, Older
from core.store.migrate import MIGRATIONS, UpdateFailed, bring_up_to_date, migrate
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import clock, open_record

FIXTURES = Path(__file__).with_name("fixtures")
FORMS = sorted(FIXTURES.glob("form-*.sqlite3"))
NEXT = SCHEMA + 1
HEAD = f"""
import sqlalchemy as sa
from alembic import op
revision = "{NEXT:04d}"
down_revision = "{SCHEMA:04d}"
branch_labels = None
depends_on = None
"""
REBUILD = """
def upgrade():
    with op.batch_alter_table("thing", recreate="always", table_kwargs={"sqlite_strict": True}) as batch:
        batch.add_column(sa.Column("worn", sa.Integer(), nullable=False, server_default="0"))
"""
FAIL = """
def upgrade():
    with op.batch_alter_table("thing", recreate="always", table_kwargs={"sqlite_strict": True}) as batch:
        batch.add_column(sa.Column("worn", sa.Integer(), nullable=False, server_default="0"))
    op.execute("DELETE FROM place")
    raise RuntimeError("the power of invention failed")
"""
ORPHAN = """
def upgrade():
    op.execute("DELETE FROM place")
"""


def _scripts(tmp_path: Path, upgrade: str) -> Path:
    """The shipped migrations and one more."""
    scripts = tmp_path / "migrations"
    shutil.copytree(MIGRATIONS, scripts, ignore=shutil.ignore_patterns("__pycache__"))
    (scripts / "versions" / f"m{NEXT:04d}_next.py").write_text(HEAD + upgrade)
    return scripts


def _ask(path: Path, question: str) -> list[Any]:
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(question).fetchall()


def _schema(path: Path) -> dict[str, str]:
    rows = _ask(path, "SELECT type || ' ' || name, sql FROM sqlite_master WHERE sql IS NOT NULL")
    return {name: "".join(sql.split()) for name, sql in rows}


def _counts(path: Path) -> dict[str, int]:
    names = [name for (name,) in _ask(path, "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name")]
    return {name: _ask(path, f"SELECT count(*) FROM {name}")[0][0] for name in names}  # noqa: S608  # names of tables


def test_a_new_record_and_a_migrated_one_have_the_same_tables(record: Record, tmp_path: Path) -> None:
    migrated = tmp_path / "migrated.sqlite3"
    migrated.touch()
    migrate(migrated, MIGRATIONS, SCHEMA)
    assert _schema(migrated) == _schema(record.path)
    for question in ("PRAGMA user_version", "SELECT version_num FROM alembic_version"):
        assert _ask(migrated, question) == _ask(record.path, question)


def test_there_is_a_record_of_every_form() -> None:
    assert [path.stem for path in FORMS] == [f"form-{form}" for form in range(1, SCHEMA + 1)]


@pytest.mark.parametrize("form", FORMS, ids=lambda path: path.stem)
def test_a_record_of_every_form_is_read_as_it_was_written(form: Path, record: Record, data_dir: Path) -> None:
    fresh = _schema(record.path)
    record.close()
    shutil.copyfile(form, record.path)
    expected = json.loads(form.with_suffix(".json").read_text(encoding="utf-8"))
    with open_record(data_dir) as opened:
        assert opened.contents() == contents_from_json(expected)
        opened.undo()
        opened.redo()
        assert opened.contents() == contents_from_json(expected)
    assert _schema(record.path) == fresh
    assert _ask(record.path, "PRAGMA foreign_key_check") == []
    assert _ask(record.path, "PRAGMA application_id") == [(APPLICATION_ID,)]


def test_rebuilding_a_table_keeps_everything_that_hangs_on_it(dipper_folder: DataFolder, tmp_path: Path) -> None:
    before = _counts(dipper_folder.database)
    assert all(before[name] for name in ("scale_reading", "fill", "thing_place"))
    migrate(dipper_folder.database, _scripts(tmp_path, REBUILD), NEXT)
    assert _counts(dipper_folder.database) == before
    assert _ask(dipper_folder.database, "SELECT DISTINCT worn FROM thing") == [(0,)]
    assert _ask(dipper_folder.database, "PRAGMA user_version") == [(NEXT,)]
    assert _ask(dipper_folder.database, "SELECT version_num FROM alembic_version") == [(f"{NEXT:04d}",)]
    with closing(connect(dipper_folder.database)) as connection:
        assert connection.execute("PRAGMA foreign_keys").fetchone() == (1,)


def test_a_migration_that_fails_leaves_the_file_byte_for_byte(dipper_folder: DataFolder, tmp_path: Path) -> None:
    before = dipper_folder.database.read_bytes()
    with pytest.raises(RuntimeError, match="invention"):
        migrate(dipper_folder.database, _scripts(tmp_path, FAIL), NEXT)
    assert dipper_folder.database.read_bytes() == before
    assert not dipper_folder.journal.exists()


def test_a_migration_that_would_leave_loose_ends_is_not_kept(dipper_folder: DataFolder, tmp_path: Path) -> None:
    before = dipper_folder.database.read_bytes()
    with pytest.raises(Damaged, match="mentions a place that is not there"):
        migrate(dipper_folder.database, _scripts(tmp_path, ORPHAN), NEXT)
    assert dipper_folder.database.read_bytes() == before


@pytest.fixture
def tomorrow(monkeypatch: pytest.MonkeyPatch) -> None:
    """The program as if it had one more form."""
    for module in ("record", "opening", "migrate"):
        monkeypatch.setattr(f"core.store.{module}.SCHEMA", NEXT)


def test_an_older_record_is_backed_up_and_updated_when_it_is_opened(
    dipper_folder: DataFolder, tmp_path: Path, tomorrow: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(migrating, "MIGRATIONS", _scripts(tmp_path, REBUILD))
    with pytest.raises(Older, match="open the window once"):
        Record.look(dipper_folder, clock)
    before = _counts(dipper_folder.database)
    with open_record(dipper_folder.folder) as record:
        assert len(record.house().things) == before["thing"]
    (backup,) = backups(dipper_folder)
    verify(backup)
    assert _ask(backup.path, "PRAGMA user_version") == [(SCHEMA,)]
    assert _counts(backup.path) == before


def test_a_failed_update_names_the_copy_and_leaves_the_record_for_the_earlier_program(
    dipper_folder: DataFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = digest_of(dipper_folder.database)
    with monkeypatch.context() as later:
        for module in ("record", "opening", "migrate"):
            later.setattr(f"core.store.{module}.SCHEMA", NEXT)
        later.setattr(migrating, "MIGRATIONS", _scripts(tmp_path, FAIL))
        with pytest.raises(UpdateFailed, match=r"it is as it was, and a copy is fillmark-.*\.sqlite3"):
            open_record(dipper_folder.folder)
    assert digest_of(dipper_folder.database) == before
    open_record(dipper_folder.folder).close()


def test_without_a_backup_nothing_is_migrated(
    dipper_folder: DataFolder, tmp_path: Path, tomorrow: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(migrating, "MIGRATIONS", _scripts(tmp_path, REBUILD))
    dipper_folder.backups.write_text("a file where the folder should be")
    before = digest_of(dipper_folder.database)
    with pytest.raises(BackupFailed):
        bring_up_to_date(dipper_folder, clock)
    assert digest_of(dipper_folder.database) == before


def test_no_migration_imports_a_row_class() -> None:
    for script in (MIGRATIONS / "versions").glob("m*.py"):
        assert "core." not in script.read_text(encoding="utf-8")
