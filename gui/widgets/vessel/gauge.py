"""What stands beside a vessel: dimension line on the left, scale of masses on the right, the knob on the fill line."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPolygonF

from gui.theme import Tokens
from gui.widgets.drawing import CENTRE, LEFT, draw_line, draw_panel, line_height, pen, text_width
from gui.widgets.vessel.frame import VesselFrame
from gui.widgets.vessel.painter import fill_colours
from gui.widgets.vessel.picture import ScaleTick, VesselFill

KNOB = 13.0
_LONG, _SHORT = 34.0, 20.0

Label = tuple[QRectF, str]
"""Where a label of the scale stands, and its words."""


def paint_dimension(
    painter: QPainter, x: float, frame: VesselFrame, fill: VesselFill, font: QFont, tokens: Tokens
) -> None:
    """A measured line from the base to the fill, its length written along it."""
    top, base = frame.y_of(fill.height_cm), frame.base_y
    painter.setPen(pen(tokens.ink_soft, 1.2))
    painter.drawLine(QPointF(x, top), QPointF(x, base))
    for y in (top, base):
        painter.drawLine(QPointF(x - 6, y), QPointF(x + 6, y))
    wide, tall = text_width(font, fill.height_text) + 4, line_height(font)
    middle = min((top + base) / 2, base - wide / 2)
    painter.save()
    painter.translate(x - tall / 2 - 6, middle)
    painter.rotate(-90)
    place = QRectF(-wide / 2, -tall / 2, wide, tall)
    draw_line(painter, place, fill.height_text, font=font, ink=tokens.ink, align=CENTRE)
    painter.restore()


def paint_knob(painter: QPainter, at: QPointF, fill: VesselFill, tokens: Tokens, *, focused: bool) -> None:
    """The round grip with its two arrows; a ring around it when the keyboard is here."""
    painter.setPen(pen(tokens.surface, 2))
    painter.setBrush(QColor(fill_colours(fill.contents, tokens).line))
    painter.drawEllipse(at, KNOB, KNOB)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.on_accent, 2))
    for way in (-1, 1):
        tip = at + QPointF(0, way * 6.5)
        painter.drawPolyline([tip + QPointF(-4, -way * 3.5), tip, tip + QPointF(4, -way * 3.5)])
    if focused:
        painter.setPen(pen(tokens.focus, 2))
        painter.drawEllipse(at, KNOB + 4, KNOB + 4)


def paint_marks(
    painter: QPainter, x: float, frame: VesselFrame, ticks: tuple[ScaleTick, ...], font: QFont, tokens: Tokens
) -> None:
    """The rail and a mark at each height where its mass is reached; labels where they don't touch the one below."""
    rail = x + _LONG
    ordered = sorted(ticks, key=lambda tick: tick.height_cm)
    ends = frame.y_of(ordered[-1].height_cm), frame.y_of(ordered[0].height_cm)
    painter.setPen(pen(tokens.outline, 2))
    painter.drawLine(QPointF(rail, ends[0]), QPointF(rail, ends[1]))
    for tick in ordered:
        y, major = frame.y_of(tick.height_cm), bool(tick.label)
        painter.setPen(pen(tokens.outline if major else tokens.control_line, 2 if major else 1))
        painter.drawLine(QPointF(rail - (_LONG if major else _SHORT), y), QPointF(rail, y))
    for place, label in scale_labels(x, frame, ticks, font):
        draw_line(painter, place, label, font=font, ink=tokens.ink, align=LEFT)


def paint_reading(
    painter: QPainter,
    x: float,
    frame: VesselFrame,
    labels: tuple[Label, ...],
    fill: VesselFill,
    font: QFont,
    tokens: Tokens,
) -> None:
    """The ± band on the scale, and the mass in hand in the place of the labels it would cover."""
    _paint_band(painter, x, frame, fill, tokens)
    if not fill.mass_text:
        return
    line_y, tall = frame.y_of(fill.height_cm), line_height(font)
    wide = text_width(font, fill.mass_text) + 18
    pill = QRectF(x + _LONG + 10, line_y - tall / 2 - 4, wide, tall + 8)
    for place, _ in labels:
        if place.bottom() > pill.top() - 1 and place.top() < pill.bottom() + 1:
            painter.fillRect(place, QColor(tokens.surface))
    draw_panel(painter, pill, tokens.accent, radius=pill.height() / 2)
    draw_line(painter, pill, fill.mass_text, font=font, ink=tokens.on_accent, align=CENTRE)


def scale_labels(x: float, frame: VesselFrame, ticks: tuple[ScaleTick, ...], font: QFont) -> tuple[Label, ...]:
    """The labels that are written, the lowest first: those that don't touch the one below."""
    tall = line_height(font)
    free_from = frame.base_y + 1_000
    found: list[Label] = []
    for tick in sorted(ticks, key=lambda tick: tick.height_cm):
        top = frame.y_of(tick.height_cm) - tall / 2
        if tick.label and top + tall <= free_from:
            found.append((QRectF(x + _LONG + 10, top, text_width(font, tick.label) + 4, tall), tick.label))
            free_from = top
    return tuple(found)


def _paint_band(painter: QPainter, x: float, frame: VesselFrame, fill: VesselFill, tokens: Tokens) -> None:
    line_y, band = frame.y_of(fill.height_cm), max(2.0, fill.band_cm * frame.scale)
    colours = fill_colours(fill.contents, tokens)
    tint = QColor(colours.band)
    tint.setAlphaF(0.6)
    painter.fillRect(QRectF(x, line_y - band, _LONG, 2 * band), tint)
    marker = QPolygonF([QPointF(x - 3, line_y), QPointF(x - 15, line_y - 7), QPointF(x - 15, line_y + 7)])
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colours.line))
    painter.drawPolygon(marker)
    guide = pen(tokens.control_line, 1)
    guide.setDashPattern([3, 4])
    painter.setPen(guide)
    start = frame.right_x(fill.height_cm) + KNOB + 8
    if x - 20 > start:
        painter.drawLine(QPointF(start, line_y), QPointF(x - 20, line_y))
