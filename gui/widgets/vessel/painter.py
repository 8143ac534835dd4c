"""Draws a vessel with its fill. Knows no widget, so a countdown can drain the same vessel."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath

from gui.theme import Tokens
from gui.widgets.drawing import CENTRE, draw_line, line_height, pen, wrapped
from gui.widgets.vessel.frame import VesselFrame
from gui.widgets.vessel.picture import Contents, Handle, Top, VesselFill

WALL = 3.6
_LINE = 2.6
_GRAIN_STEP = 9.0


@dataclass(frozen=True, slots=True)
class FillColours:
    """The colours of one kind of contents."""

    ground: str
    band: str
    line: str
    ink: str


def fill_colours(contents: Contents, tokens: Tokens) -> FillColours:
    """Water is cool, grains are warm."""
    if contents is Contents.GRAIN:
        return FillColours(tokens.fair, tokens.amber, tokens.amber, tokens.fair_ink)
    return FillColours(tokens.liquid, tokens.liquid_band, tokens.liquid_line, tokens.liquid_ink)


def paint_vessel(painter: QPainter, frame: VesselFrame, fill: VesselFill, tokens: Tokens) -> None:
    """Handle, body, fill, ± band, line and cap; no words."""
    body = frame.body()
    paint_empty(painter, frame, body, tokens)
    paint_fill(painter, frame, body, fill, tokens)


def paint_empty(painter: QPainter, frame: VesselFrame, body: QPainterPath, tokens: Tokens) -> None:
    """Handle, body and cap: what stays as it is while a fill is moved. `body` is the frame's."""
    _paint_handle(painter, frame, tokens)
    painter.setPen(pen(tokens.outline, WALL))
    painter.setBrush(QColor(tokens.surface))
    painter.drawPath(body)
    if frame.silhouette.top is not Top.OPEN:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(tokens.outline))
        painter.drawRoundedRect(frame.cap(), 4, 4)


def paint_fill(painter: QPainter, frame: VesselFrame, body: QPainterPath, fill: VesselFill, tokens: Tokens) -> None:
    """The fill with its ± band and line on an empty vessel, and the wall over its edge."""
    painter.save()
    painter.setClipPath(body, Qt.ClipOperation.IntersectClip)
    _paint_fill(painter, frame, fill, tokens)
    painter.restore()
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.outline, WALL))
    painter.drawPath(body)


def paint_contents_text(painter: QPainter, frame: VesselFrame, fill: VesselFill, font: QFont, tokens: Tokens) -> None:
    """The words in the fill, on more lines in a narrow vessel; above the line when the fill is too low to hold them."""
    line_y = frame.y_of(fill.height_cm)
    half = frame.silhouette.half_width_at(fill.height_cm / 2) * frame.scale - 8
    lines = wrapped(font, fill.contents_text, 2 * half)
    tall = line_height(font)
    inside = frame.base_y - line_y >= len(lines) * tall + 18
    middle = (line_y + frame.base_y) / 2 if inside else line_y - 20 - len(lines) * tall / 2
    ink = fill_colours(fill.contents, tokens).ink if inside else tokens.ink_soft
    for at, text in enumerate(lines):
        place = QRectF(frame.axis_x - half, middle + (at - len(lines) / 2) * tall, 2 * half, tall)
        draw_line(painter, place, text, font=font, ink=ink, align=CENTRE)


def _paint_handle(painter: QPainter, frame: VesselFrame, tokens: Tokens) -> None:
    path = frame.handle()
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if frame.silhouette.handle is Handle.BAIL:
        painter.setPen(pen(tokens.outline, WALL))
        painter.drawPath(path)
        return
    for colour, width in ((tokens.outline, 4 * WALL), (tokens.surface, 2 * WALL)):
        painter.setPen(pen(colour, width))
        painter.drawPath(path)


def _paint_fill(painter: QPainter, frame: VesselFrame, fill: VesselFill, tokens: Tokens) -> None:
    colours = fill_colours(fill.contents, tokens)
    left, wide = frame.widest_left_x() - 2, 2 * frame.silhouette.widest_cm * frame.scale + 4
    line_y = frame.y_of(fill.height_cm)
    if fill.height_cm > 0:
        painter.fillRect(QRectF(left, line_y, wide, frame.base_y - line_y + 2), QColor(colours.ground))
    if fill.contents is Contents.GRAIN:
        _paint_grains(painter, QRectF(left, line_y, wide, frame.base_y - line_y), colours)
    band = fill.band_cm * frame.scale
    tint = QColor(colours.band)
    for top, strength in ((line_y - band, 0.45), (line_y, 0.8)):
        tint.setAlphaF(strength)
        painter.fillRect(QRectF(left, top, wide, band), tint)
    painter.setPen(pen(colours.line, _LINE))
    painter.drawLine(QPointF(left, line_y), QPointF(left + wide, line_y))


def _paint_grains(painter: QPainter, area: QRectF, colours: FillColours) -> None:
    """Dots in offset rows: always the same ones, fixed to the base so that they do not dance while dragging."""
    dots = QPainterPath()
    row, y = 0, area.bottom() - _GRAIN_STEP / 2
    while y > area.top() + 4:
        x = area.left() + _GRAIN_STEP * (0.5 + 0.5 * (row % 2))
        while x < area.right():
            dots.addEllipse(QPointF(x + 1.7 * ((row * 7 + round(x)) % 3 - 1), y), 1.1, 1.1)
            x += _GRAIN_STEP
        row, y = row + 1, y - _GRAIN_STEP * 0.8
    tint = QColor(colours.line)
    tint.setAlphaF(0.55)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tint)
    painter.drawPath(dots)
