"""A few questions before the first plan. Their answers stay on this screen; only the day they were answered is kept."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from core.house.readiness import QUESTIONS, STOP_SIGNS, readiness
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, Notice, PrimaryButton, SectionHeader, Text


class ReadinessCard(Card):
    """`answered` once, when the person goes on."""

    answered = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self.boxes = {key: QCheckBox() for key, _ in QUESTIONS}
        self.advice = Notice()
        self.go_on = PrimaryButton("None of these, go on")
        self.go_on.clicked.connect(self.answered)
        self.body.addWidget(SectionHeader("Before your first plan"))
        self.body.addWidget(Text("Tick what is true for you.", TextRole.BODY, Ink.SOFT))
        for key, words in QUESTIONS:
            row = QHBoxLayout()
            self.boxes[key].setAccessibleName(words)
            self.boxes[key].toggled.connect(self._show_advice)
            label = Text(words, TextRole.BODY, wrap=True)
            label.setBuddy(self.boxes[key])
            row.addWidget(self.boxes[key])
            row.addWidget(label, 1)
            self.body.addLayout(row)
        self.body.addWidget(self.advice)
        self.body.addWidget(self.go_on)
        self.body.addWidget(Text(STOP_SIGNS, TextRole.SMALL, Ink.SOFT, wrap=True))
        self.body.addStretch(1)

    def _show_advice(self, *_ignored: object) -> None:
        yes = frozenset(key for key, box in self.boxes.items() if box.isChecked())
        found = readiness(yes)
        self.advice.show_sentence(found.sentence if yes else "")
        asked = "I have asked, and may train" if found.ask_first else "Go on"
        self.go_on.show_label(asked if yes else "None of these, go on")
