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
        super().__init__(padding=Space.XL, gap=Space.M, parent=parent)
        self.boxes = {key: QCheckBox() for key, _ in QUESTIONS}
        self.advice = Notice()
        self.go_on = PrimaryButton("None of these, go on")
        self.go_on.clicked.connect(self._go_on)
        self.body.addWidget(SectionHeader("Before your first plan"))
        self.body.addWidget(Text("Tick what is true for you.", TextRole.BODY, Ink.SOFT))
        for key, words in QUESTIONS:
            self.body.addLayout(self._question(key, words))
        self.body.addWidget(self.advice)
        self.body.addWidget(self.go_on)
        self.body.addWidget(Text("Later, in every session", TextRole.SMALL_STRONG))
        self.body.addWidget(Notice(STOP_SIGNS))
        kept = "Your answers are not kept, only the day you gave them."
        self.body.addWidget(Text(kept, TextRole.SMALL, Ink.SOFT, wrap=True))
        self.body.addStretch(1)

    def _question(self, key: str, words: str) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(Space.S)
        box = self.boxes[key]
        box.setAccessibleName(words)
        box.toggled.connect(self._show_advice)
        label = Text(words, TextRole.BODY, wrap=True)
        label.setBuddy(box)
        row.addWidget(box)
        row.addWidget(label, 1)
        return row

    def _go_on(self) -> None:
        """Whoever is asked next finds no answers of somebody else."""
        self.answered.emit()
        for box in self.boxes.values():
            box.setChecked(False)

    def _show_advice(self, *_ignored: object) -> None:
        yes = frozenset(key for key, box in self.boxes.items() if box.isChecked())
        found = readiness(yes)
        self.advice.show_sentence(found.sentence if yes else "")
        asked = "I have asked, and may train" if found.ask_first else "Go on"
        self.go_on.show_label(asked if yes else "None of these, go on")
