"""Dated copies of the record, each checked when it is made, and the ways back to one.

A copy is made with VACUUM INTO beside a running window (from any thread), checked, and named only when it is whole;
its SHA-256 lies beside it. Going back keeps the present file, under a name that says so.
"""

from __future__ import annotations

import contextlib
import datetime
import hashlib
import shutil
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy.orm import Session

from core.errors import StoreError
from core.store.engine import READING, connect, open_engine, told_plainly
from core.store.faults import CannotWrite, Damaged
from core.store.files import disk_told, sync_file, sync_folder
from core.store.opening import check_whole, schema_of
from core.store.paths import DataFolder, FolderLock
from core.store.shelf import read_contents
from core.store.thinning import surplus

STAMP = "%Y%m%d-%H%M%S-%f"
BEGINNING, ENDING = "fillmark-", ".sqlite3"


class BackupFailed(StoreError):
    """No copy could be made; the record itself is untouched."""

    def __init__(self, folder: Path, why: str) -> None:
        self.folder = folder
        self.why = why
        super().__init__(f"No backup could be made in {folder} ({why}); the record itself is unchanged.")


@dataclass(frozen=True, slots=True)
class Backup:
    """One copy: its file and when it was made (UTC)."""

    path: Path
    made: datetime.datetime

    @property
    def digest_path(self) -> Path:
        """The file with the SHA-256, in the form that sha256sum reads."""
        return self.path.with_name(f"{self.path.name}.sha256")


def backups(folder: DataFolder) -> tuple[Backup, ...]:
    """All copies in the folder, newest first; files with other names are not ours."""
    found = folder.backups.glob(f"{BEGINNING}*{ENDING}") if folder.backups.is_dir() else ()
    known = [Backup(path, made) for path in found if (made := _made(path)) is not None]
    return tuple(sorted(known, key=lambda backup: backup.made, reverse=True))


def back_up(folder: DataFolder, now: datetime.datetime) -> Backup:
    """Make, check and date a copy, then thin the older ones. If nothing changed, the newest copy is the answer."""
    with _failure_told(folder.backups):
        folder.backups.mkdir(mode=0o700, exist_ok=True)
        unfinished = folder.backups / "unfinished.sqlite3"
        unfinished.unlink(missing_ok=True)
        try:
            digest = _copy(folder.database, unfinished)
            newest = next(iter(backups(folder)), None)
            if newest is not None and _digest_noted(newest) == digest:
                return newest
            backup = _name(folder, unfinished, now, digest)
        finally:
            unfinished.unlink(missing_ok=True)
        thin(folder, now)
        return backup


def thin(folder: DataFolder, now: datetime.datetime) -> tuple[Backup, ...]:
    """Delete the copies that `core.store.thinning` can spare, and tell which."""
    present = backups(folder)
    going = frozenset(surplus((backup.made for backup in present), now))
    gone = tuple(backup for backup in present if backup.made in going)
    for backup in gone:
        backup.digest_path.unlink(missing_ok=True)
        backup.path.unlink(missing_ok=True)
    return gone


def verify(backup: Backup) -> None:
    """`Damaged` unless the copy has its SHA-256, is whole, and every entry in it can be read."""
    if _digest_noted(backup) != digest_of(backup.path):
        raise Damaged(backup.path, "it is not as it was when it was made")
    schema_of(backup.path)
    with told_plainly(backup.path), closing(connect(backup.path, query_only=True)) as connection:
        check_whole(backup.path, connection, thorough=True)
    _read_all(backup.path)


def newest_whole(folder: DataFolder) -> Backup | None:
    """The newest copy that passes `verify`; None when there is none."""
    for backup in backups(folder):
        with contextlib.suppress(StoreError):  # a damaged copy is no way back, the next one may be
            verify(backup)
            return backup
    return None


def restore(folder: DataFolder, backup: Backup, now: datetime.datetime) -> Path | None:
    """Go back to a copy; the answer is where the present file was set aside. The record must be closed."""
    verify(backup)
    with FolderLock(folder), disk_told(folder.folder):
        unfinished = folder.database.with_suffix(".new")
        _copy_file(backup.path, unfinished)
        aside = _copy_aside(folder, now)
        folder.journal.unlink(missing_ok=True)  # it belongs to the file set aside, where it was copied to
        unfinished.replace(folder.database)
        sync_folder(folder.folder)
        return aside


def set_aside(folder: DataFolder, now: datetime.datetime) -> Path | None:
    """Move the present file beside, so that the next start makes an empty record; the answer is where it went."""
    with FolderLock(folder), disk_told(folder.folder):
        aside = _copy_aside(folder, now)
        folder.database.unlink(missing_ok=True)
        folder.journal.unlink(missing_ok=True)
        sync_folder(folder.folder)
        return aside


def digest_of(path: Path) -> str:
    """SHA-256 of a file, in hexadecimal."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _read_all(path: Path) -> None:
    engine = open_engine(path, query_only=True)
    try:
        with told_plainly(path), Session(engine.execution_options(**{READING: True})) as session:
            read_contents(session)
    finally:
        engine.dispose()


def _copy(database: Path, unfinished: Path) -> str:
    """A checked copy on disk, and its SHA-256."""
    with closing(connect(database)) as connection:
        connection.execute("VACUUM INTO ?", (str(unfinished),))
    with closing(connect(unfinished, query_only=True)) as connection:
        check_whole(unfinished, connection, thorough=True)
    sync_file(unfinished)
    return digest_of(unfinished)


def _name(folder: DataFolder, unfinished: Path, now: datetime.datetime, digest: str) -> Backup:
    made = now.astimezone(datetime.UTC)
    backup = Backup(folder.backups / f"{BEGINNING}{made.strftime(STAMP)}{ENDING}", made)
    # The digest first: a copy without one would count as damaged, a digest without its copy as nothing.
    backup.digest_path.write_text(f"{digest}  {backup.path.name}\n", encoding="utf-8")
    sync_file(backup.digest_path)
    unfinished.replace(backup.path)
    sync_folder(folder.backups)
    return backup


def _made(path: Path) -> datetime.datetime | None:
    stamp = path.name.removeprefix(BEGINNING).removesuffix(ENDING)
    try:
        return datetime.datetime.strptime(stamp, STAMP).replace(tzinfo=datetime.UTC)
    except ValueError:
        return None


def _digest_noted(backup: Backup) -> str | None:
    try:
        words = backup.digest_path.read_text(encoding="utf-8").split()
    except (OSError, ValueError):
        return None
    return words[0] if words else None


def _copy_aside(folder: DataFolder, now: datetime.datetime) -> Path | None:
    """A copy of the present file: until the moment it is replaced, it also stays where it is."""
    if not folder.database.exists():
        return None
    stamp = now.astimezone(datetime.UTC).strftime(STAMP)
    aside = folder.folder / f"set-aside-{stamp}{ENDING}"
    if folder.journal.exists():  # with it, SQLite can still take an unfinished change back
        _copy_file(folder.journal, aside.with_name(f"{aside.name}-journal"))
    _copy_file(folder.database, aside)
    sync_folder(folder.folder)
    return aside


def _copy_file(source: Path, target: Path) -> None:
    shutil.copyfile(source, target)
    target.chmod(0o600)
    sync_file(target)


@contextlib.contextmanager
def _failure_told(folder: Path) -> Iterator[None]:
    try:
        with told_plainly(folder):
            yield
    except OSError as error:
        raise BackupFailed(folder, error.strerror or str(error)) from error
    except CannotWrite as error:
        raise BackupFailed(folder, error.why) from error
