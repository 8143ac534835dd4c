"""Body-relative geometry: the knee at a step, the reach under a ceiling, and the heights a thing works at.

Segment lengths are fractions of stature from Drillis & Contini 1966 (thigh 0.245, shank 0.246) as commonly redrawn.
"""

from __future__ import annotations

import math

from core.exercise.model import Use
from core.house.model import SEAT_OF_STATURE, Person, Place
from core.things.model import Thing

THIGH_OF_STATURE = 0.245
SHANK_OF_STATURE = 0.246
HELD_ABOVE_HANDS_CM = 10.0
"""How far a load pressed overhead sticks up above the fingertips; assumed."""
HIGHEST_FLIGHT_STEPS = 3


def knee_angle_deg(step_cm: float, person: Person) -> float:
    """Bend of the knee (0 straight) with the foot flat on a step and the other foot on the floor, hip above the foot.

    The hip stands at thigh + shank over the floor on the straight rear leg and so (thigh + shank - step) over the
    stepping foot; the law of cosines gives the angle between thigh and shank.
    """
    thigh, shank = THIGH_OF_STATURE * person.height_cm, SHANK_OF_STATURE * person.height_cm
    apart = min(max(thigh + shank - step_cm, abs(thigh - shank)), thigh + shank)
    inner = (thigh**2 + shank**2 - apart**2) / (2 * thigh * shank)
    return 180.0 - math.degrees(math.acos(min(max(inner, -1.0), 1.0)))


def ceiling_reason(person: Person, place: Place, *, seated: bool) -> str:
    """Why a load can't go overhead here, or an empty string."""
    if place.ceiling_cm is None:
        return ""
    reach_cm = person.reach_cm
    if seated:
        reach_cm -= (0.52 - SEAT_OF_STATURE) * person.height_cm
    if reach_cm + HELD_ABOVE_HANDS_CM <= place.ceiling_cm:
        return ""
    seat = " seated" if seated else ""
    return f"{place.name} is {place.ceiling_cm / 100:.2f} m high, you reach {reach_cm / 100:.2f} m{seat}"


def working_heights(thing: Thing, use: Use) -> tuple[float, ...]:
    """Heights (cm) at which a thing can serve the use: its surface, or one, two or three steps of a flight."""
    facts = thing.facts
    if facts.flight is not None and use in (Use.STEP, Use.HANDS, Use.FEET, Use.SIT):
        steps = min(facts.flight.count, HIGHEST_FLIGHT_STEPS)
        return tuple(facts.flight.rise_cm * number for number in range(1, steps + 1))
    if facts.surface_cm is not None:
        return (facts.surface_cm,)
    return (facts.height_cm,) if facts.height_cm else ()
