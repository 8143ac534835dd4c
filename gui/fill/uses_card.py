"""Where a load can be used: the ways to hold it with their grades, and the way on to a movement."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from core.things.affordance import Affordance, Grade
from gui.desk.names import USE_NAMES
from gui.theme import Icon, TextRole
from gui.widgets import Card, Chip, ElidedText, FlowLayout, Ink, PictureButton, SecondaryButton, Text, Tone

TONES = {Grade.GOOD: Tone.GOOD, Grade.FAIR: Tone.FAIR, Grade.POOR: Tone.BAD, Grade.NO: Tone.BAD}


class UsesCard(Card):
    """`movement_wanted` and `closed`; hidden until a load is used."""

    movement_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._title = ElidedText("", TextRole.HEADING)
        self._chips = QWidget()
        self._flow = FlowLayout(parent=self._chips)
        self._limits = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        find = SecondaryButton("Find a movement for it")
        find.clicked.connect(self.movement_wanted)
        close = PictureButton(Icon.CLOSE, "Close", size=24)
        close.clicked.connect(self.hide)
        head = QHBoxLayout()
        head.addWidget(self._title, 1)
        head.addWidget(close, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(head)
        for widget in (self._chips, self._limits):
            self.body.addWidget(widget)
        self.body.addWidget(find, 0, Qt.AlignmentFlag.AlignLeft)
        self.hide()

    def show_uses(self, title: str, found: tuple[Affordance, ...]) -> None:
        """Open with the ways this load can serve; poor and refused ways are told with their reason."""
        self._title.show_text(title)
        self._flow.clear()
        for one in found:
            if one.grade in {Grade.GOOD, Grade.FAIR}:
                chip = Chip(f"{USE_NAMES[one.use]} · {one.grade.value}", TONES[one.grade])
                chip.setToolTip(one.reason)
                self._flow.addWidget(chip)
        rest = [one for one in found if one.grade in {Grade.POOR, Grade.NO}]
        self._limits.setText("\n".join(f"{USE_NAMES[one.use].capitalize()}: {one.reason}." for one in rest))
        self._limits.setVisible(bool(rest))
        self.show()

    def text(self) -> str:
        """Title and what it is not for."""
        return f"{self._title.whole_text()}\n{self._limits.text()}"
