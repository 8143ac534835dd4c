"""What weighing a container has taught: the facts that moved or became surer, before and after."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.mass.density import density_in
from core.mass.learning import NEWS, Setting, known
from core.mass.model import ScaleReading
from core.quantity.measured import Measured


class Taught(StrEnum):
    """What a weighing can teach about: empty mass (kg), capacity to the mark and to the brim (L), density (kg/L)."""

    EMPTY = "empty"
    CAPACITY = "capacity"
    BRIM = "brim"
    DENSITY = "density"


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """One fact before the weighings and after them."""

    what: Taught
    before: Measured
    after: Measured


def lessons(setting: Setting, readings: Sequence[ScaleReading]) -> tuple[Lesson, ...]:
    """The facts that levelled `readings` made at least a little surer, in the order of `Taught`."""
    taught = known(setting, readings).container
    before = setting.container
    material, temperature_c, packing = setting.material, setting.temperature_c, setting.packing
    pairs = (
        (Taught.EMPTY, before.tare_kg, taught.tare_kg),
        (Taught.CAPACITY, before.nominal_l, taught.nominal_l),
        (Taught.BRIM, before.brimful_l, taught.brimful_l),
        (
            Taught.DENSITY,
            density_in(before, material, temperature_c, packing).measured,
            density_in(taught, material, temperature_c, packing).measured,
        ),
    )
    return tuple(Lesson(what=what, before=old, after=new) for what, old, new in pairs if new.u < NEWS * old.u)
