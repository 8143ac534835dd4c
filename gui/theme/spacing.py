"""Distances and corner radii in device-independent pixels, so that every screen keeps the same rhythm."""

from __future__ import annotations

from enum import IntEnum


class Space(IntEnum):
    """Gaps and paddings."""

    NONE = 0
    XXS = 2
    XS = 4
    S = 8
    M = 12
    L = 16
    XL = 24


class Radius(IntEnum):
    """Corner radii: controls, blocks inside cards, cards."""

    BLOCK = 6
    CONTROL = 8
    CARD = 12


PAGE_MARGIN = 24
CONTROL_HEIGHT = 34
SIDEBAR_WIDTH = 184
SIDEBAR_NARROW = 56
