"""The shapes a vessel can have, each a pair of inverse functions between fill height and volume.

Inner lengths in cm, volumes in litres. `volume_l(height_cm)` and `height_cm(volume_l)` are monotone, continuous and undo
each other to a relative 1e-9; `full_height_cm` is the rim and `full_volume_l` the brimful volume. A size that makes no
vessel, a height above the rim or a volume above brimful raises `InputError`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from core.errors import InputError
from core.mass import pour_table, solids
from core.mass.bounds import LARGEST_L, LONGEST_CM, check_size, inside_height, inside_volume

CM3_PER_L = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundBase:
    """A round floor plan."""

    diameter_cm: float

    def __post_init__(self) -> None:
        check_size("diameter", self.diameter_cm)

    @property
    def area_cm2(self) -> float:
        """Area of the plan."""
        return solids.disc_cm2(self.diameter_cm)


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
    def area_cm2(self) -> float:
        """Area of the plan."""
        return solids.rounded_box_cm2(self.length_cm, self.width_cm, self.corner_radius_cm)


Base = RoundBase | BoxBase


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


@dataclass(frozen=True, slots=True, kw_only=True)
class LyingCylinder:
    """A cylinder on its side: drum on its flank, round-bottomed trough closed at the top."""

    diameter_cm: float
    length_cm: float

    def __post_init__(self) -> None:
        check_size("diameter", self.diameter_cm)
        check_size("length", self.length_cm)

    @property
    def full_height_cm(self) -> float:
        """The diameter: the rim of a lying cylinder is its top line."""
        return self.diameter_cm

    @property
    def full_volume_l(self) -> float:
        """Brimful volume."""
        return solids.disc_cm2(self.diameter_cm) * self.length_cm / CM3_PER_L

    def _unit_cm3(self) -> float:
        return (self.diameter_cm / 2) ** 2 * self.length_cm

    def volume_l(self, height_cm: float) -> float:
        """Volume below a depth: L R² (θ - sin θ cos θ), where cos θ = 1 - h / R."""
        depth = inside_height(height_cm, self.diameter_cm)
        # 2 asin(√(h / 2R)) equals acos(1 - h / R) and keeps its digits near the bottom.
        angle = 2 * math.asin(math.sqrt(min(depth / self.diameter_cm, 1.0)))
        return self._unit_cm3() * solids.segment_fraction(angle) / CM3_PER_L

    def height_cm(self, volume_l: float) -> float:
        """Depth at a volume."""
        volume = inside_volume(volume_l, self.full_volume_l) * CM3_PER_L
        angle = solids.segment_angle(volume / self._unit_cm3())
        return self.diameter_cm * math.sin(angle / 2) ** 2


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
        above = inside_height(height_cm, self.full_height_cm) - self.straight_to_cm
        if above <= 0:
            return self.base.area_cm2 * (above + self.straight_to_cm) / CM3_PER_L
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Bag:
    """A sack or bag of known volume and no fixed form: height is nominal and grows in step with the volume."""

    full_volume_l: float
    full_height_cm: float

    def __post_init__(self) -> None:
        check_size("volume", self.full_volume_l, most=LARGEST_L)
        check_size("height", self.full_height_cm)

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        return self.full_volume_l * (inside_height(height_cm, self.full_height_cm) / self.full_height_cm)

    def height_cm(self, volume_l: float) -> float:
        """Nominal height at a volume."""
        return self.full_height_cm * (inside_volume(volume_l, self.full_volume_l) / self.full_volume_l)


@dataclass(frozen=True, slots=True, kw_only=True)
class PourTable:
    """The owner's own table of (volume_l, height_cm) pairs, read with a monotone cubic. An empty start is added."""

    points: tuple[tuple[float, float], ...]
    _heights: tuple[float, ...] = field(init=False, repr=False, compare=False)
    _volumes: tuple[float, ...] = field(init=False, repr=False, compare=False)
    _slopes: tuple[float, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        pairs = self.points if self.points and self.points[0] == (0.0, 0.0) else ((0.0, 0.0), *self.points)
        _check_table(pairs)
        volumes, heights = zip(*pairs, strict=True)
        object.__setattr__(self, "_heights", heights)
        object.__setattr__(self, "_volumes", volumes)
        object.__setattr__(self, "_slopes", pour_table.monotone_slopes(heights, volumes))

    @property
    def full_height_cm(self) -> float:
        """Height of the last point."""
        return self._heights[-1]

    @property
    def full_volume_l(self) -> float:
        """Volume of the last point."""
        return self._volumes[-1]

    def volume_l(self, height_cm: float) -> float:
        """Volume below a height."""
        depth = inside_height(height_cm, self.full_height_cm)
        return pour_table.cubic_volume(self._heights, self._volumes, self._slopes, depth)

    def height_cm(self, volume_l: float) -> float:
        """Height of the surface at a volume."""
        volume = inside_volume(volume_l, self.full_volume_l)
        return pour_table.cubic_height(self._heights, self._volumes, self._slopes, volume)


def _check_table(pairs: tuple[tuple[float, float], ...]) -> None:
    if len(pairs) < 2:
        raise InputError("an empty table", "tells nothing about the container", "pour once and note litres and height")
    for (volume, height), (next_volume, next_height) in zip(pairs, pairs[1:], strict=False):
        if not (next_volume > volume and next_height > height):
            rule = f"does not rise above {volume:g} L at {height:g} cm"
            way_out = "each pour must add litres and height; check the order and the numbers"
            raise InputError(f"{next_volume:g} L at {next_height:g} cm", rule, way_out)
    check_size("volume", pairs[-1][0], most=LARGEST_L)
    check_size("height", pairs[-1][1], most=LONGEST_CM)


Shape = StraightRound | StraightBox | Tapered | LyingCylinder | Shouldered | Bag | PourTable
