"""Where the ± comes from in plain words, and the one action that would shrink it most."""

from __future__ import annotations

import math
from collections.abc import Sequence

from core.mass.model import BudgetLine, Estimate, Material, ScaleKind
from core.mass.predict import CAUSES, Cause, Prediction
from core.mass.scale import MANNERS
from core.quantity.display import UnitSystem, format_measured_mass
from core.quantity.measured import Measured

WEIGHING = "the weighing itself"
CAPACITY = "true capacity"
# A kitchen scale seldom takes more (common practice, no source).
KITCHEN_MOST_KG = 5.0
# Below this gain an action is not worth the walk to the scale.
WORTH_IT = 0.8


def budget(
    material: Material, prediction: Prediction, kg: Sequence[float], weighing_kg: float
) -> tuple[BudgetLine, ...]:
    """Contributions of one standard uncertainty each, largest first; their squares sum to the variance of the mass."""
    words = {
        Cause.TARE: "the empty container",
        Cause.NOMINAL: CAPACITY,
        Cause.BRIMFUL: CAPACITY,
        Cause.DENSITY: f"density of {material.name[0].lower()}{material.name[1:]}",
        Cause.PACKING: prediction.density.packing,
        Cause.SHAPE: "shape of the container",
        Cause.READING: prediction.reading,
        Cause.CUP: "size of the cup",
    }
    sums: dict[str, float] = {}
    for cause in CAUSES:
        sums[words[cause]] = math.hypot(sums.get(words[cause], 0.0), kg[cause])
    sums[WEIGHING] = weighing_kg
    lines = (BudgetLine(source=source, u_kg=u) for source, u in sums.items() if u > 0)
    return tuple(sorted(lines, key=lambda line: (-line.u_kg, line.source)))


def shares(lines: Sequence[BudgetLine]) -> tuple[float, ...]:
    """How long to draw each contribution: its part of the largest."""
    largest = max((line.u_kg for line in lines), default=0.0)
    return tuple(line.u_kg / largest if largest > 0 else 0.0 for line in lines)


def contents_share(estimate: Estimate) -> float:
    """The part of the whole that is contents, 0 to 1."""
    whole = estimate.mass.value
    return min(max(estimate.contents.value / whole, 0.0), 1.0) if whole > 0 else 0.0


def advice_for(mass: Measured, tare_u_kg: float, system: UnitSystem, *, weighed: bool = False) -> str:
    """One action, and the ± it leaves; weighing the whole (unless `weighed`) or the empty container, the better one."""
    kind = ScaleKind.KITCHEN if mass.value <= KITCHEN_MOST_KG else ScaleKind.BATHROOM_DIFFERENCE
    whole = mass.u if weighed else _after(mass.u, _scale_u(kind))
    empty = math.sqrt(max(mass.u**2 - tare_u_kg**2, 0.0) + min(tare_u_kg, _scale_u(ScaleKind.KITCHEN)) ** 2)
    if min(whole, empty) > WORTH_IT * mass.u:
        return "A household scale would not make this much better."
    # Weighing the empty container helps at every fill, so it wins a tie.
    if empty <= whole:
        return f"Weigh it empty once and this drops to {_plus_minus(mass.value, empty, system)}."
    return f"Weigh it once {MANNERS[kind].words}, and this drops to {_plus_minus(mass.value, whole, system)}."


def _scale_u(kind: ScaleKind) -> float:
    manner = MANNERS[kind]
    readings = 2 if kind is ScaleKind.BATHROOM_DIFFERENCE else 1
    scatter = manner.repeatability_kg**2 + manner.resolution_kg**2 / 12
    return math.sqrt(readings * scatter + manner.offset_doubt_kg**2 / 3)


def _after(prior_u: float, scale_u: float) -> float:
    return prior_u * scale_u / math.hypot(prior_u, scale_u) if prior_u > 0 else 0.0


def _plus_minus(value: float, u: float, system: UnitSystem) -> str:
    """± and unit, as the mass itself would show it."""
    number, _, wide = format_measured_mass(Measured(value, u), system).partition(" ± ")
    return f"± {wide or 0} {number.split()[-1]}"
