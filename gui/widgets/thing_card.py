"""A card for one thing in the house: drawing, name, two lines, a chip. Pressing it chooses the thing."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from gui.theme import Radius, Space, TextRole, ThingPicture, Tokens, role_font, tokens_of
from gui.widgets.chip import Tone, chip_height, chip_width, draw_chip
from gui.widgets.drawing import draw_focus, draw_line, draw_panel, fitting, line_height, open_painter, picture_for

_PICTURE = 48
_LEFT = Space.L + _PICTURE + Space.M


@dataclass(frozen=True, slots=True, kw_only=True)
class ThingView:
    """What a card shows; `thing_id` is only handed back. Lines are ready sentences with units."""

    thing_id: str
    title: str
    line: str
    detail: str
    chip: str = ""
    chip_tone: Tone = Tone.PLAIN
    picture: ThingPicture = ThingPicture.OTHER


class ThingCard(QAbstractButton):
    """A checkable card. `chosen` carries the id when pressed, `opened` when double-clicked or on Enter."""

    chosen = Signal(str)
    opened = Signal(str)

    def __init__(self, view: ThingView, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = view
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.clicked.connect(self._pressed)
        self.show_thing(view)

    def show_thing(self, view: ThingView) -> None:
        """Paint another thing."""
        self._view = view
        parts = (view.title, view.line, view.detail, view.chip)
        self.setAccessibleName(", ".join(part for part in parts if part))
        self.updateGeometry()
        self.update()

    def view(self) -> ThingView:
        """What it shows."""
        return self._view

    def sizeHint(self) -> QSize:
        lines = line_height(role_font(TextRole.STRONG)) + line_height(role_font(TextRole.BODY))
        tall = 2 * Space.M + lines + line_height(role_font(TextRole.SMALL)) + 2 * Space.XXS
        chip = chip_height(role_font(TextRole.SMALL)) + Space.S if self._view.chip else 0
        return QSize(224, max(tall + chip, _PICTURE + 2 * Space.L))

    def minimumSizeHint(self) -> QSize:
        return QSize(180, self.sizeHint().height())

    def mouseDoubleClickEvent(self, event: object) -> None:
        self.opened.emit(self._view.thing_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
            self.opened.emit(self._view.thing_id)
            return
        super().keyPressEvent(event)

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.ToolTip:
            self.setToolTip(self._tip())
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        fill = tokens.surface_hover if self.underMouse() else tokens.surface
        edge, width = (tokens.accent, 2.0) if self.isChecked() else (tokens.line, 1.0)
        draw_panel(painter, self.rect(), fill, radius=Radius.CARD, edge=edge, width=width)
        painter.drawPixmap(Space.L, Space.L, picture_for(self, self._view.picture, _PICTURE, tokens))
        self._paint_words(painter, tokens)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.CARD, inset=2 if self.isChecked() else 0)
        painter.end()

    def _paint_words(self, painter: QPainter, tokens: Tokens) -> None:
        wide, top = self.width() - _LEFT - Space.M, float(Space.M)
        for text, role, ink in self._lines(tokens):
            font = role_font(role)
            tall = line_height(font)
            draw_line(painter, QRectF(_LEFT, top, wide, tall), text, font=font, ink=ink)
            top += tall + Space.XXS
        if self._view.chip:
            font = role_font(TextRole.SMALL)
            place = QRectF(_LEFT, top + Space.XS, min(wide, chip_width(font, self._view.chip)), chip_height(font))
            draw_chip(painter, place, self._view.chip, self._view.chip_tone, font, tokens)

    def _lines(self, tokens: Tokens) -> tuple[tuple[str, TextRole, str], ...]:
        return (
            (self._view.title, TextRole.STRONG, tokens.ink),
            (self._view.line, TextRole.BODY, tokens.ink),
            (self._view.detail, TextRole.SMALL, tokens.ink_soft),
        )

    def _tip(self) -> str:
        """The lines that did not fit, whole."""
        wide = self.width() - _LEFT - Space.M
        lines = (*self._lines(tokens_of(self)), (self._view.chip, TextRole.SMALL, ""))
        cut = [text for text, role, _ in lines if not fitting(role_font(role), text, wide)]
        return "<br>".join(escape(text) for text in cut)

    def _pressed(self) -> None:
        self.chosen.emit(self._view.thing_id)
