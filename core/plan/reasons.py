"""Why a movement is in the week, in sentences: what it trains and how its level suits, who asked for it, its load."""

from __future__ import annotations

from core.effort.capacity import EXPERIENCE_PLACE
from core.effort.dose import Dose
from core.exercise.model import Exercise, Family
from core.exercise.strength import leading_muscle
from core.fit.model import Binding
from core.house.model import Experience
from core.plan.frame import IDEAL_LEVEL

FAMILY_WORDS: dict[Family, str] = {
    Family.SQUAT: "squat",
    Family.HINGE: "hinge",
    Family.LUNGE: "lunge",
    Family.PUSH_LEVEL: "level push",
    Family.PULL_LEVEL: "level pull",
    Family.PUSH_OVERHEAD: "overhead push",
    Family.PULL_OVERHEAD: "overhead pull",
    Family.CARRY: "carry",
    Family.TRUNK: "trunk work",
    Family.GAIT: "walking, running and climbing",
    Family.MOBILITY: "mobility",
}
EXPERIENCE_WORDS: dict[Experience, str] = {
    Experience.NEW: "someone new to it",
    Experience.SOME: "some experience",
    Experience.TRAINED: "someone trained",
}


def why_strength(exercise: Exercise, bound: Binding, dose: Dose, experience: Experience) -> tuple[str, ...]:
    """What it trains, how its level suits, the load, and what the dose has to say."""
    found = [f"Your {FAMILY_WORDS[exercise.family]}: level {exercise.level} of 5, {_suits(exercise, experience)}."]
    if bound.load is not None:
        found.append(f"{bound.load.mass.value:.1f} kg is the load this house makes nearest to the effort planned.")
    return (*found, *dose.notes)


def _suits(exercise: Exercise, experience: Experience) -> str:
    off = exercise.level - IDEAL_LEVEL[EXPERIENCE_PLACE[experience]]
    who = EXPERIENCE_WORDS[experience]
    if off == 0:
        return f"right for {who}"
    return f"a step up for {who}" if off > 0 else f"on the easy side for {who}"


def why_short(exercise: Exercise, *, hard: bool) -> str:
    """Why a station of an interval day, or a position of a mobility day."""
    if hard:
        return "Short and hard: it trains heart and lungs in little time."
    return f"It moves and eases your {leading_muscle(exercise).value.replace('_', ' ')}."


def who_asked(*, pinned: bool) -> tuple[str, ...]:
    """A sentence for what the person asked for."""
    return ("You pinned it to this day.",) if pinned else ()
