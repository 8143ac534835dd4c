"""The first run as one step: from what a newcomer typed and ticked to the house, the person and the days."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from core.errors import InputError
from core.house.model import Experience, House, Person, Place
from core.house.wishes import DayWish, WeekWishes
from core.knowledge import Catalog
from core.quantity.display import UnitSystem
from core.quantity.units import parse_time_min
from core.store.commands import LoadHouse
from core.store.commands.base import free_id
from core.things.model import ThingKind
from core.things.quick_add import ReadThing
from gui.household.adding import one_of_kind, things_of
from gui.household.people_typed import read_body_mass_kg, read_height_cm, read_name

T = TypeVar("T")
FIRST_KINDS = (
    "bottle_one_and_half",
    "bottle_five_litre",
    "milk_jug_gallon",
    "water_carrier_ten",
    "bucket_ten",
    "tin_food",
    "rice_bag_small",
    "brick",
    "backpack",
    "tote",
    "suitcase",
    "dumbbell",
    "dining_chair",
    "stool",
    "kitchen_table",
    "sofa",
    "stairs",
    "doorstep",
    "handrail",
    "pull_up_bar_door",
    "towel",
    "broom",
    "mat",
    "resistance_band",
)
"""What is offered as pictures: common in homes, and between them every movement pattern (a choice of ours)."""
FIRST_DAYS = (0, 2, 4)
"""Days ticked at first: Monday, Wednesday, Friday."""
HOME = Place(id="home", name="Home", floor_m2=4.0)
OUTDOORS = Place(id="outdoors", name="Outdoors", floor_m2=20.0, walk_m=1000.0, outdoors=True)
"""Places assumed until somebody says otherwise."""


class BeginLine(StrEnum):
    """The lines of the first run, and the days, where something may be missing."""

    NAME = "name"
    BODY_MASS = "body_mass"
    HEIGHT = "height"
    MINUTES = "minutes"
    DAYS = "days"


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginning:
    """What stands on the page: texts as typed, what was ticked (kind id, how many), what was typed, and the days."""

    name: str
    body_mass: str
    height: str
    experience: Experience
    ticked: tuple[tuple[str, int], ...]
    typed: tuple[ReadThing, ...]
    days: tuple[int, ...]
    minutes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Begun:
    """The one command that saves everything, or what is in its way per line."""

    command: LoadHouse | None
    faults: tuple[tuple[BeginLine, str], ...] = ()


def first_kinds(catalog: Catalog) -> tuple[ThingKind, ...]:
    """The kinds offered as pictures."""
    return tuple(catalog.kind_by_id[kind_id] for kind_id in FIRST_KINDS)


def begin(page: Beginning, house: House, catalog: Catalog, system: UnitSystem) -> Begun:
    """One command for the person, things, places and days; nothing is saved while any line can't be used."""
    reader = _Reader()
    name = reader.read(BeginLine.NAME, lambda: read_name(page.name))
    mass_kg = reader.read(BeginLine.BODY_MASS, lambda: read_body_mass_kg(page.body_mass, system))
    height_cm = reader.read(BeginLine.HEIGHT, lambda: read_height_cm(page.height, system))
    days = reader.read(BeginLine.MINUTES, lambda: _days(page))
    if not page.days:
        reader.faults.append((BeginLine.DAYS, "Choose at least one day."))
    if name is None or mass_kg is None or height_cm is None or days is None or reader.faults:
        return Begun(command=None, faults=tuple(reader.faults))
    person_id = free_id(name, {person.id for person in house.people})
    person = Person(id=person_id, name=name, body_mass_kg=mass_kg, height_cm=height_cm, experience=page.experience)
    return Begun(command=_command(page, person, days, house, catalog))


def _command(page: Beginning, person: Person, days: tuple[DayWish, ...], house: House, catalog: Catalog) -> LoadHouse:
    ticked = tuple(one_of_kind(catalog.kind_by_id[kind_id], count) for kind_id, count in page.ticked)
    things = things_of((*ticked, *page.typed), {thing.id for thing in house.things})
    places = () if house.places else (HOME, OUTDOORS)
    began = House(name="your household", people=(person,), things=things, places=places, fills=())
    return LoadHouse(began, wishes=((person.id, WeekWishes(days=days)),))


def _days(page: Beginning) -> tuple[DayWish, ...]:
    minutes = parse_time_min(page.minutes)
    DayWish(weekday=0, minutes=minutes)  # refuses minutes nobody can train, also while no day is chosen
    return tuple(DayWish(weekday=day, minutes=minutes) for day in page.days)


class _Reader:
    """Reads line after line and keeps what was wrong."""

    def __init__(self) -> None:
        self.faults: list[tuple[BeginLine, str]] = []

    def read(self, line: BeginLine, make: Callable[[], T]) -> T | None:
        try:
            return make()
        except InputError as error:
            self.faults.append((line, str(error)))
            return None
