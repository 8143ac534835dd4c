"""Movement families and the colour each one has of its own."""

from __future__ import annotations

from enum import StrEnum

from gui.theme.tokens import Tokens


class Family(StrEnum):
    """A group of movement patterns that share a colour on bars, blocks and ribbons."""

    SQUAT = "squat"
    PUSH = "push"
    PULL = "pull"
    CARRY = "carry"
    TRUNK = "trunk"
    GAIT = "gait"
    MOBILITY = "mobility"
    OTHER = "other"


def family_colour(family: Family, tokens: Tokens) -> str:
    """The `#rrggbb` of `family` in this theme; squat, hinge and lunge share one colour, warm-ups are quiet."""
    colours = {
        Family.SQUAT: tokens.squat,
        Family.PUSH: tokens.push,
        Family.PULL: tokens.pull,
        Family.CARRY: tokens.carry,
        Family.TRUNK: tokens.trunk,
        Family.GAIT: tokens.gait,
        Family.MOBILITY: tokens.mobility,
        Family.OTHER: tokens.bar_quiet,
    }
    return colours[family]
