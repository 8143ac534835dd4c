"""The type scale: one system font, a few roles, figures of equal width.

Sizes are ratios of the system font's own point size, so a person's larger system text enlarges everything.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from PySide6.QtGui import QFont, QFontDatabase, QFontInfo
from PySide6.QtWidgets import QApplication

BODY_RATIO = 1.08
"""Body text against the system font: 9 pt system text becomes 13 px at 96 dots per inch."""


@dataclass(frozen=True, slots=True)
class _Style:
    ratio: float
    weight: QFont.Weight = QFont.Weight.Normal
    spacing_pct: float = 100.0


class TextRole(Enum):
    """What a piece of text is; the value is its size against body text and its weight."""

    CLOCK = _Style(7.2, QFont.Weight.Bold, 97)
    HUGE = _Style(3.3, QFont.Weight.Bold, 97)
    FIGURE = _Style(2.05, QFont.Weight.Bold, 98)
    TITLE = _Style(1.7, QFont.Weight.Bold, 97)
    SUBTITLE = _Style(1.06)
    HEADING = _Style(1.14, QFont.Weight.DemiBold, 99)
    BODY = _Style(1.0)
    STRONG = _Style(1.0, QFont.Weight.DemiBold, 99)
    CONTROL = _Style(1.0, QFont.Weight.Medium)
    SMALL = _Style(0.92)
    SMALL_STRONG = _Style(0.92, QFont.Weight.DemiBold, 99)
    TINY = _Style(0.85)
    TINY_STRONG = _Style(0.85, QFont.Weight.DemiBold, 99)


def body_font() -> QFont:
    """The system's general font at body size, with tabular figures where the font has them."""
    font = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)
    font.setPointSizeF(QFontInfo(font).pointSizeF() * BODY_RATIO)
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def role_font(role: TextRole) -> QFont:
    """The font for `role`, derived from the application font."""
    style = role.value
    font = QFont(QApplication.font())
    font.setPointSizeF(font.pointSizeF() * style.ratio)
    font.setWeight(style.weight)
    font.setLetterSpacing(QFont.SpacingType.PercentageSpacing, style.spacing_pct)
    return font
