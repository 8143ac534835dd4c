"""A picture of a thing to tick: press it for one, again for one more; minus takes one away."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from gui.theme import Icon, Radius, Space, TextRole, ThingPicture, Tokens, role_font, tokens_of
from gui.widgets import PictureButton
from gui.widgets.drawing import (
    CENTRE,
    draw_focus,
    draw_line,
    draw_panel,
    line_height,
    open_painter,
    picture_for,
    wrapped,
)

_PICTURE, _LARGE_PICTURE = 44, 76
_SIDE = 24
WIDTH, LARGE_WIDTH = 98, 140
MOST = 99


class KindTile(QAbstractButton):
    """`counted` (kind id, how many) after every change."""

    counted = Signal(str, int)

    def __init__(self, kind_id: str, name: str, picture: ThingPicture, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.kind_id = kind_id
        self._name = name
        self._picture = picture
        self._count = 0
        self._side = _PICTURE
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.less = PictureButton(Icon.MINUS, f"One {name.lower()} less", size=_SIDE, parent=self)
        self.less.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.less.hide()
        self.clicked.connect(self._more)
        self.less.clicked.connect(self._less)
        self._speak()

    def count(self) -> int:
        """How many are ticked."""
        return self._count

    def show_count(self, count: int) -> None:
        """Paint another count without telling anyone."""
        self._count = min(max(count, 0), MOST)
        self.less.setVisible(self._count > 0)
        self._speak()
        self.update()

    def show_large(self, large: bool) -> None:
        """With a larger drawing, where there is room."""
        self._side = _LARGE_PICTURE if large else _PICTURE
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        return QSize(WIDTH, self._side + 2 * line_height(role_font(TextRole.SMALL)) + 2 * Space.M + Space.XS)

    def minimumSizeHint(self) -> QSize:
        return QSize(WIDTH - Space.S, self.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Minus, Qt.Key.Key_Backspace, Qt.Key.Key_Delete}:
            self._less()
        elif event.key() in {Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._more()
        elif Qt.Key.Key_0 <= event.key() <= Qt.Key.Key_9:
            self._change(event.key() - Qt.Key.Key_0)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.less.move(Space.XS, Space.XS)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        ticked = self._count > 0
        fill = tokens.accent_soft if ticked else tokens.surface_hover if self.underMouse() else tokens.surface
        edge, width = (tokens.accent, 2.0) if ticked else (tokens.line, 1.0)
        draw_panel(painter, self.rect(), fill, radius=Radius.CONTROL, edge=edge, width=width)
        drawn = picture_for(self, self._picture, self._side, tokens)
        painter.drawPixmap((self.width() - self._side) // 2, Space.M, drawn)
        self._paint_name(painter, tokens)
        if ticked:
            self._paint_count(painter, tokens)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.CONTROL, inset=2 if ticked else 0)
        painter.end()

    def _paint_name(self, painter: QPainter, tokens: Tokens) -> None:
        font = role_font(TextRole.SMALL)
        wide, tall = self.width() - Space.S, line_height(font)
        lines = wrapped(font, self._name, wide)
        shown = lines if len(lines) < 3 else (lines[0], " ".join(lines[1:]))
        top = Space.M + self._side + Space.XS + (2 - len(shown)) * tall / 2
        for at, line in enumerate(shown):
            place = QRectF(Space.XS, top + at * tall, wide, tall)
            draw_line(painter, place, line, font=font, ink=tokens.ink, align=CENTRE)

    def _paint_count(self, painter: QPainter, tokens: Tokens) -> None:
        font = role_font(TextRole.SMALL_STRONG)
        place = QRectF(self.width() - _SIDE - Space.XS, Space.XS, _SIDE, _SIDE)
        draw_panel(painter, place, tokens.accent, radius=_SIDE / 2)
        draw_line(painter, place, str(self._count), font=font, ink=tokens.on_accent, align=CENTRE)

    def _more(self) -> None:
        self._change(self._count + 1)

    def _less(self) -> None:
        self._change(self._count - 1)

    def _change(self, count: int) -> None:
        before = self._count
        self.show_count(count)
        if self._count != before:
            self.counted.emit(self.kind_id, self._count)

    def _speak(self) -> None:
        self.setAccessibleName(f"{self._name}, {self._count or 'none'}")
        self.setAccessibleDescription("Press for one more, minus for one less, or type a number.")
