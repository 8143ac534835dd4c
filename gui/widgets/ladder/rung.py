"""What a drawn ladder shows, and where its rungs lie: equal steps in per cent are equally far apart.

Loads only place the rungs; every text is ready to read and every step is judged by whoever made the rungs.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RungMark:
    """One load: where it lies (`load_kg` > 0), its text, how it is made, and the step up to it from the one below."""

    load_kg: float
    load_text: str
    recipe: str = ""
    step_text: str = ""
    wide_step: bool = False


def shares(rungs: tuple[RungMark, ...]) -> tuple[float, ...]:
    """Place of each rung from 0 (lightest) to 1 (heaviest) on a logarithmic scale; a lone rung lies in the middle."""
    if len(rungs) < 2:
        return (0.5,) * len(rungs)
    low, high = math.log(rungs[0].load_kg), math.log(rungs[-1].load_kg)
    if high <= low:
        return tuple(at / (len(rungs) - 1) for at in range(len(rungs)))
    return tuple((math.log(rung.load_kg) - low) / (high - low) for rung in rungs)


def offsets(rungs: tuple[RungMark, ...], closest: float, farthest: float, per_doubling: float) -> tuple[float, ...]:
    """Distance of each rung from the lightest in pixels: `per_doubling` for twice the load, within the two bounds."""
    places = [0.0] if rungs else []
    for lower, upper in itertools.pairwise(rungs):
        step = per_doubling * math.log2(max(1.0, upper.load_kg / lower.load_kg))
        places.append(places[-1] + min(farthest, max(closest, step)))
    return tuple(places)


def spoken(rungs: tuple[RungMark, ...], at: int) -> str:
    """The rung in one sentence."""
    if not 0 <= at < len(rungs):
        return "no load"
    rung = rungs[at]
    parts = (
        rung.load_text,
        rung.recipe,
        f"step {rung.step_text}" if rung.step_text else "",
        f"{at + 1} of {len(rungs)}",
    )
    return ", ".join(part for part in parts if part)
