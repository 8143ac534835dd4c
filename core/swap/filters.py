"""Hard filters of a swap. Each returns the reason an exercise is left out, or an empty string."""

from __future__ import annotations

from core.effort.capacity import EXPERIENCE_PLACE
from core.exercise.model import Demand, Exercise
from core.fit.setting import Setting
from core.house.model import Person
from core.swap.model import Cause, SwapRequest

HARDEST_LEVEL = (3, 4, 5)
"""The highest level offered to someone new, with some experience, trained (judgement)."""
DEMAND_WORDS: dict[Demand, str] = {
    Demand.DEEP_KNEE_BEND: "a deep knee bend",
    Demand.LOADED_WRIST_EXTENSION: "weight on a bent-back wrist",
    Demand.OVERHEAD_REACH: "reaching overhead",
    Demand.DEEP_SHOULDER_BEND: "a deep shoulder bend",
    Demand.LOADED_SPINE_BEND: "a loaded bend of the back",
    Demand.KNEELING: "kneeling",
    Demand.LYING_DOWN: "lying down",
    Demand.FLOOR_TRANSFER: "getting down to the floor and up",
    Demand.HANGING: "hanging by the hands",
    Demand.STRONG_GRIP: "a strong grip",
    Demand.ONE_LEG_BALANCE: "balance on one leg",
    Demand.IMPACT: "jumping or landing",
    Demand.BREATH_HOLDING: "a near-maximal brace",
}
QUIET_NOISE = 1
SMALL_FLOOR_M2 = 1.5


def spared(exercise: Exercise, spare: frozenset[Demand]) -> str:
    """The first demand (in the order of `Demand`) that the person asks to spare."""
    for demand in Demand:
        if demand in spare and demand in exercise.demands:
            return f"it asks for {DEMAND_WORDS[demand]}, which you spare"
    return ""


def too_skilled(exercise: Exercise, asked: Exercise, person: Person) -> str:
    """Above the level this person is offered, unless the movement asked for is as hard."""
    highest = max(HARDEST_LEVEL[EXPERIENCE_PLACE[person.experience]], min(asked.level, 4) if not asked.needs_gym else 0)
    return f"it is a level {exercise.level} movement: work up to it" if exercise.level > highest else ""


def noise_reason(exercise: Exercise, setting: Setting, most_noise: int, cause: Cause) -> str:
    """Too loud for the request, or for neighbours below this place."""
    allowed = min(most_noise, QUIET_NOISE if setting.place.neighbours else 3)
    if cause is Cause.TOO_LOUD:
        if exercise.impact > 0:
            return "it lands with impact"
        allowed = min(allowed, QUIET_NOISE)
    if exercise.noise <= allowed:
        return ""
    place = f", and {setting.place.name} has neighbours" if setting.place.neighbours else ""
    return f"it makes too much noise{place}"


def cause_reason(exercise: Exercise, request: SwapRequest) -> str:
    """What the cause itself rules out: a harder one when it is too hard, the same when it hurts, a big floor."""
    asked, cause = request.asked, request.cause
    if cause is Cause.TOO_HARD and exercise.level > asked.level and exercise.id != asked.id:
        return f"it is harder (level {exercise.level}) than {asked.name.lower()} (level {asked.level})"
    if cause is Cause.TOO_EASY and exercise.level < asked.level:
        return f"it is easier (level {exercise.level}) than {asked.name.lower()} (level {asked.level})"
    if cause is Cause.HURTS and exercise.id == asked.id:
        return "it is the movement that hurts"
    if cause is Cause.NO_ROOM and exercise.floor_m2 > SMALL_FLOOR_M2:
        return f"it needs {exercise.floor_m2:.1f} m² of floor"
    return ""


def reason_to_leave_out(exercise: Exercise, request: SwapRequest, setting: Setting) -> str:
    """The first reason why `exercise` can't be an answer, before looking for things; empty when there is none."""
    spare = request.spare | setting.person.spares
    return (
        spared(exercise, spare)
        or cause_reason(exercise, request)
        or noise_reason(exercise, setting, request.most_noise, request.cause)
        or too_skilled(exercise, request.asked, setting.person)
    )
