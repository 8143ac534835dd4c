"""Upright vessels with straight or evenly sloping sides. Inner lengths in cm, volumes in litres."""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.mass import solids
from core.mass.bases import BoxBase
from core.mass.bounds import CM3_PER_L, Outline, check_size, inside_height, inside_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightRound:
    """An upright cylinder: tin, drum, straight pot."""

    diameter_cm: float
    full_height_cm: float

    def __post_init__(self) -> None:
        check_size("diameter", self.diameter_cm)
        check_size("height", self.full_height_cm)

    @property
    def full_volume_l(self) -> float:
        """Brimful volume."""
        return solids.disc_cm2(self.diameter_cm) * self.full_height_cm / CM3_PER_L

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        return solids.disc_cm2(self.diameter_cm) * inside_height(height_cm, self.full_height_cm) / CM3_PER_L

    def height_cm(self, volume_l: float) -> float:
        """Height of the surface at a volume."""
        return inside_volume(volume_l, self.full_volume_l) * CM3_PER_L / solids.disc_cm2(self.diameter_cm)

    def outline(self) -> Outline:
        """Right half of the silhouette, base first."""
        return ((self.diameter_cm / 2, 0.0), (self.diameter_cm / 2, self.full_height_cm))

    def enlarged(self, by: float) -> StraightRound:
        """The same proportions, every length times `by`."""
        return StraightRound(diameter_cm=self.diameter_cm * by, full_height_cm=self.full_height_cm * by)


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightBox:
    """An upright box with rounded vertical edges: crate, canister, carton."""

    length_cm: float
    width_cm: float
    corner_radius_cm: float = 0.0
    full_height_cm: float

    def __post_init__(self) -> None:
        check_size("height", self.full_height_cm)
        check_size("length", self.base.length_cm)

    @property
    def base(self) -> BoxBase:
        """The floor plan."""
        return BoxBase(length_cm=self.length_cm, width_cm=self.width_cm, corner_radius_cm=self.corner_radius_cm)

    @property
    def area_cm2(self) -> float:
        """Area of the plan."""
        return solids.rounded_box_cm2(self.length_cm, self.width_cm, self.corner_radius_cm)

    @property
    def full_volume_l(self) -> float:
        """Brimful volume."""
        return self.area_cm2 * self.full_height_cm / CM3_PER_L

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        return self.area_cm2 * inside_height(height_cm, self.full_height_cm) / CM3_PER_L

    def height_cm(self, volume_l: float) -> float:
        """Height of the surface at a volume."""
        return inside_volume(volume_l, self.full_volume_l) * CM3_PER_L / self.area_cm2

    def outline(self) -> Outline:
        """Right half of the silhouette, base first."""
        return ((self.length_cm / 2, 0.0), (self.length_cm / 2, self.full_height_cm))

    def enlarged(self, by: float) -> StraightBox:
        """The same proportions, every length times `by`."""
        base = self.base.enlarged(by)
        return StraightBox(
            length_cm=base.length_cm,
            width_cm=base.width_cm,
            corner_radius_cm=base.corner_radius_cm,
            full_height_cm=self.full_height_cm * by,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Tapered:
    """An upright frustum of a cone, wider or narrower at the top: bucket, tub, flower pot. Diameters in cm."""

    bottom_cm: float
    top_cm: float
    full_height_cm: float

    def __post_init__(self) -> None:
        check_size("bottom diameter", self.bottom_cm)
        check_size("top diameter", self.top_cm)
        check_size("height", self.full_height_cm)

    def _sides(self) -> tuple[float, float]:
        root = math.sqrt(math.pi) / 2
        return root * self.bottom_cm, root * self.top_cm

    @property
    def full_volume_l(self) -> float:
        """Brimful volume."""
        return solids.frustum_cm3(*self._sides(), self.full_height_cm) / CM3_PER_L

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        depth = inside_height(height_cm, self.full_height_cm)
        return solids.frustum_part_cm3(*self._sides(), self.full_height_cm, depth) / CM3_PER_L

    def height_cm(self, volume_l: float) -> float:
        """Height of the surface at a volume."""
        volume = inside_volume(volume_l, self.full_volume_l) * CM3_PER_L
        return min(solids.frustum_depth_cm(*self._sides(), self.full_height_cm, volume), self.full_height_cm)

    def outline(self) -> Outline:
        """Right half of the silhouette, base first."""
        return ((self.bottom_cm / 2, 0.0), (self.top_cm / 2, self.full_height_cm))

    def enlarged(self, by: float) -> Tapered:
        """The same proportions, every length times `by`."""
        height = self.full_height_cm * by
        return Tapered(bottom_cm=self.bottom_cm * by, top_cm=self.top_cm * by, full_height_cm=height)
