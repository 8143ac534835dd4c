"""Sessions on their two tables: ten years of them are read, compared and written many rows with one statement.

Every other part of a record is a few hundred rows and goes through its row class; an object for each of sixty thousand
sets would cost seconds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from operator import attrgetter
from typing import Any

from sqlalchemy import ColumnElement, delete, insert, select
from sqlalchemy.orm import Session

from core.errors import InputError
from core.house.log import LoggedSession
from core.store.changes import Change, Part
from core.store.codec_people import SESSION
from core.store.encoding_groups import TAG
from core.store.faults import RowUnreadable, UndoLost
from core.store.rows.base import Base
from core.store.rows.log import SessionRow, SetRow

SESSIONS, SETS = (Base.metadata.tables[row.__tablename__] for row in (SessionRow, SetRow))
SESSION_FIELDS = ("id", "person_id", "date", "minutes", "effort", "note")
SET_FIELDS = ("exercise_id", "reps", "time_s", "distance_m", "load_kg", "u95_kg", "effort", "note")
AT_ONCE = 500
"""How many ids stand in one statement, well below the most parameters SQLite takes."""

Stored = tuple[tuple[Any, ...], tuple[tuple[Any, ...], ...]]
"""A session's row and those of its sets in order, without their keys."""
_set_values = attrgetter(*SET_FIELDS)


def read_sessions(
    session: Session, *wanted: ColumnElement[bool], order: Sequence[ColumnElement[Any]] = ()
) -> Iterator[LoggedSession]:
    """The sessions for which all of `wanted` holds, in this order, then by id; `RowUnreadable` naming a damaged one."""
    for stored in _stored(session, wanted, order):
        yield _from_stored(stored)


def carry_out_sessions(session: Session, changes: Sequence[Change], sentence: str) -> list[Change]:
    """Write changes of sessions; `UndoLost` if one is not there as its change expects it."""
    present = {stored[0][0]: stored for stored in _present(session, [change.id for change in changes])}
    if any(present.get(change.id) != _to_stored(change.before) for change in changes):
        raise UndoLost(sentence)
    differing = [change for change in changes if change.before != change.after]
    _remove(session, [change.id for change in differing if change.before is not None])
    _insert(session, [change.after for change in differing if isinstance(change.after, LoggedSession)])
    return [replace(change, stood=None, stands=None) for change in changes]


def _stored(
    session: Session, wanted: Sequence[ColumnElement[bool]], order: Sequence[ColumnElement[Any]] = ()
) -> Iterator[Stored]:
    sets = select(SETS.c.session_id, *(SETS.c[name] for name in SET_FIELDS))
    if wanted:
        sets = sets.where(SETS.c.session_id.in_(select(SESSIONS.c.id).where(*wanted)))
    done: dict[str, list[tuple[Any, ...]]] = defaultdict(list)
    for session_id, *fields in session.execute(sets.order_by(SETS.c.session_id, SETS.c.position)):
        done[session_id].append(tuple(fields))
    heads = select(*(SESSIONS.c[name] for name in SESSION_FIELDS)).where(*wanted)
    for head in session.execute(heads.order_by(*order, SESSIONS.c.id)):
        yield tuple(head), tuple(done[head.id])


def _present(session: Session, ids: Sequence[str]) -> Iterator[Stored]:
    for batch in _batches(ids):
        yield from _stored(session, [SESSIONS.c.id.in_(batch)])


def _batches(ids: Sequence[str]) -> Iterator[Sequence[str]]:
    return (ids[start : start + AT_ONCE] for start in range(0, len(ids), AT_ONCE))


def _from_stored(stored: Stored) -> LoggedSession:
    head, sets = stored
    fields = {TAG: "session", **dict(zip(SESSION_FIELDS, head, strict=True))}
    fields["sets"] = [{TAG: "set", **dict(zip(SET_FIELDS, done, strict=True))} for done in sets]
    try:
        return SESSION.read(fields, f"{Part.SESSION} “{head[0]}”")
    except InputError as error:
        raise RowUnreadable(str(error)) from error


def _to_stored(value: object) -> Stored | None:
    if not isinstance(value, LoggedSession):
        return None
    head = (value.id, value.person_id, value.date.isoformat(), value.minutes, value.effort, value.note)
    return head, tuple(_set_values(done) for done in value.sets)


def _remove(session: Session, ids: Sequence[str]) -> None:
    """The sets go with their session."""
    for batch in _batches(ids):
        session.execute(delete(SESSIONS).where(SESSIONS.c.id.in_(batch)))


def _insert(session: Session, values: Iterable[LoggedSession]) -> None:
    heads, sets = [], []
    for value in values:
        SESSION.checked(value, f"{Part.SESSION} “{value.id}”")
        head, done = _to_stored(value) or ((), ())
        heads.append(dict(zip(SESSION_FIELDS, head, strict=True)))
        sets += [
            {"session_id": value.id, "position": place, **dict(zip(SET_FIELDS, fields, strict=True))}
            for place, fields in enumerate(done)
        ]
    if heads:
        session.execute(insert(SESSIONS), heads)
    if sets:
        session.execute(insert(SETS), sets)
