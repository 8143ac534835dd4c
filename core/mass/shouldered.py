"""Vessels with a shoulder and a neck: jug, carrier, bottle. Inner lengths in cm, volumes in litres."""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.mass import solids
from core.mass.bases import Base
from core.mass.bounds import CM3_PER_L, Outline, check_size, inside_height, inside_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class Shouldered:
    """A jug, carrier or bottle: straight up to `straight_to_cm`, then narrowing to a neck of `neck_height_cm`.

    The shoulder is a frustum of area: the square root of the plan area falls linearly from the body to the neck.
    """

    base: Base
    straight_to_cm: float
    neck_diameter_cm: float
    neck_height_cm: float = 0.0
    full_height_cm: float

    def __post_init__(self) -> None:
        check_size("height", self.full_height_cm)
        check_size("neck diameter", self.neck_diameter_cm)
        check_size("neck height", self.neck_height_cm, may_be_zero=True)
        check_size("height of the straight part", self.straight_to_cm, may_be_zero=True)
        if self.shoulder_height_cm <= 0:
            rule = f"leaves no room for a shoulder and a neck below {self.full_height_cm:g} cm"
            raise InputError(f"{self.straight_to_cm:g} cm straight", rule, "measure up to where the sides turn inwards")
        if solids.disc_cm2(self.neck_diameter_cm) > self.base.area_cm2:
            raise InputError(f"{self.neck_diameter_cm:g} cm", "is a neck wider than the body", "measure both again")

    @property
    def shoulder_height_cm(self) -> float:
        """Height of the narrowing part."""
        return self.full_height_cm - self.neck_height_cm - self.straight_to_cm

    def _shoulder(self) -> tuple[float, float, float]:
        return math.sqrt(self.base.area_cm2), math.sqrt(solids.disc_cm2(self.neck_diameter_cm)), self.shoulder_height_cm

    def _body_cm3(self) -> float:
        return self.base.area_cm2 * self.straight_to_cm

    @property
    def full_volume_l(self) -> float:
        """Brimful volume: body, shoulder and neck."""
        neck = solids.disc_cm2(self.neck_diameter_cm) * self.neck_height_cm
        return (self._body_cm3() + solids.frustum_cm3(*self._shoulder()) + neck) / CM3_PER_L

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        depth = inside_height(height_cm, self.full_height_cm)
        above = depth - self.straight_to_cm
        if above <= 0:
            return self.base.area_cm2 * depth / CM3_PER_L
        shoulder = self._shoulder()
        in_shoulder = min(above, self.shoulder_height_cm)
        in_neck = solids.disc_cm2(self.neck_diameter_cm) * (above - in_shoulder)
        return (self._body_cm3() + solids.frustum_part_cm3(*shoulder, in_shoulder) + in_neck) / CM3_PER_L

    def height_cm(self, volume_l: float) -> float:
        """Height of the surface at a volume."""
        volume = inside_volume(volume_l, self.full_volume_l) * CM3_PER_L
        body, shoulder = self._body_cm3(), self._shoulder()
        if volume <= body:
            return volume / self.base.area_cm2
        above = volume - body - solids.frustum_cm3(*shoulder)
        if above <= 0:
            depth = solids.frustum_depth_cm(*shoulder, volume - body)
            return self.straight_to_cm + min(depth, self.shoulder_height_cm)
        neck = above / solids.disc_cm2(self.neck_diameter_cm)
        return min(self.straight_to_cm + self.shoulder_height_cm + neck, self.full_height_cm)

    def outline(self) -> Outline:
        """Right half of the silhouette, base first."""
        body = self.base.front_cm / 2
        neck = min(self.neck_diameter_cm / 2, body)
        neck_from = self.full_height_cm - self.neck_height_cm
        corners = ((body, 0.0), (body, self.straight_to_cm), (neck, neck_from), (neck, self.full_height_cm))
        return tuple(corner for corner, before in zip(corners, (None, *corners), strict=False) if corner != before)

    def enlarged(self, by: float) -> Shouldered:
        """The same proportions, every length times `by`."""
        return Shouldered(
            base=self.base.enlarged(by),
            straight_to_cm=self.straight_to_cm * by,
            neck_diameter_cm=self.neck_diameter_cm * by,
            neck_height_cm=self.neck_height_cm * by,
            full_height_cm=self.full_height_cm * by,
        )
