"""Things, people and places for the tests; the people and the boat are invented."""

from __future__ import annotations

import datetime
from dataclasses import replace
from functools import lru_cache
from typing import Any

from catalog.things import load_kinds
from core.exercise.model import Use
from core.house.model import Person, Place
from core.quantity import Measured
from core.things.affordance import Affordance, grade_use
from core.things.model import Closure, Facts, Form, Handle, OwnCheck, RatingOrigin, Thing, ThingKind

INES = Person(id="ines", name="Ines", body_mass_kg=68.0, height_cm=171.0)
CABIN = Place(id="cabin", name="Cabin", ceiling_cm=193.0)
HALL = Place(id="hall", name="Hall", ceiling_cm=320.0)
TOWPATH = Place(id="towpath", name="Towpath", outdoors=True, walk_m=500.0)
WET_TOWPATH = replace(TOWPATH, wet=True)

JUG = Facts(
    form=Form.VESSEL,
    mass=Measured(4.0),
    length_cm=15.0,
    width_cm=15.0,
    height_cm=25.0,
    handle=Handle.MOULDED,
    grip_cm=2.5,
    closure=Closure.SEALED,
)
SACK = Facts(form=Form.SACK, mass=Measured(10.0), length_cm=62.0, width_cm=38.0, height_cm=12.0, closure=Closure.SEALED)
CHAIR = Facts(form=Form.SEAT, mass=Measured(5.0), length_cm=45.0, width_cm=45.0, height_cm=88.0, surface_cm=44.0)
BOX_STEP = Facts(form=Form.STEP, length_cm=40.0, width_cm=30.0, height_cm=30.0, surface_cm=30.0)
BEAM = Facts(form=Form.BAR, length_cm=110.0, width_cm=4.0, height_cm=4.0, surface_cm=225.0, handle=Handle.BAR)


def a_thing(facts: Facts, *, count: int = 1, own_check: OwnCheck | None = None, **changes: Any) -> Thing:
    """A thing with these facts, some of them changed."""
    return Thing(id="it", kind_id="kind", name="It", count=count, facts=replace(facts, **changes), own_check=own_check)


def graded(facts: Facts, use: Use, *, count: int = 1, own_check: OwnCheck | None = None, **changes: Any) -> Affordance:
    """How Ines is told it serves the use, nowhere in particular."""
    return grade_use(a_thing(facts, count=count, own_check=own_check, **changes), use, INES)


def rated(kg: float, origin: RatingOrigin = RatingOrigin.LABEL) -> dict[str, Any]:
    """The two facts of a rating."""
    return {"rating_kg": kg, "rating_origin": origin}


def checked(kg: float) -> OwnCheck:
    """Ines's own check, dated."""
    return OwnCheck(date=datetime.date(2026, 11, 3), took_kg=kg)


@lru_cache(maxsize=1)
def shipped() -> dict[str, ThingKind]:
    """The shipped kinds by id."""
    return {kind.id: kind for kind in load_kinds()}


def owned(kind_id: str, count: int = 1) -> Thing:
    """Some of a shipped kind."""
    kind = shipped()[kind_id]
    return Thing(id=kind.id, kind_id=kind.id, name=kind.name, count=count, facts=kind.facts, fills=kind.fills)
