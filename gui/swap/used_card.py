"""What stands above the answers after "Use this": which day it went to, another day to choose, and what to do next."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from core.house.wishes import WEEKDAYS
from gui.theme import Icon, Space, TextRole
from gui.widgets import Card, ChoiceChip, FlowLayout, LinkButton, PictureButton, PrimaryButton, SecondaryButton, Text

DAYS_SHOWN = 3


class UsedCard(Card):
    """`moved` (weekday), `plan_wanted`, `week_wanted`, `ban_wanted`; `closer` takes the card away."""

    moved = Signal(int)
    plan_wanted = Signal()
    week_wanted = Signal()
    ban_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._text = Text("", TextRole.STRONG, wrap=True)
        self.closer = PictureButton(Icon.CLOSE, "Close this line")
        self._days = FlowLayout()
        self.chips: list[ChoiceChip] = []
        self.plan = PrimaryButton("Plan again now")
        self.week = SecondaryButton("Go to the week")
        self.ban = LinkButton("")
        self._arrange()
        self.closer.clicked.connect(self.hide)
        self.plan.clicked.connect(self.plan_wanted)
        self.week.clicked.connect(self.week_wanted)
        self.ban.clicked.connect(self.ban_wanted)
        self.hide()

    def show_used(self, sentence: str, days: tuple[int, ...], weekday: int | None, ban: str) -> None:
        """Say what was done; `days` are offered when there are several, `ban` is a movement that may stay out."""
        self._text.setText(sentence)
        self.setAccessibleName(sentence)
        self._days.clear()
        self.chips = []
        for day in days if len(days) > 1 else ():
            chip = ChoiceChip(WEEKDAYS[day])
            chip.setChecked(day == weekday)
            chip.setProperty("weekday", day)
            chip.clicked.connect(self._move)
            self.chips.append(chip)
            self._days.addWidget(chip)
        self.plan.setVisible(weekday is not None)
        self.week.show_label("Go to the week" if weekday is not None else "Give your days")
        self.ban.show_label(ban)
        self.ban.setVisible(bool(ban))
        self.show()

    def text(self) -> str:
        """The sentence shown."""
        return self._text.text()

    def _move(self) -> None:
        self.moved.emit(int(self.sender().property("weekday")))

    def _arrange(self) -> None:
        self.set_chosen(True)
        head = QHBoxLayout()
        head.addWidget(self._text, 1)
        head.addWidget(self.closer)
        deeds = FlowLayout(gap=Space.M)
        for widget in (self.plan, self.week, self.ban):
            deeds.addWidget(widget)
        self.body.addLayout(head)
        self.body.addLayout(self._days)
        self.body.addLayout(deeds)
