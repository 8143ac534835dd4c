"""The shapes a vessel can have, each a pair of inverse functions between fill height and volume.

Inner lengths in cm, volumes in litres. `volume_l(height_cm)` and `height_cm(volume_l)` rise without a gap and undo
each other to a relative 1e-9; `full_height_cm` is the rim, `full_volume_l` the brimful volume. A size that makes no
vessel, a height above the rim or a volume above brimful raises `InputError`.
"""

from __future__ import annotations

import math

from core.mass.bases import Base, BoxBase, RoundBase
from core.mass.bounds import LARGEST_L, Outline, check_size
from core.mass.freeform import Bag, LyingCylinder, PourTable
from core.mass.shouldered import Shouldered
from core.mass.upright import StraightBox, StraightRound, Tapered

__all__ = [
    "Bag",
    "Base",
    "BoxBase",
    "LyingCylinder",
    "Outline",
    "PourTable",
    "RoundBase",
    "Shape",
    "Shouldered",
    "StraightBox",
    "StraightRound",
    "Tapered",
    "profile",
    "shape_for_capacity",
]

Shape = StraightRound | StraightBox | Tapered | LyingCylinder | Shouldered | Bag | PourTable


def profile(shape: Shape) -> Outline:
    """(half width, height) in cm from base to rim: the right half of the silhouette; mirror it to draw the whole."""
    return shape.outline()


def shape_for_capacity(proportions: Shape, litres: float) -> Shape:
    """A vessel with these proportions whose brimful volume is `litres`: enlarged or shrunk alike in all directions."""
    check_size("volume", litres, most=LARGEST_L)
    return proportions.enlarged(math.cbrt(litres / proportions.full_volume_l))
