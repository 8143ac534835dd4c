"""The mass of a filled container: tare + density × packing × volume, and each input's share of the doubt.

The shares are analytic partial derivatives times standard uncertainties (GUM 5.1.3); the inputs are independent.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import IntEnum

from core.mass.density import BulkDensity, density_in
from core.mass.levels import LevelVolume, height_at, level_volume
from core.mass.model import Container, Level, Material, MaterialKind, Packing
from core.quantity.measured import Measured


class Cause(IntEnum):
    """The inputs whose errors make up the ±; the first five are the same at every fill of one container."""

    TARE = 0
    NOMINAL = 1
    BRIMFUL = 2
    DENSITY = 3
    PACKING = 4
    SHAPE = 5
    READING = 6
    CUP = 7


CAUSES = tuple(Cause)


@dataclass(frozen=True, slots=True, kw_only=True)
class Prediction:
    """Mass at a level. `kg` and `litres` are signed contributions per cause, one standard uncertainty each."""

    mass_kg: float
    tare: Measured
    volume_l: float
    density: BulkDensity
    height_cm: float | None
    kg: tuple[float, ...]
    litres: tuple[float, ...]
    reading: str

    @property
    def u_kg(self) -> float:
        """Standard uncertainty of the mass."""
        return math.hypot(*self.kg)

    @property
    def shared_kg(self) -> tuple[float, ...]:
        """The contributions that another fill of the same container shares (all but reading and cup)."""
        return (*self.kg[: Cause.READING], 0.0, 0.0)

    @property
    def own_u_kg(self) -> float:
        """The contribution this one filling does not share."""
        return math.hypot(self.kg[Cause.READING], self.kg[Cause.CUP])


def predict(
    container: Container, material: Material, level: Level, temperature_c: float, packing: Packing
) -> Prediction:
    """The mass at `level` before any weighing; `InputError` for a level, material or temperature that cannot be."""
    density = density_in(container, material, temperature_c, packing)
    at = level_volume(container, level, heaped=material.kind is not MaterialKind.LIQUID)
    litres = _litres(container, at)
    tare, kg_l = container.tare_kg, density.kg_l
    kg = [kg_l * part for part in litres]
    kg[Cause.TARE] = tare.u
    kg[Cause.DENSITY] = at.volume_l * density.packed_by.value * density.loose_kg_l.u
    kg[Cause.PACKING] = at.volume_l * density.loose_kg_l.value * density.packed_by.u
    return Prediction(
        mass_kg=tare.value + kg_l * at.volume_l,
        tare=tare,
        volume_l=at.volume_l,
        density=density,
        height_cm=height_at(container, at.volume_l),
        kg=tuple(kg),
        litres=litres,
        reading=at.reading,
    )


def _litres(container: Container, at: LevelVolume) -> tuple[float, ...]:
    return (
        0.0,
        at.per_nominal * container.nominal_l.u,
        at.per_brimful * container.brimful_l.u,
        0.0,
        0.0,
        at.u_shape_l,
        at.u_reading_l,
        at.u_cup_l,
    )
