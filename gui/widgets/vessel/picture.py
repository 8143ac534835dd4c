"""What a drawn vessel shows, as plain values: its silhouette, its fill line, the scale beside it.

Lengths are centimetres, texts are ready to read. Nothing is computed from mass or volume here.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Handle(StrEnum):
    """How a vessel is held, as far as a silhouette shows it."""

    NONE = "none"
    SIDE = "side"
    BAIL = "bail"
    TOP = "top"
    EARS = "ears"


class Top(StrEnum):
    """What closes a vessel: nothing, a cap on its neck, a small cap on a wide top, a lid, a knot."""

    OPEN = "open"
    CAP = "cap"
    SPOUT = "spout"
    LID = "lid"
    TIED = "tied"


class Contents(StrEnum):
    """Whether the fill is drawn as a liquid or as grains."""

    LIQUID = "liquid"
    GRAIN = "grain"


@dataclass(frozen=True, slots=True, kw_only=True)
class Silhouette:
    """Half of an upright outline: (half_width_cm, height_cm) points from the base (height 0) up to the rim."""

    outline: tuple[tuple[float, float], ...]
    handle: Handle = Handle.NONE
    top: Top = Top.OPEN

    @property
    def rim_cm(self) -> float:
        """Height of the rim, the highest a fill can stand."""
        return self.outline[-1][1]

    @property
    def widest_cm(self) -> float:
        """Half of the greatest width."""
        return max(half for half, _ in self.outline)

    def half_width_at(self, height_cm: float) -> float:
        """Half width of the outline at a height, straight between its points."""
        lower = self.outline[0]
        for upper in self.outline[1:]:
            if height_cm <= upper[1]:
                rise = upper[1] - lower[1]
                share = (height_cm - lower[1]) / rise if rise > 0 else 1.0
                return lower[0] + (upper[0] - lower[0]) * min(1.0, max(0.0, share))
            lower = upper
        return self.outline[-1][0]

    def shoulder_cm(self) -> float:
        """The height up to which the vessel is about as wide as it gets."""
        return max(height for half, height in self.outline if half >= 0.97 * self.widest_cm)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleTick:
    """A mark of the scale at a height of the vessel; an empty label is a small mark."""

    height_cm: float
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselFill:
    """The fill line: its height, half the width of its ± band, and what to write where.

    `contents_text` stands in the fill, `height_text` on the dimension line, `mass_text` at the scale; `spoken` is the
    whole in one sentence for a screen reader.
    """

    height_cm: float
    band_cm: float = 0.0
    contents_text: str = ""
    height_text: str = ""
    mass_text: str = ""
    spoken: str = ""
    contents: Contents = Contents.LIQUID


EMPTY = VesselFill(height_cm=0.0)
