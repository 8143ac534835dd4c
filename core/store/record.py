"""The record on disk, as the rest of the program sees it: frozen values out, commands in, every change saved at once.

What is asked often (house, wishes, week, settings, what undo would take back) is answered from memory at once, and a
command takes a few milliseconds, so the window calls a record from its own thread. Work elsewhere gets the frozen
values. Only bringing in a long log (`LoadRecord`, seconds) belongs in a worker: calls from several threads wait for
each other at the disk, while what is answered from memory stays as it was until the change is made.
"""

from __future__ import annotations

import datetime
import threading
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Self

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from core.house.log import DatedSet, LoggedExercise, LoggedSession, LoggedTest, SessionDay
from core.house.model import House
from core.house.wishes import WeekWishes
from core.store import log_reading
from core.store import undo as steps
from core.store.commands import Command
from core.store.contents import Contents
from core.store.create import create
from core.store.engine import READING, SCHEMA, connect, open_engine, told_plainly
from core.store.faults import Older
from core.store.opening import check_whole, schema_of
from core.store.paths import DataFolder, FolderLock
from core.store.shelf import read_contents, read_state
from core.store.state import State
from core.store.values import ChangeSet, SavedBlock, SavedWeek, Settings

Clock = Callable[[], datetime.datetime]


@dataclass(frozen=True, slots=True)
class Held:
    """What of the record is kept in memory: it is as on disk after every command."""

    state: State
    undo_text: str | None
    redo_text: str | None


class Record:
    """An open record. Make one with `open` (to change it) or `look` (to read beside an open window)."""

    def __init__(self, path: Path, engine: Engine, clock: Clock, lock: FolderLock | None) -> None:
        self.path = path
        self.clock = clock
        self._engine = engine
        self._lock = lock
        self._one_at_a_time = threading.RLock()
        self._held: Held | None = None

    @classmethod
    def open(cls, folder: DataFolder, clock: Clock) -> Record:
        """Lock the folder, make or update the record in it and check it; a `StoreError` tells why that failed."""
        lock = FolderLock(folder)
        try:
            if not folder.database.exists():
                create(folder)
            elif schema_of(folder.database) < SCHEMA:
                from core.store.migrate import bring_up_to_date  # Alembic is slow to import and rarely needed

                bring_up_to_date(folder, clock)
            return cls._checked(folder.database, clock, lock)
        except BaseException:
            lock.release()
            raise

    @classmethod
    def look(cls, folder: DataFolder, clock: Clock) -> Record:
        """Read only, without the lock; commands then fail. `Older` if the record must be updated first."""
        schema = schema_of(folder.database)
        if schema < SCHEMA:
            raise Older(folder.database, schema, SCHEMA)
        return cls._checked(folder.database, clock, None)

    @classmethod
    def _checked(cls, path: Path, clock: Clock, lock: FolderLock | None) -> Record:
        with told_plainly(path), closing(connect(path, query_only=lock is None)) as connection:
            check_whole(path, connection)
        record = cls(path, open_engine(path, query_only=lock is None), clock, lock)
        try:
            record.state()
        except BaseException:
            record.close()
            raise
        return record

    def close(self) -> None:
        """Close the file and give the folder free."""
        self._engine.dispose()
        if self._lock is not None:
            self._lock.release()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def state(self) -> State:
        """Everything but the log, as it is on disk."""
        return self._now().state

    def house(self) -> House:
        """The house with its places, things and people."""
        return self.state().house

    def settings(self) -> Settings:
        """The settings."""
        return self.state().settings

    def wishes(self, person_id: str | None = None) -> WeekWishes:
        """A person's wishes for the week (the chosen person's, if none is named); the usual ones until they are set."""
        return self.state().wishes.get(person_id or self.settings().person_id or "", WeekWishes())

    def week(self, person_id: str | None = None) -> SavedWeek | None:
        """The week a person (the chosen one, if none is named) was given last."""
        return self.state().weeks.get(person_id or self.settings().person_id or "")

    def block(self, person_id: str | None = None) -> SavedBlock | None:
        """The block of weeks a person (the chosen one, if none is named) is in."""
        return self.state().blocks.get(person_id or self.settings().person_id or "")

    def sessions(
        self, person_id: str | None = None, *, since: datetime.date = datetime.date.min
    ) -> tuple[LoggedSession, ...]:
        """What a person (everybody, if none is named) logged since a day, oldest first."""
        with self._reading() as session:
            return tuple(log_reading.sessions(session, person_id, since))

    def tests(self, person_id: str | None = None) -> tuple[LoggedTest, ...]:
        """Test results of a person (everybody's, if none is named), oldest first."""
        with self._reading() as session:
            return tuple(log_reading.tests(session, person_id))

    def session_days(self, person_id: str) -> tuple[SessionDay, ...]:
        """All sessions of a person in brief, oldest first; quick for ten years of them."""
        with self._reading() as session:
            return tuple(log_reading.session_days(session, person_id))

    def sets_of(self, person_id: str, exercise_id: str) -> tuple[DatedSet, ...]:
        """Every set of one exercise a person has logged, oldest first."""
        with self._reading() as session:
            return tuple(log_reading.sets_of(session, person_id, exercise_id))

    def logged_exercises(self, person_id: str) -> tuple[LoggedExercise, ...]:
        """The exercises a person has logged, by id, with how often and when last."""
        with self._reading() as session:
            return tuple(log_reading.exercises(session, person_id))

    def contents(self) -> Contents:
        """Everything, the log included, to export (see `core.store.contents`) or as `LoadRecord.present`."""
        with self._reading() as session:
            return read_contents(session)

    def do(self, command: Command) -> ChangeSet:
        """Carry a command out and save it; `InputError` if it cannot be, `StoreError` if the disk refuses."""
        with self._one_at_a_time:  # the state it is planned for is the one it changes
            plan = command.plan(self.state())
            return self._saved(lambda session: steps.do(session, plan.changes, plan.sentence))

    def undo(self) -> ChangeSet:
        """Take the last step back; `InputError` when there is none."""
        return self._saved(steps.undo)

    def redo(self) -> ChangeSet:
        """Repeat the step taken back last; `InputError` when there is none."""
        return self._saved(steps.redo)

    @property
    def undo_text(self) -> str | None:
        """What `undo` would take back ("Removed Coal bag"); None when there is nothing."""
        return self._now().undo_text

    @property
    def redo_text(self) -> str | None:
        """What `redo` would repeat; None when there is nothing."""
        return self._now().redo_text

    def _now(self) -> Held:
        held = self._held
        if held is None:
            with self._reading() as session:
                held = self._held = Held(read_state(session), *steps.texts(session))
        return held

    def _saved(self, work: Callable[[Session], steps.Step]) -> ChangeSet:
        with self._one_at_a_time:
            before = self.state()
            try:
                with told_plainly(self.path), Session(self._engine) as session, session.begin():
                    step = work(session)
                    texts = steps.texts(session)
            except BaseException:
                self._held = None  # what is on disk is what counts: it is read anew
                raise
            self._held = Held(before.after(step.changes), *texts)
            return step.change_set

    @contextmanager
    def _reading(self) -> Iterator[Session]:
        reading = self._engine.execution_options(**{READING: True})
        with self._one_at_a_time, told_plainly(self.path), Session(reading) as session:
            yield session
