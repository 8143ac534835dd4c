"""What stands in the window until the data is there, or why it can't be."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.theme import Icon, Space, TextRole
from gui.widgets.card import PictureLabel
from gui.widgets.text import Ink, Text, announce


class WaitingPage(QWidget):
    """A drawing and a line; `show_trouble` says what went wrong instead."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._line = Text("Opening your data…", TextRole.BODY, Ink.SOFT, wrap=True, parent=self)
        self._line.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self._line.setFixedWidth(460)
        self._picture = PictureLabel(Icon.MARK, 64, parent=self)
        column = QVBoxLayout(self)
        column.setSpacing(Space.L)
        column.addStretch(2)
        for widget in (self._picture, self._line):
            column.addWidget(widget, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)

    def show_trouble(self, sentence: str) -> None:
        """Say why there is nothing to see."""
        self._picture.show_picture(Icon.CAUTION)
        self._line.set_ink(Ink.PLAIN)
        self._line.setText(sentence)
        announce(self, sentence)

    def sentence(self) -> str:
        """The line shown."""
        return self._line.text()
