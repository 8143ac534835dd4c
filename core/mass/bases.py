"""Floor plans a vessel stands on: round, or a rectangle with rounded corners. Inner lengths in cm."""

from __future__ import annotations

from dataclasses import dataclass

from core.mass import solids
from core.mass.bounds import check_size


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundBase:
    """A round floor plan."""

    diameter_cm: float

    def __post_init__(self) -> None:
        check_size("diameter", self.diameter_cm)

    @property
    def front_cm(self) -> float:
        """Width seen from the front."""
        return self.diameter_cm

    @property
    def area_cm2(self) -> float:
        """Area of the plan."""
        return solids.disc_cm2(self.diameter_cm)

    def enlarged(self, by: float) -> RoundBase:
        """The same plan, every length times `by`."""
        return RoundBase(diameter_cm=self.diameter_cm * by)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxBase:
    """A rectangular floor plan with rounded corners; `length_cm` is the side seen from the front."""

    length_cm: float
    width_cm: float
    corner_radius_cm: float = 0.0

    def __post_init__(self) -> None:
        check_size("length", self.length_cm)
        check_size("width", self.width_cm)
        most = min(self.length_cm, self.width_cm) / 2
        check_size("corner radius", self.corner_radius_cm, most=most, may_be_zero=True)

    @property
    def front_cm(self) -> float:
        """Width seen from the front."""
        return self.length_cm

    @property
    def area_cm2(self) -> float:
        """Area of the plan."""
        return solids.rounded_box_cm2(self.length_cm, self.width_cm, self.corner_radius_cm)

    def enlarged(self, by: float) -> BoxBase:
        """The same plan, every length times `by`."""
        length, width = self.length_cm * by, self.width_cm * by
        # Rounding must not push the radius past half the shorter side.
        radius = min(self.corner_radius_cm * by, length / 2, width / 2)
        return BoxBase(length_cm=length, width_cm=width, corner_radius_cm=radius)


Base = RoundBase | BoxBase
