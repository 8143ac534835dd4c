"""Edits of people, their wishes for the week and the week they were given."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.model import Person
from core.house.wishes import Pin, WeekWishes
from core.store.changes import ONLY, Change, Part
from core.store.commands.base import Plan, added, known_places, put
from core.store.state import State
from core.store.values import SavedBlock, SavedWeek


@dataclass(frozen=True, slots=True)
class AddPerson:
    """Add someone who trains; the first one is also the chosen one."""

    person: Person

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        change = added(state, Part.PERSON, self.person.id, self.person)
        chosen = () if state.settings.person_id else (_choosing(state, self.person.id),)
        return Plan((change, *chosen), f"Added {self.person.name}")


@dataclass(frozen=True, slots=True)
class ChangePerson:
    """Replace the person with the same id by this one."""

    person: Person

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        state.person(self.person.id)
        return Plan((put(state, Part.PERSON, self.person.id, self.person),), f"Changed {self.person.name}")


@dataclass(frozen=True, slots=True)
class RemovePerson:
    """Remove a person with wishes, week and block. What they logged stays in the record, so an undo finds it again."""

    person_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        changes = [put(state, Part.PERSON, self.person_id, None)]
        owned = ((Part.WISHES, state.wishes), (Part.WEEK, state.weeks), (Part.BLOCK, state.blocks))
        changes += [put(state, part, self.person_id, None) for part, entries in owned if self.person_id in entries]
        if state.settings.person_id == self.person_id:
            others = (person_id for person_id in state.people if person_id != self.person_id)
            changes.append(_choosing(state, next(others, None)))
        return Plan(tuple(changes), f"Removed {name}")


@dataclass(frozen=True, slots=True)
class SetWishes:
    """Replace one person's wishes for the week."""

    person_id: str
    wishes: WeekWishes

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        known_places(state, (day.place_id for day in self.wishes.days))
        return Plan((put(state, Part.WISHES, self.person_id, self.wishes),), f"Changed the wishes of {name}")


@dataclass(frozen=True, slots=True)
class SetPins:
    """Replace what one person's plan must keep."""

    person_id: str
    pins: tuple[Pin, ...]

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        wishes = replace(state.wishes.get(self.person_id, WeekWishes()), pins=self.pins)
        return Plan((put(state, Part.WISHES, self.person_id, wishes),), f"Changed the pins of {name}")


@dataclass(frozen=True, slots=True)
class SaveWeek:
    """Keep the week a person was given, in place of the one before."""

    person_id: str
    week: SavedWeek

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        verb = "Changed" if self.person_id in state.weeks else "Planned"
        return Plan((put(state, Part.WEEK, self.person_id, self.week),), f"{verb} the week of {name}")


@dataclass(frozen=True, slots=True)
class ForgetWeek:
    """Remove the week a person was given."""

    person_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        if self.person_id not in state.weeks:
            raise InputError(name, "has no planned week", "plan one first")
        return Plan((put(state, Part.WEEK, self.person_id, None),), f"Removed the week of {name}")


@dataclass(frozen=True, slots=True)
class SaveBlock:
    """Keep the block of weeks a person is in, in place of the one before; `sentence` is for the undo line."""

    person_id: str
    block: SavedBlock
    sentence: str = ""

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        verb = "Changed" if self.person_id in state.blocks else "Planned"
        change = put(state, Part.BLOCK, self.person_id, self.block)
        return Plan((change,), self.sentence or f"{verb} the block of {name}")


@dataclass(frozen=True, slots=True)
class ForgetBlock:
    """Remove the block of weeks a person is in."""

    person_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        if self.person_id not in state.blocks:
            raise InputError(name, "has no planned block", "plan one first")
        return Plan((put(state, Part.BLOCK, self.person_id, None),), f"Removed the block of {name}")


def _choosing(state: State, person_id: str | None) -> Change:
    return put(state, Part.SETTINGS, ONLY, replace(state.settings, person_id=person_id))
