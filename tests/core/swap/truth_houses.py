"""The invented houses, places and people the written cases are about, made from the catalog's kinds of things."""

from __future__ import annotations

import datetime
from dataclasses import replace

from catalog.load import load_catalog
from core.house.model import Experience, House, Person, Place
from core.quantity import Measured
from core.swap.additions import as_thing
from core.things.model import OwnCheck, Thing
from tests.dipper import TOWPATH, dipper

CATALOG = load_catalog()
PLACES = {
    place.id: place
    for place in (
        Place(id="room", name="Room", ceiling_cm=245.0, floor_m2=6.0, walk_m=5.0),
        Place(id="upstairs", name="Upstairs room", ceiling_cm=245.0, floor_m2=6.0, walk_m=5.0, neighbours=True),
        Place(id="cabin", name="Cabin", ceiling_cm=193.0, floor_m2=4.0, walk_m=5.0),
        Place(id="hall", name="Hall", ceiling_cm=250.0, floor_m2=8.0, walk_m=12.0),
        Place(id="park", name="Park", floor_m2=50.0, walk_m=2000.0, outdoors=True),
        Place(id="garden", name="Garden", floor_m2=30.0, walk_m=30.0, outdoors=True),
        TOWPATH,
    )
}
PEOPLE = {
    person.id: person
    for person in (
        Person(id="usual", name="Usual", body_mass_kg=75.0, height_cm=175.0, experience=Experience.SOME),
        Person(id="new", name="New", body_mass_kg=72.0, height_cm=170.0, experience=Experience.NEW),
        Person(id="elder", name="Elder", body_mass_kg=52.0, height_cm=158.0, experience=Experience.NEW),
        Person(id="heavy", name="Heavy", body_mass_kg=130.0, height_cm=180.0, experience=Experience.NEW),
        Person(id="trained", name="Trained", body_mass_kg=80.0, height_cm=180.0, experience=Experience.TRAINED),
    )
}
CHAIR = {"dining_chair": 1}
OWNED: dict[str, dict[str, int]] = {
    "empty": {},
    "chair": CHAIR,
    "flat": {
        "dining_chair": 2,
        "kitchen_table": 1,
        "backpack": 1,
        "water_carrier_ten": 2,
        "bottle_one_and_half": 4,
        "book": 8,
        "tin_food": 6,
        "towel": 2,
        "cushion": 1,
    },
    "dumbbells": {"dumbbell": 2, "dumbbell_light": 2, "dining_chair": 1, "mat": 1},
    "stairs": {"stairs": 1, "dining_chair": 1, "backpack": 1, "bottle_one_and_half": 4, "towel": 1},
    "bar": {"pull_up_bar_wall": 1, "dining_chair": 1, "towel": 1, "backpack": 1, "bottle_one_and_half": 4},
    "band": {"resistance_band": 1, "dining_chair": 1, "towel": 1},
    "garden": {"sandbag": 1, "bucket_ten": 2},
    "bottles": {"bottle_one_litre": 2, "backpack": 1, "book": 4},
    "bucket": {"bucket_ten": 1},
    "chemical": {"detergent_jug": 2, "fuel_can": 1},
    "folding": {"folding_stool": 1},
    "checked_frame": {"door_frame": 1},
}
TOOK_KG = 60.0
DUMBBELL = Measured(16.0, 0.1)


def house_named(name: str) -> House:
    """One of the houses of the written cases."""
    if name == "dipper":
        return dipper()
    things = tuple(_owned(kind_id, count) for kind_id, count in sorted(OWNED[name].items()))
    return House(name=name, things=things)


def _owned(kind_id: str, count: int) -> Thing:
    thing = replace(as_thing(CATALOG.kind_by_id[kind_id], count), id=kind_id)
    if kind_id == "dumbbell":
        return replace(thing, facts=replace(thing.facts, mass=DUMBBELL))
    if kind_id != "door_frame":
        return thing
    return replace(thing, own_check=OwnCheck(date=datetime.date(2026, 11, 3), took_kg=TOOK_KG))
