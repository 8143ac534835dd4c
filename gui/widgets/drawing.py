"""Strokes every painted widget shares: panels, focus rings, text that never spills over its place.

All lengths are device-independent pixels; colours are `#rrggbb` tokens.
"""

from __future__ import annotations

import math
import re

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QFontMetricsF, QPainter, QPen, QPixmap, QTextLayout, QTextOption
from PySide6.QtWidgets import QWidget

from gui.theme import AnyPicture, Tokens, pixmap

LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
CENTRE = Qt.AlignmentFlag.AlignCenter

FOCUS_WIDTH = 2.0
_PARTS = re.compile(r"[^-]+-*|-+")
_END = 3
"""Letters that stay together at either end of a word that is cut."""


def open_painter(widget: QWidget) -> QPainter:
    """A painter on `widget` with smooth edges; the caller ends it."""
    painter = QPainter(widget)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    return painter


def pen(colour: str, width: float = 1.0) -> QPen:
    """A round-ended pen."""
    return QPen(QColor(colour), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def draw_panel(
    painter: QPainter, area: QRect | QRectF, fill: str, *, radius: float, edge: str = "", width: float = 1.0
) -> None:
    """A rounded rectangle whose edge lies wholly inside `area`, so it is sharp at every scale."""
    inset = width / 2 if edge else 0.0
    shape = QRectF(area).adjusted(inset, inset, -inset, -inset)
    painter.setPen(pen(edge, width) if edge else Qt.PenStyle.NoPen)
    painter.setBrush(QColor(fill) if fill else Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(shape, radius - inset, radius - inset)


def draw_focus(painter: QPainter, area: QRect | QRectF, colour: str, *, radius: float, inset: float = 0.0) -> None:
    """The ring that shows where the keyboard is."""
    ring = QRectF(area).adjusted(inset, inset, -inset, -inset)
    draw_panel(painter, ring, "", radius=radius - inset, edge=colour, width=FOCUS_WIDTH)


def draw_line(
    painter: QPainter, area: QRect | QRectF, text: str, *, font: QFont, ink: str, align: Qt.AlignmentFlag = LEFT
) -> bool:
    """One line of plain text, shortened with … when `area` is too narrow; True when it had to be shortened."""
    place = QRectF(area)
    shown = QFontMetricsF(font).elidedText(text, Qt.TextElideMode.ElideRight, place.width() + 0.5)
    painter.setFont(font)
    painter.setPen(QColor(ink))
    painter.drawText(place, int(align | Qt.TextFlag.TextSingleLine), shown)
    return shown != text


def line_height(font: QFont) -> int:
    """Height one line of `font` needs."""
    return QFontMetrics(font).height()


def text_width(font: QFont, text: str) -> int:
    """Width of one line of `text`, with a hair to spare so that it is never shortened by a rounding."""
    return math.ceil(QFontMetricsF(font).horizontalAdvance(text)) + 1


def fitting(font: QFont, text: str, width: float) -> bool:
    """Whether `text` fits into `width` on one line."""
    return QFontMetricsF(font).horizontalAdvance(text) <= width + 0.5


def wrapped(font: QFont, text: str, width: float) -> tuple[str, ...]:
    """`text` in lines no wider than `width`, broken between words; a word that alone is too wide gets hyphens."""
    if fitting(font, text, width):
        return (text,)
    whole = " ".join(_hyphenated(font, word, width) for word in text.split(" "))
    layout = QTextLayout(whole, font)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    layout.beginLayout()
    lines: list[str] = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(1.0, width))
        lines.append(whole[line.textStart() : line.textStart() + line.textLength()].rstrip())
    layout.endLayout()
    return tuple(lines)


def _hyphenated(font: QFont, word: str, width: float) -> str:
    """`word` in pieces that fit, each but the last ending in a hyphen; whole where it fits or nothing helps."""
    pieces = [piece for part in _PARTS.findall(word) for piece in _pieces(font, part, width)]
    return " ".join(pieces) if len(pieces) > len(_PARTS.findall(word)) else word


def _pieces(font: QFont, part: str, width: float) -> list[str]:
    """A stretch without a hyphen inside, cut before a consonant that begins a syllable, or else wherever it must."""
    if not part.strip("-.,;:()").isalpha():
        return [part]
    found = []
    while not fitting(font, part, width):
        room = next((at for at in range(len(part) - _END, 1, -1) if fitting(font, part[:at] + "-", width)), 0)
        if room < _END:
            break
        good = (at for at in range(room, _END - 1, -1) if _begins_syllable(part, at))
        cut = next(good, room)
        found.append(part[:cut] + "-")
        part = part[cut:]
    return [*found, part]


def _begins_syllable(word: str, at: int) -> bool:
    vowels = "aeiouy"
    before, here, after = tuple(word[at - 1 : at + 2].lower())
    return before.isalpha() and here.isalpha() and here not in vowels and after in vowels


def draw_lines(painter: QPainter, area: QRectF, lines: tuple[str, ...], *, font: QFont, ink: str) -> None:
    """`lines` one below the other from the top of `area`."""
    tall = line_height(font)
    for at, text in enumerate(lines):
        draw_line(painter, QRectF(area.left(), area.top() + at * tall, area.width(), tall), text, font=font, ink=ink)


def picture_for(widget: QWidget, name: AnyPicture, size: int, tokens: Tokens) -> QPixmap:
    """`name` in the ink of the theme, its load in accent, at the density of the screen `widget` is on."""
    return pixmap(
        name, size, tokens.outline, accent=tokens.accent, ground=tokens.surface, ratio=widget.devicePixelRatioF()
    )


def draw_picture(painter: QPainter, at: QPointF, picture: QPixmap) -> None:
    """`picture` with its top left corner `at`, on whole pixels so that lines stay crisp."""
    painter.drawPixmap(round(at.x()), round(at.y()), picture)
