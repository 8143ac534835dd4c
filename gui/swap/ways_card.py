"""What would open more: a row per way out, each with the button that takes it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.swap.ways_words import Deed, WayRow
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, PictureLabel, SecondaryButton, Text

PICTURE = 32


class WaysCard(Card):
    """`have` (kind id), `look` (place id), `unspare` (demand) and `drop` (cause) by the buttons of the rows."""

    have = Signal(str)
    look = Signal(str)
    unspare = Signal(str)
    drop = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._title = Text("", TextRole.STRONG, wrap=True)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Space.S)
        self._shown: tuple[WayRow, ...] = ()
        self.buttons: list[SecondaryButton] = []
        self.body.addWidget(self._title)
        self.body.addLayout(self._rows)
        self.hide()

    def show_ways(self, title: str, rows: tuple[WayRow, ...]) -> None:
        """Paint other ways; with none the card goes away."""
        self._title.setText(title)
        self.setVisible(bool(rows))
        if rows == self._shown:
            return
        self._shown = rows
        self._empty()
        for row in rows:
            self._rows.addWidget(self._line(row))

    def rows(self) -> tuple[WayRow, ...]:
        """The ways shown."""
        return self._shown

    def title(self) -> str:
        """The heading."""
        return self._title.text()

    def _line(self, row: WayRow) -> QWidget:
        holder = QWidget()
        line = QHBoxLayout(holder)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(Space.M)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(Text(row.title, TextRole.BODY, wrap=True))
        words.addWidget(Text(row.detail, TextRole.SMALL, Ink.SOFT, wrap=True))
        button = SecondaryButton(row.deed.value)
        button.setAccessibleName(f"{row.deed.value}: {row.title}")
        button.setProperty("target", row.target)
        button.setProperty("deed", row.deed.name)
        button.clicked.connect(self._act)
        self.buttons.append(button)
        line.addWidget(PictureLabel(row.picture, PICTURE), 0, Qt.AlignmentFlag.AlignVCenter)
        line.addLayout(words, 1)
        line.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        return holder

    def _act(self) -> None:
        sender = self.sender()
        signals = {Deed.HAVE: self.have, Deed.LOOK: self.look, Deed.UNSPARE: self.unspare, Deed.DROP: self.drop}
        signals[Deed[sender.property("deed")]].emit(sender.property("target"))

    def _empty(self) -> None:
        self.buttons = []
        while (item := self._rows.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
