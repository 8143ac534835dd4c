"""The row on top of a screen: what it is, one line about it, what can be done."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.theme import CONTROL_HEIGHT, Space, TextRole
from gui.widgets.text import ElidedText, Ink, Text


class TitleBar(QWidget):
    """Title, subtitle (shortened when there is no room) and action widgets from left to right on the right."""

    def __init__(self, title: str, subtitle: str = "", *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(Space.S)
        self._title = Text(title, TextRole.TITLE, parent=self)
        self._subtitle = ElidedText(subtitle, TextRole.SUBTITLE, Ink.SOFT, parent=self)
        words = QWidget(self)
        on_one_line = QHBoxLayout(words)
        on_one_line.setContentsMargins(0, 0, 0, 0)
        on_one_line.setSpacing(Space.M)
        on_one_line.addWidget(self._title, 0, Qt.AlignmentFlag.AlignBottom)
        on_one_line.addWidget(self._subtitle, 0, Qt.AlignmentFlag.AlignBottom)
        on_one_line.addStretch(1)
        self._beside = on_one_line
        drop = self._title.fontMetrics().descent() - self._subtitle.fontMetrics().descent()
        self._subtitle.setContentsMargins(0, 0, 0, max(0, drop))
        self.setMinimumHeight(CONTROL_HEIGHT)
        self._row.addWidget(words, 1, Qt.AlignmentFlag.AlignVCenter)

    def show_title(self, title: str, subtitle: str = "") -> None:
        """Paint other words."""
        self._title.setText(title)
        self._subtitle.show_text(subtitle)

    def add_action(self, widget: QWidget) -> None:
        """Put `widget` (a button, a field) at the right end."""
        self._row.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)

    def add_beside(self, widget: QWidget) -> None:
        """Put a small `widget` right behind the subtitle."""
        self._beside.insertWidget(self._beside.count() - 1, widget, 0, Qt.AlignmentFlag.AlignBottom)

    def title(self) -> str:
        """The title shown."""
        return self._title.text()

    def subtitle(self) -> str:
        """The subtitle, whole."""
        return self._subtitle.whole_text()
