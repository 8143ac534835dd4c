"""A dry fill topped up with water until its pores are full: sand, gravel, crushed stone.

The pores take n = 1 - ρ_bulk / ρ_grains of the volume; water fills most of them. How much air stays is not known, so
the result is an estimate and says so.
"""

from __future__ import annotations

import math
from dataclasses import replace

from core.errors import InputError
from core.mass.budget import advice_for, budget
from core.mass.model import BudgetLine, Container, Estimate, Level, Material, Packing
from core.mass.predict import Cause, predict
from core.mass.water import water_density_kg_m3
from core.quantity.display import UnitSystem
from core.quantity.measured import Measured

# Share of the pores that water reaches, middle and half-width (assumed).
FILLED_PORES = (0.92, 0.08)
SAID_SO = (
    "An estimate: how much air stays between the grains is not known. Weigh it once, and use a watertight container."
)


def estimate_topped_up(
    container: Container,
    material: Material,
    level: Level,
    *,
    temperature_c: float = 15.0,
    packing: Packing = Packing.LOOSE,
    system: UnitSystem = UnitSystem.METRIC,
) -> Estimate:
    """The mass of `material` at `level` with its pores topped up with water; `InputError` if its grains are unknown."""
    if material.solid_kg_m3 is None:
        rule = "cannot be topped up with water here: how dense its grains are is not known"
        raise InputError(material.name, rule, "choose sand, gravel or crushed stone")
    dry = predict(container, material, level, temperature_c, packing)
    share, half_width = FILLED_PORES
    water_kg_l, grains_kg_l = water_density_kg_m3(temperature_c) / 1000, material.solid_kg_m3 / 1000
    pores = 1 - dry.density.kg_l / grains_kg_l
    added_kg_l = pores * share * water_kg_l
    # More grains leave less room for water: a denser fill gains only part of its density.
    by_density = 1 - share * water_kg_l / grains_kg_l
    by_volume = (dry.density.kg_l + added_kg_l) / dry.density.kg_l
    factors = {Cause.TARE: 1.0, Cause.DENSITY: by_density, Cause.PACKING: by_density}
    kg = tuple(part * factors.get(cause, by_volume) for cause, part in zip(Cause, dry.kg, strict=True))
    air_kg = dry.volume_l * pores * water_kg_l * half_width / math.sqrt(3)
    wet = replace(dry, mass_kg=dry.mass_kg + dry.volume_l * added_kg_l, kg=kg)
    mass = Measured(wet.mass_kg, math.hypot(wet.u_kg, air_kg))
    lines = (*budget(material, wet, wet.kg, 0.0), BudgetLine(source="air left between the grains", u_kg=air_kg))
    return Estimate(
        mass=mass,
        contents=Measured(wet.mass_kg - wet.tare.value, math.hypot(*kg[1:], air_kg)),
        tare=wet.tare,
        volume_l=Measured(wet.volume_l, math.hypot(*wet.litres)),
        height_cm=wet.height_cm,
        budget=tuple(sorted(lines, key=lambda line: (-line.u_kg, line.source))),
        advice=advice_for(mass, wet.tare.u, system),
        cautions=(SAID_SO, *material.cautions),
    )
