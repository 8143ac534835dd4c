"""The outline of a vessel in its true proportions, and shapes scaled to a capacity."""

from __future__ import annotations

import math
from typing import assert_never

from core.mass.bounds import LARGEST_L, check_size
from core.mass.shapes import (
    CM3_PER_L,
    Bag,
    Base,
    BoxBase,
    LyingCylinder,
    PourTable,
    RoundBase,
    Shape,
    Shouldered,
    StraightBox,
    StraightRound,
    Tapered,
)

STEPS = 24

Outline = tuple[tuple[float, float], ...]
"""(half width, height) in cm from the base to the rim, as seen from the front."""


def profile(shape: Shape) -> Outline:
    """The right half of the vessel's silhouette, base first; mirror it to draw the whole."""
    match shape:
        case StraightRound():
            return _straight(shape.diameter_cm, shape.full_height_cm)
        case StraightBox():
            return _straight(shape.length_cm, shape.full_height_cm)
        case Tapered():
            return ((shape.bottom_cm / 2, 0.0), (shape.top_cm / 2, shape.full_height_cm))
        case LyingCylinder():
            return _circle(shape.diameter_cm)
        case Shouldered():
            return _shouldered(shape)
        case Bag():
            return _sack(shape)
        case PourTable():
            return _from_areas(shape)
        case _:
            assert_never(shape)


def _straight(width_cm: float, height_cm: float) -> Outline:
    return ((width_cm / 2, 0.0), (width_cm / 2, height_cm))


def _circle(diameter_cm: float) -> Outline:
    angles = (math.pi * step / STEPS for step in range(STEPS + 1))
    return tuple((diameter_cm / 2 * math.sin(a), diameter_cm / 2 * (1 - math.cos(a))) for a in angles)


def _shouldered(shape: Shouldered) -> Outline:
    body = shape.base.diameter_cm if isinstance(shape.base, RoundBase) else shape.base.length_cm
    neck = min(shape.neck_diameter_cm, body)
    neck_from = shape.full_height_cm - shape.neck_height_cm
    points = [
        (body / 2, 0.0),
        (body / 2, shape.straight_to_cm),
        (neck / 2, neck_from),
        (neck / 2, shape.full_height_cm),
    ]
    return tuple(point for i, point in enumerate(points) if i == 0 or point != points[i - 1])


def _sack(shape: Bag) -> Outline:
    """A soft upright sack: as wide as makes its volume, drawn in at both ends."""
    widest = math.sqrt(shape.full_volume_l * CM3_PER_L / (math.pi * shape.full_height_cm))
    spots = (step / STEPS for step in range(STEPS + 1))
    return tuple((widest * (0.7 + 0.35 * math.sin(math.pi * t) ** 0.5), shape.full_height_cm * t) for t in spots)


def _from_areas(shape: PourTable) -> Outline:
    """Half widths of round slices whose volume matches the table."""
    step = shape.full_height_cm / STEPS
    volumes = [shape.volume_l(min(i * step, shape.full_height_cm)) for i in range(STEPS + 1)]
    radii = [math.sqrt((b - a) * CM3_PER_L / step / math.pi) for a, b in zip(volumes, volumes[1:], strict=False)]
    return ((radii[0], 0.0), *((r, (i + 0.5) * step) for i, r in enumerate(radii)), (radii[-1], shape.full_height_cm))


def shape_for_capacity(proportions: Shape, litres: float) -> Shape:
    """A vessel with these proportions whose brimful volume is `litres`: enlarged or shrunk alike in all directions."""
    check_size("volume", litres, most=LARGEST_L)
    return _enlarged(proportions, math.cbrt(litres / proportions.full_volume_l))


def _enlarged(shape: Shape, by: float) -> Shape:
    match shape:
        case StraightRound():
            return StraightRound(diameter_cm=shape.diameter_cm * by, full_height_cm=shape.full_height_cm * by)
        case StraightBox():
            base = _enlarged_box(shape.base, by)
            return StraightBox(
                length_cm=base.length_cm,
                width_cm=base.width_cm,
                corner_radius_cm=base.corner_radius_cm,
                full_height_cm=shape.full_height_cm * by,
            )
        case Tapered():
            height = shape.full_height_cm * by
            return Tapered(bottom_cm=shape.bottom_cm * by, top_cm=shape.top_cm * by, full_height_cm=height)
        case LyingCylinder():
            return LyingCylinder(diameter_cm=shape.diameter_cm * by, length_cm=shape.length_cm * by)
        case Shouldered():
            return _enlarged_jug(shape, by)
        case Bag():
            return Bag(full_volume_l=shape.full_volume_l * by**3, full_height_cm=shape.full_height_cm * by)
        case PourTable():
            return PourTable(points=tuple((volume * by**3, height * by) for volume, height in shape.points))
        case _:
            assert_never(shape)


def _enlarged_jug(shape: Shouldered, by: float) -> Shouldered:
    base: Base
    if isinstance(shape.base, RoundBase):
        base = RoundBase(diameter_cm=shape.base.diameter_cm * by)
    else:
        base = _enlarged_box(shape.base, by)
    return Shouldered(
        base=base,
        straight_to_cm=shape.straight_to_cm * by,
        neck_diameter_cm=shape.neck_diameter_cm * by,
        neck_height_cm=shape.neck_height_cm * by,
        full_height_cm=shape.full_height_cm * by,
    )


def _enlarged_box(base: BoxBase, by: float) -> BoxBase:
    radius = base.corner_radius_cm * by
    length, width = base.length_cm * by, base.width_cm * by
    # Rounding must not push the radius past half the shorter side.
    return BoxBase(length_cm=length, width_cm=width, corner_radius_cm=min(radius, length / 2, width / 2))
