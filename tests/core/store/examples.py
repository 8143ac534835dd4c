"""The household of the narrowboat Dipper, invented, and small helpers the store tests share."""

from __future__ import annotations

import datetime
from pathlib import Path

from core.exercise.model import Demand, Pattern
from core.house.log import LoggedSession, LoggedSet, LoggedTest
from core.house.model import Capacity, Experience, House, Person, Place, QuietHours, Sex
from core.house.own import OwnEntry, OwnKind
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.mass.model import BrimLevel, Packing, ScaleKind, ScaleReading
from core.quantity.measured import Measured, Origin
from core.store.changes import HouseFacts
from core.store.commands import (
    AddOwn,
    AddPerson,
    AddPlace,
    AddSession,
    AddTest,
    AddThing,
    ChangeHouse,
    Command,
    SaveBlock,
    SaveWeek,
    SetWishes,
)
from core.store.paths import DataFolder
from core.store.record import Record
from core.store.values import SavedBlock, SavedWeek
from core.things.model import Closure, Facts, Fill, Flight, Form, Handle, Hazard, OwnCheck, Thing
from tests.core.mass.examples import CARRIER

NOON = datetime.datetime(2026, 5, 4, 12, 0, tzinfo=datetime.UTC)
MONDAY = datetime.date(2026, 5, 4)


def clock() -> datetime.datetime:
    """Always the same noon."""
    return NOON


CABIN = Place(
    id="cabin",
    name="Cabin",
    ceiling_cm=188.5,
    neighbours=True,
    quiet=QuietHours(start=datetime.time(21, 30), end=datetime.time(7)),
)
TOWPATH = Place(id="towpath", name="Towpath", outdoors=True, walk_m=800, floor_m2=40, wet=True)
INES = Person(
    id="ines",
    name="Ines",
    body_mass_kg=68,
    birth_year=1987,
    sex=Sex.FEMALE,
    height_cm=171,
    experience=Experience.SOME,
    spares=frozenset({Demand.KNEELING, Demand.IMPACT}),
    capacities=(
        Capacity(
            pattern=Pattern.SQUAT,
            one_rep_kg=Measured(41.3, 3.1, Origin.ESTIMATE),
            exercise_id="goblet_squat",
            told_by="test of 2026-05-01",
        ),
    ),
)
TOMAS = Person(id="tomas", name="Tomas", body_mass_kg=84, height_cm=182)
READING = ScaleReading(
    kind=ScaleKind.BATHROOM_DIFFERENCE,
    reading_kg=93.4,
    without_kg=68.1,
    resolution_kg=0.1,
    repeatability_kg=0.1,
    offset_doubt_kg=0.2,
    at_level=BrimLevel(),
    date=MONDAY,
    material_id="water",
)
WATER_CARRIER = Thing(
    id="carrier",
    kind_id="water_carrier_25",
    name="Water carrier",
    count=2,
    facts=Facts(form=Form.VESSEL, container=CARRIER, handle=Handle.MOULDED, closure=Closure.LID, height_cm=42),
    fills=("water", "sand_dry"),
    fill=Fill(material_id="water", volume_l=14.25, packing=Packing.LOOSE),
    readings=(READING,),
)
COAL_BAG = Thing(
    id="coal_bag",
    kind_id="coal_bag",
    name="Coal bag",
    facts=Facts(form=Form.SACK, mass=Measured.rectangular(25, 0.5, Origin.LABEL), hazards=frozenset({Hazard.DUSTY})),
    cautions=("Dusty: wrap it first.",),
)
LOCK_STEPS = Thing(
    id="lock_steps",
    kind_id="stone_steps",
    name="Lock steps",
    facts=Facts(form=Form.STAIRS, flight=Flight(count=7, rise_cm=19), fixed=True, outdoors=True),
    place_ids=("towpath",),
    own_check=OwnCheck(date=MONDAY, took_kg=110),
)
STOOL = Thing(
    id="stool",
    kind_id="stool",
    name="Stool",
    facts=Facts(form=Form.SEAT, surface_cm=44),
    place_ids=("cabin", "towpath"),
)
LOCK_WALK = OwnEntry(
    kind=OwnKind.EXERCISE,
    id="own_lock_walk",
    name="Lock walk",
    table='{"body":{"basis":"ordinal","share":0.6},"dose":"time","level":2,"muscles":{"quads":1.0},'
    '"patterns":{"walk":1.0},"posture":"moving","typical":[60.0,300.0]}',
)
FENDER = OwnEntry(
    kind=OwnKind.THING,
    id="own_rope_fender",
    name="Rope fender",
    table='{"common":0,"cost":1,"form":"bag","icon":"other","mass_kg":[4.5,0.5]}',
)
WISHES = WeekWishes(
    days=(
        DayWish(weekday=1, minutes=50, place_id="cabin", start=datetime.time(18, 15)),
        DayWish(weekday=5, minutes=60, place_id="towpath"),
        DayWish(weekday=6, minutes=30),
    ),
    goals=Goals(strength=0.8),
    bans=("burpee",),
    pins=(
        Pin(weekday=5, exercise_id="loaded_walk", dose=PinnedDose(sets=3, work_s=600, rest_s=(60, 90))),
        Pin(weekday=6, kind="rest"),
    ),
)
WEEK = SavedWeek(starts=MONDAY, version=1, plan='{"days":[]}')
BLOCK = SavedBlock(starts=MONDAY, version=1, plan='{"weeks":[]}')
SESSION = LoggedSession(
    id="s1",
    person_id="ines",
    date=MONDAY,
    minutes=48.5,
    effort=6,
    note="Cold cabin.\nStopped a set early.",
    sets=(
        LoggedSet(exercise_id="goblet_squat", reps=8, load_kg=14.9, u95_kg=0.4, effort=7.5),
        LoggedSet(exercise_id="plank", time_s=40, note="on the mat"),
        LoggedSet(exercise_id="loaded_walk", distance_m=800, load_kg=10),
    ),
)
TEST = LoggedTest(id="t1", person_id="ines", test_id="squat_load", date=MONDAY, result=17, beside=(("load_kg", 14.9),))
DIPPER = House(
    name="Dipper",
    places=(CABIN, TOWPATH),
    things=(WATER_CARRIER, COAL_BAG, LOCK_STEPS, STOOL),
    people=(INES, TOMAS),
    fills=("water", "coal"),
    cup_l=0.3,
    own=(LOCK_WALK, FENDER),
)
DIPPER_STEP_BY_STEP: tuple[Command, ...] = (
    ChangeHouse(HouseFacts(name="Dipper", fills=("water", "coal"), cup_l=0.3)),
    *(AddOwn(entry) for entry in DIPPER.own),
    *(AddPlace(place) for place in DIPPER.places),
    *(AddPerson(person) for person in DIPPER.people),
    *(AddThing(thing) for thing in DIPPER.things),
    SetWishes("ines", WISHES),
    SaveWeek("ines", WEEK),
    SaveBlock("ines", BLOCK),
    AddSession(SESSION),
    AddTest(TEST),
)


def open_record(data_dir: Path) -> Record:
    """The record in this folder, made if it is missing."""
    return Record.open(DataFolder(data_dir), clock)


def fill_with_dipper(record: Record) -> None:
    """Everything of the Dipper, command by command."""
    for command in DIPPER_STEP_BY_STEP:
        record.do(command)
