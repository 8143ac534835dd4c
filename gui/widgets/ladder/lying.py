"""A ladder lying down: a strip from the lightest load to the heaviest, as many labels as fit."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QFont, QPainter

from gui.theme import TextRole, Tokens, role_font
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, pen, text_width
from gui.widgets.ladder.rung import RungMark, shares

_EDGE = 34.0
_RAILS = 30.0
_CLOSEST = 4.5
"""Rungs nearer than this to the last one drawn are not drawn one by one: they would only blacken it."""


@dataclass(frozen=True, slots=True)
class Lying:
    """Places of the rungs along a strip, as shares of its length. A strip may have thousands of rungs."""

    rungs: tuple[RungMark, ...]
    places: tuple[float, ...]

    @classmethod
    def of(cls, rungs: tuple[RungMark, ...]) -> Lying:
        """Equal per cents, equal distances."""
        return cls(rungs, shares(rungs))

    def size(self) -> QSize:
        """Pill above, rails, labels below."""
        return QSize(420, round(_top() + _RAILS + line_height(role_font(TextRole.TINY)) + 12))

    def x_of(self, at: int, width: float) -> float:
        """The x of a rung in a strip `width` wide."""
        return _EDGE + self.places[at] * (width - 2 * _EDGE)

    def rung_at(self, x: float, width: float) -> int:
        """The rung nearest to an x."""
        if not self.places:
            return -1
        share = (x - _EDGE) / max(1.0, width - 2 * _EDGE)
        above = bisect_left(self.places, share)
        around = range(max(0, above - 1), min(len(self.places), above + 1))
        return min(around, key=lambda at: abs(self.places[at] - share))

    def paint_still(self, painter: QPainter, wide: float, tokens: Tokens, wanted_kg: tuple[float, float]) -> None:
        """What stays while a hand walks the rungs: wide steps, the wanted loads, rails, rungs and labels."""
        if not self.rungs:
            return
        top = _top()
        wide_steps = [at for at in range(1, len(self.rungs)) if self.rungs[at].wide_step]
        for at in wide_steps:
            painter.fillRect(self._gap(at, wide), QColor(tokens.fair))
        for stretch in self._dense(wide):
            painter.fillRect(stretch, QColor(tokens.bar_quiet))
        self._paint_wanted(painter, wide, wanted_kg, tokens)
        for at in wide_steps:
            self._paint_gap_words(painter, wide, at, tokens)
        painter.setPen(pen(tokens.outline, 3))
        for y in (top, top + _RAILS):
            painter.drawLine(QPointF(self.x_of(0, wide) - 12, y), QPointF(self.x_of(len(self.rungs) - 1, wide) + 12, y))
        painter.setPen(pen(tokens.outline, 2))
        painter.drawLines([QLineF(x, top, x, top + _RAILS) for x in self._drawn(wide)])
        self._paint_labels(painter, wide, tokens)

    def paint_current(self, painter: QPainter, wide: float, at: int, tokens: Tokens, *, focused: bool) -> None:
        """The rung in use, on top of the rest."""
        if not 0 <= at < len(self.rungs):
            return
        x, font = self.x_of(at, wide), role_font(TextRole.STRONG)
        painter.setPen(pen(tokens.accent, 6))
        painter.drawLine(QPointF(x, _top() - 2), QPointF(x, _top() + _RAILS + 2))
        width, tall = text_width(font, self.rungs[at].load_text) + 18, line_height(font) + 6
        left = min(max(0.0, x - width / 2), max(0.0, wide - width))
        pill = QRectF(left, 2, width, tall)
        draw_panel(painter, pill, tokens.accent, radius=tall / 2)
        draw_line(painter, pill, self.rungs[at].load_text, font=font, ink=tokens.on_accent, align=CENTRE)
        if focused:
            draw_focus(painter, pill, tokens.on_accent, radius=tall / 2, inset=2)

    def _drawn(self, wide: float) -> Iterator[float]:
        """The x of the rungs that can be told apart."""
        last = -1_000.0
        for at in range(len(self.rungs)):
            x = self.x_of(at, wide)
            if x - last >= _CLOSEST:
                last = x
                yield x

    def _dense(self, wide: float) -> Iterator[QRectF]:
        """Stretches where rungs lie too close to be told apart: any load in them can be made."""
        begin = last = self.x_of(0, wide)
        for at in range(1, len(self.rungs) + 1):
            x = self.x_of(at, wide) if at < len(self.rungs) else math.inf
            if x - last >= _CLOSEST:
                if last - begin >= _CLOSEST:
                    yield QRectF(begin, _top(), last - begin, _RAILS)
                begin = x
            last = x

    def _gap(self, at: int, wide: float) -> QRectF:
        """Between the rails from the rung below to this one."""
        left, right = self.x_of(at - 1, wide), self.x_of(at, wide)
        return QRectF(left, _top(), right - left, _RAILS)

    def _paint_gap_words(self, painter: QPainter, wide: float, at: int, tokens: Tokens) -> None:
        area, font = self._gap(at, wide), role_font(TextRole.TINY_STRONG)
        if text_width(font, self.rungs[at].step_text) + 6 <= area.width():
            draw_line(painter, area, self.rungs[at].step_text, font=font, ink=tokens.fair_ink, align=CENTRE)

    def _paint_wanted(self, painter: QPainter, wide: float, wanted_kg: tuple[float, float], tokens: Tokens) -> None:
        """A band round the loads that are near enough, standing out above and below the rails."""
        low, high = wanted_kg
        lightest, heaviest = self.rungs[0].load_kg, self.rungs[-1].load_kg
        if high <= 0 or heaviest <= lightest or high < lightest or low > heaviest:
            return
        left, right = (self._x_of_load(kg, wide) for kg in (max(low, lightest), min(high, heaviest)))
        area = QRectF(left - 3, _top() - 7, right - left + 6, _RAILS + 14)
        draw_panel(painter, area, tokens.accent_soft, radius=5, edge=tokens.accent, width=1.4)

    def _x_of_load(self, kg: float, wide: float) -> float:
        low, high = math.log(self.rungs[0].load_kg), math.log(self.rungs[-1].load_kg)
        return _EDGE + (math.log(kg) - low) / (high - low) * (wide - 2 * _EDGE)

    def _paint_labels(self, painter: QPainter, wide: float, tokens: Tokens) -> None:
        """First, last, and every one between that does not touch its neighbour."""
        font = role_font(TextRole.TINY)
        last = len(self.rungs) - 1
        guard = self._label(last, wide, font).left() - 6
        free = -1_000.0
        for at, rung in enumerate(self.rungs):
            x = self.x_of(at, wide)
            if at != last and (x < free or x > guard):
                continue  # not worth measuring
            place = self._label(at, wide, font)
            if at != last and (place.left() < free or place.right() > guard):
                continue
            free = place.right() + 6
            draw_line(painter, place, rung.load_text, font=font, ink=tokens.ink_soft, align=CENTRE)

    def _label(self, at: int, wide: float, font: QFont) -> QRectF:
        width = text_width(font, self.rungs[at].load_text) + 4
        return QRectF(self.x_of(at, wide) - width / 2, _top() + _RAILS + 5, width, line_height(font))


def _top() -> float:
    """The upper rail, below the pill of the current load."""
    return line_height(role_font(TextRole.STRONG)) + 16.0
