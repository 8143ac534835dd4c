"""A household that is written reads back equal, in as few words as that takes."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from catalog.household.load import load_household, read_household
from catalog.household.write import write_household
from catalog.load import load_catalog
from catalog.own import own_exercise, own_kind
from core.errors import InputError
from core.exercise.model import Demand, Pattern
from core.house.model import Capacity, Experience, House, Person, Place, QuietHours, Sex
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.mass.model import CupsLevel, HeightLevel, Packing, ScaleKind
from core.mass.scale import reading_on
from core.quantity import Measured, Origin
from core.things.model import Fill, OwnCheck, Thing
from core.things.quick_add import ReadThing, make_thing, read_things
from tests.dipper import dipper

CATALOG = load_catalog()
DEMO = Path(__file__).parents[2] / "resources" / "demo" / "dipper.toml"
NAMES = st.text("abcdefgh ÄéЖ漢<&\"'\\#=", min_size=1, max_size=20).filter(lambda text: bool(text.strip()))
TIMES = st.builds(datetime.time, st.integers(0, 23), st.integers(0, 59))
EXERCISES = st.sampled_from([exercise.id for exercise in CATALOG.exercises])
SPANS = st.tuples(st.integers(1, 20), st.integers(20, 90))
DOSES = st.one_of(
    st.builds(PinnedDose, sets=st.integers(1, 9), reps=SPANS, rest_s=st.none() | SPANS),
    st.builds(PinnedDose, sets=st.integers(1, 9), work_s=st.integers(5, 900), rest_s=st.none() | SPANS),
)
PINS = st.builds(Pin, weekday=st.integers(0, 6), exercise_id=EXERCISES, dose=st.none() | DOSES)
AMOUNTS = st.floats(0.1, 300, allow_subnormal=False)

OWN = (
    own_exercise(
        {
            "name": "Winch turn",
            "patterns": {"pull_level": 1.0},
            "muscles": {"lats": 1.0},
            "dose": "reps",
            "posture": "standing",
            "body": {"share": 0.2, "basis": "ordinal"},
            "level": 2,
            "typical": [8.0, 20.0],
        },
        CATALOG,
    ),
    own_kind({"name": "Winch handle", "form": "stick", "mass_kg": [1.8, 0.2]}, CATALOG),
)


def typed(words: str, thing_id: str = "thing") -> Thing:
    (reading,) = read_things(words, CATALOG.kinds)
    assert isinstance(reading, ReadThing)
    return make_thing(reading, thing_id)


def read_back(house: House, wishes: dict[str, WeekWishes] | None = None) -> House:
    text = write_household(house, wishes or {}, CATALOG)
    return read_household(text, "home.toml", CATALOG).house


KNOWN = tuple(
    typed(words)
    for words in (
        "2 water carriers, 25 L",
        "6 bean tins, 400 g",
        "backpack 25 L",
        "stairs, 12 steps, 18 cm rise",
        "chair",
    )
)


@st.composite
def changed_things(draw: st.DrawFn) -> Thing:
    """A thing as typed, with what a person may change about it."""
    thing = draw(st.sampled_from(KNOWN))
    container = thing.facts.container
    if container is not None and draw(st.booleans()):
        litres = draw(st.floats(0, container.brimful_l.value))
        thing = replace(thing, fill=Fill(material_id="water", volume_l=litres, packing=draw(st.sampled_from(Packing))))
    if draw(st.booleans()):
        level = CupsLevel(count=draw(st.floats(0, 20)), cup_l=0.25) if container is not None else None
        reading = reading_on(
            ScaleKind.LUGGAGE, draw(st.floats(0, 40)), at_level=level, date=draw(st.none() | st.dates())
        )
        thing = replace(thing, readings=(reading,))
    if draw(st.booleans()):
        thing = replace(thing, own_check=OwnCheck(date=draw(st.dates()), took_kg=draw(st.floats(5, 2000))))
    facts = replace(thing.facts, rating_kg=draw(st.none() | AMOUNTS), surface_cm=draw(st.none() | AMOUNTS))
    return replace(thing, name=draw(st.just(thing.name) | NAMES), facts=facts, count=draw(st.integers(1, 20)))


@st.composite
def people(draw: st.DrawFn) -> Person:
    best = Capacity(
        pattern=draw(st.sampled_from(Pattern)),
        one_rep_kg=Measured(draw(AMOUNTS), draw(st.floats(0, 50)), draw(st.sampled_from(Origin))),
        exercise_id=draw(EXERCISES),
        told_by=draw(NAMES),
    )
    return Person(
        id="new",
        name=draw(NAMES),
        body_mass_kg=draw(st.floats(30, 250)),
        height_cm=draw(st.floats(120, 230)),
        experience=draw(st.sampled_from(Experience)),
        spares=draw(st.frozensets(st.sampled_from(Demand))),
        capacities=draw(st.sampled_from([(), (best,)])),
        birth_year=draw(st.none() | st.integers(1900, 2100)),
        sex=draw(st.none() | st.sampled_from(Sex)),
    )


@st.composite
def places(draw: st.DrawFn) -> Place:
    return Place(
        id="new",
        name=draw(NAMES),
        ceiling_cm=draw(st.none() | st.floats(100, 5000)),
        floor_m2=draw(st.floats(0, 10_000)),
        walk_m=draw(st.floats(0, 100_000)),
        outdoors=draw(st.booleans()),
        neighbours=draw(st.booleans()),
        wet=draw(st.booleans()),
        quiet=draw(st.none() | st.builds(QuietHours, start=TIMES, end=TIMES)),
    )


@st.composite
def weeks(draw: st.DrawFn, place_ids: list[str]) -> WeekWishes:
    where = st.none() | st.sampled_from(place_ids) if place_ids else st.none()
    days = draw(st.lists(st.integers(0, 6), unique=True))
    return WeekWishes(
        days=tuple(
            DayWish(weekday=day, minutes=draw(st.floats(5, 300)), place_id=draw(where), start=draw(st.none() | TIMES))
            for day in sorted(days)
        ),
        goals=draw(st.sampled_from([Goals(), Goals(strength=0.3, run_walk=1.0, loaded_walk=0.0, mobility=0.125)])),
        bans=tuple(draw(st.lists(EXERCISES, max_size=2))),
        pins=tuple(draw(st.lists(PINS, max_size=2))),
    )


@st.composite
def households(draw: st.DrawFn) -> tuple[House, dict[str, WeekWishes]]:
    unique = st.lists(places(), max_size=2, unique_by=lambda place: place.name.casefold())
    listed = [replace(place, id=f"place{at}") for at, place in enumerate(draw(unique))]
    persons = draw(st.lists(people(), max_size=2, unique_by=lambda person: person.name.casefold()))
    persons = [replace(person, id=f"person{at}") for at, person in enumerate(persons)]
    owned = [replace(thing, id=f"t{at}") for at, thing in enumerate(draw(st.lists(changed_things(), max_size=3)))]
    house = House(
        name=draw(NAMES),
        places=tuple(listed),
        people=tuple(persons),
        things=tuple(owned),
        fills=draw(st.sampled_from([("water",), (), ("sand_dry", "water")])),
        cup_l=draw(st.floats(0.02, 5)),
        own=draw(st.sampled_from([(), OWN])),
    )
    return house, {person.id: draw(weeks([place.id for place in listed])) for person in persons}


@given(households())
@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_written_reads_back_equal(household: tuple[House, dict[str, WeekWishes]]) -> None:
    house, wishes = household
    text = write_household(house, wishes, CATALOG)
    found = read_household(text, "home.toml", CATALOG)
    assert found.house == house
    assert found.wishes == wishes


def test_the_demo_stays_as_short_as_it_was() -> None:
    demo = load_household(DEMO, CATALOG)
    text = write_household(demo.house, demo.wishes, CATALOG, invented=True)
    assert "exact" not in text
    assert text.count('id = "') == 0
    assert text.count("[week") == 7


def test_a_thing_made_by_hand_is_written_field_by_field() -> None:
    house = dipper()
    text = write_household(house, {}, CATALOG)
    assert text.count("[things.exact]") == len(house.things)
    assert read_household(text, "home.toml", CATALOG).house == house


def test_scale_readings_of_every_form_come_back() -> None:
    bottle = typed("5 L bottle")
    usual = reading_on(ScaleKind.KITCHEN, 4.9, at_level=HeightLevel(height_cm=20.0))
    odd = replace(usual, resolution_kg=0.25)
    house = House(name="Home", things=(replace(bottle, id="bottle", readings=(usual, odd)),))
    assert read_back(house) == house
    assert read_back(replace(house, things=(replace(house.things[0], readings=(usual,)),))).things[0].readings == (
        usual,
    )


def test_a_house_no_file_can_hold_is_refused() -> None:
    with pytest.raises(InputError, match="home|household"):
        write_household(House(name="x" * 100), {}, CATALOG)
