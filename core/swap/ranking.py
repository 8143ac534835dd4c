"""How close an answer comes, in parts, and the order of the answers."""

from __future__ import annotations

from core.effort.dose import Dose
from core.exercise.model import Exercise
from core.exercise.strength import carries_over, is_strength
from core.fit.model import Binding
from core.fit.setting import GRADE_PENALTY_S
from core.swap.aim import Aim
from core.swap.closeness import muscle_closeness, pattern_closeness, set_up_closeness
from core.swap.model import CAUSE_WEIGHTS, CLEARLY_WORSE, Answer, Closeness, SwapRequest

FIGURES = 9
"""Closeness is compared to so many decimals, so that rounding never decides between equals."""


def closeness_of(exercise: Exercise, bound: Binding, dose: Dose, request: SwapRequest, aim: Aim) -> Closeness:
    """The parts of closeness and their weighted total."""
    weights, asked = CAUSE_WEIGHTS[request.cause], request.asked
    pattern, muscles = pattern_closeness(asked, exercise), muscle_closeness(asked, exercise)
    effort = max(0.0, dose.reachable - weights.level_step * abs(exercise.level - aim.level))
    set_up = set_up_closeness(_awkward_s(bound))
    total = weights.pattern * pattern + weights.muscles * muscles + weights.effort * effort + weights.set_up * set_up
    if is_strength(asked) and carries_over(exercise) is not carries_over(asked):
        total = max(0.0, total - weights.other_kind)
    return Closeness(total=total, pattern=pattern, muscles=muscles, effort=effort, set_up=set_up)


def _awkward_s(bound: Binding) -> float:
    """Seconds to set up, a poor grip counting as time too."""
    return bound.set_up_s + (0.0 if bound.load_grade is None else GRADE_PENALTY_S[bound.load_grade])


def by_closeness(answer: Answer, asked: Exercise) -> tuple[float, str]:
    """Sorts answers: the closest first, the movement asked for ahead unless clearly worse, ties by id."""
    ahead = CLEARLY_WORSE if answer.exercise.id == asked.id else 0.0
    return -round(answer.closeness.total + ahead, FIGURES), answer.exercise.id
