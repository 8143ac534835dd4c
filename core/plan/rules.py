"""Names of the rules that can be left out, and small questions about candidates that the model asks."""

from __future__ import annotations

from core.exercise.model import Family
from core.plan.frame import FEWEST_BLOCKS
from core.plan.menu import Candidate
from core.plan.model import DayKind, FillState
from core.plan.problem import DayChoice


def minutes_rule(weekday: int) -> str:
    """Name of the rule that holds a day to its minutes."""
    return f"minutes:{weekday}"


def pin_rule(index: int) -> str:
    """Name of the rule that keeps a pin."""
    return f"pin:{index}"


def family_of(candidate: Candidate) -> str:
    """What a day has at most once: a family of strength work, any other movement by itself."""
    return candidate.exercise.family if candidate.kind is DayKind.STRENGTH else candidate.exercise.id


def fits_alone(day: DayChoice, kind: DayKind) -> bool:
    """Whether the shortest day of this kind fits the minutes."""
    menu = day.menus.get(kind, ())
    shortest: dict[str, int] = {}
    for candidate in menu:
        name = family_of(candidate)
        shortest[name] = min(candidate.seconds, shortest.get(name, candidate.seconds))
    fewest = sorted(shortest.values())[: FEWEST_BLOCKS[kind]]
    return bool(menu) and sum(fewest) + day.fixed_s <= day.limit_s


def is_strength_of(candidate: Candidate, family: Family) -> bool:
    """Whether it is strength work of the family."""
    return candidate.kind is DayKind.STRENGTH and candidate.exercise.family is family


def same(candidate: Candidate, exercise_id: str, sets: int, states: tuple[FillState, ...]) -> bool:
    """Whether it is this movement with as many sets at the same fills."""
    return candidate.exercise.id == exercise_id and candidate.dose.sets == sets and candidate.states == states
