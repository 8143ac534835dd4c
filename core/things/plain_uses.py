"""Rules for cloth, bands, sticks, pads, places to move and gym gear: mostly a question of form and room."""

from __future__ import annotations

from collections.abc import Iterator

from core.things.grades import Case, Finding, fair, no, note, poor
from core.things.model import Form, Hazard

LIE_DOWN_M2 = 2.0
SHORTEST_TOWEL_CM = 70.0
SHORTEST_STICK_CM = 80.0
HOME_RISER_CM = 19.7
"""Highest riser of a home stair, 7 3/4 in (International Residential Code 2018, R311.7.5.1)."""
STEEP_RISER_CM = 24.1
"""Highest riser of a spiral stair, 9 1/2 in (International Building Code 1011.10)."""


def suits(case: Case) -> Iterator[Finding]:
    """The form alone decides."""
    del case
    return iter(())


def towel(case: Case) -> Iterator[Finding]:
    """To pull on with both hands."""
    if case.facts.length_cm < SHORTEST_TOWEL_CM:
        yield poor("too short to hold at both ends")
    if case.facts.form is Form.ROPE:
        yield fair("a rope is thin in the hands")


def stick(case: Case) -> Iterator[Finding]:
    """To hold in two hands along the back or overhead."""
    if case.facts.length_cm < SHORTEST_STICK_CM:
        yield poor("short for a wide grip")
    if case.facts.form is Form.BARBELL:
        yield fair("heavy for a stick")


def slider(case: Case) -> Iterator[Finding]:
    """To slide a foot or a hand on."""
    if case.place is not None and case.place.outdoors:
        yield no("it needs a smooth floor indoors")
    if case.facts.form is Form.CLOTH:
        yield fair("fold it, and only on a smooth floor")


def pad(case: Case) -> Iterator[Finding]:
    """To kneel or lie on."""
    if case.facts.form is Form.CLOTH:
        yield fair("fold it several times")


def floor(case: Case) -> Iterator[Finding]:
    """To lie and kneel on."""
    area_m2 = case.facts.area_m2
    if 0 < area_m2 < LIE_DOWN_M2:
        yield poor(f"{area_m2:.1f} m² is tight to lie down")
    if case.facts.form is Form.ROUTE:
        yield fair("outdoor ground: put something under you")


def stairs(case: Case) -> Iterator[Finding]:
    """To walk or run up and down."""
    facts = case.facts
    if case.place is not None and case.place.wet and Hazard.SLIPPERY_WET in facts.hazards:
        yield no("slippery when wet: wait until it is dry")
    if facts.flight is None:
        yield poor("how many steps is not known: count them")
        return
    if facts.flight.count < 5:
        yield fair("few steps: you turn often")
    if facts.flight.rise_cm > STEEP_RISER_CM:
        yield poor("very steep: hold the rail, walk only")
    elif facts.flight.rise_cm > HOME_RISER_CM + 0.5:
        yield fair("steep: hold the rail")


def route(case: Case) -> Iterator[Finding]:
    """To walk, run or carry along."""
    facts = case.facts
    if facts.route_m <= 0:
        yield poor("how long it is is not known: pace it out")
    elif facts.route_m < 5:
        yield poor(f"{facts.route_m:.0f} m: you turn at once")
    elif facts.route_m < 20:
        yield fair(f"{facts.route_m:.0f} m: you turn often")
    if case.place is not None and case.place.wet and Hazard.SLIPPERY_WET in facts.hazards:
        yield poor("slippery when wet")


def rings(case: Case) -> Iterator[Finding]:
    """To hang or row from."""
    if case.facts.rating_kg is None:
        yield no("hanging needs a load rating")
        return
    needed_kg = case.needed_kg(1.0)
    if needed_kg is not None and needed_kg > case.facts.rating_kg:
        yield no(f"rated {case.facts.rating_kg:.0f} kg: this puts {needed_kg:.0f} kg on it")
    yield note("only on a beam or bar rated for it")
