"""People, places and the house that ties them to the things they own.

Body proportions are fractions of stature from ANSUR II (US Army 2012, 4,082 men and 1,986 women; Gordon et al. 2014);
they describe fit adults, so what is derived from them is a guide with a few cm of doubt.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.exercise.model import Demand, Pattern
from core.house.own import OwnEntry
from core.quantity import Measured
from core.things.model import Thing

BODY_MASS_KG = (30.0, 250.0)
STATURE_CM = (120.0, 230.0)
EARLIEST_BIRTH, LATEST_BIRTH = 1900, 2100
SHANK_TOP_OF_STATURE = 0.267
SHOULDER_OF_STATURE = 0.820
ARM_OF_STATURE = 0.45


class Experience(StrEnum):
    """How used to strength work a person is."""

    NEW = "new"
    SOME = "some"
    TRAINED = "trained"


class Sex(StrEnum):
    """Which column of a published table applies to a person."""

    FEMALE = "female"
    MALE = "male"


@dataclass(frozen=True, slots=True, kw_only=True)
class Capacity:
    """What a person could just lift once in a pattern: effective load on one working side, kg, with its doubt."""

    pattern: Pattern
    one_rep_kg: Measured
    exercise_id: str
    told_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Someone who trains. `spares` are demands to leave out; `capacities` come from tests and logged sets.

    `birth_year` and `sex` may stay unknown; they are only needed to read published tables and equations.
    """

    id: str
    name: str
    body_mass_kg: float
    height_cm: float
    experience: Experience = Experience.NEW
    spares: frozenset[Demand] = frozenset()
    capacities: tuple[Capacity, ...] = ()
    birth_year: int | None = None
    sex: Sex | None = None

    def __post_init__(self) -> None:
        low, high = BODY_MASS_KG
        if not low <= self.body_mass_kg <= high:
            rule = f"is not a body mass this program can plan for ({low:.0f} to {high:.0f} kg)"
            raise InputError(f"{self.body_mass_kg:g} kg", rule, "check the number and its unit, or ask a professional")
        low, high = STATURE_CM
        if not low <= self.height_cm <= high:
            rule = f"is not a height this program can plan for ({low:.0f} to {high:.0f} cm)"
            raise InputError(f"{self.height_cm:g} cm", rule, "check the number and its unit, or ask a professional")
        if self.birth_year is not None and not EARLIEST_BIRTH <= self.birth_year <= LATEST_BIRTH:
            rule = f"is no year of birth ({EARLIEST_BIRTH} to {LATEST_BIRTH})"
            raise InputError(self.birth_year, rule, "write all four digits, or leave it out")

    def age_on(self, day: datetime.date) -> int | None:
        """Age in whole years on a day, from the year of birth alone, so it may be a year too high; None if unknown."""
        return None if self.birth_year is None else max(0, day.year - self.birth_year)

    @property
    def reach_cm(self) -> float:
        """Height of the fingertips with the arms straight up: shoulder height plus arm length with the hand."""
        return (SHOULDER_OF_STATURE + ARM_OF_STATURE) * self.height_cm


@dataclass(frozen=True, slots=True, kw_only=True)
class QuietHours:
    """A daily span without noise; it may run over midnight."""

    start: datetime.time
    end: datetime.time


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Somewhere to train. `ceiling_cm` None is open sky; `walk_m` the longest clear walk; `neighbours` hear impact."""

    id: str
    name: str
    ceiling_cm: float | None = None
    floor_m2: float = 4.0
    walk_m: float = 4.0
    outdoors: bool = False
    neighbours: bool = False
    wet: bool = False
    quiet: QuietHours | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """One household: its places and things, the fills at hand, the cup they pour with, what it added to the catalog."""

    name: str
    places: tuple[Place, ...] = ()
    things: tuple[Thing, ...] = ()
    people: tuple[Person, ...] = ()
    fills: tuple[str, ...] = ("water",)
    cup_l: float = 0.25
    own: tuple[OwnEntry, ...] = ()

    def thing(self, thing_id: str) -> Thing:
        """The thing with this id; KeyError if the house has none."""
        for thing in self.things:
            if thing.id == thing_id:
                return thing
        raise KeyError(thing_id)
