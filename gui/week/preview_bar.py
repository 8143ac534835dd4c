"""What is said of the week on the page: a preview and the way back, the tests and notes of a special week."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.week.block_words import AboutWeek
from gui.widgets import Card, Ink, SecondaryButton, Text


class PreviewBar(Card):
    """`back_wanted` and `results_wanted` on its buttons."""

    back_wanted = Signal()
    results_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, parent=parent)
        self._text = Text("", TextRole.BODY, wrap=True)
        self._notes = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.back = SecondaryButton("Back to this week")
        self.back.clicked.connect(self.back_wanted)
        self.results = SecondaryButton("Write down results")
        self.results.clicked.connect(self.results_wanted)
        row = QHBoxLayout()
        row.addWidget(self._text, 1)
        row.addWidget(self.results, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.back, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(row)
        self.body.addWidget(self._notes)

    def show_about(self, about: AboutWeek | None, *, with_results: bool = False) -> None:
        """Paint what is special about the week; nothing of a usual one."""
        self.results.setVisible(with_results)
        self.setVisible(about is not None and about.is_worth_saying())
        if about is None:
            return
        self.set_chosen(about.elsewhere)
        self.back.setVisible(about.elsewhere)
        self._text.setText(about.sentence)
        self._notes.setText("\n".join(about.lines))
        self._notes.setVisible(bool(about.lines))

    def text(self) -> str:
        """Everything it says."""
        return f"{self._text.text()}\n{self._notes.text()}"
