"""What earlier weighings of a container teach about it: tare, capacity and the density of what was in it.

An empty reading pins the tare; a full one pins tare + density × capacity together, so whichever was known least moves
most. Every reading carries its own pouring error, which teaches nothing about the next pour.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from core.errors import InputError
from core.mass.combine import SCALES, scale_row
from core.mass.density import density_in
from core.mass.model import Container, LearnedDensity, Material, Packing, ScaleReading
from core.mass.predict import CAUSES, Cause, Prediction, predict
from core.mass.scale import Weighed, weighed
from core.mass.update import Belief
from core.quantity.measured import COVERAGE_FACTOR, Measured, Origin

# A density that hardly became surer is not worth keeping beside the material's own.
NEWS = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """A container with its material, and the state in which it is weighed."""

    container: Container
    material: Material
    temperature_c: float
    packing: Packing


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """A container as its weighings have taught it, and the density of the material as it lies, kg per litre."""

    container: Container
    kg_l: float

    @property
    def full_kg(self) -> float:
        """What it weighs filled to its nominal capacity."""
        return self.container.tare_kg.value + self.kg_l * self.container.nominal_l.value


def known(setting: Setting, readings: Sequence[ScaleReading]) -> Known:
    """What levelled readings make of a setting; readings that disagree with it leave it as it was."""
    belief = fresh()
    if observe_earlier(belief, setting, readings) > COVERAGE_FACTOR:
        belief = fresh()
    container = taught(setting, belief)
    density = density_in(container, setting.material, setting.temperature_c, setting.packing)
    return Known(container=container, kg_l=density.kg_l)


def fresh() -> Belief:
    """Nothing learned yet: one input per cause, and one per kind of scale."""
    return Belief(len(CAUSES) + len(SCALES))


def mass_row(prediction: Prediction) -> tuple[float, ...]:
    """The weights of a predicted mass over all inputs."""
    return (*prediction.kg, *(0.0 for _ in SCALES))


def observe_now(belief: Belief, now: Prediction, reading: ScaleReading, weight: Weighed) -> float:
    """Take in a reading of the present fill; returns its surprise in standard uncertainties."""
    _check_above_tare(now, weight)
    row = (*now.kg, *scale_row(reading.kind, weight))
    return belief.observe(row, weight.mass_kg - now.mass_kg, weight.u_repeat_kg)


def observe_earlier(belief: Belief, setting: Setting, readings: Sequence[ScaleReading]) -> float:
    """Take in readings of earlier fills; returns the largest surprise. Readings without a level teach nothing here."""
    worst = 0.0
    for reading in readings:
        if reading.at_level is None:
            continue
        level, weight = reading.at_level, weighed(reading)
        then = predict(setting.container, setting.material, level, setting.temperature_c, setting.packing)
        _check_above_tare(then, weight)
        row = (*then.shared_kg, *scale_row(reading.kind, weight))
        scatter = math.hypot(weight.u_repeat_kg, then.own_u_kg)
        worst = max(worst, belief.observe(row, weight.mass_kg - then.mass_kg, scatter))
    return worst


def learn(
    container: Container,
    material: Material,
    readings: Sequence[ScaleReading],
    *,
    temperature_c: float = 15.0,
    packing: Packing = Packing.LOOSE,
) -> Container:
    """`container` with the tare, the capacities and the density of `material` that its levelled readings teach.

    Readings that disagree with what is known (or with each other) leave it as it was; `estimate` says so. The values
    are kept each on its own, so that ± is never less, and often more, than when `estimate` takes in the readings
    themselves.
    """
    belief = fresh()
    setting = Setting(container=container, material=material, temperature_c=temperature_c, packing=packing)
    if observe_earlier(belief, setting, readings) > COVERAGE_FACTOR or not belief.noise:
        return container
    return taught(setting, belief)


def taught(setting: Setting, belief: Belief) -> Container:
    """The container with its values moved to what `belief` holds."""
    container = setting.container
    nominal = moved(container.nominal_l, belief, Cause.NOMINAL)
    brimful = moved(container.brimful_l, belief, Cause.BRIMFUL)
    tare = moved(container.tare_kg, belief, Cause.TARE)
    return replace(
        container,
        nominal_l=nominal,
        # What stays below the mark cannot be more than what stays below the brim.
        brimful_l=replace(brimful, value=max(brimful.value, nominal.value)),
        tare_kg=replace(tare, value=max(tare.value, 0.0)),
        learned=_learned(setting, belief),
    )


def _learned(setting: Setting, belief: Belief) -> tuple[LearnedDensity, ...]:
    """The densities known before, with that of the material in hand moved if the readings told anything about it."""
    material, packing = setting.material, setting.packing
    known = setting.container.learned
    density = density_in(setting.container, material, setting.temperature_c, packing)
    row = [0.0] * len(belief.shift)
    row[Cause.DENSITY] = density.packed_by.value * density.loose_kg_l.u
    row[Cause.PACKING] = density.loose_kg_l.value * density.packed_by.u
    u = math.sqrt(belief.variance(row))
    # Water is known better by its temperature than by any household scale.
    if material.by_temperature or u > NEWS * math.hypot(*row):
        return known
    kg_l = Measured(density.kg_l + belief.of(row), u, Origin.COMBINED)
    others = tuple(one for one in known if (one.material_id, one.packing) != (material.id, packing))
    return (*others, LearnedDensity(material_id=material.id, packing=packing, kg_l=kg_l))


def moved(value: Measured, belief: Belief, cause: Cause) -> Measured:
    """One input as `belief` holds it."""
    row = [0.0] * len(belief.shift)
    row[cause] = value.u
    u = math.sqrt(belief.variance(row))
    return Measured(value.value + belief.of(row), u, Origin.COMBINED if u < value.u else value.origin)


def _check_above_tare(prediction: Prediction, weight: Weighed) -> None:
    """A filled container cannot weigh less than itself empty."""
    tare = prediction.tare
    if prediction.volume_l > 0 and weight.mass_kg + 2 * weight.measured.u < tare.value - tare.u95:
        rule = f"is less than the empty container weighs ({tare.value:.2f} kg ± {tare.u95:.2f})"
        raise InputError(f"{weight.mass_kg:g} kg", rule, "check the reading, or weigh the container empty first")
