"""A measured value: the number, its standard uncertainty and where it came from.

Uncertainties follow JCGM 100:2008 (GUM): `u` is one standard uncertainty, `u95` the expanded one with coverage
factor 2.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

COVERAGE_FACTOR = 2.0


class Origin(StrEnum):
    """Where a value came from, weakest claim last."""

    EXACT = "exact"
    SCALE = "scale"
    LABEL = "label"
    MEASURED = "measured"
    COMBINED = "combined"
    ESTIMATE = "estimate"


@dataclass(frozen=True, slots=True)
class Measured:
    """`value` and standard uncertainty `u`, both in the unit the field name states (kg, L, cm)."""

    value: float
    u: float = 0.0
    origin: Origin = Origin.ESTIMATE

    def __post_init__(self) -> None:
        if not (math.isfinite(self.value) and math.isfinite(self.u)) or self.u < 0:
            raise ValueError(f"a measured value needs finite numbers and u >= 0, not {self.value} and {self.u}")

    @property
    def u95(self) -> float:
        """Half-width of the interval that holds the true value about 19 times out of 20."""
        return COVERAGE_FACTOR * self.u

    @classmethod
    def rectangular(cls, value: float, half_width: float, origin: Origin = Origin.ESTIMATE) -> Measured:
        """A value known only to lie within ± `half_width`, every point alike: u = a / √3 (GUM 4.3.7)."""
        return cls(value, half_width / math.sqrt(3), origin)

    @classmethod
    def triangular(cls, value: float, half_width: float, origin: Origin = Origin.ESTIMATE) -> Measured:
        """A value within ± `half_width` with the middle likeliest: u = a / √6 (GUM 4.3.9)."""
        return cls(value, half_width / math.sqrt(6), origin)


def alike(one: Measured, count: int) -> Measured:
    """`count` alike pieces together: what is wrong with one is wrong with all, so uncertainties add up straight."""
    return Measured(count * one.value, count * one.u, one.origin)


def combined(values: Iterable[Measured]) -> Measured:
    """Sum of independent measured values; uncertainties add in quadrature."""
    parts = tuple(values)
    total = math.fsum(part.value for part in parts)
    return Measured(total, math.sqrt(math.fsum(part.u**2 for part in parts)), Origin.COMBINED)
