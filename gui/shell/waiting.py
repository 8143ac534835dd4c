"""What stands in the window until the data is there, or why it can't be and what can be done about it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gui.theme import Icon, Space, TextRole
from gui.widgets.buttons import PrimaryButton, SecondaryButton
from gui.widgets.card import PictureLabel
from gui.widgets.text import Ink, Text, announce

LETTERS = 62
"""Length of a line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """What can be done about trouble: the words on the button, a line about what happens then, and the deed."""

    label: str
    what: str
    deed: Callable[[], None]


class WaitingPage(QWidget):
    """A drawing and a line; `show_trouble` says what went wrong instead, with a button per way out."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._line = Text("Opening your data…", TextRole.BODY, Ink.SOFT, wrap=True, parent=self)
        self._line.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        wide = LETTERS * self._line.fontMetrics().averageCharWidth()
        self._line.setFixedWidth(wide)
        self._picture = PictureLabel(Icon.MARK, 64, parent=self)
        self._ways = QWidget(self)
        self._ways.setFixedWidth(wide)
        self._column = QVBoxLayout(self._ways)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Space.XS)
        column = QVBoxLayout(self)
        column.setSpacing(Space.L)
        column.addStretch(2)
        for widget in (self._picture, self._line, self._ways):
            column.addWidget(widget, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)

    def show_trouble(self, sentence: str, ways: tuple[WayOut, ...] = ()) -> None:
        """Say why there is nothing to see; the first way out is the one to take."""
        self._picture.show_picture(Icon.CAUTION)
        self._line.set_ink(Ink.PLAIN)
        self._line.setText(sentence)
        self._show_ways(ways)
        announce(self, sentence)

    def sentence(self) -> str:
        """The line shown."""
        return self._line.text()

    def buttons(self) -> tuple[QPushButton, ...]:
        """The ways out, the one to take first."""
        items = (self._column.itemAt(at) for at in range(self._column.count()))
        widgets = (item.widget() for item in items if item is not None)
        return tuple(widget for widget in widgets if isinstance(widget, QPushButton))

    def _show_ways(self, ways: tuple[WayOut, ...]) -> None:
        while (item := self._column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for at, way in enumerate(ways):
            button = SecondaryButton(way.label) if at else PrimaryButton(way.label)
            button.setAccessibleDescription(way.what)
            button.clicked.connect(way.deed)
            what = Text(way.what, TextRole.SMALL, Ink.SOFT, wrap=True)
            what.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            what.setFixedWidth(self._line.width())
            self._column.addWidget(button, 0, Qt.AlignmentFlag.AlignHCenter)
            self._column.addWidget(what)
            self._column.addSpacing(Space.S)
