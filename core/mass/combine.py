"""Bring an estimate and scale readings together, or say plainly that they do not fit.

The mean is weighted by inverse variance (Graybill & Deal, Biometrics 15:543-550, 1959). What a scale gets wrong the
same way every time does not average out: readings on one scale share it, and the result never claims less than it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.mass.model import Combined, ScaleKind, ScaleReading
from core.mass.scale import Weighed, weighed
from core.mass.update import Belief
from core.quantity.display import UnitSystem, format_measured_mass
from core.quantity.measured import COVERAGE_FACTOR, Measured, Origin

SCALES = tuple(ScaleKind)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reasons:
    """What is likely when the scale says more than expected, and when it says less."""

    heavier: str
    lighter: str


NO_ZERO = "the scale does not start at zero"
FOR_GRAINS = Reasons(
    heavier="the contents are damp or packed, the line stands higher than you think, or the container is heavier",
    lighter=f"the contents lie loose, the line stands lower than you think, or {NO_ZERO}",
)
FOR_LIQUIDS = Reasons(
    heavier=(
        "the line stands higher than you think, the container holds more than it says or is heavier itself, "
        "or another liquid is in it"
    ),
    lighter=(
        "the line stands lower than you think, the container holds less than it says, another liquid is in it, "
        f"or {NO_ZERO}"
    ),
)
FOR_SOLIDS = Reasons(
    heavier="it is damp, something is still in it, or what its label says is only about right",
    lighter=f"some of it is gone, or {NO_ZERO}",
)


def combine(
    estimate: Measured, readings: Sequence[ScaleReading], *, system: UnitSystem = UnitSystem.METRIC
) -> Combined:
    """The estimate of one load and readings of that same load, weighted; or, if they disagree, unmixed and said so.

    `InputError` without readings, or for a reading that cannot be one.
    """
    if not readings:
        raise InputError("no reading", "cannot be combined with the estimate", "weigh it once")
    belief = Belief(1 + len(SCALES))
    weights = [weighed(reading) for reading in readings]
    worst = 0.0
    for reading, weight in zip(readings, weights, strict=True):
        row = (estimate.u, *scale_row(reading.kind, weight))
        worst = max(worst, belief.observe(row, weight.mass_kg - estimate.value, weight.u_repeat_kg))
    row = (estimate.u, *(0.0 for _ in SCALES))
    best = Measured(estimate.value + belief.of(row), math.sqrt(belief.variance(row)), Origin.COMBINED)
    return verdict(estimate, weights, with_floor(best, estimate, weights), worst, system, FOR_SOLIDS)


def scale_row(kind: ScaleKind, weight: Weighed) -> tuple[float, ...]:
    """The lasting error of the scale used, in the place of its kind."""
    return tuple(weight.u_lasting_kg if scale is kind else 0.0 for scale in SCALES)


def with_floor(best: Measured, estimate: Measured, weights: Sequence[Weighed]) -> Measured:
    """`best`, claiming no less than the best scale used can give (nor more than was claimed before weighing)."""
    floor = min(estimate.u, *(weight.u_lasting_kg for weight in weights))
    return best if best.u >= floor else Measured(best.value, floor, best.origin)


def verdict(
    estimate: Measured,
    weights: Sequence[Weighed],
    best: Measured,
    worst: float,
    system: UnitSystem,
    reasons: Reasons,
) -> Combined:
    """Agreement if no reading surprised by more than the coverage factor, else the estimate widened to span them."""
    said = _mean(weights)
    scale, before = format_measured_mass(said, system), format_measured_mass(estimate, system)
    if worst <= COVERAGE_FACTOR:
        together = format_measured_mass(best, system)
        return Combined(
            mass=best, agrees=True, sentence=f"The scale says {scale}, the estimate {before}. Together: {together}."
        )
    farthest = max(abs(weight.mass_kg - estimate.value) for weight in weights)
    wide = Measured(estimate.value, max(estimate.u, farthest / COVERAGE_FACTOR), Origin.ESTIMATE)
    why = reasons.heavier if said.value > estimate.value else reasons.lighter
    sentence = (
        f"The scale says {scale}, the estimate {before}: too far apart to average. "
        f"Perhaps {why}. Weigh it again, or correct what is wrong."
    )
    return Combined(mass=wide, agrees=False, sentence=sentence)


def _mean(weights: Sequence[Weighed]) -> Measured:
    """What the scale says alone: the plain mean; repeats shrink only the scatter."""
    count = len(weights)
    scatter = math.fsum(weight.u_repeat_kg**2 for weight in weights) / count**2
    lasting = max(weight.u_lasting_kg for weight in weights)
    mean = math.fsum(weight.mass_kg for weight in weights) / count
    return Measured(mean, math.sqrt(scatter + lasting**2), Origin.SCALE)
