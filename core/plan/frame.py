"""The frame of a week: which kinds of day to aim for, how long to warm up, how many sets a pattern should get.

Targets follow ACSM's 2009 and 2026 position stands in outline (novices few sets on two to three days, about ten sets a
muscle and week for size); the exact ranges per level are judgement and said so.
"""

from __future__ import annotations

from core.exercise.model import Family
from core.house.model import Experience
from core.house.wishes import Goals
from core.plan.model import DayKind

STRENGTH_FAMILIES = (
    Family.SQUAT,
    Family.HINGE,
    Family.LUNGE,
    Family.PUSH_LEVEL,
    Family.PULL_LEVEL,
    Family.PUSH_OVERHEAD,
    Family.PULL_OVERHEAD,
    Family.CARRY,
    Family.TRUNK,
)
"""What strength days train, in the order of a session: big lifts first, the trunk last."""
TARGET_SETS: dict[Experience, tuple[int, int]] = {
    Experience.NEW: (4, 9),
    Experience.SOME: (4, 12),
    Experience.TRAINED: (6, 16),
}
"""Hard sets per pattern and week, low and high: 2 to 3 sets on two days (ACSM 2026); patterns share muscles."""
LEAST_TRAINING_S = 300
IDEAL_LEVEL = (2, 3, 4)
"""The level of movement that suits someone new, with some experience, trained: judgement."""
FEWEST_BLOCKS: dict[DayKind, int] = {
    DayKind.STRENGTH: 2,
    DayKind.EASY: 1,
    DayKind.INTERVALS: 2,
    DayKind.LOADED_WALK: 1,
    DayKind.MOBILITY: 3,
}
MOST_BLOCKS: dict[DayKind, int] = {
    DayKind.STRENGTH: 8,
    DayKind.EASY: 1,
    DayKind.INTERVALS: 5,
    DayKind.LOADED_WALK: 1,
    DayKind.MOBILITY: 9,
}
SUITING_MINUTES: dict[DayKind, tuple[float, float]] = {
    DayKind.STRENGTH: (40, 75),
    DayKind.EASY: (30, 60),
    DayKind.INTERVALS: (20, 30),
    DayKind.LOADED_WALK: (40, 90),
    DayKind.MOBILITY: (15, 30),
    DayKind.REST: (0, 20),
}
"""Session lengths that suit a kind of day, minutes, warm-up included; judgement, no source."""
HARD_KINDS = (DayKind.STRENGTH, DayKind.INTERVALS, DayKind.LOADED_WALK)


def warm_up_seconds(limit_s: int) -> int:
    """A sixth of the session, 3 to 8 whole minutes (ACSM: 5 to 10 minutes; short sessions get less)."""
    return 60 * min(8, max(3, limit_s // 360))


def cool_down_seconds(limit_s: int) -> int:
    """A twelfth of the session, 2 to 5 whole minutes (5 to 10 is usual; short sessions get less)."""
    return 60 * min(5, max(2, limit_s // 720))


def wanted_kinds(days: int, goals: Goals, possible: frozenset[DayKind]) -> dict[DayKind, int]:
    """How many days of each kind to aim for. Two strength days come first; a seventh day is rest.

    The worth of each further day is the goal's weight times a fixed factor: judgement, no source.
    """
    worth = [
        (2.0 * goals.strength, 0, DayKind.STRENGTH),
        (1.0 * goals.strength, 1, DayKind.STRENGTH),
        (1.8 * goals.run_walk, 2, DayKind.EASY),
        (3.0 * goals.loaded_walk, 3, DayKind.LOADED_WALK),
        (1.4 * goals.run_walk, 4, DayKind.INTERVALS),
        (1.6 * goals.mobility, 5, DayKind.MOBILITY),
        (0.55 * goals.strength, 6, DayKind.STRENGTH),
        (0.8 * goals.run_walk, 7, DayKind.EASY),
        (1.2 * goals.mobility, 8, DayKind.MOBILITY),
    ]
    usable = [item for item in worth if item[2] in possible and item[0] > 0]
    usable.sort(key=lambda item: (-item[0], item[1]))
    training = min(days, 6)
    wanted = dict.fromkeys(DayKind, 0)
    for _, _, kind in usable[:training]:
        wanted[kind] += 1
    wanted[DayKind.REST] = days - sum(wanted.values())
    return wanted
