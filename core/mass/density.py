"""Bulk density of a fill at a temperature and packing, with its standard uncertainty.

A material's low, typical and high make a triangle with its peak at the typical value (GUM 4.3.9, asymmetric). The
estimate stays at the typical value, so `u` is the root mean square distance from it. Where the range itself is weak or
from memory, the triangle claims too much and the wider side is taken as rectangular (GUM 4.3.7).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.mass.mixture import topped_up
from core.mass.model import Container, Material, MaterialKind, Packing, Standing
from core.mass.water import COLDEST_C, WARMEST_C, water_density_kg_m3
from core.quantity.measured import Measured, Origin

# Nobody measures the water they pour: half-width of its temperature, and of what is dissolved in it (assumed).
TEMPERATURE_DOUBT_C = 5.0
DISSOLVED_DOUBT_KG_M3 = 0.5
SHAKY = frozenset({Standing.WEAK, Standing.MEMORY})
NOT_PACKED = Measured(1.0, 0.0, Origin.EXACT)


@dataclass(frozen=True, slots=True, kw_only=True)
class BulkDensity:
    """Loose density in kg per litre and the factor by which packing changes it; `packing` is its doubt in words."""

    loose_kg_l: Measured
    packed_by: Measured
    packing: str = "how it is packed"

    @property
    def kg_l(self) -> float:
        """Density as it lies."""
        return self.loose_kg_l.value * self.packed_by.value

    @property
    def measured(self) -> Measured:
        """Density as it lies, with its doubt."""
        u = math.hypot(self.loose_kg_l.u * self.packed_by.value, self.loose_kg_l.value * self.packed_by.u)
        return Measured(self.kg_l, u, self.loose_kg_l.origin)


def density_in(container: Container, material: Material, temperature_c: float, packing: Packing) -> BulkDensity:
    """How dense `material` lies in `container`: as weighings of it have shown, else by the material's own range."""
    density = bulk_density(material, temperature_c, packing)
    for learned in container.learned:
        if learned.material_id == material.id and learned.packing is packing:
            return BulkDensity(loose_kg_l=learned.kg_l, packed_by=NOT_PACKED)
    return density


def bulk_density(material: Material, temperature_c: float, packing: Packing) -> BulkDensity:
    """How dense `material` lies; `InputError` if it may not be a fill or its packing is not known."""
    if not material.as_fill:
        raise InputError(material.name, f"is not a fill: {material.why_not}", "choose another material")
    loose = _water(temperature_c) if material.by_temperature else _from_range(material)
    loose_kg_l = Measured(loose.value / 1000, loose.u / 1000, loose.origin)
    if packing is Packing.TOPPED_UP:
        wet_kg_l, air = topped_up(material, loose_kg_l, temperature_c)
        return BulkDensity(loose_kg_l=wet_kg_l, packed_by=air, packing="air left between the grains")
    return BulkDensity(loose_kg_l=loose_kg_l, packed_by=_packing(material, packing))


def _water(temperature_c: float) -> Measured:
    here = water_density_kg_m3(temperature_c)
    warm = water_density_kg_m3(min(temperature_c + TEMPERATURE_DOUBT_C, WARMEST_C))
    cold = water_density_kg_m3(max(temperature_c - TEMPERATURE_DOUBT_C, COLDEST_C))
    half_width = max(abs(warm - here), abs(cold - here))
    return Measured(here, math.hypot(half_width, DISSOLVED_DOUBT_KG_M3) / math.sqrt(3))


def _from_range(material: Material) -> Measured:
    low, typical, high = material.low_kg_m3, material.typical_kg_m3, material.high_kg_m3
    if not 0 < low <= typical <= high or not math.isfinite(high):
        rule = f"is not a density range of {material.name}, which must rise from above zero"
        raise InputError(f"{low:g}, {typical:g}, {high:g} kg/m³", rule, "give low, typical and high in this order")
    if material.standing in SHAKY:
        return Measured.rectangular(typical, max(high - typical, typical - low))
    spread = (low**2 + typical**2 + high**2 - low * typical - low * high - typical * high) / 18
    lean = (low + typical + high) / 3 - typical
    return Measured(typical, math.sqrt(max(spread, 0.0) + lean**2))


def _packing(material: Material, packing: Packing) -> Measured:
    factors = {Packing.LOOSE: NOT_PACKED, Packing.SETTLED: material.settled, Packing.DAMP: material.damp}
    factor = factors.get(packing)
    if factor is None:
        why = "a liquid has no packing" if material.kind is MaterialKind.LIQUID else "no figure is known"
        raise InputError(packing.value, f"cannot be used for {material.name}: {why}", "choose loose")
    return factor
