"""The form of a household file, version 1. Quantities are text with units, as people type them.

Everything but `fillmark = 1` may be left out. Unknown fields are faults, so a slip of the pen is never ignored.
"""

from __future__ import annotations

import datetime
import unicodedata
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Discriminator, Field, Tag

from catalog.own_forms import OwnExerciseEntry, OwnThingEntry
from core.exercise.model import Demand, Pattern
from core.house.model import Experience, Sex
from core.mass.model import Packing
from core.quantity import Origin
from core.things.model import Hazard

FILE_VERSION = 1
Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
WEEKDAY_KEYS: tuple[Weekday, ...] = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
HIDDEN_CATEGORIES = ("Cc", "Cs", "Zl", "Zp")
TURNING_SIGNS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
TABLE, WORDS = "table", "words"
"""The two ways to write a thing or a day; the parts of a fault's place that are no field of the file."""


def shown(text: str) -> str:
    """Text in which every character can be seen and none turns the writing round; `ValueError` otherwise."""
    if not text.strip():
        raise ValueError("is blank; write a few letters")
    if any(unicodedata.category(one) in HIDDEN_CATEGORIES or one in TURNING_SIGNS for one in text):
        raise ValueError("holds characters that cannot be seen; type it again without them")
    return text


def _local(time: datetime.time) -> datetime.time:
    if time.tzinfo is not None:
        raise ValueError("has a zone; write the local time alone, like 18:30")
    return time


def _written_as(value: Any) -> str:
    return WORDS if isinstance(value, str) else TABLE


Quantity = Annotated[str, Field(min_length=1, max_length=60)]
Name = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(shown)]
Typed = Annotated[str, Field(min_length=1, max_length=200), AfterValidator(shown)]
Id = Annotated[str, Field(min_length=1, max_length=120, pattern=r"^[a-z0-9][a-z0-9_-]*$")]
Clock = Annotated[datetime.time, AfterValidator(_local)]


class Form(BaseModel):
    """What every table of the file has in common: no unknown fields, no infinities, nothing changed later."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class WeighedForm(Form):
    """A scale reading: on which scale, what it said, with you alone when it was a difference, and the fill then.

    Without a `material` it was the one in question: what is in it now, or water.
    """

    scale: Literal["kitchen", "luggage", "bathroom", "direct"] = "kitchen"
    reading: Quantity
    without: Quantity | None = None
    fill: Quantity | None = None
    material: Name | None = None
    packing: Packing = Packing.LOOSE
    date: datetime.date | None = None


class CheckForm(Form):
    """The owner's own check that a thing bore a load, standing still against a wall."""

    date: datetime.date
    took: Quantity


class FilledForm(Form):
    """What is in a container now."""

    material: Name = "water"
    volume: Quantity
    packing: Packing = Packing.LOOSE


class ThingForm(Form):
    """A thing with corrections. `is` is what would be typed in the add field.

    `mass` is what one piece weighs (a container: empty), `surface` the height of its seat, edge, step or beam,
    `hazards` and `fills` replace the usual ones. `exact` is written by the program where words would lose something;
    it then stands for everything but the id.
    """

    is_: Annotated[Typed | None, Field(alias="is")] = None
    id: Id | None = None
    name: Name | None = None
    places: Annotated[list[Name], Field(max_length=50)] = []
    mass: Quantity | None = None
    surface: Quantity | None = None
    rating: Quantity | None = None
    hazards: Annotated[list[Hazard], Field(max_length=20)] | None = None
    fills: Annotated[list[Name], Field(max_length=200)] | None = None
    filled: FilledForm | None = None
    check: CheckForm | None = None
    weighed: Annotated[list[WeighedForm], Field(max_length=200)] = []
    exact: dict[str, Any] | None = None


class CapacityForm(Form):
    """What a person could just lift once in a pattern, on one working side, from a test or a logged set."""

    pattern: Pattern
    one_rep: Quantity
    plus_minus: Quantity = "0 kg"
    exercise: Name
    told_by: Annotated[str, Field(max_length=200)] = "a test"
    origin: Origin = Origin.ESTIMATE


class DayForm(Form):
    """A training day: how long, where, and when it starts."""

    minutes: Quantity
    place: Name | None = None
    start: Clock | None = None


class GoalsForm(Form):
    """How much each part matters, 0 to 1."""

    strength: Annotated[float, Field(ge=0, le=1)] = 1.0
    run_walk: Annotated[float, Field(ge=0, le=1)] = 0.5
    loaded_walk: Annotated[float, Field(ge=0, le=1)] = 0.25
    mobility: Annotated[float, Field(ge=0, le=1)] = 0.25


class PinForm(Form):
    """Something to keep on a day: an exercise by name or id, a kind of day, or both; with `sets` its dose too.

    `reps` is a number or [low, high], `work` a time instead of reps, `rest` a time or [shortest, longest].
    """

    day: Weekday
    exercise: Name | None = None
    kind: Name | None = None
    sets: Annotated[int, Field(ge=1, le=60)] | None = None
    reps: int | Annotated[list[int], Field(min_length=2, max_length=2)] | None = None
    work: Quantity | None = None
    rest: Quantity | Annotated[list[Quantity], Field(min_length=2, max_length=2)] | None = None


Day = Annotated[
    Annotated[Quantity, Tag(WORDS)] | Annotated[DayForm, Tag(TABLE)],
    Discriminator(_written_as),
]


class WeekForm(Form):
    """The week wished for: minutes a day, or a table with the place and the start."""

    days: dict[Weekday, Day] = {}
    goals: GoalsForm = GoalsForm()
    bans: Annotated[list[Name], Field(max_length=500)] = []
    pins: Annotated[list[PinForm], Field(max_length=50)] = []


class NamedForm(Form):
    """Something others refer to by its name. An `id` is only there where it is not the one made from the name."""

    name: Name
    id: Id | None = None


class PersonForm(NamedForm):
    """Someone who trains here. Without a `week` of their own, the household's counts for them.

    `born` (the year) and `sex` are only needed to read published tables.
    """

    body_mass: Quantity
    height: Quantity
    experience: Experience = Experience.NEW
    born: Annotated[int, Field(ge=1900, le=2100)] | None = None
    sex: Sex | None = None
    spares: Annotated[list[Demand], Field(max_length=50)] = []
    best: Annotated[list[CapacityForm], Field(max_length=50)] = []
    week: WeekForm | None = None


class QuietForm(Form):
    """Hours without noise, local time; they may run over midnight."""

    start: Clock = Field(alias="from")
    end: Clock = Field(alias="to")


class PlaceForm(NamedForm):
    """Somewhere to train. No ceiling given means open sky outdoors, and unknown indoors."""

    ceiling: Quantity | None = None
    floor_m2: Annotated[float, Field(ge=0, le=10_000)] = 4.0
    walk: Quantity = "4 m"
    outdoors: bool = False
    neighbours: bool = False
    wet: bool = False
    quiet: QuietForm | None = None


Thing = Annotated[
    Annotated[Typed, Tag(WORDS)] | Annotated[ThingForm, Tag(TABLE)],
    Discriminator(_written_as),
]


class HouseholdForm(Form):
    """The whole file. What is added to the catalog stands in tables of the form that data files have."""

    fillmark: Literal[1]
    name: Name = "Household"
    invented: bool = False
    cup: Quantity = "250 mL"
    fills: Annotated[list[Name], Field(max_length=100)] = ["water"]
    things: Annotated[list[Thing], Field(max_length=500)] = []
    people: Annotated[list[PersonForm], Field(max_length=100)] = []
    places: Annotated[list[PlaceForm], Field(max_length=50)] = []
    week: WeekForm = WeekForm()
    own_movements: Annotated[list[OwnExerciseEntry], Field(max_length=200)] = []
    own_kinds: Annotated[list[OwnThingEntry], Field(max_length=200)] = []


def form_schema() -> dict[str, Any]:
    """The form as a JSON Schema (draft 2020-12)."""
    schema = HouseholdForm.model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema, "title": "Fillmark household file"}
