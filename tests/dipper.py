"""An invented household for tests: two people on the narrowboat Dipper, their places and things, made by hand."""

from __future__ import annotations

import datetime
from dataclasses import replace

from core.house.model import Experience, House, Person, Place, QuietHours
from core.mass.model import Container, StraightBox, Tapered, shape_for_capacity
from core.quantity import Measured, Origin
from core.things.model import (
    Closure,
    Facts,
    Flight,
    Form,
    Handle,
    Hazard,
    Hold,
    RatingOrigin,
    Rigidity,
    Thing,
)

CABIN = Place(id="cabin", name="Cabin", ceiling_cm=193.0, floor_m2=3.0, walk_m=5.0, neighbours=True)
TOWPATH = Place(
    id="towpath",
    name="Towpath",
    floor_m2=20.0,
    walk_m=2000.0,
    outdoors=True,
    quiet=QuietHours(start=datetime.time(20), end=datetime.time(7)),
)
INES = Person(id="ines", name="Ines", body_mass_kg=68.0, height_cm=171.0, experience=Experience.SOME)
TOMAS = Person(id="tomas", name="Tomas", body_mass_kg=84.0, height_cm=183.0)


def carrier(count: int = 2) -> Thing:
    """A 25 L water carrier with straight sides and a moulded handle."""
    proportions = StraightBox(length_cm=29.0, width_cm=24.0, corner_radius_cm=4.0, full_height_cm=40.0)
    container = Container(
        shape=shape_for_capacity(proportions, 26.0),
        nominal_l=Measured.rectangular(25.0, 0.25, Origin.LABEL),
        brimful_l=Measured.rectangular(26.0, 0.6),
        tare_kg=Measured.rectangular(1.1, 0.2),
    )
    facts = Facts(
        form=Form.VESSEL,
        container=container,
        length_cm=30.0,
        width_cm=25.0,
        height_cm=46.0,
        handle=Handle.MOULDED,
        closure=Closure.SEALED,
    )
    return Thing(
        id="carrier", kind_id="water_carrier", name="Water carrier", count=count, facts=facts, fills=("water",)
    )


def bucket() -> Thing:
    """A 9 L mop bucket with a wire handle."""
    container = Container(
        shape=shape_for_capacity(Tapered(bottom_cm=20.0, top_cm=28.0, full_height_cm=25.0), 10.0),
        nominal_l=Measured.rectangular(9.0, 0.3),
        brimful_l=Measured.rectangular(10.0, 0.6),
        tare_kg=Measured.rectangular(0.45, 0.1),
    )
    facts = Facts(
        form=Form.VESSEL,
        container=container,
        length_cm=28.0,
        width_cm=28.0,
        height_cm=26.0,
        handle=Handle.BAIL,
        closure=Closure.OPEN,
    )
    return Thing(id="bucket", kind_id="mop_bucket", name="Mop bucket", facts=facts, fills=("water",))


def tins(count: int = 6) -> Thing:
    """Bean tins of 400 g."""
    facts = Facts(
        form=Form.TIN,
        mass=Measured(0.47, 0.01, Origin.LABEL),
        length_cm=7.5,
        width_cm=7.5,
        height_cm=11.0,
        closure=Closure.SEALED,
        grip_cm=7.5,
        pack_l=0.65,
    )
    return Thing(id="tins", kind_id="bean_tin", name="Bean tin", count=count, facts=facts)


def coal() -> Thing:
    """A 10 kg coal bag without handles."""
    facts = Facts(
        form=Form.SACK,
        mass=Measured(10.2, 0.05, Origin.SCALE),
        length_cm=62.0,
        width_cm=38.0,
        height_cm=12.0,
        closure=Closure.SEALED,
        rigidity=Rigidity.SOFT,
        hazards=frozenset({Hazard.DUSTY, Hazard.SPLITS}),
    )
    return Thing(id="coal", kind_id="coal_bag", name="Coal bag", facts=facts)


def daypack() -> Thing:
    """A 28 L daypack."""
    facts = Facts(
        form=Form.BAG,
        mass=Measured(1.1, 0.1),
        hold=Hold(volume_l=28.0, limit_kg=16.0),
        length_cm=48.0,
        width_cm=30.0,
        height_cm=20.0,
        handle=Handle.STRAPS,
        closure=Closure.SEALED,
        rigidity=Rigidity.SOFT,
    )
    return Thing(id="daypack", kind_id="daypack", name="Daypack", facts=facts)


def steps() -> Thing:
    """Seven lock steps of 19 cm on the towpath."""
    facts = Facts(
        form=Form.STAIRS,
        flight=Flight(count=7, rise_cm=19.0),
        fixed=True,
        outdoors=True,
        rating_origin=RatingOrigin.BUILDING,
        rating_kg=300.0,
        length_cm=200.0,
        width_cm=100.0,
        height_cm=133.0,
    )
    return Thing(id="steps", kind_id="lock_steps", name="Lock steps", facts=facts, place_ids=("towpath",))


def stool() -> Thing:
    """A folding stool without a rating."""
    facts = Facts(
        form=Form.SEAT,
        mass=Measured(2.5, 0.3),
        surface_cm=44.0,
        length_cm=40.0,
        width_cm=30.0,
        height_cm=44.0,
        hazards=frozenset({Hazard.FOLDING}),
    )
    return Thing(id="stool", kind_id="folding_stool", name="Folding stool", facts=facts)


def beam() -> Thing:
    """A stern beam rated for 150 kg by its owner."""
    facts = Facts(
        form=Form.BAR,
        surface_cm=118.0,
        fixed=True,
        rating_kg=150.0,
        rating_origin=RatingOrigin.LABEL,
        length_cm=150.0,
        width_cm=8.0,
        height_cm=8.0,
        grip_cm=5.0,
    )
    return Thing(id="beam", kind_id="sturdy_beam", name="Stern beam", facts=facts, place_ids=("towpath",))


def bench() -> Thing:
    """A fixed cabin bench."""
    facts = Facts(
        form=Form.SEAT,
        surface_cm=45.0,
        fixed=True,
        length_cm=120.0,
        width_cm=40.0,
        height_cm=45.0,
        rating_kg=200.0,
        rating_origin=RatingOrigin.LABEL,
    )
    return Thing(id="bench", kind_id="bench", name="Cabin bench", facts=facts, place_ids=("cabin",))


def dipper() -> House:
    """The whole invented household."""
    things = (carrier(), bucket(), tins(), coal(), daypack(), steps(), stool(), beam(), bench())
    return House(name="Narrowboat Dipper", places=(CABIN, TOWPATH), things=things, people=(INES, TOMAS))


def without(house: House, *thing_ids: str) -> House:
    """The house less some things."""
    return replace(house, things=tuple(thing for thing in house.things if thing.id not in thing_ids))
