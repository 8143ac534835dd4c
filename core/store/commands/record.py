"""Bringing a whole exported record in, in place of the present one. One undo brings the present one back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from core.errors import InputError
from core.store.changes import Change, Part, Value
from core.store.commands.base import Plan
from core.store.contents import Contents
from core.store.state import State


@dataclass(frozen=True, slots=True)
class LoadRecord:
    """Replace everything, the log included, by `coming`; `present` is what the record holds now."""

    present: Contents
    coming: Contents

    def plan(self, state: State) -> Plan:  # noqa: ARG002  # `present` holds the state and the log as well
        """See `Command`."""
        before, after = _by_id(self.present), _by_id(self.coming)
        _check_mentions(self.coming, after)
        # Entries that stay the same are written as well: they may stand in another order. Only sessions have none.
        places = {key: place for place, key in enumerate(after)}
        changes = (
            Change(part=part, id=entry_id, before=before.get(key), after=after.get(key), stands=places.get(key))
            for key in {**after, **before}
            for part, entry_id in (key,)
            if part is not Part.SESSION or before.get(key) != after.get(key)
        )
        return Plan(tuple(changes), f"Loaded the record of {self.coming.house.name}")


def _by_id(contents: Contents) -> dict[tuple[Part, str], Value]:
    entries: dict[tuple[Part, str], Value] = {}
    for part, entry_id, value in contents.entries():
        if (part, entry_id) in entries:
            raise InputError(entry_id, f"is the id of two entries ({part})", "rename one of them")
        entries[part, entry_id] = value
    return entries


def _check_mentions(contents: Contents, entries: dict[tuple[Part, str], Value]) -> None:
    for who, part, entry_id in _mentions(contents):
        if (part, entry_id) not in entries:
            raise InputError(entry_id, f"is mentioned by {who}, but there is no such {part}", "add it first")


def _mentions(contents: Contents) -> Iterator[tuple[str, Part, str]]:
    for thing in contents.things:
        yield from ((f"the thing {thing.id}", Part.PLACE, place_id) for place_id in thing.place_ids)
    for entry in contents.wishes:
        yield f"the wishes of {entry.person_id}", Part.PERSON, entry.person_id
        places = (day.place_id for day in entry.wishes.days)
        yield from ((f"the wishes of {entry.person_id}", Part.PLACE, place) for place in places if place is not None)
    yield from ((f"the week of {week.person_id}", Part.PERSON, week.person_id) for week in contents.weeks)
    yield from ((f"the block of {block.person_id}", Part.PERSON, block.person_id) for block in contents.blocks)
    if contents.settings.person_id is not None:
        yield "the settings", Part.PERSON, contents.settings.person_id
