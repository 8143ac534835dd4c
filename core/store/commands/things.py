"""Edits of things: what is owned, what is in it, what the scale said and what it was checked to bear."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.errors import InputError
from core.mass.model import ScaleReading
from core.store.changes import Part
from core.store.commands.base import Plan, added, known_places, put
from core.store.state import State
from core.things.model import Facts, Fill, OwnCheck, Thing


@dataclass(frozen=True, slots=True)
class AddThing:
    """Put a thing in the house."""

    thing: Thing

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        known_places(state, self.thing.place_ids)
        return Plan((added(state, Part.THING, self.thing.id, self.thing),), f"Added {self.thing.name}")


@dataclass(frozen=True, slots=True)
class ChangeThing:
    """Replace the thing with the same id by this one."""

    thing: Thing

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        known_places(state, self.thing.place_ids)
        return _changed(state, self.thing, f"Changed {self.thing.name}")


@dataclass(frozen=True, slots=True)
class RemoveThing:
    """Take a thing out of the house."""

    thing_id: str

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.thing(self.thing_id).name
        return Plan((put(state, Part.THING, self.thing_id, None),), f"Removed {name}")


@dataclass(frozen=True, slots=True)
class SetFill:
    """Say what is in a container now; None is empty."""

    thing_id: str
    fill: Fill | None

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        thing = state.thing(self.thing_id)
        verb = "Emptied" if self.fill is None else "Changed what is in"
        return _changed(state, replace(thing, fill=self.fill), f"{verb} {thing.name}")


@dataclass(frozen=True, slots=True)
class SetFills:
    """Say what is in several containers now, by thing id: a load made of them, set up in one go."""

    fills: tuple[tuple[str, Fill | None], ...]

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        if not self.fills:
            raise InputError("nothing", "is poured for this load", "choose one with a container to fill")
        things = [replace(state.thing(thing_id), fill=fill) for thing_id, fill in self.fills]
        changes = tuple(put(state, Part.THING, thing.id, thing) for thing in things)
        return Plan(changes, f"Changed what is in {' and '.join(thing.name for thing in things)}")


@dataclass(frozen=True, slots=True)
class AddReading:
    """Note what a scale said of a thing; `fill` is what was in it then, `facts` those the weighing put in doubt."""

    thing_id: str
    reading: ScaleReading
    fill: Fill | None = None
    facts: Facts | None = None

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        thing = state.thing(self.thing_id)
        readings = (*thing.readings, self.reading)
        weighed = replace(thing, readings=readings, fill=self.fill or thing.fill, facts=self.facts or thing.facts)
        return _changed(state, weighed, f"Weighed {thing.name}")


@dataclass(frozen=True, slots=True)
class RemoveReading:
    """Drop a scale reading by its place in the list (0 is the first)."""

    thing_id: str
    index: int

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        thing = state.thing(self.thing_id)
        if not 0 <= self.index < len(thing.readings):
            rule = f"is no reading of {thing.name}, which has {len(thing.readings)}"
            raise InputError(self.index, rule, "choose one that is there")
        kept = thing.readings[: self.index] + thing.readings[self.index + 1 :]
        return _changed(state, replace(thing, readings=kept), f"Removed a reading of {thing.name}")


@dataclass(frozen=True, slots=True)
class SetOwnCheck:
    """Record the person's own check of what a thing bears; None withdraws it."""

    thing_id: str
    own_check: OwnCheck | None

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        thing = state.thing(self.thing_id)
        sentence = f"Withdrew the check of {thing.name}" if self.own_check is None else f"Checked {thing.name}"
        return _changed(state, replace(thing, own_check=self.own_check), sentence)


def _changed(state: State, thing: Thing, sentence: str) -> Plan:
    state.thing(thing.id)
    return Plan((put(state, Part.THING, thing.id, thing),), sentence)
