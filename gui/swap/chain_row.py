"""The way up to a movement that is too hard now: steps to press, the one for today first."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from gui.swap.present import Step
from gui.theme import Space, TextRole
from gui.widgets import ActionChip, Card, FlowLayout, Ink, Text, Tone


class ChainRow(Card):
    """`wanted` (a movement's name) when a step is pressed."""

    wanted = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, gap=Space.S, parent=parent)
        self._title = Text("", TextRole.SMALL_STRONG, wrap=True)
        self._flow = FlowLayout()
        self.chips: list[ActionChip] = []
        self.body.addWidget(self._title)
        self.body.addLayout(self._flow)
        self.hide()

    def show_steps(self, steps: tuple[Step, ...], goal: str) -> None:
        """Paint another way up; the last step is the goal itself, and with none the row goes away."""
        self.setVisible(bool(steps))
        self._title.setText(f"Until you can do {goal.lower()}")
        self._flow.clear()
        self.chips = []
        for number, step in enumerate(steps):
            if number:
                self._flow.addWidget(Text("then", TextRole.SMALL, Ink.SOFT))
            chip = ActionChip(f"{step.name} · now" if step.now else step.name, Tone.GOOD if step.now else Tone.PLAIN)
            chip.setAccessibleName(f"Ask for {step.name}")
            chip.setProperty("movement", step.name)
            chip.clicked.connect(self._ask)
            self.chips.append(chip)
            self._flow.addWidget(chip)

    def words(self) -> str:
        """The way as a sentence."""
        return f"{self._title.text()}: {', then '.join(chip.label() for chip in self.chips)}"

    def _ask(self) -> None:
        self.wanted.emit(self.sender().property("movement"))
