"""The form of one thing: every line is kept as soon as it is left; faults stand below their line."""

from __future__ import annotations

import datetime
from enum import StrEnum

from PySide6.QtCore import QDate, Signal
from PySide6.QtWidgets import QDateEdit, QHBoxLayout, QVBoxLayout, QWidget

from core.things.model import Hazard
from gui.household.chip_row import ChipRow
from gui.household.line_form import LineForm, TypedField
from gui.household.panel import Panel
from gui.household.thing_typed import HAZARD_NAMES, EditView
from gui.theme import Space, TextRole, ThingPicture
from gui.widgets import Ink, LinkButton, SecondaryButton, Text

CHECK_HINT = (
    "Put it against a wall and load it slowly, close to the ground, with your own mass and what you will hold. "
    "Write the total it took without a creak or a wobble. In doubt, ask a professional."
)


class ThingEditPanel(Panel):
    """`line_edited` (key, text), `hazards_edited` (frozenset), `places_edited` (ids), `check_edited` (text, date),
    `check_withdrawn`, `done`.
    """

    line_edited = Signal(object, str)
    hazards_edited = Signal(object)
    places_edited = Signal(object)
    check_edited = Signal(str, object)
    check_withdrawn = Signal()
    done = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.form = LineForm()
        self.places = ChipRow("Only in (none chosen: anywhere)")
        self.hazards = ChipRow("What to mind")
        self.hazards.show_chips(tuple((hazard.value, name, False) for hazard, name in HAZARD_NAMES.items()))
        self.check = _OwnCheck()
        self.finish = SecondaryButton("Done")
        for widget in (self.form, self.places, self.hazards, self.check):
            self.column.addWidget(widget)
        self.column.addStretch(1)
        self.buttons.addWidget(Text("Saved at once", TextRole.SMALL, Ink.SOFT))
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.finish)
        self._connect()

    def show_edit(self, view: EditView, picture: ThingPicture, today: datetime.date, *, again: bool = False) -> None:
        """Paint another form, or with `again` the same one after a change, where what is half typed stays."""
        self.show_head(f"Edit {view.title}")
        self.show_picture(picture)
        (self.form.show_lines_again if again else self.form.show_lines)(view.lines)
        self.places.show_chips(view.places)
        self.places.setVisible(bool(view.places))
        self.hazards.show_chips(tuple((one.value, name, one in view.hazards) for one, name in HAZARD_NAMES.items()))
        self.check.setVisible(view.checkable)
        self.check.show_check(view.took, view.checked_on, today, again=again)

    def show_fault(self, key: StrEnum, sentence: str) -> None:
        """Say below a line what is wrong with it."""
        self.form.show_fault(key, sentence)

    def _connect(self) -> None:
        self.form.edited.connect(self.line_edited)
        self.places.edited.connect(self.places_edited)
        self.hazards.edited.connect(self._tell_hazards)
        self.check.edited.connect(self.check_edited)
        self.check.withdrawn.connect(self.check_withdrawn)
        self.finish.clicked.connect(self.done)

    def _tell_hazards(self, chosen: tuple[str, ...]) -> None:
        self.hazards_edited.emit(frozenset(Hazard(value) for value in chosen))


class _OwnCheck(QWidget):
    """What the person's own check took, and when. `edited` (text, date) when the load or the day changes."""

    edited = Signal(str, object)
    withdrawn = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.took = TypedField("It took", "95 kg", name="Load it took in your own check")
        self.day = QDateEdit()
        self.day.setDisplayFormat("d MMM yyyy")
        self.day.setCalendarPopup(True)
        self.day.setAccessibleName("Day of your own check")
        self.withdraw = LinkButton("Withdraw this check", TextRole.SMALL)
        self._arrange()
        self.took.committed.connect(self._tell)
        self.day.editingFinished.connect(self._day_left)
        self.withdraw.clicked.connect(self.withdrawn)

    def show_check(self, took: str, checked_on: str, today: datetime.date, *, again: bool) -> None:
        """Paint another check; without one the day is today."""
        self._kept_day = datetime.date.fromisoformat(checked_on) if checked_on else today
        (self.took.show_again if again else self.took.show_value)(took)
        self.day.setMaximumDate(QDate(today.year, today.month, today.day))
        self.day.setDate(QDate(self._kept_day.year, self._kept_day.month, self._kept_day.day))
        self.withdraw.setVisible(bool(took))

    def _arrange(self) -> None:
        day = QVBoxLayout()
        day.setSpacing(Space.XS)
        day.addWidget(Text("on", TextRole.SMALL, Ink.SOFT))
        day.addWidget(self.day)
        day.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(Space.M)
        row.addWidget(self.took, 1)
        row.addLayout(day, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Space.S, 0, 0)
        column.setSpacing(Space.XS)
        column.addWidget(Text("Your own check, to stand or lean on it", TextRole.SMALL_STRONG))
        column.addWidget(Text(CHECK_HINT, TextRole.SMALL, Ink.SOFT, wrap=True))
        column.addLayout(row)
        column.addWidget(self.withdraw)

    def _chosen_day(self) -> datetime.date:
        day = self.day.date()
        return datetime.date(day.year(), day.month(), day.day())

    def _tell(self, text: str) -> None:
        self.edited.emit(text, self._chosen_day())

    def _day_left(self) -> None:
        if self.took.text().strip() and self._chosen_day() != self._kept_day:
            self._kept_day = self._chosen_day()
            self._tell(self.took.text())
