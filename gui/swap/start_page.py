"""Before a movement is chosen: what to type, movements of the person's own week, and one example of each kind."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.theme import MovePicture, Space, TextRole
from gui.widgets import ActionChip, Card, FlowLayout, Ink, PictureLabel, SecondaryButton, Text

PICTURE = 56
EXAMPLES = (
    "back_squat_bar",
    "deadlift_bar",
    "lunge_bar",
    "bench_press_bar",
    "overhead_press_bar",
    "barbell_row",
    "pull_up",
    "farmer_handle_carry_gym",
    "plank",
    "easy_run",
    "rope_skip_gym",
)
"""Ids of well-known movements, one of each kind."""
MOST_OF_WEEK = 12


class StartPage(Card):
    """`chosen` (a movement's name) by any of the chips; `own_wanted` to add a movement that is not there."""

    chosen = Signal(str)
    own_wanted = Signal()

    def __init__(self, examples: tuple[tuple[MovePicture, str], ...], *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._note = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self._week_title = Text("From your week", TextRole.SMALL_STRONG)
        self._week = FlowLayout()
        self.week_chips: list[ActionChip] = []
        self.example_chips: list[ActionChip] = []
        self.own = SecondaryButton("Add it as your own movement")
        self.own.clicked.connect(self.own_wanted)
        grid = FlowLayout(gap=Space.M, column_width=216)
        for picture, name in examples:
            grid.addWidget(self._example(picture, name))
        self.body.addWidget(self._title)
        self.body.addWidget(self._note)
        self.body.addWidget(self.own, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(self._week_title)
        self.body.addLayout(self._week)
        self.body.addWidget(Text("Or try one of these", TextRole.SMALL_STRONG))
        self.body.addLayout(grid)
        self.body.addStretch(1)

    def show_start(self, title: str, note: str, week: tuple[str, ...], *, unknown: bool = False) -> None:
        """Say what to do; `week` are movements of the person's own week. An `unknown` one can be added."""
        self.own.setVisible(unknown)
        self._title.setText(title)
        self._note.setText(note)
        self._week.clear()
        self.week_chips = [self._chip(name) for name in week[:MOST_OF_WEEK]]
        for chip in self.week_chips:
            self._week.addWidget(chip)
        self._week_title.setVisible(bool(week))

    def title(self) -> str:
        """The heading."""
        return self._title.text()

    def _example(self, picture: MovePicture, name: str) -> QWidget:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        chip = self._chip(name)
        self.example_chips.append(chip)
        row.addWidget(PictureLabel(picture, PICTURE))
        row.addWidget(chip, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addStretch(1)
        return holder

    def _chip(self, name: str) -> ActionChip:
        chip = ActionChip(name)
        chip.setProperty("movement", name)
        chip.clicked.connect(self._choose)
        return chip

    def _choose(self) -> None:
        self.chosen.emit(self.sender().property("movement"))
