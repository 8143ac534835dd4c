"""Generated households, people and wishes: the same for the same number, and unlike one another."""

from __future__ import annotations

import datetime
import random
from dataclasses import dataclass, replace

from core.exercise.model import Demand
from core.house.model import Experience, House, Person, Place, QuietHours
from core.house.wishes import DayWish, Goals, Pin, WeekWishes
from core.plan.model import DayKind, WeekRequest
from tests.dipper import CABIN, TOWPATH, dipper

PLACES = (
    replace(CABIN, quiet=QuietHours(start=datetime.time(21), end=datetime.time(8))),
    TOWPATH,
    Place(id="room", name="Room", ceiling_cm=250.0, floor_m2=6.0, walk_m=6.0),
    Place(id="yard", name="Yard", floor_m2=12.0, walk_m=40.0, outdoors=True, wet=True),
)
STARTS = (None, None, datetime.time(6, 30), datetime.time(18), datetime.time(20, 30), datetime.time(22))
PINNED = ("push_up", "plank", "body_squat", "easy_run", "jumping_jack", "pull_up", "cat_cow", "chair_stand")


@dataclass(frozen=True, slots=True)
class Case:
    """A household and what one person in it asks for."""

    house: House
    person: Person
    request: WeekRequest


def household(number: int) -> Case:
    """Household `number`."""
    draw = random.Random(f"household {number}")
    places = tuple(draw.sample(PLACES, draw.choice((1, 1, 2))))
    here = {place.id for place in places}
    things = tuple(
        replace(thing, place_ids=tuple(sorted(here & set(thing.place_ids))), count=draw.choice((thing.count, 1, 2)))
        for thing in dipper().things
        if draw.random() < 0.6
    )
    person = Person(
        id="someone",
        name="Someone",
        body_mass_kg=draw.choice((48.0, 68.0, 84.0, 120.0)),
        height_cm=draw.choice((152.0, 171.0, 193.0)),
        experience=draw.choice(tuple(Experience)),
        spares=frozenset(draw.sample(tuple(Demand), draw.choice((0, 0, 1, 3)))),
    )
    house = House(name="Somewhere", places=places, things=things, people=(person,))
    return Case(house, person, WeekRequest(wishes=_wishes(draw, places)))


def _wishes(draw: random.Random, places: tuple[Place, ...]) -> WeekWishes:
    weekdays = sorted(draw.sample(range(7), draw.choice((1, 2, 2, 3, 3, 4, 5, 7))))
    days = tuple(
        DayWish(
            weekday=weekday,
            minutes=draw.choice((8, 15, 20.5, 30, 40, 45, 60, 90)),
            place_id=draw.choice((None, *(place.id for place in places))),
            start=draw.choice(STARTS),
        )
        for weekday in weekdays
    )
    goals = Goals(
        strength=draw.choice((0.3, 1.0)),
        run_walk=draw.choice((0.0, 0.6)),
        loaded_walk=draw.choice((0.0, 0.4)),
        mobility=draw.choice((0.0, 0.4)),
    )
    pins = tuple(_pin(draw, draw.choice(weekdays)) for _ in range(draw.choice((0, 0, 0, 1, 2))))
    bans = tuple(draw.sample(PINNED, draw.choice((0, 0, 2))))
    return WeekWishes(days=days, goals=goals, pins=pins, bans=bans)


def _pin(draw: random.Random, weekday: int) -> Pin:
    if draw.random() < 0.5:
        return Pin(weekday=weekday, kind=draw.choice(tuple(DayKind)))
    return Pin(weekday=weekday, exercise_id=draw.choice(PINNED))
