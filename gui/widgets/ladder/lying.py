"""A ladder lying down: a strip from the lightest load to the heaviest, as many labels as fit."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QFont, QPainter

from gui.theme import TextRole, Tokens, role_font
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, pen, text_width
from gui.widgets.ladder.rung import RungMark, shares

_EDGE = 34.0
_RAILS = 30.0


@dataclass(frozen=True, slots=True)
class Lying:
    """Places of the rungs along a strip, as shares of its length."""

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
        return min(range(len(self.places)), key=lambda at: abs(self.x_of(at, width) - x), default=-1)

    def paint(
        self, painter: QPainter, area: QRectF, current: int, tokens: Tokens, *, focused: bool, seen: QRectF
    ) -> None:
        """Wide steps, rails, rungs, labels, the current load on top; a strip is always seen whole."""
        if not self.rungs or seen.isEmpty():
            return
        top, wide = _top(), area.width()
        for at in range(1, len(self.rungs)):
            if self.rungs[at].wide_step:
                self._paint_gap(painter, wide, at, tokens)
        painter.setPen(pen(tokens.outline, 3))
        for y in (top, top + _RAILS):
            painter.drawLine(QPointF(self.x_of(0, wide) - 12, y), QPointF(self.x_of(len(self.rungs) - 1, wide) + 12, y))
        painter.setPen(pen(tokens.outline, 2))
        for at in range(len(self.rungs)):
            x = self.x_of(at, wide)
            painter.drawLine(QPointF(x, top), QPointF(x, top + _RAILS))
        self._paint_labels(painter, wide, current, tokens)
        if 0 <= current < len(self.rungs):
            self._paint_current(painter, wide, current, tokens, focused=focused)

    def _paint_gap(self, painter: QPainter, wide: float, at: int, tokens: Tokens) -> None:
        left, right = self.x_of(at - 1, wide), self.x_of(at, wide)
        area = QRectF(left, _top(), right - left, _RAILS)
        painter.fillRect(area, QColor(tokens.fair))
        font = role_font(TextRole.TINY_STRONG)
        if text_width(font, self.rungs[at].step_text) + 6 <= area.width():
            draw_line(painter, area, self.rungs[at].step_text, font=font, ink=tokens.fair_ink, align=CENTRE)

    def _paint_labels(self, painter: QPainter, wide: float, current: int, tokens: Tokens) -> None:
        """First, last, and every one between that does not touch its neighbour; the current one stands on top."""
        font = role_font(TextRole.TINY)
        last = len(self.rungs) - 1
        guard = self._label(last, wide, font).left() - 6
        free = -1_000.0
        for at, rung in enumerate(self.rungs):
            place = self._label(at, wide, font)
            if at != last and (place.left() < free or place.right() > guard):
                continue
            free = place.right() + 6
            ink = tokens.ink if at == current else tokens.ink_soft
            draw_line(painter, place, rung.load_text, font=font, ink=ink, align=CENTRE)

    def _label(self, at: int, wide: float, font: QFont) -> QRectF:
        width = text_width(font, self.rungs[at].load_text) + 4
        return QRectF(self.x_of(at, wide) - width / 2, _top() + _RAILS + 5, width, line_height(font))

    def _paint_current(self, painter: QPainter, wide: float, at: int, tokens: Tokens, *, focused: bool) -> None:
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


def _top() -> float:
    """The upper rail, below the pill of the current load."""
    return line_height(role_font(TextRole.STRONG)) + 16.0
