"""The line that says what just happened and offers to undo it; it never stops anyone."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QTimer, Signal
from PySide6.QtGui import QEnterEvent, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QWidget

from gui.theme import Icon, Radius, Space, TextRole, tokens_of
from gui.widgets.buttons import LinkButton, PictureButton
from gui.widgets.drawing import draw_panel, open_painter
from gui.widgets.text import Text, announce

SHOWN_MS = 10_000


class ToastLine(QFrame):
    """Hidden until `say`; goes after ten seconds, but waits while the pointer is on it.

    `undo_wanted` on its button, `action_wanted` on the one a sentence may bring with it.
    """

    undo_wanted = Signal()
    action_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._text = Text("", TextRole.BODY, wrap=True, parent=self)
        self._undo = LinkButton("Undo", parent=self)
        self._action = LinkButton("", parent=self)
        close = PictureButton(Icon.CLOSE, "Close this line", size=24, parent=self)
        row = QHBoxLayout(self)
        row.setContentsMargins(Space.L, Space.XS, Space.S, Space.XS)
        row.addWidget(self._text, 1)
        row.addWidget(self._action)
        row.addWidget(self._undo)
        row.addWidget(close)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(SHOWN_MS)
        self._timer.timeout.connect(self.hide)
        self._action.clicked.connect(self._acted)
        self._undo.clicked.connect(self._undone)
        close.clicked.connect(self.hide)
        self.hide()

    def say(self, sentence: str, *, undo: bool = False, action: str = "") -> None:
        """Show `sentence`, with the undo button when there is something to take back, and a next step to offer."""
        self._text.setText(sentence)
        self._action.show_label(action)
        self._action.setVisible(bool(action))
        self._undo.setVisible(undo)
        self.setAccessibleName(sentence)
        self.show()
        self._timer.start()
        announce(self, sentence)

    def sentence(self) -> str:
        """What it says."""
        return self._text.text()

    def enterEvent(self, event: QEnterEvent) -> None:
        self._timer.stop()

    def leaveEvent(self, event: QEvent) -> None:
        if self.isVisible():
            self._timer.start()

    def hideEvent(self, event: QEvent) -> None:
        self._timer.stop()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        draw_panel(painter, self.rect(), tokens.accent_soft, radius=Radius.CONTROL, edge=tokens.accent)
        painter.end()

    def _acted(self) -> None:
        self.hide()
        self.action_wanted.emit()

    def _undone(self) -> None:
        self.hide()
        self.undo_wanted.emit()
