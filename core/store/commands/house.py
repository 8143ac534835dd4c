"""Edits of the house itself and the settings, and loading a whole house from a file or the demo."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.model import House
from core.house.wishes import WeekWishes
from core.store.changes import ONLY, Change, HouseFacts, Part, Value
from core.store.commands.base import Plan, put
from core.store.state import State
from core.store.values import Settings


@dataclass(frozen=True, slots=True)
class ChangeHouse:
    """Change the name of the house, the fills at hand and the cup they pour with."""

    facts: HouseFacts

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return Plan((put(state, Part.HOUSE, ONLY, self.facts),), f"Changed {self.facts.name}")


@dataclass(frozen=True, slots=True)
class ChangeSettings:
    """Replace the settings."""

    settings: Settings

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        if self.settings.person_id is not None:
            state.person(self.settings.person_id)
        return Plan((put(state, Part.SETTINGS, ONLY, self.settings),), "Changed the settings")


@dataclass(frozen=True, slots=True)
class LoadHouse:
    """Take in a whole house, with wishes by person id.

    With `replace_all` it takes the place of all people, places, things, own entries, wishes and weeks; without, it is
    added to them, entries with the same id are replaced, and the house keeps its own name and cup. What was logged
    stays. One undo takes everything back.
    """

    house: House
    wishes: tuple[tuple[str, WeekWishes], ...] = ()
    replace_all: bool = False

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        loaded = {(Part.HOUSE, ONLY): self._facts(state), **self._loaded()}
        gone = self._gone(state, loaded) if self.replace_all else ()
        changes = (*gone, *self._put(state, loaded))
        people = [person.id for person in self.house.people]
        stays = state.settings.person_id if not self.replace_all or state.settings.person_id in people else None
        chosen = replace(state.settings, person_id=stays or next(iter(people), None))
        settings = (put(state, Part.SETTINGS, ONLY, chosen),) if chosen != state.settings else ()
        return Plan((*changes, *settings), f"Loaded {self.house.name}")

    def _facts(self, state: State) -> HouseFacts:
        if self.replace_all:
            return HouseFacts(name=self.house.name, fills=self.house.fills, cup_l=self.house.cup_l)
        new = (fill for fill in self.house.fills if fill not in state.facts.fills)
        return replace(state.facts, fills=(*state.facts.fills, *new))

    def _loaded(self) -> dict[tuple[Part, str], Value]:
        """Every entry of the house by part and id; `InputError` if an id is used twice or a place is missing."""
        house = self.house
        entries: list[tuple[tuple[Part, str], Value]] = [
            *(((Part.OWN, own.id), own) for own in house.own),
            *(((Part.PLACE, place.id), place) for place in house.places),
            *(((Part.PERSON, person.id), person) for person in house.people),
            *(((Part.THING, thing.id), thing) for thing in house.things),
            *(((Part.WISHES, person_id), wishes) for person_id, wishes in self.wishes),
        ]
        loaded: dict[tuple[Part, str], Value] = {}
        for (part, entry_id), value in entries:
            if (part, entry_id) in loaded:
                raise InputError(entry_id, f"is the id of two entries ({part}) of {house.name}", "rename one of them")
            loaded[part, entry_id] = value
        self._check_mentions(loaded)
        return loaded

    def _check_mentions(self, loaded: Mapping[tuple[Part, str], Value]) -> None:
        mentions = [(thing.name, Part.PLACE, place_id) for thing in self.house.things for place_id in thing.place_ids]
        for person_id, wishes in self.wishes:
            mentions.append(("the wishes", Part.PERSON, person_id))
            mentions += [("the wishes", Part.PLACE, day.place_id) for day in wishes.days if day.place_id is not None]
        for who, part, entry_id in mentions:
            if (part, entry_id) not in loaded:
                rule = f"is named by {who} of {self.house.name}, but there is no such {part}"
                raise InputError(entry_id, rule, "add it, or leave the mention out")

    def _put(self, state: State, loaded: Mapping[tuple[Part, str], Value]) -> Iterator[Change]:
        """Where everything is replaced, the order is the loaded one; else what is new comes last."""
        for place, ((part, entry_id), value) in enumerate(loaded.items()):
            change = put(state, part, entry_id, value)
            yield replace(change, stands=place) if self.replace_all else change

    @staticmethod
    def _gone(state: State, loaded: Mapping[tuple[Part, str], Value]) -> tuple[Change, ...]:
        return tuple(
            put(state, part, entry_id, None)
            for part in (Part.OWN, Part.PLACE, Part.PERSON, Part.THING, Part.WISHES, Part.WEEK, Part.BLOCK)
            for entry_id in state.entries[part]
            if (part, entry_id) not in loaded
        )
