"""Looks into a long log: the brief ones take ten years in some ten milliseconds, by asking only for what they need."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from core.errors import InputError
from core.house.log import DatedSet, LoggedExercise, LoggedSession, LoggedSet, LoggedTest, SessionDay
from core.store.faults import RowUnreadable
from core.store.rows.log import SessionRow, SetRow, TestRow
from core.store.session_rows import read_sessions

LARGEST = 1e6
SETS = SetRow.__table__.c
SESSIONS = SessionRow.__table__.c


def sessions(session: Session, person_id: str | None, since: datetime.date) -> Iterator[LoggedSession]:
    """Whole sessions since a day, oldest first."""
    wanted = [SESSIONS.date >= since.isoformat()]
    if person_id is not None:
        wanted.append(SESSIONS.person_id == person_id)
    return read_sessions(session, *wanted, order=(SESSIONS.date,))


def tests(session: Session, person_id: str | None) -> Iterator[LoggedTest]:
    """Test results, oldest first."""
    wanted = select(TestRow) if person_id is None else select(TestRow).where(TestRow.person_id == person_id)
    for row in session.scalars(wanted.order_by(TestRow.date, TestRow.id)):
        yield row.from_row()


def session_days(session: Session, person_id: str) -> Iterator[SessionDay]:
    """A person's sessions in brief, oldest first."""
    counted = select(func.count()).where(SETS.session_id == SESSIONS.id).scalar_subquery()
    wanted = select(SESSIONS.id, SESSIONS.date, SESSIONS.minutes, SESSIONS.effort, counted)
    ordered = wanted.where(SESSIONS.person_id == person_id).order_by(SESSIONS.date, SESSIONS.id)
    for session_id, date, minutes, effort, sets in session.execute(ordered):
        yield SessionDay(
            session_id=session_id,
            date=_date(date, session_id),
            minutes=_number(minutes, session_id),
            effort=None if effort is None else _number(effort, session_id),
            sets=sets,
        )


def sets_of(session: Session, person_id: str, exercise_id: str) -> Iterator[DatedSet]:
    """Every set of one exercise a person has logged, oldest first."""
    fields = (SETS.reps, SETS.time_s, SETS.distance_m, SETS.load_kg, SETS.u95_kg, SETS.effort, SETS.note)
    wanted = select(SETS.session_id, SESSIONS.date, *fields).join(SessionRow, SESSIONS.id == SETS.session_id)
    chosen = wanted.where(SESSIONS.person_id == person_id, SETS.exercise_id == exercise_id)
    for row in session.execute(chosen.order_by(SESSIONS.date, SETS.session_id, SETS.position)):
        yield DatedSet(session_id=row[0], date=_date(row[1], row[0]), done=_set(exercise_id, row))


def exercises(session: Session, person_id: str) -> Iterator[LoggedExercise]:
    """The exercises a person has logged, by id."""
    wanted = select(SETS.exercise_id, func.count(), func.max(SESSIONS.date))
    joined = wanted.join(SessionRow, SESSIONS.id == SETS.session_id).where(SESSIONS.person_id == person_id)
    for exercise_id, sets, last in session.execute(joined.group_by(SETS.exercise_id).order_by(SETS.exercise_id)):
        yield LoggedExercise(exercise_id=exercise_id, sets=sets, last=_date(last, exercise_id))


def _set(exercise_id: str, row: Any) -> LoggedSet:
    session_id, _, reps, time_s, distance_m, load_kg, u95_kg, effort, note = row
    for amount in (reps, time_s, distance_m, load_kg, u95_kg):
        if amount is not None:
            _number(amount, session_id)
    try:
        return LoggedSet(
            exercise_id=exercise_id,
            reps=reps,
            time_s=time_s,
            distance_m=distance_m,
            load_kg=load_kg,
            u95_kg=u95_kg,
            effort=effort,
            note=note,
        )
    except InputError as error:
        raise RowUnreadable(f"session “{session_id}”: {error}") from error


def _number(stored: Any, session_id: str) -> float:
    if not (isinstance(stored, int | float) and 0 <= stored <= LARGEST):
        raise RowUnreadable(f"session “{session_id}” holds “{stored}” where an amount belongs")
    return stored


def _date(stored: Any, entry_id: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(stored)
    except (TypeError, ValueError) as error:
        raise RowUnreadable(f"“{entry_id}” has the date “{stored}”") from error
