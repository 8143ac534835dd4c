"""Edits of places, and what becomes of things and wishes when a place goes."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.house.model import Place
from core.house.wishes import WeekWishes
from core.store.changes import Change, Part
from core.store.commands.base import Plan, added, put
from core.store.state import State, some_names
from core.things.model import Thing


@dataclass(frozen=True, slots=True)
class AddPlace:
    """Add a place to train."""

    place: Place

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return Plan((added(state, Part.PLACE, self.place.id, self.place),), f"Added {self.place.name}")


@dataclass(frozen=True, slots=True)
class ChangePlace:
    """Replace the place with the same id by this one."""

    place: Place

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        state.place(self.place.id)
        return Plan((put(state, Part.PLACE, self.place.id, self.place),), f"Changed {self.place.name}")


@dataclass(frozen=True, slots=True)
class RemovePlace:
    """Remove a place with the things fixed there; things that can be carried stay and lose only the mention of it.

    Without the removal, a stone step of the towpath would count as a thing that can be carried anywhere.
    """

    place_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        place = state.place(self.place_id)
        gone = [thing for thing in state.things.values() if self._goes(thing)]
        moved = [thing for thing in state.things.values() if self.place_id in thing.place_ids and thing not in gone]
        changes = (
            put(state, Part.PLACE, self.place_id, None),
            *(put(state, Part.THING, thing.id, None) for thing in gone),
            *(put(state, Part.THING, thing.id, self._without(thing)) for thing in moved),
            *self._wishes(state),
        )
        also = f" with what is fixed there: {some_names(thing.name for thing in gone)}" if gone else ""
        return Plan(changes, f"Removed {place.name}{also}")

    def _goes(self, thing: Thing) -> bool:
        return thing.facts.fixed and set(thing.place_ids) == {self.place_id}

    def _without(self, thing: Thing) -> Thing:
        return replace(thing, place_ids=tuple(place_id for place_id in thing.place_ids if place_id != self.place_id))

    def _wishes(self, state: State) -> tuple[Change, ...]:
        """Days wished for here are then for any place."""
        return tuple(
            put(state, Part.WISHES, person_id, self._anywhere(wishes))
            for person_id, wishes in state.wishes.items()
            if any(day.place_id == self.place_id for day in wishes.days)
        )

    def _anywhere(self, wishes: WeekWishes) -> WeekWishes:
        days = (replace(day, place_id=None) if day.place_id == self.place_id else day for day in wishes.days)
        return replace(wishes, days=tuple(days))
