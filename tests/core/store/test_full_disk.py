"""A full or read-only disk harms nothing: one sentence says so, and exporting still works."""

from __future__ import annotations

import os
import resource
import shutil
import signal
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import event
from sqlalchemy.exc import IntegrityError, OperationalError

from core.errors import StoreError
from core.store.backup import BackupFailed, back_up, digest_of
from core.store.commands import AddThing, LoadHouse, RemoveThing
from core.store.contents import contents_from_json, contents_json
from core.store.engine import connect, told_plainly
from core.store.faults import CannotWrite, Damaged, FolderUnusable
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import COAL_BAG, DIPPER, NOON, clock, open_record

KETTLE = replace(COAL_BAG, id="kettle", name="Kettle", cautions=tuple(f"{n} " * 300 for n in range(50)))


@contextmanager
def _no_more_pages(record: Record) -> Iterator[None]:
    with record._engine.connect() as opened:
        pages = opened.exec_driver_sql("PRAGMA page_count").scalar_one()
        opened.exec_driver_sql(f"PRAGMA max_page_count = {pages}")
    yield
    with record._engine.connect() as opened:
        opened.exec_driver_sql("PRAGMA max_page_count = 1000000")


def test_on_a_full_disk_one_sentence_says_so_and_nothing_is_lost(dipper: Record) -> None:
    before = dipper.contents()
    with _no_more_pages(dipper):
        digest = digest_of(dipper.path)
        with pytest.raises(CannotWrite, match=r"the disk is full\); this change was not saved, all earlier ones are"):
            dipper.do(AddThing(KETTLE))
        assert dipper.contents() == before
        assert dipper.undo_text == "Logged a test of Ines on 2026-05-04"
        assert contents_from_json(contents_json(dipper.contents())) == before
        assert digest_of(dipper.path) == digest
    dipper.do(AddThing(KETTLE))
    assert KETTLE in dipper.house().things


def test_undo_on_a_full_disk_can_be_tried_again(dipper: Record) -> None:
    dipper.do(AddThing(KETTLE))
    dipper.do(RemoveThing("kettle"))
    with closing(connect(dipper.path)) as connection:
        connection.execute("VACUUM")  # so that no free page is left for what comes back
    before = dipper.contents()
    with _no_more_pages(dipper), pytest.raises(CannotWrite):
        dipper.undo()
    assert dipper.contents() == before
    dipper.undo()
    assert KETTLE in dipper.house().things


@pytest.mark.parametrize(
    ("code", "fault", "words"),
    [
        (sqlite3.SQLITE_FULL, CannotWrite, "the disk is full"),
        (sqlite3.SQLITE_READONLY, CannotWrite, "it is read-only"),
        (sqlite3.SQLITE_READONLY_DIRECTORY, CannotWrite, "it is read-only"),
        (sqlite3.SQLITE_IOERR_WRITE, CannotWrite, "the disk reports an error"),
        (sqlite3.SQLITE_IOERR_FSYNC, CannotWrite, "the disk reports an error"),
        (sqlite3.SQLITE_BUSY, CannotWrite, "another program is using it"),
        (sqlite3.SQLITE_CANTOPEN, CannotWrite, "no file can be made beside it"),
        (sqlite3.SQLITE_CORRUPT, Damaged, "its pages do not fit together"),
        (sqlite3.SQLITE_NOTADB, Damaged, "it is not a database"),
    ],
)
def test_an_error_in_the_middle_of_a_command_is_told_and_rolled_back(
    dipper: Record, code: int, fault: type[StoreError], words: str
) -> None:
    before = dipper.contents()

    def fail(*_: object) -> None:
        error = sqlite3.OperationalError("injected")
        error.sqlite_errorcode = code
        raise error

    event.listen(dipper._engine, "commit", fail)
    with pytest.raises(fault, match=words):
        dipper.do(LoadHouse(replace(DIPPER, name="Heron", things=()), replace_all=True))
    event.remove(dipper._engine, "commit", fail)
    assert dipper.contents() == before
    dipper.do(RemoveThing("coal_bag"))


def test_a_mistake_of_ours_is_not_dressed_up_as_a_fault_of_the_disk(dipper: Record) -> None:
    with pytest.raises(IntegrityError), told_plainly(dipper.path), dipper._engine.begin() as opened:
        opened.exec_driver_sql("UPDATE thing SET count = 0")
    with pytest.raises(OperationalError, match="syntax"), told_plainly(dipper.path), dipper._engine.begin() as opened:
        opened.exec_driver_sql("UPDATE UPDATE")


def _in_a_child(work: Callable[[], str]) -> str:
    """What the work answers, run in a forked process, whose limits and rights it may give away."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            answer = work()
        except BaseException as error:
            answer = f"{type(error).__name__}: {error}"
        os.write(writing, answer.encode())
        os._exit(0)
    os.close(writing)
    os.waitpid(child, 0)
    with os.fdopen(reading, "rb") as pipe:
        return pipe.read().decode()


def test_where_the_file_may_not_grow_the_change_is_refused_and_nothing_is_lost(dipper_folder: DataFolder) -> None:
    def work() -> str:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        with open_record(dipper_folder.folder) as record:
            before = record.contents()
            size = dipper_folder.database.stat().st_size
            resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
            try:
                record.do(AddThing(KETTLE))
            except CannotWrite as told:
                return f"{told.why}, {'same' if record.contents() == before else 'other'}"
            return "written"

    assert _in_a_child(work) in ("the disk is full, same", "the disk reports an error, same")
    with open_record(dipper_folder.folder) as record:
        assert record.house() == DIPPER
        record.do(AddThing(KETTLE))


@pytest.fixture
def open_folder(dipper_database: Path) -> Iterator[DataFolder]:
    """A data folder that any user of the machine can reach and read, with the Dipper's record in it."""
    base = Path(tempfile.mkdtemp(prefix="fillmark-read-only-"))
    base.chmod(0o755)
    folder = DataFolder(base / "data")
    folder.folder.mkdir()
    shutil.copyfile(dipper_database, folder.database)
    folder.database.chmod(0o444)
    folder.folder.chmod(0o555)
    yield folder
    folder.folder.chmod(0o755)
    shutil.rmtree(base)


def _without_rights(work: Callable[[], str]) -> str:
    """The answer of work done by a user who may write nothing there; root may write anywhere."""

    def as_nobody() -> str:
        if os.geteuid() == 0:
            os.setgroups([])
            os.setgid(65534)
            os.setuid(65534)
        return work()

    return _in_a_child(as_nobody)


def test_a_read_only_folder_is_told_in_one_sentence(open_folder: DataFolder) -> None:
    def work() -> str:
        Record.open(open_folder, clock).close()
        return "opened"

    answer = _without_rights(work)
    assert answer.startswith(FolderUnusable.__name__)
    assert "allow writing there, or choose another one with --data" in answer


def test_a_read_only_record_can_be_read_and_exported(open_folder: DataFolder) -> None:
    before = digest_of(open_folder.database)

    def work() -> str:
        with Record.look(open_folder, clock) as record:
            document = contents_json(record.contents())
        return contents_from_json(document).house.name

    assert _without_rights(work) == "Dipper"
    assert digest_of(open_folder.database) == before


def test_a_backup_on_a_read_only_disk_is_told(open_folder: DataFolder) -> None:
    answer = _without_rights(lambda: back_up(open_folder, NOON).path.name)
    assert answer.startswith(BackupFailed.__name__)
    assert answer.endswith("the record itself is unchanged.")


def test_a_new_record_on_a_full_disk_leaves_nothing_half_made(data_dir: Path) -> None:
    def work() -> str:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (8192, 8192))
        open_record(data_dir).close()
        return "made"

    assert _in_a_child(work).startswith(("CannotWrite", "FolderUnusable"))
    assert not DataFolder(data_dir).database.exists()
    open_record(data_dir).close()
