"""A ladder standing up: heaviest on top, each rung with its load and how it is made."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QFont, QPainter

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
    load_width: int

    @classmethod
    def of(cls, rungs: tuple[RungMark, ...]) -> Upright:
        """Rungs at least a line apart, a doubling of the load 150 pixels."""
        closest = line_height(role_font(TextRole.BODY)) + 9.0
        strong = role_font(TextRole.STRONG)
        widest = max((text_width(strong, rung.load_text) for rung in rungs), default=0)
        return cls(rungs, offsets(rungs, closest, 84.0, 150.0), widest + 12)

    def size(self) -> QSize:
        """The height all rungs need."""
        return QSize(300, round((self.places[-1] if self.places else 0.0) + 2 * _EDGE))

    def y_of(self, at: int, height: float) -> float:
        """The y of a rung in a picture `height` tall."""
        return height - _EDGE - self.places[at]

    def rung_at(self, y: float, height: float) -> int:
        """The rung nearest to a y."""
        return min(range(len(self.places)), key=lambda at: abs(self.y_of(at, height) - y), default=-1)

    def paint(
        self, painter: QPainter, area: QRectF, current: int, tokens: Tokens, *, focused: bool, seen: QRectF
    ) -> None:
        """Rails, wide steps, rungs and words, as far as they lie in `seen`: a ladder may be longer than the screen."""
        if not self.rungs:
            return
        height = area.height()
        shown = [at for at in range(len(self.rungs)) if seen.top() - 100 < self.y_of(at, height) < seen.bottom() + 100]
        for at in shown:
            if at and self.rungs[at].wide_step:
                self._paint_gap(painter, area, at, tokens)
        painter.setPen(pen(tokens.outline, 3))
        top, bottom = self.y_of(len(self.rungs) - 1, height) - 14, height - _EDGE + 14
        for x in (_LEFT, _RIGHT):
            painter.drawLine(QPointF(x, top), QPointF(x, bottom))
        fonts = role_font(TextRole.STRONG), role_font(TextRole.SMALL)
        for at in shown:
            row = self._row(at, area, line_height(fonts[0]) + 6.0)
            if at == current:
                draw_panel(painter, row, tokens.accent_soft, radius=6)
                if focused:
                    draw_focus(painter, row, tokens.focus, radius=6)
            self._paint_rung(painter, row, at, tokens, fonts, chosen=at == current)

    def _row(self, at: int, area: QRectF, tall: float) -> QRectF:
        """The place of a rung's words."""
        return QRectF(_WORDS - 8, self.y_of(at, area.height()) - tall / 2, area.width() - _WORDS + 8, tall)

    def _paint_rung(
        self, painter: QPainter, row: QRectF, at: int, tokens: Tokens, fonts: tuple[QFont, QFont], *, chosen: bool
    ) -> None:
        rung, y = self.rungs[at], row.center().y()
        painter.setPen(pen(tokens.accent if chosen else tokens.outline, 5 if chosen else 2.4))
        painter.drawLine(QPointF(_LEFT, y), QPointF(_RIGHT, y))
        load = QRectF(_WORDS, row.top(), self.load_width, row.height())
        draw_line(painter, load, rung.load_text, font=fonts[0], ink=tokens.ink)
        rest = QRectF(load.right(), row.top(), row.right() - load.right() - 8, row.height())
        draw_line(painter, rest, rung.recipe, font=fonts[1], ink=tokens.ink_soft)

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
