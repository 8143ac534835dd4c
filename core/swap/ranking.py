"""How close an answer comes, in parts, and the order of the answers."""

from __future__ import annotations

import math
from dataclasses import replace

from core.effort.dose import Dose
from core.exercise.model import Basis, Demand, Exercise, Family, Pattern
from core.exercise.strength import carries_over, is_strength, leading_muscle, single_joint
from core.fit.model import Binding
from core.fit.setting import GRADE_PENALTY_S
from core.swap.aim import Aim
from core.swap.closeness import muscle_closeness, pattern_closeness, set_up_closeness
from core.swap.form import form_closeness, is_loaded
from core.swap.model import (
    BY_BOUT,
    BY_MUSCLE,
    CAUSE_WEIGHTS,
    CLEARLY_WORSE,
    SAME_MOVEMENT,
    Answer,
    Cause,
    Closeness,
    SwapRequest,
    Weights,
)

FIGURES = 9
"""Closeness is compared to so many decimals, so that rounding never decides between equals."""
WORKS, STRETCHES = 0.5, 0.3
"""A muscle works, or is stretched, from this weight up."""
ONLY_A_RANK = 0.85
"""Where no figure says what part of the body moves, how hard it is is a guess."""
DRILL = 0.1
"""With less of the asked effort in reach than this a movement drills the way and builds no strength."""
SAME_PATTERN, SAME_MUSCLES, SAME_FORM = 0.9, 0.88, 0.85
"""From these likenesses up it is the same movement with another thing."""
SPREAD = 5
"""So many answers are spread over different movements."""
SAME_FIRST = 2
TWIN, MOST_TWIN = 0.04, 0.08
"""What an answer gives way for one before it that is as good as the same with the same thing, and for several."""
TWIN_MUSCLES = 0.95


def weights_for(request: SwapRequest) -> Weights:
    """The weights of the cause; where one muscle is what is asked for, that muscle counts most."""
    weights, asked = CAUSE_WEIGHTS[request.cause], request.asked
    special = BY_MUSCLE if for_one_muscle(asked) else BY_BOUT if asked.family is Family.GAIT else None
    if special is None:
        return weights
    return replace(
        weights, pattern=special.pattern, muscles=special.muscles, effort=special.effort, set_up=special.set_up
    )


def for_one_muscle(asked: Exercise) -> bool:
    """Whether the movement asked for is there for one muscle."""
    return (is_strength(asked) and single_joint(asked)) or asked.main_pattern is Pattern.MOBILITY


def other_muscle(exercise: Exercise, asked: Exercise) -> bool:
    """Whether it leaves alone the one muscle that was asked for."""
    if not for_one_muscle(asked):
        return False
    lead, least = leading_muscle(asked), WORKS if is_strength(asked) else STRETCHES
    return all(weight < least for muscle, weight in exercise.muscles if muscle is lead)


def closeness_of(exercise: Exercise, bound: Binding, dose: Dose, request: SwapRequest, aim: Aim) -> Closeness:
    """The parts of closeness and their weighted total."""
    weights, asked = weights_for(request), request.asked
    loaded = bound.load is not None
    form = form_closeness(asked, exercise, loaded=loaded, spare=request.spare)
    kind = pattern_closeness(asked, exercise)
    pattern = kind * (1 - weights.form * (1 - form))
    muscles = muscle_closeness(asked, exercise)
    guessed = dose.share is not None and not loaded and exercise.body.basis is Basis.ORDINAL
    reachable = dose.reachable * (ONLY_A_RANK if guessed else 1.0)
    effort = max(0.0, reachable - _off_level(exercise.level, dose, aim, weights))
    set_up = set_up_closeness(_awkward_s(bound))
    total = weights.pattern * pattern + weights.muscles * muscles + weights.effort * effort + weights.set_up * set_up
    total = total * (1 - weights.staple - weights.next_step) + _beside(exercise, request, aim, weights)
    if is_strength(asked) and effort < DRILL:
        total -= weights.drill
    ahead = CLEARLY_WORSE if exercise.id == asked.id else 0.0
    same_kind = kind >= SAME_PATTERN and loaded is is_loaded(asked)
    if not ahead and same_kind and muscles >= SAME_MUSCLES and form >= SAME_FORM:
        ahead = SAME_MOVEMENT
    total = max(total, 0.0)
    return Closeness(total=total, pattern=pattern, muscles=muscles, effort=effort, set_up=set_up, ahead=ahead)


def _off_level(level: int, dose: Dose, aim: Aim, weights: Weights) -> float:
    """What the level costs: where a load tells the effort an easier movement is as good, only a harder one worse."""
    if dose.share is None:
        return weights.level_step_by_feel * abs(level - aim.level)
    return weights.level_step * max(0, level - aim.suits)


def _beside(exercise: Exercise, request: SwapRequest, aim: Aim, weights: Weights) -> float:
    """What moves the total beside the four parts."""
    asked = request.asked
    if exercise.id == asked.id:
        return weights.staple + weights.next_step
    found = weights.staple if exercise.staple else 0.0
    if is_strength(asked) and carries_over(exercise) is not carries_over(asked):
        found -= weights.other_kind
    found += weights.next_step * aim.steps.get(exercise.id, 0.0)
    if request.cause is Cause.HURTS and not request.spare and asked.demands:
        found -= weights.same_demands * _shared_demands(exercise, asked)
    return found


def _shared_demands(exercise: Exercise, asked: Exercise) -> float:
    alike: frozenset[Demand] = exercise.demands & asked.demands
    return len(alike) / len(asked.demands)


def _awkward_s(bound: Binding) -> float:
    """Seconds to set up, a poor grip counting as time too."""
    return bound.set_up_s + (0.0 if bound.load_grade is None else GRADE_PENALTY_S[bound.load_grade])


def by_closeness(answer: Answer) -> tuple[float, str]:
    """Sorts answers: the closest first, the movement asked for ahead unless clearly worse, ties by id."""
    return -round(answer.closeness.total + answer.closeness.ahead, FIGURES), answer.exercise.id


def spread(answers: list[Answer]) -> list[Answer]:
    """Answers in order of closeness, the first few spread over different movements.

    An answer with twins ahead of it gives way a little.
    """
    line, chosen = list(answers), list[Answer]()
    while line and len(chosen) < SPREAD:
        place = _next_in(line, chosen)
        chosen.append(line.pop(place))
    return chosen + line


def _next_in(line: list[Answer], chosen: list[Answer]) -> int:
    """The place in a sorted line of the answer that stands closest after giving way to its twins.

    Once the same movement stands there with two things, different movements are next.
    """
    best, least = 0, math.inf
    enough_alike = sum(one.closeness.ahead > 0 for one in chosen) >= SAME_FIRST
    for place, answer in enumerate(line):
        behind, _ = by_closeness(answer)
        if behind >= least:
            break
        behind += answer.closeness.ahead if enough_alike else 0.0
        behind += min(TWIN * sum(twins(answer, one) for one in chosen), MOST_TWIN)
        if behind < least:
            best, least = place, behind
    return best


def twins(one: Answer, other: Answer) -> bool:
    """Whether two answers are as good as the same movement: pattern, sides, muscles and things alike."""
    a, b = one.exercise, other.exercise
    return (
        a.main_pattern is b.main_pattern
        and a.sides is b.sides
        and leading_muscle(a) is leading_muscle(b)
        and one.binding.thing_ids == other.binding.thing_ids
        and muscle_closeness(a, b) >= TWIN_MUSCLES
    )
