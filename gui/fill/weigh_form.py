"""The small form of a weighing: what was on which scale, what it said, when. It judges nothing itself."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from PySide6.QtCore import QDate, Signal
from PySide6.QtWidgets import QButtonGroup, QDateEdit, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from core.mass.model import ScaleKind
from gui.fill.words import SCALE_NAMES
from gui.theme import Space, TextRole
from gui.widgets import ChoiceChip, FlowLayout, Ink, LineField, PrimaryButton, SecondaryButton, Text, announce

SCALES = tuple(SCALE_NAMES)
AS_SHOWN, EMPTY = 0, 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """What stands in the form, as typed. `empty`: it was weighed empty, not as drawn.

    `without` is what the scale shows without the thing: you alone, or nothing on it.
    """

    kind: ScaleKind
    reading: str
    without: str
    step: str
    date: datetime.date
    empty: bool


class WeighForm(QWidget):
    """`typed` (a `Typed`) with every change; `kept`, `trusted` and `dropped` by its buttons."""

    typed = Signal(object)
    kept = Signal()
    trusted = Signal()
    dropped = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.reading = LineField("The scale said")
        self.alone = LineField("You alone")
        self.nothing = LineField("With nothing on it")
        self.step = LineField("It shows steps of")
        self.date = QDateEdit()
        self.date.setCalendarPopup(True)
        self.date.setAccessibleName("Date of the weighing")
        self.date.setDisplayFormat("d MMM yyyy")
        self.date.setFixedHeight(self.reading.edit.sizeHint().height())
        self._states = QButtonGroup(self)
        self._scales = QButtonGroup(self)
        self._state_row = self._chips(self._states, ("as drawn", "empty"))
        self._scale_row = self._chips(self._scales, tuple(SCALE_NAMES.values()))
        self._verdict = Text("", TextRole.BODY, wrap=True)
        self.save = PrimaryButton("Save this weighing")
        self.keep_estimate = SecondaryButton("Keep the estimate")
        self.trust_scale = SecondaryButton("Trust the scale")
        self._arrange()
        self._connect()
        self.show_verdict("", agrees=None)

    def begin(self, today: datetime.date, shown: str) -> None:
        """Empty fields for a new weighing; `shown` is what is drawn now, nothing for a thing that is not filled."""
        for field in self._fields():
            field.show_text("")
            field.show_fault("")
        self._show_without()
        last = QDate(today.year, today.month, today.day)
        self.date.setMaximumDate(last)
        self.date.setDate(last)
        self.show_shown(shown)
        self._states.button(AS_SHOWN).setChecked(True)
        self.show_verdict("", agrees=None)

    def show_shown(self, shown: str) -> None:
        """Another fill is drawn."""
        chip = self._states.button(AS_SHOWN)
        chip.setText(f"with {shown}")
        chip.updateGeometry()
        self._state_row.setVisible(bool(shown) and shown != "empty")

    def show_units(self, example: str, alone: str, step: str, nothing: str) -> None:
        """Examples in the person's units; an empty step or nothing is taken as the one shown."""
        for field, text in zip(self._fields(), (example, alone, nothing, step), strict=True):
            field.edit.setPlaceholderText(text)

    def without(self) -> LineField:
        """The field of what the scale shows without the thing, for the scale chosen."""
        return self.alone if self._is_difference() else self.nothing

    def show_verdict(self, sentence: str, *, agrees: bool | None) -> None:
        """Say how scale and estimate go together; `agrees` None: nothing to save yet."""
        if sentence and sentence != self._verdict.text():
            announce(self, sentence)
        self._verdict.setText(sentence)
        self._verdict.setVisible(bool(sentence))
        self.save.setVisible(agrees is not False)
        self.save.setEnabled(agrees is True)
        for button in (self.keep_estimate, self.trust_scale):
            button.setVisible(agrees is False)

    def verdict(self) -> str:
        """What it says."""
        return self._verdict.text()

    def now(self) -> Typed:
        """What stands in the form."""
        date = self.date.date()
        return Typed(
            kind=SCALES[self._scales.checkedId()],
            reading=self.reading.text(),
            without=self.without().text(),
            step=self.step.text(),
            date=datetime.date(date.year(), date.month(), date.day()),
            empty=self._state_row.isVisibleTo(self) and self._states.checkedId() == EMPTY,
        )

    def choose_scale(self, kind: ScaleKind) -> None:
        """Another scale, as if its chip were pressed."""
        self._scales.button(SCALES.index(kind)).setChecked(True)

    def _chips(self, group: QButtonGroup, names: tuple[str, ...]) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(gap=Space.XS + 2, parent=holder)
        for number, name in enumerate(names):
            chip = ChoiceChip(name)
            group.addButton(chip, number)
            flow.addWidget(chip)
        group.button(0).setChecked(True)
        return holder

    def _arrange(self) -> None:
        fields = QGridLayout()
        fields.setHorizontalSpacing(Space.M)
        fields.setVerticalSpacing(Space.S)
        when = QVBoxLayout()
        when.setSpacing(Space.XS)
        when.addWidget(Text("When", TextRole.SMALL, Ink.SOFT))
        when.addWidget(self.date)
        when.addStretch(1)
        fields.addWidget(self.reading, 0, 0)
        fields.addWidget(self.alone, 0, 1)
        fields.addWidget(self.nothing, 0, 1)
        fields.addLayout(when, 1, 0)
        fields.addWidget(self.step, 1, 1)
        for at in (0, 1):
            fields.setColumnStretch(at, 1)
        buttons = QHBoxLayout()
        buttons.setSpacing(Space.S)
        for button in (self.save, self.keep_estimate, self.trust_scale):
            buttons.addWidget(button)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.S)
        column.addWidget(self._state_row)
        column.addWidget(self._scale_row)
        column.addLayout(fields)
        column.addWidget(self._verdict)
        column.addLayout(buttons)

    def _connect(self) -> None:
        for field in self._fields():
            field.edited.connect(self._tell)
            field.submitted.connect(self._enter)
        self.date.dateChanged.connect(self._tell)
        self._states.idToggled.connect(self._tell)
        self._scales.idToggled.connect(self._scale_chosen)
        self.save.clicked.connect(self.kept)
        self.trust_scale.clicked.connect(self.trusted)
        self.keep_estimate.clicked.connect(self.dropped)

    def _scale_chosen(self, _number: int, checked: bool) -> None:
        if checked:
            self._show_without()
            self.reading.show_fault("")
            self._tell()

    def _fields(self) -> tuple[LineField, LineField, LineField, LineField]:
        return self.reading, self.alone, self.nothing, self.step

    def _is_difference(self) -> bool:
        return SCALES[self._scales.checkedId()] is ScaleKind.BATHROOM_DIFFERENCE

    def _show_without(self) -> None:
        self.alone.setVisible(self._is_difference())
        self.nothing.setVisible(not self._is_difference())

    def _enter(self) -> None:
        if self.save.isVisible() and self.save.isEnabled():
            self.kept.emit()

    def _tell(self, *_ignored: object) -> None:
        self.typed.emit(self.now())
