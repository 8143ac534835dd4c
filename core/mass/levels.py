"""What a fill level says about the volume inside: the litres, and how each doubt moves them.

All partial derivatives are analytic except the reading of a line, where the volume between the two ends of the
reading's interval is taken: that stays honest across a shoulder, where the plan area jumps.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import assert_never

from core.errors import InputError
from core.mass.bounds import SLACK
from core.mass.model import (
    Bag,
    BrimLevel,
    Container,
    CupsLevel,
    FullLevel,
    HeightLevel,
    Level,
    ShareLevel,
    VolumeLevel,
)

ROOT_3 = math.sqrt(3)
# A soft bag has no true line; half-width of the share of its volume below a height (assumed).
BAG_SHAPE_DOUBT = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelVolume:
    """Litres at a level. `per_nominal` and `per_brimful` are dV/dx, the `u_` fields standard uncertainties in L."""

    volume_l: float
    per_nominal: float = 0.0
    per_brimful: float = 0.0
    u_reading_l: float = 0.0
    u_cup_l: float = 0.0
    u_shape_l: float = 0.0
    reading: str


def level_volume(container: Container, level: Level, *, heaped: bool) -> LevelVolume:
    """The volume at `level`; `heaped` for grains, whose surface is read half as well. `InputError` if it cannot be."""
    nominal, brimful = container.nominal_l.value, container.brimful_l.value
    match level:
        case FullLevel():
            doubt = level.half_width_share * nominal / ROOT_3
            return LevelVolume(volume_l=nominal, per_nominal=1.0, u_reading_l=doubt, reading="filling to the mark")
        case BrimLevel():
            doubt = level.half_width_share * brimful / ROOT_3
            return LevelVolume(volume_l=brimful, per_brimful=1.0, u_reading_l=doubt, reading="filling to the brim")
        case ShareLevel():
            return _share(level, nominal)
        case VolumeLevel():
            volume = fitting(level.volume_l, brimful)
            doubt = level.half_width_share * volume / ROOT_3
            return LevelVolume(volume_l=volume, u_reading_l=doubt, reading="measuring what you pour")
        case CupsLevel():
            return _cups(level, brimful)
        case HeightLevel():
            return _height(container, level, level.half_width_cm * (2 if heaped else 1))
        case _:
            assert_never(level)


def fitting(volume_l: float, brimful_l: float) -> float:
    """`volume_l` if it is a volume the container can hold, else `InputError`."""
    if not 0 <= volume_l <= brimful_l * (1 + SLACK):
        rule = f"is not a volume this container can hold ({brimful_l:.2f} L to the brim)"
        raise InputError(f"{volume_l:g} L", rule, "pour less, or correct the container's capacity")
    return volume_l


def height_at(container: Container, volume_l: float) -> float | None:
    """Height of the surface in cm when `volume_l` is inside; None for a bag, which has no fixed form."""
    if isinstance(container.shape, Bag):
        return None
    scale = container.shape.full_volume_l / container.brimful_l.value
    return container.shape.height_cm(min(volume_l * scale, container.shape.full_volume_l))


def _share(level: ShareLevel, nominal_l: float) -> LevelVolume:
    if not 0 <= level.share <= 1:
        rule = "is not a share of the capacity between 0 and 1"
        raise InputError(f"{level.share:g}", rule, "give 0.5 for half full, or choose brimful")
    # Nobody mistakes an empty container for one twentieth full.
    doubt = min(level.half_width_share, level.share) * nominal_l / ROOT_3
    volume = level.share * nominal_l
    return LevelVolume(volume_l=volume, per_nominal=level.share, u_reading_l=doubt, reading="judging the share by eye")


def _cups(level: CupsLevel, brimful_l: float) -> LevelVolume:
    if not (0 <= level.count <= 10_000 and 0 < level.cup_l <= 100):
        value = f"{level.count:g} × {level.cup_l:g} L"
        raise InputError(value, "is not a number of cups", "give a count from 0 and the size of your cup")
    volume = fitting(level.count * level.cup_l, brimful_l)
    pours = level.pour_share * level.cup_l / ROOT_3 * math.sqrt(level.count)
    size = level.cup_share * volume / ROOT_3
    return LevelVolume(volume_l=volume, u_reading_l=pours, u_cup_l=size, reading="pouring cup by cup")


def _height(container: Container, level: HeightLevel, half_width_cm: float) -> LevelVolume:
    shape = container.shape
    share = shape.volume_l(level.height_cm) / shape.full_volume_l
    above = min(level.height_cm + half_width_cm, shape.full_height_cm)
    below = max(level.height_cm - half_width_cm, 0.0)
    brimful = container.brimful_l.value
    # Where the interval is cut off at the base or the rim, its one side still counts in full.
    between = (shape.volume_l(above) - shape.volume_l(below)) * 2 * half_width_cm / max(above - below, 1e-12)
    shape_doubt = BAG_SHAPE_DOUBT if isinstance(shape, Bag) else container.shape_doubt
    return LevelVolume(
        volume_l=share * brimful,
        per_brimful=share,
        u_reading_l=between / 2 / shape.full_volume_l * brimful / ROOT_3,
        u_shape_l=shape_doubt * 2 * share * (1 - share) * brimful / ROOT_3,
        reading="reading the line",
    )
