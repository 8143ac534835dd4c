"""The history: what was done, what was taken back, and how to go either way. It is kept on disk with the entries."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sqlalchemy import delete, func, select
from sqlalchemy.orm import Session

from core.errors import InputError
from core.store.changes import Change, kinds_of, read_changes, write_changes
from core.store.faults import UndoLost
from core.store.rows.history import StepRow
from core.store.shelf import carry_out
from core.store.values import ChangeSet

MOST_STEPS = 500
"""How many steps can be taken back; older ones are forgotten."""
LAST_DONE = select(func.max(StepRow.id)).where(StepRow.done == 1).scalar_subquery()
FIRST_UNDONE = select(func.min(StepRow.id)).where(StepRow.done == 0).scalar_subquery()


@dataclass(frozen=True, slots=True)
class Step:
    """What was carried out, and what it was called."""

    changes: tuple[Change, ...]
    sentence: str

    @property
    def change_set(self) -> ChangeSet:
        """What the screens need to know of it."""
        return ChangeSet(kinds=kinds_of(self.changes), sentence=self.sentence)


def do(session: Session, changes: Iterable[Change], sentence: str) -> Step:
    """Carry out changes as a new step; what was taken back before can then no longer be repeated."""
    written = carry_out(session, changes, sentence)
    session.execute(delete(StepRow).where(StepRow.done == 0))
    row = StepRow(sentence=sentence, changes=write_changes(written), done=1)
    session.add(row)
    session.flush()
    session.execute(delete(StepRow).where(StepRow.id <= row.id - MOST_STEPS))
    return Step(written, sentence)


def undo(session: Session) -> Step:
    """Take the last step back; `InputError` when there is none."""
    row = session.scalar(select(StepRow).where(StepRow.id == LAST_DONE))
    if row is None:
        raise InputError("Undo", "has nothing to take back", "change something first")
    row.done = 0
    return _turn(session, row, [change.reversed() for change in _changes(row)])


def redo(session: Session) -> Step:
    """Repeat the step taken back last; `InputError` when there is none."""
    row = session.scalar(select(StepRow).where(StepRow.id == FIRST_UNDONE))
    if row is None:
        raise InputError("Redo", "has nothing to repeat", "take something back first")
    row.done = 1
    return _turn(session, row, _changes(row))


def texts(session: Session) -> tuple[str | None, str | None]:
    """The sentences of the steps that `undo` would take back and `redo` would repeat."""
    last, first = (session.scalar(select(StepRow.sentence).where(StepRow.id == at)) for at in (LAST_DONE, FIRST_UNDONE))
    return last, first


def _turn(session: Session, row: StepRow, changes: Iterable[Change]) -> Step:
    return Step(carry_out(session, changes, row.sentence), row.sentence)


def _changes(row: StepRow) -> tuple[Change, ...]:
    try:
        return read_changes(row.changes, f"step {row.id}")
    except InputError as error:
        raise UndoLost(row.sentence) from error
