"""Vessels without straight sides: a cylinder on its flank, a sack, and the owner's own pour table. cm and litres."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from itertools import pairwise

from core.errors import InputError
from core.mass import pour_table, solids
from core.mass.bounds import CM3_PER_L, LARGEST_L, LONGEST_CM, Outline, check_size, inside_height, inside_volume

OUTLINE_STEPS = 24


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

    def outline(self) -> Outline:
        """Right half of the end seen from the front: half a circle, lowest point first."""
        angles = (math.pi * step / OUTLINE_STEPS for step in range(OUTLINE_STEPS + 1))
        radius = self.diameter_cm / 2
        return tuple((radius * math.sin(angle), radius * (1 - math.cos(angle))) for angle in angles)

    def enlarged(self, by: float) -> LyingCylinder:
        """The same proportions, every length times `by`."""
        return LyingCylinder(diameter_cm=self.diameter_cm * by, length_cm=self.length_cm * by)


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

    def outline(self) -> Outline:
        """A soft upright sack: about as wide as makes its volume, drawn in at both ends."""
        widest = math.sqrt(self.full_volume_l * CM3_PER_L / (math.pi * self.full_height_cm))
        spots = (step / OUTLINE_STEPS for step in range(OUTLINE_STEPS + 1))
        return tuple((widest * (0.7 + 0.35 * math.sin(math.pi * t) ** 0.5), self.full_height_cm * t) for t in spots)

    def enlarged(self, by: float) -> Bag:
        """The same proportions, every length times `by`."""
        return Bag(full_volume_l=self.full_volume_l * by**3, full_height_cm=self.full_height_cm * by)


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

    def outline(self) -> Outline:
        """Right half of round slices whose volumes match the table."""
        step = self.full_height_cm / OUTLINE_STEPS
        volumes = [self.volume_l(min(i * step, self.full_height_cm)) for i in range(OUTLINE_STEPS + 1)]
        radii = [math.sqrt((above - below) * CM3_PER_L / step / math.pi) for below, above in pairwise(volumes)]
        slices = ((radius, (i + 0.5) * step) for i, radius in enumerate(radii))
        return ((radii[0], 0.0), *slices, (radii[-1], self.full_height_cm))

    def enlarged(self, by: float) -> PourTable:
        """The same proportions, every length times `by`."""
        return PourTable(points=tuple((volume * by**3, height * by) for volume, height in self.points))


def _check_table(pairs: tuple[tuple[float, float], ...]) -> None:
    if len(pairs) < 2:
        raise InputError("an empty table", "tells nothing about the container", "pour once and note litres and height")
    for (volume, height), (next_volume, next_height) in pairwise(pairs):
        if not (next_volume > volume and next_height > height):
            rule = f"does not rise above {volume:g} L at {height:g} cm"
            way_out = "each pour must add litres and height; check the order and the numbers"
            raise InputError(f"{next_volume:g} L at {next_height:g} cm", rule, way_out)
    check_size("volume", pairs[-1][0], most=LARGEST_L)
    check_size("height", pairs[-1][1], most=LONGEST_CM)
