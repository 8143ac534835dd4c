"""Everything left out, grouped by the kind of reason and then by the reason itself. Nothing is hidden or cut."""

from __future__ import annotations

from dataclasses import dataclass

from core.exercise.model import Exercise
from core.knowledge import Catalog
from core.swap.closeness import likeness
from core.swap.model import Ground, LeftOut, Swap
from gui.desk.wording import Wording

GROUND_NAMES: dict[Ground, str] = {
    Ground.THINGS: "needs a thing",
    Ground.PLACE: "not in this place",
    Ground.SPARED: "spared",
    Ground.NOISE: "too loud",
    Ground.LEVEL: "above your level",
    Ground.EFFORT: "too heavy or too light",
    Ground.CAUSE: "ruled out by your reason",
}
NAMED_AT_FIRST = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class ReasonView:
    """One reason and every movement it leaves out."""

    why: str
    names: str
    many: int


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundView:
    """One kind of reason: its chip, and the reasons, those that leave out most first."""

    label: str
    reasons: tuple[ReasonView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOutView:
    """The whole card; `nearest` names the few nearest to the movement asked for, with their reasons."""

    many: int
    nearest: tuple[tuple[str, str], ...]
    grounds: tuple[GroundView, ...]


def left_out_view(swap: Swap, catalog: Catalog, wording: Wording) -> LeftOutView:
    """What the card says, in the person's units."""
    nearest = sorted(swap.left_out, key=lambda left: _distance(left, swap.asked, catalog))
    grounds = []
    for ground in Ground:
        mine = [left for left in nearest if left.ground is ground]
        if mine:
            grounds.append(GroundView(label=f"{GROUND_NAMES[ground]} · {len(mine)}", reasons=_reasons(mine, wording)))
    first = tuple((left.name, wording.sentence(left.why)) for left in nearest[:NAMED_AT_FIRST])
    return LeftOutView(many=len(nearest), nearest=first, grounds=tuple(grounds))


def _distance(left: LeftOut, asked: Exercise, catalog: Catalog) -> tuple[float, str]:
    return -round(likeness(asked, catalog.exercise_by_id[left.exercise_id]), 9), left.exercise_id


def _reasons(lefts: list[LeftOut], wording: Wording) -> tuple[ReasonView, ...]:
    names: dict[str, list[str]] = {}
    for left in lefts:
        names.setdefault(left.why, []).append(left.name)
    rows = [
        ReasonView(why=_sentence(wording.sentence(why)), names=", ".join(found), many=len(found))
        for why, found in names.items()
    ]
    return tuple(sorted(rows, key=lambda row: (-row.many, row.why)))


def _sentence(why: str) -> str:
    return f"{why[:1].upper()}{why[1:]}"
