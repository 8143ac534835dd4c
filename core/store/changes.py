"""The parts of a record and how one of them changes. A change holds both sides, so it can be turned round.

`Change.before` and `after` are whole values (None: not there), so undo needs to know nothing about the command.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any

from core.house.log import LoggedSession, LoggedTest
from core.house.model import Person, Place
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.store import codec, codec_own, codec_people
from core.store.encoding import Codec, number, one_word, text, unfit, whole
from core.store.encoding_groups import many, maybe, record
from core.store.json_text import from_text, to_text
from core.store.values import Kind, SavedBlock, SavedWeek, Settings
from core.things.model import Thing


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseFacts:
    """What is said of the house itself: its name, the fills at hand and the cup they pour with."""

    name: str
    fills: tuple[str, ...] = ("water",)
    cup_l: float = 0.25


class Part(StrEnum):
    """The kinds of entries a record is made of, in an order in which each needs only earlier ones."""

    HOUSE = "house"
    OWN = "own"
    PLACE = "place"
    PERSON = "person"
    THING = "thing"
    WISHES = "wishes"
    WEEK = "week"
    BLOCK = "block_of_weeks"
    SETTINGS = "settings"
    SESSION = "session"
    TEST = "test"


Value = (
    HouseFacts
    | OwnEntry
    | Place
    | Person
    | Thing
    | WeekWishes
    | SavedWeek
    | SavedBlock
    | Settings
    | LoggedSession
    | LoggedTest
)

HOUSE_FACTS: Codec[HouseFacts] = record(
    "house",
    HouseFacts,
    {"name": text(120, shortest=1), "fills": many(codec.ID, 500), "cup_l": number(0.001, 20)},
)

CODEC_OF: dict[Part, Codec[Any]] = {
    Part.HOUSE: HOUSE_FACTS,
    Part.OWN: codec_own.OWN,
    Part.PLACE: codec_people.PLACE,
    Part.PERSON: codec_people.PERSON,
    Part.THING: codec.THING,
    Part.WISHES: codec_people.WISHES,
    Part.WEEK: codec_people.SAVED_WEEK,
    Part.BLOCK: codec_people.SAVED_BLOCK,
    Part.SETTINGS: codec_people.SETTINGS,
    Part.SESSION: codec_people.SESSION,
    Part.TEST: codec_people.TEST,
}

KINDS_OF: dict[Part, tuple[Kind, ...]] = {
    Part.HOUSE: (Kind.HOUSE, Kind.THINGS),  # the fills at hand and the cup change what every container can weigh
    Part.OWN: (Kind.CATALOG,),
    Part.PLACE: (Kind.PLACES,),
    Part.PERSON: (Kind.PEOPLE,),
    Part.THING: (Kind.THINGS,),
    Part.WISHES: (Kind.WEEK,),
    Part.WEEK: (Kind.WEEK,),
    Part.BLOCK: (Kind.WEEK,),
    Part.SETTINGS: (Kind.SETTINGS,),
    Part.SESSION: (Kind.LOG,),
    Part.TEST: (Kind.LOG,),
}

MOST_CHANGES = 1_000_000
ONLY = "1"
"""The id of a part there is one of: the house itself and the settings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One entry before and after. `id` is the person's id for wishes and weeks.

    `stood` and `stands` are its place in the list before and after; None leaves that to the one who writes it.
    """

    part: Part
    id: str
    before: Value | None
    after: Value | None
    stood: int | None = None
    stands: int | None = None

    def reversed(self) -> Change:
        """The change that takes this one back."""
        return replace(self, before=self.after, after=self.before, stood=self.stands, stands=self.stood)


def kinds_of(changes: Iterable[Change]) -> frozenset[Kind]:
    """Everything a screen may have to repaint for these changes."""
    return frozenset(kind for change in changes for kind in KINDS_OF[change.part])


def write_changes(changes: Iterable[Change]) -> str:
    """Changes as JSON text, for the history on disk."""
    return to_text([_write(change) for change in changes])


def _write(change: Change) -> dict[str, object]:
    entry = maybe(CODEC_OF[change.part])
    sides = {"before": entry.write(change.before), "after": entry.write(change.after)}
    places = {"stood": change.stood, "stands": change.stands}
    return {"part": change.part.value, "id": change.id} | places | sides


def read_changes(written: str, where: str) -> tuple[Change, ...]:
    """The changes that `write_changes` wrote; `InputError` when the text does not hold such changes."""
    return many(_CHANGE, MOST_CHANGES).read(from_text(written, where, bounded=False), where)


def _read(json_value: object, where: str) -> Change:
    if not (isinstance(json_value, dict) and json_value.keys() == CHANGE_FIELDS):
        raise unfit(json_value, "is not a change", where)
    part = one_word(Part).read(json_value["part"], where)
    entry = maybe(CODEC_OF[part])
    return Change(
        part=part,
        id=codec.ID.read(json_value["id"], where),
        stood=_POSITION.read(json_value["stood"], where),
        stands=_POSITION.read(json_value["stands"], where),
        before=entry.read(json_value["before"], where),
        after=entry.read(json_value["after"], where),
    )


CHANGE_FIELDS = {"part", "id", "stood", "stands", "before", "after"}
_POSITION = maybe(whole(0, 2**53))
_CHANGE: Codec[Change] = Codec(_write, _read, {})
