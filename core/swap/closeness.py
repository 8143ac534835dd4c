"""How alike two movements are: by pattern, by muscles, by the effort that can be reached, and by set-up time.

The kinship of patterns is trade judgement (common practice, no source): 1 is the same pattern, 0 nothing in common.
"""

from __future__ import annotations

import math
from functools import lru_cache

from core.exercise.model import Exercise, Muscle, Pattern

P = Pattern
KINSHIP: dict[frozenset[Pattern], float] = {
    frozenset({P.SQUAT, P.LUNGE}): 0.7,
    frozenset({P.SQUAT, P.HINGE}): 0.35,
    frozenset({P.HINGE, P.LUNGE}): 0.4,
    frozenset({P.PUSH_LEVEL, P.PUSH_OVERHEAD}): 0.5,
    frozenset({P.PULL_LEVEL, P.PULL_OVERHEAD}): 0.75,
    frozenset({P.GROUND_TO_OVERHEAD, P.HINGE}): 0.6,
    frozenset({P.GROUND_TO_OVERHEAD, P.PUSH_OVERHEAD}): 0.5,
    frozenset({P.GROUND_TO_OVERHEAD, P.SQUAT}): 0.4,
    frozenset({P.CARRY, P.BRACE_SIDE}): 0.5,
    frozenset({P.CARRY, P.MARCH}): 0.4,
    frozenset({P.CARRY, P.WALK}): 0.35,
    frozenset({P.BRACE_FRONT, P.BRACE_SIDE}): 0.5,
    frozenset({P.BRACE_FRONT, P.BRACE_TWIST}): 0.6,
    frozenset({P.BRACE_SIDE, P.BRACE_TWIST}): 0.6,
    frozenset({P.WALK, P.MARCH}): 0.8,
    frozenset({P.WALK, P.RUN}): 0.6,
    frozenset({P.WALK, P.CLIMB}): 0.6,
    frozenset({P.RUN, P.CLIMB}): 0.6,
    frozenset({P.RUN, P.QUICK_FEET}): 0.7,
    frozenset({P.RUN, P.MARCH}): 0.55,
    frozenset({P.RUN, P.JUMP}): 0.5,
    frozenset({P.JUMP, P.QUICK_FEET}): 0.7,
    frozenset({P.MARCH, P.CLIMB}): 0.7,
    frozenset({P.MARCH, P.QUICK_FEET}): 0.65,
    frozenset({P.CLIMB, P.LUNGE}): 0.4,
    frozenset({P.WARM_UP, P.MOBILITY}): 0.6,
    frozenset({P.COOL_DOWN, P.MOBILITY}): 0.7,
}
NEAR_ENOUGH = 0.3
"""Movements less alike than this by pattern are not considered at all (they are another training, not a swap)."""
QUICK_S = 30.0
OTHER_TRAINING = 8.0
"""A bout eight times as long (or as short) is another training: intervals are no steady run."""
LONG_S = 600.0


def kinship(one: Pattern, other: Pattern) -> float:
    """How alike two patterns are, 0 to 1."""
    return 1.0 if one is other else KINSHIP.get(frozenset({one, other}), 0.0)


def pattern_closeness(asked: Exercise, other: Exercise) -> float:
    """Weighted kinship of the patterns, the mean of both directions, 0 to 1."""
    return _pattern_closeness(asked.patterns, other.patterns)


@lru_cache(maxsize=65536)
def _pattern_closeness(asked: tuple[tuple[Pattern, float], ...], other: tuple[tuple[Pattern, float], ...]) -> float:
    return (_one_way(asked, other) + _one_way(other, asked)) / 2


def _one_way(asked: tuple[tuple[Pattern, float], ...], other: tuple[tuple[Pattern, float], ...]) -> float:
    best = 0.0
    for pattern, weight in asked:
        best += weight * max(kinship(pattern, near) * min(1.0, had / weight) for near, had in other)
    return best / sum(weight for _, weight in asked)


@lru_cache(maxsize=65536)
def _muscle_cosine(asked: tuple[tuple[Muscle, float], ...], other: tuple[tuple[Muscle, float], ...]) -> float:
    weights = dict(other)
    dot = sum(weight * weights.get(muscle, 0.0) for muscle, weight in asked)
    norm = math.sqrt(sum(weight**2 for _, weight in asked) * sum(weight**2 for _, weight in other))
    return dot / norm if norm else 0.0


def muscle_closeness(asked: Exercise, other: Exercise) -> float:
    """Cosine of the two muscle weightings, 0 to 1."""
    return _muscle_cosine(asked.muscles, other.muscles)


def bout_closeness(asked_s: float, other_s: float) -> float:
    """How alike the lengths of one bout are: 1 for equal ones, falling with the logarithm to 0 at eight times."""
    if asked_s <= 0 or other_s <= 0:
        return 0.0
    return max(0.0, 1 - abs(math.log(other_s / asked_s)) / math.log(OTHER_TRAINING))


def set_up_closeness(set_up_s: float) -> float:
    """1 for half a minute or less, falling with the logarithm of the time to 0 at ten minutes."""
    if set_up_s <= QUICK_S:
        return 1.0
    return max(0.0, 1 - math.log(set_up_s / QUICK_S) / math.log(LONG_S / QUICK_S))


def likeness(asked: Exercise, other: Exercise) -> float:
    """How like two movements are before anything is bound: the mean of pattern and muscles, 1 for the same one."""
    return 1.0 if asked.id == other.id else (pattern_closeness(asked, other) + muscle_closeness(asked, other)) / 2
