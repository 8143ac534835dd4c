"""Everything in the record except the log, as one frozen value that commands are planned against."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, TypeVar

from core.errors import InputError
from core.house.model import House, Person, Place
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.store.changes import ONLY, Change, HouseFacts, Part, Value
from core.store.values import SavedBlock, SavedWeek, Settings
from core.things.model import Thing

T = TypeVar("T")

PARTS = (
    Part.HOUSE,
    Part.OWN,
    Part.PLACE,
    Part.PERSON,
    Part.THING,
    Part.WISHES,
    Part.WEEK,
    Part.BLOCK,
    Part.SETTINGS,
)
"""The parts a state holds; sessions and tests can be many thousand and are read when they are asked for."""


@dataclass(frozen=True)
class State:
    """Entries by part and id in order, and the positions of those that have an order of their own."""

    entries: Mapping[Part, Mapping[str, Value]]
    positions: Mapping[Part, Mapping[str, int]]

    @cached_property
    def facts(self) -> HouseFacts:
        """What is said of the house itself."""
        return self._only(Part.HOUSE, HouseFacts)

    @cached_property
    def settings(self) -> Settings:
        """The settings."""
        return self._only(Part.SETTINGS, Settings)

    @cached_property
    def own(self) -> Mapping[str, OwnEntry]:
        """Own entries of the catalog by id."""
        return self._all(Part.OWN, OwnEntry)

    @cached_property
    def things(self) -> Mapping[str, Thing]:
        """Things by id."""
        return self._all(Part.THING, Thing)

    @cached_property
    def people(self) -> Mapping[str, Person]:
        """People by id."""
        return self._all(Part.PERSON, Person)

    @cached_property
    def places(self) -> Mapping[str, Place]:
        """Places by id."""
        return self._all(Part.PLACE, Place)

    @cached_property
    def wishes(self) -> Mapping[str, WeekWishes]:
        """Wishes by person."""
        return self._all(Part.WISHES, WeekWishes)

    @cached_property
    def weeks(self) -> Mapping[str, SavedWeek]:
        """Saved weeks by person."""
        return self._all(Part.WEEK, SavedWeek)

    @cached_property
    def blocks(self) -> Mapping[str, SavedBlock]:
        """Saved blocks of weeks by person."""
        return self._all(Part.BLOCK, SavedBlock)

    @cached_property
    def house(self) -> House:
        """The house with all that is in it."""
        return House(
            name=self.facts.name,
            places=tuple(self.places.values()),
            things=tuple(self.things.values()),
            people=tuple(self.people.values()),
            fills=self.facts.fills,
            cup_l=self.facts.cup_l,
            own=tuple(self.own.values()),
        )

    def after(self, changes: Iterable[Change]) -> State:
        """The state once these changes, as they were carried out, are made: what reading anew would give."""
        entries = {part: dict(values) for part, values in self.entries.items()}
        places = {part: dict(order) for part, order in self.positions.items()}
        for change in changes:
            if change.part in entries:
                _make(change, entries[change.part], places[change.part])
        ordered = {part: _in_order(values, places[part]) for part, values in entries.items()}
        return State(ordered, places)

    def find(self, part: Part, entry_id: str) -> Value | None:
        """The entry with this id, if there is one."""
        return self.entries[part].get(entry_id)

    def thing(self, thing_id: str) -> Thing:
        """The thing with this id; `InputError` if there is none."""
        return found(self.things, thing_id, "thing")

    def person(self, person_id: str) -> Person:
        """The person with this id; `InputError` if there is none."""
        return found(self.people, person_id, "person")

    def place(self, place_id: str) -> Place:
        """The place with this id; `InputError` if there is none."""
        return found(self.places, place_id, "place")

    def _only(self, part: Part, kind: type[T]) -> T:
        return self._all(part, kind)[ONLY]

    def _all(self, part: Part, kind: type[T]) -> Mapping[str, T]:
        return {entry_id: entry for entry_id, entry in self.entries[part].items() if isinstance(entry, kind)}


def _make(change: Change, values: dict[str, Value], places: dict[str, int]) -> None:
    if change.after is None:
        values.pop(change.id, None)
        places.pop(change.id, None)
        return
    values[change.id] = change.after
    if change.stands is not None:
        places[change.id] = change.stands


def _in_order(values: Mapping[str, Value], places: Mapping[str, int]) -> dict[str, Value]:
    """Sorted as the rows are read: by place, where there are places, then by id."""
    return {entry_id: values[entry_id] for entry_id in sorted(values, key=lambda name: (places.get(name, 0), name))}


def found(entries: Mapping[str, T], entry_id: str, what: str) -> T:
    """The entry with this id; `InputError` if there is none."""
    if entry_id not in entries:
        raise InputError(entry_id, f"is no {what} here", f"choose one of: {some_names(entries)}")
    return entries[entry_id]


def some_names(names: Iterable[Any]) -> str:
    """A few of these, so that a sentence stays short."""
    listed = [str(name) for name in names]
    more = f" and {len(listed) - 5} more" if len(listed) > 5 else ""
    return (", ".join(listed[:5]) or "none yet") + more
