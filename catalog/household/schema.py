"""The form of a household file, version 1. Quantities are text with units, as people type them.

Everything but `fillmark = 1` may be left out. Unknown fields are faults, so a slip of the pen is never ignored.
"""

from __future__ import annotations

import datetime
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from core.exercise.model import Demand
from core.house.model import Experience
from core.things.model import Hazard

FILE_VERSION = 1
Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
WEEKDAY_KEYS: tuple[Weekday, ...] = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
Quantity = Annotated[str, Field(min_length=1, max_length=60)]
Name = Annotated[str, Field(min_length=1, max_length=80)]


class Form(BaseModel):
    """What every table of the file has in common: no unknown fields, no infinities, nothing changed later."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False, use_enum_values=False)


class WeighedForm(Form):
    """A scale reading: on which scale, what it said, with you alone when it was a difference, and the fill then."""

    scale: Literal["kitchen", "luggage", "bathroom", "direct"] = "kitchen"
    reading: Quantity
    without: Quantity | None = None
    fill: Quantity | None = None
    date: datetime.date | None = None


class CheckForm(Form):
    """The owner's own check that a thing bore a load, standing still against a wall."""

    date: datetime.date
    took: Quantity


class ThingForm(Form):
    """A thing with corrections. `is` is what would be typed in the add field."""

    is_: Annotated[str, Field(alias="is", min_length=1, max_length=200)]
    name: Name | None = None
    places: list[Name] = []
    mass: Quantity | None = None
    surface: Quantity | None = None
    rating: Quantity | None = None
    hazards: list[Hazard] | None = None
    fills: list[Name] | None = None
    check: CheckForm | None = None
    weighed: list[WeighedForm] = []
    note: Annotated[str, Field(max_length=500)] = ""


class PersonForm(Form):
    """Someone who trains here."""

    name: Name
    body_mass: Quantity
    height: Quantity
    experience: Experience = Experience.NEW
    spares: list[Demand] = []


class QuietForm(Form):
    """Hours without noise, local time; they may run over midnight."""

    start: datetime.time = Field(alias="from")
    end: datetime.time = Field(alias="to")


class PlaceForm(Form):
    """Somewhere to train. No ceiling given means open sky outdoors, and unknown indoors."""

    name: Name
    ceiling: Quantity | None = None
    floor_m2: Annotated[float, Field(gt=0, le=10_000)] = 4.0
    walk: Quantity = "4 m"
    outdoors: bool = False
    neighbours: bool = False
    wet: bool = False
    quiet: QuietForm | None = None


class DayForm(Form):
    """A training day: how long, where, and when it starts."""

    minutes: Quantity
    place: Name | None = None
    start: datetime.time | None = None


class GoalsForm(Form):
    """How much each part matters, 0 to 1."""

    strength: Annotated[float, Field(ge=0, le=1)] = 1.0
    run_walk: Annotated[float, Field(ge=0, le=1)] = 0.5
    loaded_walk: Annotated[float, Field(ge=0, le=1)] = 0.25
    mobility: Annotated[float, Field(ge=0, le=1)] = 0.25


class PinForm(Form):
    """Something to keep on a day: an exercise by id, a kind of day, or both."""

    day: Weekday
    exercise: Name | None = None
    kind: Name | None = None


class WeekForm(Form):
    """The week wished for."""

    days: dict[Weekday, Quantity | DayForm] = {}
    goals: GoalsForm = GoalsForm()
    bans: list[Name] = []
    pins: list[PinForm] = []


class HouseholdForm(Form):
    """The whole file."""

    fillmark: Literal[1]
    name: Name = "Household"
    invented: bool = False
    cup: Quantity = "250 mL"
    fills: Annotated[list[Name], Field(min_length=1)] = ["water"]
    things: list[Annotated[str, Field(min_length=1, max_length=200)] | ThingForm] = []
    people: list[PersonForm] = []
    places: list[PlaceForm] = []
    week: WeekForm = WeekForm()
