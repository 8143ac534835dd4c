"""The words for the ways a thing can serve, and which movements each way is asked for by."""

from __future__ import annotations

from collections import Counter

from core.exercise.model import Family, Use
from core.knowledge import Catalog

MOST_MOVEMENTS = 3
_MOVEMENTS: dict[Family, str] = {
    Family.SQUAT: "squats",
    Family.HINGE: "hinges",
    Family.LUNGE: "lunges and steps",
    Family.PUSH_LEVEL: "push-ups",
    Family.PUSH_OVERHEAD: "overhead presses",
    Family.PULL_LEVEL: "rows",
    Family.PULL_OVERHEAD: "pull-ups",
    Family.CARRY: "carries",
    Family.TRUNK: "trunk",
    Family.GAIT: "walks and climbs",
    Family.MOBILITY: "mobility",
}


def movements_by_use(catalog: Catalog) -> dict[Use, str]:
    """For every use the families that ask for it most, as words: “squats, hinges, carries”."""
    asked: dict[Use, Counter[Family]] = {use: Counter() for use in Use}
    for exercise in catalog.exercises:
        for use in {use: None for need in exercise.needs for use in need.uses}:
            asked[use][exercise.family] += 1
    order = tuple(Family)
    return {use: _words(sorted(found, key=lambda one: (-found[one], order.index(one)))) for use, found in asked.items()}


def _words(families: list[Family]) -> str:
    return ", ".join(_MOVEMENTS[family] for family in families[:MOST_MOVEMENTS])
