"""The history: what was done, what was taken back, and how to go either way. It is kept on disk with the entries."""

from __future__ import annotations

from collections.abc import Iterable

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


def do(session: Session, changes: Iterable[Change], sentence: str) -> ChangeSet:
    """Carry out changes as a new step; what was taken back before can then no longer be repeated."""
    written = carry_out(session, changes, sentence)
    session.execute(delete(StepRow).where(StepRow.done == 0))
    step = StepRow(sentence=sentence, changes=write_changes(written), done=1)
    session.add(step)
    session.flush()
    session.execute(delete(StepRow).where(StepRow.id <= step.id - MOST_STEPS))
    return ChangeSet(kinds=kinds_of(written), sentence=sentence)


def undo(session: Session) -> ChangeSet:
    """Take the last step back; `InputError` when there is none."""
    step = _last_done(session)
    if step is None:
        raise InputError("Undo", "has nothing to take back", "change something first")
    step.done = 0
    return _turn(session, step, [change.reversed() for change in _changes(step)])


def redo(session: Session) -> ChangeSet:
    """Repeat the step taken back last; `InputError` when there is none."""
    step = _first_undone(session)
    if step is None:
        raise InputError("Redo", "has nothing to repeat", "take something back first")
    step.done = 1
    return _turn(session, step, _changes(step))


def undo_text(session: Session) -> str | None:
    """The sentence of the step that `undo` would take back."""
    step = _last_done(session)
    return None if step is None else step.sentence


def redo_text(session: Session) -> str | None:
    """The sentence of the step that `redo` would repeat."""
    step = _first_undone(session)
    return None if step is None else step.sentence


def _turn(session: Session, step: StepRow, changes: Iterable[Change]) -> ChangeSet:
    written = carry_out(session, changes, step.sentence)
    return ChangeSet(kinds=kinds_of(written), sentence=step.sentence)


def _changes(step: StepRow) -> tuple[Change, ...]:
    try:
        return read_changes(step.changes, f"step {step.id}")
    except InputError as error:
        raise UndoLost(step.sentence) from error


def _last_done(session: Session) -> StepRow | None:
    last = select(func.max(StepRow.id)).where(StepRow.done == 1).scalar_subquery()
    return session.scalar(select(StepRow).where(StepRow.id == last))


def _first_undone(session: Session) -> StepRow | None:
    first = select(func.min(StepRow.id)).where(StepRow.done == 0).scalar_subquery()
    return session.scalar(select(StepRow).where(StepRow.id == first))
