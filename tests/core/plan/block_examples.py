"""A block on the hand-made narrowboat, and movements with loads as the tests of courses need them."""

from __future__ import annotations

import datetime
from dataclasses import replace
from functools import cache

from catalog.load import load_catalog
from core.effort.dose import Dose
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.model import House, Person
from core.house.wishes import DayWish, Goals, WeekWishes
from core.knowledge import Catalog
from core.plan.block import plan_block
from core.plan.block_model import TrainingBlock
from core.plan.clock import block_seconds
from core.plan.menu import states_of
from core.plan.model import Block, DayKind, DayPlan, Week, WeekRequest
from core.quantity import Measured
from core.things.model import Closure, Facts, Form, Rigidity, Thing
from tests.dipper import INES, TOMAS, TOWPATH, dipper

MONDAY = datetime.date(2026, 5, 4)
WISHES = WeekWishes(
    days=(
        DayWish(weekday=1, minutes=50, place_id="towpath", start=datetime.time(18)),
        DayWish(weekday=3, minutes=40, place_id="towpath", start=datetime.time(18)),
        DayWish(weekday=5, minutes=60, place_id="towpath", start=datetime.time(10)),
        DayWish(weekday=6, minutes=60, place_id="towpath", start=datetime.time(10)),
    ),
    goals=Goals(strength=1.0, run_walk=0.6, loaded_walk=0.5, mobility=0.1),
)
REQUEST = WeekRequest(wishes=WISHES)
HOUSE = dipper()
PEOPLE: dict[str, Person] = {"ines": INES, "tomas": TOMAS}


@cache
def shipped() -> Catalog:
    """The shipped catalog, loaded once."""
    return load_catalog()


@cache
def pattern(name: str) -> Week:
    """The week a block is made from, solved once for each person."""
    from core.plan.week import plan_week

    return plan_week(REQUEST, HOUSE, PEOPLE[name], shipped())


@cache
def block_of(name: str, weeks: int = 8) -> TrainingBlock:
    """The block of a person on the narrowboat."""
    request = replace(REQUEST, keep=pattern(name))
    return plan_block(request, HOUSE, PEOPLE[name], shipped(), weeks=weeks, starts=MONDAY)


def sack(thing_id: str, mass_kg: float) -> Thing:
    """A soft closed sack without handles."""
    facts = Facts(
        form=Form.SACK,
        mass=Measured(mass_kg, 0.05),
        length_cm=50.0,
        width_cm=35.0,
        height_cm=15.0,
        closure=Closure.SEALED,
        rigidity=Rigidity.SOFT,
    )
    return Thing(id=thing_id, kind_id="coal_bag", name=f"Sack of {mass_kg:g} kg", facts=facts)


def home_with(*things: Thing) -> House:
    """A house on the towpath with these things alone."""
    return House(name="Towpath", places=(TOWPATH,), things=things, people=(INES,))


def setting_with(*things: Thing, person: Person = INES) -> Setting:
    """That house as a setting."""
    return Setting(home_with(*things), person, shipped().material_by_id, TOWPATH)


def planned(exercise_id: str, setting: Setting, dose: Dose, load_kg: float | None = None) -> Block:
    """A movement with a dose and the load nearest to `load_kg`."""
    exercise = shipped().exercise_by_id[exercise_id]
    bound = bind(exercise, setting, wanted_kg=load_kg, proven=True)
    assert not isinstance(bound, Missing), bound
    return Block(
        exercise=exercise,
        binding=bound,
        dose=dose,
        rest_s=90,
        seconds=block_seconds(exercise, dose, 90),
        hard=True,
        states=states_of(bound),
        why=("It is an example.",),
    )


def days_of(block: TrainingBlock, kind: DayKind) -> list[tuple[int, DayPlan]]:
    """Every day of a kind with the number of its week, in order."""
    return [(week.number, day) for week in block.weeks for day in week.week.days if day.kind is kind]
