"""What one more thing would open for a swap: kinds the house lacks, each with the movements it would make possible."""

from __future__ import annotations

from dataclasses import dataclass

from core.exercise.model import Exercise
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.swap.additions import Shelf, lacking_in
from core.swap.closeness import likeness
from core.swap.model import Ground, Swap

FIGURES = 9
NEAR_FIGURES = 1
"""Likeness is told apart in tenths: what costs nothing and opens a near movement comes before costly exactness."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Opener:
    """One thing that would help, and the movements it opens here, the nearest to the one asked for first.

    `near` is how like the nearest of them is (0 to 1), `common` how usual the thing is at home, `cost` from 0 (nothing)
    to 3 (real gear).
    """

    kind_id: str
    name: str
    opens: tuple[Exercise, ...]
    near: float
    common: int
    cost: int


def would_open(found: Swap, setting: Setting, catalog: Catalog) -> tuple[Opener, ...]:
    """What would open movements a swap leaves out for want of things; the one nearest the asked movement first.

    Of those that open equally near ones the cheaper first, then the one that opens more, then the more usual one.
    """
    have = {thing.kind_id for thing in setting.things}
    shelf = Shelf(setting, tuple(kind for kind in catalog.kinds if kind.id not in have))
    opened: dict[str, list[Exercise]] = {}
    for left in found.left_out:
        exercise = catalog.exercise_by_id[left.exercise_id]
        if left.ground is not Ground.THINGS or exercise.needs_gym:
            continue
        lacking = lacking_in(exercise, setting)
        for kind_id in () if lacking is None else shelf.opening(lacking):
            opened.setdefault(kind_id, []).append(exercise)
    openers = (_opener(kind_id, exercises, found.asked, catalog) for kind_id, exercises in opened.items())
    return tuple(sorted(openers, key=_usefulness))


def _opener(kind_id: str, exercises: list[Exercise], asked: Exercise, catalog: Catalog) -> Opener:
    kind = catalog.kind_by_id[kind_id]
    nearest = sorted(exercises, key=lambda exercise: (-round(likeness(asked, exercise), FIGURES), exercise.id))
    return Opener(
        kind_id=kind_id,
        name=kind.name,
        opens=tuple(nearest),
        near=likeness(asked, nearest[0]),
        common=kind.common,
        cost=kind.cost,
    )


def _usefulness(opener: Opener) -> tuple[float, int, int, int, str]:
    return -round(opener.near, NEAR_FIGURES), opener.cost, -len(opener.opens), -opener.common, opener.kind_id
