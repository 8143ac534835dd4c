"""Which exercises are strength work: repetitions against a load, by several muscles together or by one joint."""

from __future__ import annotations

from functools import lru_cache

from core.exercise.model import DoseKind, Exercise, Muscle, Pattern

PRIME_MOVERS: dict[Pattern, frozenset[Muscle]] = {
    Pattern.SQUAT: frozenset({Muscle.QUADS, Muscle.GLUTES}),
    Pattern.LUNGE: frozenset({Muscle.QUADS, Muscle.GLUTES}),
    Pattern.HINGE: frozenset({Muscle.GLUTES, Muscle.HAMSTRINGS, Muscle.BACK_EXTENSORS}),
    Pattern.GROUND_TO_OVERHEAD: frozenset({Muscle.GLUTES, Muscle.QUADS, Muscle.FRONT_SHOULDERS}),
    Pattern.PUSH_LEVEL: frozenset({Muscle.CHEST}),
    Pattern.PUSH_OVERHEAD: frozenset({Muscle.FRONT_SHOULDERS}),
    Pattern.PULL_LEVEL: frozenset({Muscle.LATS, Muscle.MID_BACK}),
    Pattern.PULL_OVERHEAD: frozenset({Muscle.LATS}),
}
"""Who does the work of each strength pattern. Common practice, no source."""
PRIME_WEIGHT = 0.7
SECOND_WEIGHT = 0.5


def is_strength(exercise: Exercise) -> bool:
    """Whether repetitions against a load describe the exercise (the relation of reps and load applies)."""
    return exercise.dose is DoseKind.REPS and exercise.main_pattern in PRIME_MOVERS


def carries_over(exercise: Exercise) -> bool:
    """Whether pattern strength describes this exercise: a prime mover works and at least two muscles share the work."""
    return _shared_work(exercise.main_pattern, exercise.muscles)


def single_joint(exercise: Exercise) -> bool:
    """Whether it belongs to a strength pattern and one joint does the work."""
    return exercise.main_pattern in PRIME_MOVERS and not carries_over(exercise)


@lru_cache(maxsize=65536)
def _shared_work(pattern: Pattern, muscles: tuple[tuple[Muscle, float], ...]) -> bool:
    movers = PRIME_MOVERS.get(pattern, frozenset())
    has_mover = any(muscle in movers and weight >= PRIME_WEIGHT for muscle, weight in muscles)
    return has_mover and sum(weight >= SECOND_WEIGHT for _, weight in muscles) > 1


def leading_muscle(exercise: Exercise) -> Muscle:
    """The muscle with the greatest weight, the first of equals."""
    return max(exercise.muscles, key=lambda pair: pair[1])[0]
