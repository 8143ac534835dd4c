"""The estimate of what a filled container weighs: before weighing, and with scale readings taken in.

mass = tare + density × packing × volume, propagated by the GUM (JCGM 100:2008, 5.1.2) from independent inputs.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.mass.budget import advice_for, budget
from core.mass.combine import FOR_GRAINS, FOR_LIQUIDS, verdict, with_floor
from core.mass.learning import Setting, fresh, mass_row, observe_earlier, observe_now
from core.mass.mixture import SAID_SO
from core.mass.model import (
    Bag,
    BudgetLine,
    Combined,
    Container,
    Estimate,
    HeightLevel,
    Level,
    Material,
    MaterialKind,
    Packing,
    ScaleReading,
)
from core.mass.predict import Cause, Prediction, predict
from core.mass.scale import weighed
from core.mass.update import Belief
from core.quantity.display import UnitSystem
from core.quantity.measured import COVERAGE_FACTOR, Measured, Origin

DISAGREEMENT = "the scale and the estimate disagree"
MISFIT = (
    "Earlier weighings of this container do not fit what is known of it, so they are left out. "
    "Weigh it empty and full again, or correct its capacity."
)
COUNTED_IN = "Earlier weighings of this container are counted in."
# Fuller than this, a liquid has little room to move.
NEARLY_BRIMFUL = 0.97


def estimate(
    container: Container,
    material: Material,
    level: Level,
    *,
    temperature_c: float = 15.0,
    packing: Packing = Packing.LOOSE,
    readings: Sequence[ScaleReading] = (),
    system: UnitSystem = UnitSystem.METRIC,
) -> Estimate:
    """Mass, contents, tare, volume and height at `level`, with the budget of the ±, one piece of advice and cautions.

    `readings` are weighings of this container with this material: those without a level are of the fill in question,
    those with one of earlier fills. `system` is only for the units in sentences. `InputError` for what cannot be.
    """
    setting = Setting(container=container, material=material, temperature_c=temperature_c, packing=packing)
    present = tuple(reading for reading in readings if reading.at_level is None)
    return _estimated(setting, level, earlier(setting, readings), present, system)


@dataclass(frozen=True, slots=True)
class Earlier:
    """What weighings of earlier fills made of a setting, whatever the fill in hand; make one with `earlier`."""

    belief: Belief
    surprise: float


def earlier(setting: Setting, readings: Sequence[ScaleReading]) -> Earlier:
    """Take in the readings that have a level; `InputError` for one that can't be."""
    belief = fresh()
    return Earlier(belief, observe_earlier(belief, setting, readings))


def estimate_after(
    setting: Setting, level: Level, known: Earlier, *, system: UnitSystem = UnitSystem.METRIC
) -> Estimate:
    """The estimate at another level after the same earlier weighings: quick enough to follow a moving line."""
    return _estimated(setting, level, known, (), system)


def _estimated(
    setting: Setting, level: Level, known: Earlier, present: Sequence[ScaleReading], system: UnitSystem
) -> Estimate:
    now = predict(setting.container, setting.material, level, setting.temperature_c, setting.packing)
    notes = _cautions(setting.container, setting.material, level, now, setting.packing)
    if not present and not known.belief.noise:
        return _plain(setting.material, now, notes, system, None)
    return _with_readings(setting, now, notes, known, present, system)


def _plain(
    material: Material, now: Prediction, notes: tuple[str, ...], system: UnitSystem, weighing: Combined | None
) -> Estimate:
    """The estimate as predicted; a `weighing` that disagrees only widens it."""
    mass = Measured(now.mass_kg, now.u_kg) if weighing is None else weighing.mass
    lines = budget(material, now, now.kg, 0.0)
    extra = math.sqrt(max(mass.u**2 - now.u_kg**2, 0.0))
    if extra > 1e-9 * mass.u:
        lines = tuple(sorted((*lines, BudgetLine(source=DISAGREEMENT, u_kg=extra)), key=lambda line: -line.u_kg))
    return Estimate(
        mass=mass,
        contents=Measured(now.mass_kg - now.tare.value, math.hypot(*now.kg[1:])),
        tare=now.tare,
        volume_l=Measured(now.volume_l, math.hypot(*now.litres)),
        height_cm=now.height_cm,
        budget=lines,
        advice=advice_for(mass, now.tare.u, system),
        cautions=notes,
        weighing=weighing,
    )


def _with_readings(
    setting: Setting,
    now: Prediction,
    notes: tuple[str, ...],
    known: Earlier,
    present: Sequence[ScaleReading],
    system: UnitSystem,
) -> Estimate:
    """Readings of the fill in hand are taken into the belief of `known`, which is used up then."""
    belief, misfit = known.belief, None
    if known.surprise > COVERAGE_FACTOR:
        misfit = _misfit(now, belief)
        notes, belief = (*notes, MISFIT), fresh()
    before = _mass(now, belief)
    weights = [weighed(reading) for reading in present]
    surprises = [observe_now(belief, now, reading, weight) for reading, weight in zip(present, weights, strict=True)]
    if not present:
        weighing = misfit or Combined(mass=before, agrees=True, sentence=COUNTED_IN)
    else:
        best = with_floor(_mass(now, belief), before, weights)
        reasons = FOR_LIQUIDS if setting.material.kind is MaterialKind.LIQUID else FOR_GRAINS
        weighing = verdict(before, weights, best, max(surprises), system, reasons)
    if not weighing.agrees:
        return _plain(setting.material, now, notes, system, weighing)
    return _updated(setting.material, now, notes, belief, weighing, system, weighed_now=bool(present))


def _updated(
    material: Material,
    now: Prediction,
    notes: tuple[str, ...],
    belief: Belief,
    weighing: Combined,
    system: UnitSystem,
    *,
    weighed_now: bool,
) -> Estimate:
    """The estimate with everything the readings taught."""
    kg_left, _ = belief.parts(mass_row(now))
    causes, scales = kg_left[: len(now.kg)], kg_left[len(now.kg) :]
    # Whatever the floor added belongs to the scale.
    known = math.fsum(part**2 for part in causes)
    by_weighing = math.sqrt(max(weighing.mass.u**2 - known, 0.0))
    tare = _part(belief, now, (Cause.TARE,), now.tare.value)
    contents = _part(belief, now, tuple(Cause)[1:], now.mass_kg - now.tare.value)
    litres = (*now.litres, *(0.0 for _ in scales))
    return Estimate(
        mass=weighing.mass,
        contents=contents,
        tare=tare,
        volume_l=Measured(now.volume_l + belief.of(litres), math.sqrt(belief.variance(litres)), Origin.COMBINED),
        height_cm=now.height_cm,
        budget=budget(material, now, causes, by_weighing),
        advice=advice_for(weighing.mass, abs(kg_left[Cause.TARE]), system, weighed=weighed_now),
        cautions=notes,
        weighing=weighing,
    )


def _part(belief: Belief, now: Prediction, causes: Sequence[Cause], first: float) -> Measured:
    """The part of the mass that hangs on `causes`, as moved by what was learned."""
    row = [0.0] * len(belief.shift)
    for cause in causes:
        row[cause] = now.kg[cause]
    return Measured(first + belief.of(row), math.sqrt(belief.variance(row)), Origin.COMBINED)


def _mass(now: Prediction, belief: Belief) -> Measured:
    row = mass_row(now)
    origin = Origin.COMBINED if belief.noise else Origin.ESTIMATE
    return Measured(now.mass_kg + belief.of(row), math.sqrt(belief.variance(row)), origin)


def _misfit(now: Prediction, belief: Belief) -> Combined:
    """Earlier weighings that surprise: the estimate, widened to span what they would have made of it."""
    apart = abs(belief.of(mass_row(now)))
    mass = Measured(now.mass_kg, max(now.u_kg, apart / COVERAGE_FACTOR))
    return Combined(mass=mass, agrees=False, sentence=MISFIT)


def _cautions(
    container: Container, material: Material, level: Level, now: Prediction, packing: Packing
) -> tuple[str, ...]:
    notes = [SAID_SO, *material.cautions] if packing is Packing.TOPPED_UP else list(material.cautions)
    if material.sloshes and 0 < now.volume_l < NEARLY_BRIMFUL * container.brimful_l.value:
        notes.append(
            f"{material.name} moves in a part-filled container: close it, and hold it close until you know it."
        )
    if material.settles and packing is Packing.LOOSE and now.volume_l > 0:
        notes.append(f"{material.name} settles when carried: shake it down, then read the line again.")
    if isinstance(container.shape, Bag) and isinstance(level, HeightLevel):
        notes.append("A soft bag has no true line: weigh it, or count what you pour.")
    return tuple(notes)
