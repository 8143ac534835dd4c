"""A ladder standing up: heaviest on top, each rung with its load and how it is made."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QPainter

from gui.theme import TextRole, Tokens, role_font
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, pen, text_width
from gui.widgets.ladder.rung import RungMark, offsets

_LEFT, _RIGHT = 14.0, 62.0
_EDGE = 22.0
_WORDS = _RIGHT + 16


@dataclass(frozen=True, slots=True)
class Upright:
    """Places of the rungs in a picture of a given height; the lightest stands lowest."""

    rungs: tuple[RungMark, ...]
    places: tuple[float, ...]

    @classmethod
    def of(cls, rungs: tuple[RungMark, ...]) -> Upright:
        """Rungs at least a line apart, a doubling of the load 150 pixels."""
        closest = line_height(role_font(TextRole.BODY)) + 9.0
        return cls(rungs, offsets(rungs, closest, 84.0, 150.0))

    def size(self) -> QSize:
        """The height all rungs need."""
        return QSize(300, round((self.places[-1] if self.places else 0.0) + 2 * _EDGE))

    def y_of(self, at: int, height: float) -> float:
        """The y of a rung in a picture `height` tall."""
        return height - _EDGE - self.places[at]

    def rung_at(self, y: float, height: float) -> int:
        """The rung nearest to a y."""
        return min(range(len(self.places)), key=lambda at: abs(self.y_of(at, height) - y), default=-1)

    def paint(self, painter: QPainter, area: QRectF, current: int, tokens: Tokens, *, focused: bool) -> None:
        """Rails, wide steps, rungs and words."""
        if not self.rungs:
            return
        for at in range(1, len(self.rungs)):
            if self.rungs[at].wide_step:
                self._paint_gap(painter, area, at, tokens)
        painter.setPen(pen(tokens.outline, 3))
        top, bottom = self.y_of(len(self.rungs) - 1, area.height()) - 14, area.height() - _EDGE + 14
        for x in (_LEFT, _RIGHT):
            painter.drawLine(QPointF(x, top), QPointF(x, bottom))
        for at in range(len(self.rungs)):
            self._paint_rung(painter, area, at, tokens, chosen=at == current, focused=focused)

    def _paint_rung(
        self, painter: QPainter, area: QRectF, at: int, tokens: Tokens, *, chosen: bool, focused: bool
    ) -> None:
        rung, y = self.rungs[at], self.y_of(at, area.height())
        strong, small = role_font(TextRole.STRONG), role_font(TextRole.SMALL)
        tall = line_height(strong) + 6
        row = QRectF(_WORDS - 8, y - tall / 2, area.width() - _WORDS + 8, tall)
        if chosen:
            draw_panel(painter, row, tokens.accent_soft, radius=6)
            if focused:
                draw_focus(painter, row, tokens.focus, radius=6)
        painter.setPen(pen(tokens.accent if chosen else tokens.outline, 5 if chosen else 2.4))
        painter.drawLine(QPointF(_LEFT, y), QPointF(_RIGHT, y))
        wide = max(text_width(strong, other.load_text) for other in self.rungs) + 12
        draw_line(painter, QRectF(_WORDS, row.top(), wide, tall), rung.load_text, font=strong, ink=tokens.ink)
        rest = QRectF(_WORDS + wide, row.top(), row.right() - _WORDS - wide - 8, tall)
        draw_line(painter, rest, rung.recipe, font=small, ink=tokens.ink_soft)

    def _paint_gap(self, painter: QPainter, area: QRectF, at: int, tokens: Tokens) -> None:
        """The step up to rung `at` is wide: amber between the rails, its size beside it."""
        top, bottom = self.y_of(at, area.height()), self.y_of(at - 1, area.height())
        painter.fillRect(QRectF(_LEFT, top, _RIGHT - _LEFT, bottom - top), QColor(tokens.fair))
        amber = pen(tokens.amber, 2)
        amber.setDashPattern([2, 3])
        painter.setPen(amber)
        for x in (_LEFT + 10, _RIGHT - 10):
            painter.drawLine(QPointF(x, top + 6), QPointF(x, bottom - 6))
        font = role_font(TextRole.TINY_STRONG)
        wide, tall = text_width(font, self.rungs[at].step_text) + 8, line_height(font) + 2
        middle = QPointF((_LEFT + _RIGHT) / 2, (top + bottom) / 2)
        words = QRectF(middle.x() - wide / 2, middle.y() - tall / 2, wide, tall)
        draw_panel(painter, words, tokens.fair, radius=4)
        draw_line(painter, words, self.rungs[at].step_text, font=font, ink=tokens.fair_ink, align=CENTRE)
