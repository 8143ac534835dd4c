"""How alike two movements are in form: posture, sides, tempo, whether a load is moved, and the joints.

Judgement, no source. Form tells movements of one pattern apart: with two dumbbells and no bench, the nearest to a
press lying down is another press lying down, not a push-up.
"""

from __future__ import annotations

from core.exercise.model import Demand, DoseKind, Exercise, Posture, Sides

TELLING = frozenset(
    {
        Demand.DEEP_KNEE_BEND,
        Demand.OVERHEAD_REACH,
        Demand.LOADED_SPINE_BEND,
        Demand.KNEELING,
        Demand.LYING_DOWN,
        Demand.HANGING,
        Demand.ONE_LEG_BALANCE,
        Demand.IMPACT,
    }
)
"""Demands that shape a movement; those of grip, wrists, breath and of getting down come with the thing used."""
ON_FEET = frozenset({Posture.STANDING, Posture.MOVING})
NEAR_POSTURE = 0.7
SEATED_OR_STANDING = 0.5
ONE_AT_A_TIME = 0.8
ONE_OR_BOTH = 0.4
LOADED_OR_NOT = 0.3
PER_DEMAND = 0.3


def form_closeness(asked: Exercise, other: Exercise, *, loaded: bool, spare: frozenset[Demand]) -> float:
    """The mean of the parts, 0 to 1; `loaded` says whether `other` moves a load here, spared demands don't count."""
    parts = (
        _posture(asked.posture, other.posture),
        _sides(asked.sides, other.sides),
        1.0 if loaded is is_loaded(asked) else LOADED_OR_NOT,
        _demands(asked.demands - spare, other.demands),
        _tempo(asked, other),
    )
    return sum(parts) / len(parts)


def is_loaded(exercise: Exercise) -> bool:
    """Whether the movement is nothing without a load."""
    need = exercise.load_need
    return need is not None and not need.optional and (need.mass_share is None or need.mass_share[0] > 0)


def _posture(asked: Posture, other: Posture) -> float:
    if asked is other:
        return 1.0
    if asked in ON_FEET and other in ON_FEET:
        return NEAR_POSTURE
    upright = ON_FEET | {Posture.SEATED}
    return SEATED_OR_STANDING if asked in upright and other in upright else 0.0


def _sides(asked: Sides, other: Sides) -> float:
    if asked is other:
        return 1.0
    return ONE_OR_BOTH if Sides.BOTH in (asked, other) else ONE_AT_A_TIME


def _tempo(asked: Exercise, other: Exercise) -> float:
    """Repetitions of twice the time are another way of training the movement."""
    if asked.dose is not DoseKind.REPS or other.dose is not DoseKind.REPS:
        return 1.0
    return min(asked.rep_s, other.rep_s) / max(asked.rep_s, other.rep_s)


def _demands(asked: frozenset[Demand], other: frozenset[Demand]) -> float:
    return max(0.0, 1 - PER_DEMAND * len((asked ^ other) & TELLING))
