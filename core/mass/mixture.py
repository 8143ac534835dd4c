"""A dry fill topped up with water until its pores are full: sand, gravel, crushed stone.

The pores take n = 1 - ρ_bulk / ρ_grains of the volume; water fills most of them. How much air stays is not known, so
the result is an estimate and says so.
"""

from __future__ import annotations

import math

from core.errors import InputError
from core.mass.model import Material
from core.mass.water import water_density_kg_m3
from core.quantity.measured import Measured

# Share of the pores that water reaches, middle and half-width (assumed).
FILLED_PORES = (0.92, 0.08)
SAID_SO = (
    "An estimate: how much air stays between the grains is not known. Weigh it once, and use a watertight container."
)


def topped_up(material: Material, dry_kg_l: Measured, temperature_c: float) -> tuple[Measured, Measured]:
    """Density of `material` with water in its pores, kg per litre: for its doubt of the grains, then of the air left.

    The second is a factor of 1 whose doubt is the air's. `InputError` if the grains are unknown.
    """
    if material.solid_kg_m3 is None:
        rule = "cannot be topped up with water here: how dense its grains are is not known"
        raise InputError(material.name, rule, "choose sand, gravel or crushed stone")
    share, half_width = FILLED_PORES
    water_kg_l, grains_kg_l = water_density_kg_m3(temperature_c) / 1000, material.solid_kg_m3 / 1000
    pores = 1 - dry_kg_l.value / grains_kg_l
    wet_kg_l = dry_kg_l.value + pores * share * water_kg_l
    # More grains leave less room for water: a denser fill gains only part of its density.
    u_grains = dry_kg_l.u * (1 - share * water_kg_l / grains_kg_l)
    u_air = pores * water_kg_l * half_width / math.sqrt(3)
    return Measured(wet_kg_l, u_grains), Measured(1.0, u_air / wet_kg_l)
