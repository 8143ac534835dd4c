"""Contrast between two colours, as WCAG 2.2 defines it (success criteria 1.4.3 and 1.4.11), and the pairs we paint.

Colours are `#rrggbb`; a ratio runs from 1 (alike) to 21 (black on white). Source: W3C, WCAG 2.2, "relative luminance".
"""

from __future__ import annotations

AA_TEXT = 4.5
AA_SHAPE = 3.0

_ON_SURFACES = ("page", "surface", "surface_soft", "surface_hover")

TEXT_PAIRS: tuple[tuple[str, str], ...] = (
    *((ink, ground) for ink in ("ink", "ink_soft", "accent_ink", "bad_ink") for ground in _ON_SURFACES),
    ("ink", "accent_soft"),
    ("ink_soft", "accent_soft"),
    ("accent_ink", "accent_soft"),
    ("on_accent", "accent"),
    ("on_accent", "accent_hover"),
    ("good_ink", "good"),
    ("fair_ink", "fair"),
    ("ink", "fair"),
    ("bad_ink", "bad"),
    ("ink", "bad"),
    ("ink", "good"),
    ("plain_ink", "plain"),
    ("selected_ink", "selected"),
    ("liquid_ink", "liquid"),
    ("sidebar_ink", "sidebar"),
    ("sidebar_ink", "sidebar_selected"),
    ("sidebar_ink", "sidebar_hover"),
    ("sidebar_ink_soft", "sidebar"),
    ("sidebar_ink_soft", "sidebar_selected"),
)
"""(text token, background token) of every text Fillmark paints."""

SHAPE_PAIRS: tuple[tuple[str, str], ...] = (
    *(
        (edge, ground)
        for edge in ("control_line", "outline", "accent", "focus", "amber")
        for ground in ("surface", "page")
    ),
    *((family, "surface") for family in ("squat", "push", "pull", "carry", "trunk", "gait", "mobility")),
    ("liquid_line", "liquid"),
    ("sidebar_focus", "sidebar_selected"),
    ("sidebar_mark", "sidebar"),
)
"""(shape token, background token) of every drawn shape that carries meaning."""


def relative_luminance(colour: str) -> float:
    """Luminance of `#rrggbb` from 0 (black) to 1 (white)."""
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first: str, second: str) -> float:
    """Contrast ratio of two `#rrggbb` colours, order indifferent."""
    low, high = sorted((relative_luminance(first), relative_luminance(second)))
    return (high + 0.05) / (low + 0.05)


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)
