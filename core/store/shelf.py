"""Reading and writing entries in an open session: which row class holds which part, and how a change is carried out.

Logged sessions, of which there can be thousands, have a way of their own (`core.store.session_rows`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from core.store.changes import CODEC_OF, ONLY, Change, Part, Value
from core.store.contents import BlockOf, Contents, WeekOf, WishesOf
from core.store.faults import RowUnreadable, UndoLost
from core.store.rows.base import Entry
from core.store.rows.house import HouseRow, PlaceRow, SettingsRow
from core.store.rows.log import TestRow
from core.store.rows.own import OwnRow
from core.store.rows.people import BlockRow, PersonRow, WeekRow, WishesRow
from core.store.rows.things import ThingRow
from core.store.session_rows import carry_out_sessions, read_sessions
from core.store.state import PARTS, State


@dataclass(frozen=True, slots=True)
class Shelf:
    """A part's row class, how a value becomes a row, and whether its entries stand in an order of their own."""

    row: type[Entry]
    to_row: Callable[[str, int, Any], Entry]
    ordered: bool = False


SHELVES: dict[Part, Shelf] = {
    Part.HOUSE: Shelf(HouseRow, lambda _id, _position, facts: HouseRow.to_row(facts)),
    Part.OWN: Shelf(OwnRow, lambda _id, position, own: OwnRow.to_row(own, position), ordered=True),
    Part.PLACE: Shelf(PlaceRow, lambda _id, position, place: PlaceRow.to_row(place, position), ordered=True),
    Part.PERSON: Shelf(PersonRow, lambda _id, position, person: PersonRow.to_row(person, position), ordered=True),
    Part.THING: Shelf(ThingRow, lambda _id, position, thing: ThingRow.to_row(thing, position), ordered=True),
    Part.WISHES: Shelf(WishesRow, lambda person_id, _position, wishes: WishesRow.to_row(person_id, wishes)),
    Part.WEEK: Shelf(WeekRow, lambda person_id, _position, week: WeekRow.to_row(person_id, week)),
    Part.BLOCK: Shelf(BlockRow, lambda person_id, _position, block: BlockRow.to_row(person_id, block)),
    Part.SETTINGS: Shelf(SettingsRow, lambda _id, _position, settings: SettingsRow.to_row(settings)),
    Part.TEST: Shelf(TestRow, lambda _id, _position, test: TestRow.to_row(test)),
}
AT_ONCE = 500
"""How many rows are asked for in one question, well below the most parameters SQLite takes."""


def read_state(session: Session) -> State:
    """Everything but the log; `RowUnreadable` naming the first damaged row."""
    entries: dict[Part, dict[str, Value]] = {}
    places: dict[Part, dict[str, int]] = {}
    for part in PARTS:
        rows = tuple(rows_of(session, part))
        entries[part] = {row.key(): row.from_row() for row in rows}
        places[part] = {row.key(): row.position for row in rows if hasattr(row, "position")}
    for part in (Part.HOUSE, Part.SETTINGS):
        if ONLY not in entries[part]:
            raise RowUnreadable(f"the entry for {part} is missing")
    return State(entries, places)


def rows_of(session: Session, part: Part) -> Iterable[Entry]:
    """The rows of one part, in order."""
    shelf = SHELVES[part]
    table = shelf.row.__table__
    order = [table.c.position] if shelf.ordered else []
    return session.scalars(select(shelf.row).order_by(*order, *table.primary_key))


def read_contents(session: Session) -> Contents:
    """A whole record, the log included; `RowUnreadable` naming the first damaged row."""
    state = read_state(session)
    return Contents(
        house=state.facts,
        own=tuple(state.own.values()),
        places=tuple(state.places.values()),
        people=tuple(state.people.values()),
        things=tuple(state.things.values()),
        wishes=tuple(WishesOf(person_id=person_id, wishes=wishes) for person_id, wishes in state.wishes.items()),
        weeks=tuple(WeekOf(person_id=person_id, week=week) for person_id, week in state.weeks.items()),
        blocks=tuple(BlockOf(person_id=person_id, block=block) for person_id, block in state.blocks.items()),
        settings=state.settings,
        sessions=tuple(read_sessions(session)),
        tests=tuple(row.from_row() for row in rows_of(session, Part.TEST)),
    )


def carry_out(session: Session, changes: Iterable[Change], sentence: str) -> tuple[Change, ...]:
    """Write the changes and return them with their positions; `UndoLost` if an entry is not as a change expects it.

    New and changed entries come first, in the order of parts, then removed ones in reverse: nothing is ever mentioned
    that is not there.
    """
    wanted = tuple(changes)
    written: list[Change] = []
    kept = [(part, [change for change in wanted if change.part == part and change.after is not None]) for part in Part]
    gone = [(part, [change for change in wanted if change.part == part and change.after is None]) for part in Part]
    for part, group in (*kept, *reversed(gone)):
        if part is Part.SESSION:
            written += carry_out_sessions(session, group, sentence)
            continue
        rows = _rows_for(session, part, [change.id for change in group])
        written += [_carry_out(session, change, rows.get(change.id), sentence) for change in group]
        session.flush()
    return tuple(written)


def _rows_for(session: Session, part: Part, ids: Sequence[str]) -> dict[str, Entry]:
    """The rows of these entries with all that belongs to them, some hundred at a time."""
    row = SHELVES[part].row
    (key,) = row.__table__.primary_key
    keys = [int(entry_id) if key.type.python_type is int else entry_id for entry_id in ids]
    batches = (keys[start : start + AT_ONCE] for start in range(0, len(keys), AT_ONCE))
    found = (session.scalars(select(row).where(key.in_(batch))) for batch in batches)
    return {entry.key(): entry for entries in found for entry in entries}


def _carry_out(session: Session, change: Change, row: Entry | None, sentence: str) -> Change:
    shelf = SHELVES[change.part]
    if (None if row is None else row.from_row()) != change.before:
        raise UndoLost(sentence)
    stood: int | None = getattr(row, "position", None)  # None where there is no row, or no order
    if change.after is None:
        session.delete(row)
        return replace(change, stood=stood, stands=None)
    CODEC_OF[change.part].checked(change.after, f"{change.part} “{change.id}”")
    stands = _position(session, shelf, stood, change) if shelf.ordered else None
    new = shelf.to_row(change.id, stands or 0, change.after)
    if row is None:
        session.add(new)
    else:
        session.merge(new)
    return replace(change, stood=stood, stands=stands)


def _position(session: Session, shelf: Shelf, stood: int | None, change: Change) -> int:
    """Where the entry is to stand: where the change says, else where it stood, else behind all others."""
    if change.stands is not None:
        return change.stands
    if stood is not None:
        return stood
    last = session.scalar(select(func.max(shelf.row.__table__.c.position)))
    return 0 if last is None else int(last) + 1
