"""The loads one container makes cup by cup, thinned to steps worth drawing, and the one nearest to a mass."""

from __future__ import annotations

import math
from bisect import bisect_left
from dataclasses import dataclass

from core.loads.ladder import WIDE_STEP_PCT
from core.mass.gauge import Gauge
from core.mass.model import CupsLevel, FullLevel, Level

LEAST_STEP = 0.04
"""A pour lighter than this share of the one below is passed over: nobody would use it as a step, nor see it drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pour:
    """So many cups in the container (`full`: up to its mark) and what the whole weighs; `step_pct` from the one below.

    `step_pct` is 0 for the lightest.
    """

    cups: int
    volume_l: float
    mass_kg: float
    step_pct: float
    full: bool = False

    @property
    def wide(self) -> bool:
        """Whether the step up to it is wider than loads are usually raised."""
        return self.step_pct > WIDE_STEP_PCT

    def level(self, cup_l: float) -> Level:
        """How it is poured."""
        return FullLevel() if self.full else CupsLevel(count=self.cups, cup_l=cup_l)


def pours_of(gauge: Gauge, cup_l: float) -> tuple[Pour, ...]:
    """From empty to full in cups, leaving out what is hardly heavier than the pour before.

    An empty container lighter than one cup is no load, so it is left out too.
    """
    full_l = gauge.container.nominal_l.value
    empty_kg, full_kg = gauge.container.tare_kg.value, gauge.container.tare_kg.value + gauge.kg_l * full_l
    found: list[Pour] = []
    if empty_kg >= gauge.kg_l * cup_l:
        found.append(Pour(cups=0, volume_l=0.0, mass_kg=empty_kg, step_pct=0.0))
    for count in range(1, math.ceil(full_l / cup_l - 1e-9)):
        mass_kg = empty_kg + gauge.kg_l * count * cup_l
        below = found[-1].mass_kg if found else 0.0
        if mass_kg >= below * (1 + LEAST_STEP) and mass_kg * (1 + LEAST_STEP) <= full_kg:
            found.append(_pour(count, count * cup_l, mass_kg, below))
    found.append(
        _pour(math.ceil(full_l / cup_l - 1e-9), full_l, full_kg, found[-1].mass_kg if found else 0.0, full=True)
    )
    return tuple(found)


def nearest_pour(pours: tuple[Pour, ...], mass_kg: float) -> int:
    """Place of the pour nearest to a mass, the lighter of two equally near; -1 without any."""
    if not pours:
        return -1
    above = bisect_left(pours, mass_kg, key=lambda pour: pour.mass_kg)
    around = range(max(0, above - 1), min(len(pours), above + 1))
    return min(around, key=lambda at: (abs(pours[at].mass_kg - mass_kg), at))


def _pour(cups: int, volume_l: float, mass_kg: float, below_kg: float, *, full: bool = False) -> Pour:
    step_pct = 100 * (mass_kg - below_kg) / below_kg if below_kg > 0 else 0.0
    return Pour(cups=cups, volume_l=volume_l, mass_kg=mass_kg, step_pct=step_pct, full=full)
