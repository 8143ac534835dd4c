"""The time of a session, exact to the second: sets, repetitions, rests, changes, pours.

A session's length is the plain sum of its steps, and the plan's minutes are that sum; nothing is rounded on the way.
"""

from __future__ import annotations

from core.effort.dose import Dose
from core.exercise.model import DoseKind, Exercise, Option, Sides

CHANGE_S = 30
"""From one movement to the next."""
REFILL_S = 60
"""A pour during the session: emptying or topping up one container, assumed."""
LONGER_S = {Option.SLOW_LOWERING: 2.0, Option.PAUSE: 2.0}
"""Seconds more for each repetition: lowering over four seconds instead of two, a pause of two seconds."""
CARRY_M_PER_S = 1.0
"""Pace of a short loaded carry with its turns; assumed."""
HEAVY_REST_S, USUAL_REST_S, SHORT_REST_S = 150, 90, 45
HEAVY_SHARE = 0.8
"""Rests: 3 min and more for maximal loads (ACSM 2009: 3 to 5 min), 1 to 2 min usual; here 150, 90 and 45 s."""


def middle(span: tuple[int, int]) -> float:
    """Middle of a (low, high) dose."""
    return (span[0] + span[1]) / 2


def set_seconds(exercise: Exercise, dose: Dose) -> float:
    """Seconds of work in one set, both sides where each side is worked in turn."""
    sides = 2 if exercise.sides is Sides.EACH else 1
    if dose.seconds is not None:
        return middle(dose.seconds) * sides
    if dose.distance_m is not None:
        return middle(dose.distance_m) / CARRY_M_PER_S * sides
    reps = middle(dose.reps) if dose.reps is not None else 0.0
    return reps * rep_seconds(exercise, dose) * sides


def rep_seconds(exercise: Exercise, dose: Dose) -> float:
    """Seconds of one repetition as the dose asks for it."""
    return exercise.rep_s + sum(LONGER_S.get(option, 0.0) for option in dose.options)


def rest_seconds(exercise: Exercise, dose: Dose) -> int:
    """Rest after a set."""
    if dose.share is not None and dose.share >= HEAVY_SHARE:
        return HEAVY_REST_S
    if exercise.dose is DoseKind.TIME or exercise.sides is Sides.EACH:
        return SHORT_REST_S
    return USUAL_REST_S


def block_seconds(exercise: Exercise, dose: Dose, rest_s: int) -> int:
    """All sets, the rests between them, and the change to the next movement."""
    work = dose.sets * set_seconds(exercise, dose)
    return round(work + (dose.sets - 1) * rest_s) + CHANGE_S
