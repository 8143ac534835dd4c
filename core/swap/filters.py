"""Hard filters of a swap. Each returns the reason an exercise is left out, or an empty string."""

from __future__ import annotations

from core.effort.capacity import EXPERIENCE_PLACE
from core.effort.dose import Dose
from core.exercise.model import Demand, Exercise, Use
from core.fit.setting import Setting
from core.house.model import Person, Place
from core.swap.aim import Aim
from core.swap.model import Cause, Ground, SwapRequest

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
LOUDEST = 3
QUIET_NOISE = 1
MAT_M2, LEAST_FLOOR_M2 = 2.0, 1.0
"""Without room a mat's size is taken for granted, or half a square metre less than was asked for."""
FEWEST_REPS_OFFERED = 1
LEAST_STEP = 0.05
"""How much lighter (heavier) than what is too hard (easy) an answer must be, as a share of it."""


def spared(exercise: Exercise, spare: frozenset[Demand]) -> str:
    """The first demand (in the order of `Demand`) that the person asks to spare."""
    if spare.isdisjoint(exercise.demands):
        return ""
    first = next(demand for demand in Demand if demand in spare and demand in exercise.demands)
    return f"it asks for {DEMAND_WORDS[first]}, which you spare"


def highest_level(person: Person) -> int:
    """The highest level this person is offered."""
    return HARDEST_LEVEL[EXPERIENCE_PLACE[person.experience]]


def too_skilled(exercise: Exercise, request: SwapRequest, person: Person) -> str:
    """Above the level this person is offered, unless they have mastered one as hard, or find one below too easy."""
    asked = request.asked
    mastered = not asked.needs_gym and request.cause is not Cause.TOO_HARD
    trained_to = min(asked.level, 4) + (request.cause is Cause.TOO_EASY) if mastered else 0
    highest = max(highest_level(person), trained_to)
    return f"it is a level {exercise.level} movement: work up to it" if exercise.level > highest else ""


def loudest_in(place: Place, *, quiet: bool = False) -> int:
    """The noise a place takes: little where neighbours live below, or in quiet hours."""
    return QUIET_NOISE if place.neighbours or quiet else LOUDEST


def noise_reason(exercise: Exercise, place: Place, most_noise: int) -> str:
    """Too loud for the request, or for neighbours of this place."""
    allowed = min(most_noise, loudest_in(place))
    if exercise.noise <= allowed:
        return ""
    near = f", and {place.name} has neighbours" if place.neighbours else ""
    return f"it makes too much noise{near}"


def cause_reason(exercise: Exercise, request: SwapRequest) -> str:
    """What the cause rules out: harder ones when it is too hard, the same when it hurts, loud ones, a big floor."""
    asked, cause = request.asked, request.cause
    if cause is Cause.TOO_HARD and exercise.level > asked.level:
        return f"it is harder (level {exercise.level}) than {asked.name.lower()} (level {asked.level})"
    if cause is Cause.TOO_EASY and exercise.level < asked.level:
        return f"it is easier (level {exercise.level}) than {asked.name.lower()} (level {asked.level})"
    if cause is Cause.HURTS and exercise.id == asked.id:
        return "it is the movement that hurts"
    if cause is Cause.TOO_LOUD:
        return _louder(exercise, asked)
    return _too_wide(exercise, asked) if cause is Cause.NO_ROOM else ""


def _louder(exercise: Exercise, asked: Exercise) -> str:
    """It lands, or makes as much noise as what is too loud; without a landing any step is quieter."""
    if exercise.impact > min(1, max(asked.impact - 1, 0)):
        return "it lands with impact"
    most_noise = QUIET_NOISE if asked.impact > 1 else min(QUIET_NOISE, max(asked.noise - 1, 0))
    return "it is hardly quieter" if exercise.noise > most_noise else ""


def _too_wide(exercise: Exercise, asked: Exercise) -> str:
    if any(Use.ROUTE in need.uses for need in exercise.needs):
        return "it travels, and you have no room"
    most_m2 = max(LEAST_FLOOR_M2, min(MAT_M2, asked.floor_m2 - 0.5))
    return f"it needs {exercise.floor_m2:.1f} m² of floor" if exercise.floor_m2 > most_m2 else ""


def reason_to_leave_out(exercise: Exercise, request: SwapRequest, setting: Setting) -> tuple[Ground, str] | None:
    """The first reason why `exercise` can't be an answer, before looking for things; None when there is none."""
    return (
        because(Ground.SPARED, spared(exercise, request.spare | setting.person.spares))
        or because(Ground.CAUSE, cause_reason(exercise, request))
        or because(Ground.NOISE, noise_reason(exercise, setting.place, request.most_noise))
        or because(Ground.LEVEL, too_skilled(exercise, request, setting.person))
    )


def because(ground: Ground, reason: str) -> tuple[Ground, str] | None:
    """The reason with its kind, or None where there is no reason."""
    return (ground, reason) if reason else None


def effort_reason(exercise: Exercise, dose: Dose, request: SwapRequest, aim: Aim) -> str:
    """Why the dose rules the exercise out: beyond the person, or no lighter (heavier) than what is too hard (easy).

    Where nothing can be counted against the asked load, the level must be lower (higher), as far as there is one.
    """
    if dose.share is not None and (dose.share >= 1 or (dose.reps is not None and dose.reps[1] <= FEWEST_REPS_OFFERED)):
        return "it takes about all you can do in one repetition"
    if request.cause not in (Cause.TOO_HARD, Cause.TOO_EASY):
        return ""
    sign = -1 if request.cause is Cause.TOO_HARD else 1
    does = "lighter" if sign < 0 else "heavier"
    if dose.share is not None and aim.asked is not None:
        least = 0.0 if exercise.id in aim.steps else LEAST_STEP
        near = sign * (dose.share / aim.asked - 1) < least - 1e-9
        return f"it is no {does} for you than {request.asked.name.lower()}" if near else ""
    last_level = 1 if sign < 0 else 5
    not_beyond = sign * (exercise.level - request.asked.level) <= 0
    if exercise.id == request.asked.id or (not_beyond and exercise.level != last_level):
        return f"nothing says it is {'easier' if sign < 0 else 'harder'} than {request.asked.name.lower()}"
    return ""
