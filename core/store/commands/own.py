"""Edits of what a person added to the catalog, and what becomes of wishes and weeks when a movement goes.

`catalog.own` makes the entries and checks them against the catalog; here they are only kept.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.store.changes import Change, Part
from core.store.commands.base import Plan, added, put
from core.store.state import State, found


@dataclass(frozen=True, slots=True)
class AddOwn:
    """Add a movement or a kind of thing to the catalog of this house."""

    entry: OwnEntry

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return Plan((added(state, Part.OWN, self.entry.id, self.entry),), f"Added {self.entry.name}")


@dataclass(frozen=True, slots=True)
class ChangeOwn:
    """Replace the own entry with the same id by this one."""

    entry: OwnEntry

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        before = found(state.own, self.entry.id, "own entry")
        if before.kind is not self.entry.kind:
            rule = f"is a {before.what} and can't become a {self.entry.what}"
            raise InputError(before.name, rule, "add a new one and remove this one")
        return Plan((put(state, Part.OWN, self.entry.id, self.entry),), f"Changed {self.entry.name}")


@dataclass(frozen=True, slots=True)
class RemoveOwn:
    """Remove an own entry. Pins and bans of a movement go with it, and the weeks and blocks that hold it.

    One undo brings all back. Things of an own kind stay: they hold all their facts. So does what was logged, under the
    movement's id.
    """

    entry_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        entry = found(state.own, self.entry_id, "own entry")
        gone = put(state, Part.OWN, self.entry_id, None)
        return Plan((gone, *self._wishes(state), *self._plans(state)), f"Removed {entry.name}")

    def _wishes(self, state: State) -> Iterator[Change]:
        for person_id, wishes in state.wishes.items():
            without = self._without(wishes)
            if without != wishes:
                yield put(state, Part.WISHES, person_id, without)

    def _without(self, wishes: WeekWishes) -> WeekWishes:
        pins = tuple(pin for pin in wishes.pins if pin.exercise_id != self.entry_id)
        bans = tuple(ban for ban in wishes.bans if ban != self.entry_id)
        return replace(wishes, pins=pins, bans=bans)

    def _plans(self, state: State) -> Iterator[Change]:
        mention = json.dumps(self.entry_id)
        for part, plans in ((Part.WEEK, state.weeks), (Part.BLOCK, state.blocks)):
            for person_id, planned in plans.items():
                if mention in planned.plan:
                    yield put(state, part, person_id, None)
