"""The head of a day's column: name, minutes, kind and notes; to press, to drag, and to move by keys."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Radius, Space, TextRole, role_font, tokens_of
from gui.widgets.block_card import BlockView
from gui.widgets.drawing import draw_focus, draw_panel, open_painter, text_width
from gui.widgets.text import ElidedText, Ink, Text

MOVE_HINT = "Drag to another day"
MOVE_KEYS = "Alt with the left or right arrow moves the session a day."
_ASIDE = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_BESIDE, _BELOW = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True, slots=True, kw_only=True)
class DayView:
    """One day: name, minutes in words, kind of day, quiet notes above the blocks (“warm-up 8 min”), the blocks, and a
    quiet line below them; a rest day is dashed.
    """

    name: str
    minutes_text: str
    kind: str
    notes: tuple[str, ...] = ()
    blocks: tuple[BlockView, ...] = ()
    foot: str = ""
    rest: bool = False
    today: bool = False


class DayHead(QAbstractButton):
    """Name, minutes, kind and notes of a day, to press as one; `DayColumn` says what its signals are."""

    walked = Signal(QPoint)
    dragged = Signal(QPoint)
    dropped = Signal(QPoint)
    drag_ended = Signal()
    shifted = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._movable = False
        self._pressed_at = QPoint()
        self._dragging = False
        self._name = Text("", TextRole.STRONG, parent=self)
        self._minutes = ElidedText("", TextRole.TINY, Ink.SOFT, parent=self)
        self._kind = Text("", TextRole.SMALL_STRONG, wrap=True, parent=self)
        self._notes = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._line = QBoxLayout(_BESIDE)
        self._line.setSpacing(Space.XXS)
        self._line.addWidget(self._name)
        self._line.addWidget(self._minutes, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(Space.XXS, Space.XXS, Space.XXS, Space.XXS)
        column.setSpacing(Space.XS + 2)
        column.addLayout(self._line)
        column.addWidget(self._kind)
        column.addWidget(self._notes)
        for label in (self._name, self._minutes, self._kind, self._notes):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)

    def show_day(self, view: DayView) -> None:
        """Paint another day."""
        self._name.setText(view.name)
        self._minutes.show_text(view.minutes_text)
        self._kind.setText(view.kind)
        self._kind.set_ink(Ink.SOFT if view.rest else Ink.PLAIN)
        self._notes.setText("\n".join(view.notes))
        self._notes.setVisible(bool(view.notes))
        self.setEnabled(not view.rest)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus if view.rest else Qt.FocusPolicy.TabFocus)
        words = (view.name, view.kind, view.minutes_text, *view.notes)
        self.setAccessibleName(", ".join(word for word in words if word))

    def set_movable(self, movable: bool) -> None:
        """Whether it can be dragged."""
        self._movable = movable
        self.setToolTip(MOVE_HINT if movable else "")
        self.setAccessibleDescription(MOVE_KEYS if movable else "")

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        self._pressed_at = event.position().toPoint()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        far = (event.position().toPoint() - self._pressed_at).manhattanLength() >= QApplication.startDragDistance()
        if self._movable and not self._dragging and self.isDown() and far:
            self._dragging = True
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._dragging:
            self.dragged.emit(event.globalPosition().toPoint())
        else:
            super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The end of a drag is no press of the day."""
        if not self._dragging:
            super().mouseReleaseEvent(event)
            return
        self._let_go()
        self.dropped.emit(event.globalPosition().toPoint())

    def _let_go(self) -> None:
        self._dragging = False
        self.setDown(False)
        self.unsetCursor()
        self.drag_ended.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow column the minutes go below the name; any name counts as three wide letters, so days agree."""
        super().resizeEvent(event)
        wanted = text_width(role_font(TextRole.STRONG), "Wed") + self._minutes.sizeHint().width() + Space.XS
        beside = wanted <= self.width() - 2 * Space.XXS
        self._line.setDirection(_BESIDE if beside else _BELOW)
        self._minutes.setAlignment(_RIGHT if beside else _LEFT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        elif event.key() == Qt.Key.Key_Escape and self._dragging:
            self._let_go()
        elif self._movable and event.modifiers() & Qt.KeyboardModifier.AltModifier and event.key() in _ASIDE:
            self.shifted.emit(_ASIDE[Qt.Key(event.key())])
        elif event.key() == Qt.Key.Key_Down:
            self.walked.emit(QPoint(0, 1))
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        if self.underMouse() and self.isEnabled():
            draw_panel(painter, self.rect(), tokens.surface_soft, radius=Radius.BLOCK)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()
