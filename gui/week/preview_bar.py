"""What is said while another week of the block is looked at, and the way back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.desk.wording import Wording
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, SecondaryButton, Text

if TYPE_CHECKING:
    from core.assess.model import Protocol
    from core.plan.block import BlockWeek

KIND_SENTENCES = {
    "test": "Before week 1: half the sets, and the tests below.",
    "build": "A building week: a little more than the week before, in one thing at a time.",
    "easy": "An easy week: half the sets, more in reserve.",
    "retest": "The last week: half the sets, and the same tests again.",
}
PREVIEW = "This is a preview. It follows from your wishes and your things, and changes with them."


class PreviewBar(Card):
    """`back_wanted` on its button."""

    back_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, parent=parent)
        self._text = Text("", TextRole.BODY, wrap=True)
        self._notes = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.back = SecondaryButton("Back to this week")
        self.back.clicked.connect(self.back_wanted)
        row = QHBoxLayout()
        row.addWidget(self._text, 1)
        row.addWidget(self.back, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(row)
        self.body.addWidget(self._notes)
        self.set_chosen(True)

    def show_week(self, week: BlockWeek, tests: tuple[Protocol, ...], wording: Wording) -> None:
        """Paint what is special about this week."""
        self._text.setText(f"{PREVIEW} {KIND_SENTENCES[week.kind]}")
        lines = [wording.sentence(note) for note in week.notes]
        if week.kind in {"test", "retest"}:
            lines = [*(f"{test.name}, in {test.unit}" for test in tests), *lines]
        self._notes.setText("\n".join(lines))
        self._notes.setVisible(bool(lines))

    def text(self) -> str:
        """Everything it says."""
        return f"{self._text.text()}\n{self._notes.text()}"
