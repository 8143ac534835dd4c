"""Body-relative geometry: head room under a ceiling, and the heights a thing works at.

The bend of the knee at a step and the reach with a load overhead are worked out in `core.things`.
"""

from __future__ import annotations

from core.exercise.model import Demand, Exercise, Pattern, Posture, Use
from core.house.model import SHANK_TOP_OF_STATURE, Person, Place
from core.things.bodies import CLEARANCE_CM, SITTING_DROP_OF_STATURE
from core.things.model import Thing

HIGHEST_FLIGHT_STEPS = 3
LEAVES_THE_FLOOR = 2
"""From this impact up a jump really is one; below it the feet step."""
JUMP_CM = 25.0
"""How far the head rises in a jump; judgement, on the safe side for the small jumps of home training."""


def reach_cm(exercise: Exercise, person: Person) -> float:
    """Highest point the exercise itself reaches, hands empty: the fingertips where they go overhead, else the head."""
    if exercise.posture is Posture.FLOOR:
        return _reach_from_floor_cm(exercise, person)
    lowered_cm = SITTING_DROP_OF_STATURE * person.height_cm if exercise.posture is Posture.SEATED else 0.0
    jump_cm = JUMP_CM if exercise.main_pattern is Pattern.JUMP and exercise.impact >= LEAVES_THE_FLOOR else 0.0
    top_cm = person.reach_cm if exercise.reach_over_head else person.height_cm
    return top_cm - lowered_cm + jump_cm


def _reach_from_floor_cm(exercise: Exercise, person: Person) -> float:
    """Kneeling takes the shank off; a body without a load that reaches over head from the floor stands on its hands."""
    if not exercise.reach_over_head:
        return 0.0
    if Demand.KNEELING in exercise.demands:
        return person.reach_cm - SHANK_TOP_OF_STATURE * person.height_cm
    return person.reach_cm if exercise.load_need is None else 0.0


def ceiling_reason(exercise: Exercise, person: Person, place: Place) -> str:
    """Why the ceiling is in the way of the movement itself, or an empty string."""
    if place.ceiling_cm is None:
        return ""
    top_cm = reach_cm(exercise, person)
    does = "reach" if exercise.reach_over_head else "jump to"
    if does == "jump to" and exercise.main_pattern is not Pattern.JUMP:
        return ""
    if top_cm + CLEARANCE_CM <= place.ceiling_cm:
        return ""
    seated = " seated" if exercise.posture is Posture.SEATED else ""
    return f"{place.name} is {place.ceiling_cm / 100:.2f} m high, you {does} {top_cm / 100:.2f} m{seated}"


def too_high_to_stand_on(exercise: Exercise, person: Person, place: Place, step_cm: float) -> bool:
    """Whether head or hands would meet the ceiling on a step of this height."""
    return place.ceiling_cm is not None and reach_cm(exercise, person) + step_cm + CLEARANCE_CM > place.ceiling_cm


def working_heights(thing: Thing, use: Use) -> tuple[float, ...]:
    """Heights (cm) at which a thing can serve the use: its surface, or one, two or three steps of a flight."""
    facts = thing.facts
    if facts.flight is not None and use in (Use.STEP, Use.HANDS, Use.FEET, Use.SIT):
        steps = min(facts.flight.count, HIGHEST_FLIGHT_STEPS)
        return tuple(facts.flight.rise_cm * number for number in range(1, steps + 1))
    if facts.surface_cm is not None:
        return (facts.surface_cm,)
    return (facts.height_cm,) if facts.height_cm else ()
