"""The days one trains: seven lines with minutes, place and start, saved as they are changed."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from core.errors import InputError
from core.house.model import Place
from core.house.wishes import WEEKDAYS, DayWish
from core.quantity.units import parse_time_min
from gui.desk.wording import nb
from gui.theme import CONTROL_HEIGHT, Space, TextRole
from gui.widgets import (
    ActionChip,
    Card,
    ChoiceChip,
    ChoiceField,
    Ink,
    LineField,
    PrimaryButton,
    SectionHeader,
    Text,
)

CHIP_PLACE = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
USUAL_MINUTES = 40.0
ANYWHERE = "anywhere"
STARTS: tuple[tuple[str, tuple[int, ...], float], ...] = (
    ("three days, 40 min each", (0, 2, 4), 40.0),
    ("five days, 30 min each", (0, 1, 3, 4, 5), 30.0),
)
"""Words, weekdays and minutes of a first choice by one press."""


@dataclass(frozen=True, slots=True)
class DayLine:
    """The widgets of one weekday."""

    chip: ChoiceChip
    minutes: LineField
    place: ChoiceField
    start: LineField


class DaysPanel(Card):
    """`changed` (a tuple of `DayWish`) when every ticked day is sound; `done` on the button."""

    changed = Signal(object)
    done = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._places: tuple[Place, ...] = ()
        self._told: tuple[DayWish, ...] = ()
        self._showing = False
        self.lines = tuple(self._line(name) for name in WEEKDAYS)
        self.starts = tuple(ActionChip(nb(words)) for words, _, _ in STARTS)
        self.button = PrimaryButton("Plan my week")
        self.button.clicked.connect(self._finish)
        self.body.addWidget(SectionHeader("Which days, and how long?"))
        hint = "Warm-up and cool-down are inside the minutes. The start matters only where a place has quiet hours."
        self.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        self._quick = self._made_quick()
        self.body.addWidget(self._quick)
        self.body.addWidget(self._grid())
        self.body.addWidget(self.button)
        self.body.addStretch(1)

    def show_days(self, days: tuple[DayWish, ...], places: tuple[Place, ...]) -> None:
        """Paint the wishes; a line in which something unsound was typed keeps it until its day is changed elsewhere."""
        known = days == self._told and places == self._places
        self._told, self._places = days, places
        self._quick.setVisible(not days)
        if known and self.has_fault():
            return
        self._showing = True
        names = (ANYWHERE, *(place.name for place in places))
        by_day = {day.weekday: day for day in days}
        for weekday, line in enumerate(self.lines):
            self._show_line(line, by_day.get(weekday), names)
        self._showing = False

    def has_fault(self) -> bool:
        """Whether a line holds something that cannot be used."""
        return any(line.minutes.fault() or line.start.fault() for line in self.lines)

    def _line(self, name: str) -> DayLine:
        line = DayLine(
            chip=ChoiceChip(name),
            minutes=LineField("", "40 min", name=f"Minutes on {name}"),
            place=ChoiceField("", (ANYWHERE,), name=f"Place on {name}"),
            start=LineField("", "18:00", name=f"Start on {name}"),
        )
        line.chip.toggled.connect(self._chip_toggled)
        line.minutes.edit.editingFinished.connect(self._tell)
        line.start.edit.editingFinished.connect(self._tell)
        line.place.chosen.connect(self._tell)
        return line

    def _made_quick(self) -> QWidget:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        row.addWidget(Text("Begin with", TextRole.SMALL, Ink.SOFT))
        for chip in self.starts:
            chip.clicked.connect(self._begin)
            row.addWidget(chip)
        row.addStretch(1)
        return holder

    def _grid(self) -> QWidget:
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(Space.M)
        grid.setVerticalSpacing(Space.XS)
        for column, heading in enumerate(("day", "minutes", "where", "start")):
            grid.addWidget(Text(heading, TextRole.SMALL, Ink.SOFT), 0, column)
        for row, line in enumerate(self.lines, start=1):
            for column, widget in enumerate((line.chip, line.minutes, line.place, line.start)):
                if column:
                    grid.addWidget(widget, row, column, Qt.AlignmentFlag.AlignTop)
                else:
                    grid.addWidget(_lowered(widget), row, column, CHIP_PLACE)
        for column, share in ((1, 3), (2, 4), (3, 3)):
            grid.setColumnStretch(column, share)
        return holder

    def _show_line(self, line: DayLine, day: DayWish | None, names: tuple[str, ...]) -> None:
        line.chip.setChecked(day is not None)
        for field in (line.minutes, line.start):
            field.show_fault("")
        line.minutes.show_text(nb(f"{day.minutes:g} min") if day is not None else "")
        line.start.show_text(f"{day.start:%H:%M}" if day is not None and day.start is not None else "")
        ids = [place.id for place in self._places]
        index = ids.index(day.place_id) + 1 if day is not None and day.place_id in ids else 0
        line.place.show_options(names, index)
        self._enable(line)

    def _enable(self, line: DayLine) -> None:
        for widget in (line.minutes, line.place, line.start):
            widget.setEnabled(line.chip.isChecked())

    def _begin(self) -> None:
        chosen = STARTS[next(at for at, chip in enumerate(self.starts) if chip is self.sender())]
        self._showing = True
        for weekday in chosen[1]:
            self.lines[weekday].chip.setChecked(True)
            self.lines[weekday].minutes.show_text(nb(f"{chosen[2]:g} min"))
        self._showing = False
        self._tell()

    def _chip_toggled(self, checked: bool) -> None:
        for line in self.lines:
            self._enable(line)
            if self._showing:
                continue
            if not line.chip.isChecked():
                self._forget(line)
            elif checked and not line.minutes.text():
                line.minutes.show_text(nb(f"{USUAL_MINUTES:g} min"))
        self._tell()

    @staticmethod
    def _forget(line: DayLine) -> None:
        """A day taken out holds nothing that could be a fault."""
        for field in (line.minutes, line.start):
            field.show_fault("")
            field.show_text("")

    def _finish(self) -> None:
        self._tell()
        if not self.has_fault():
            self.done.emit()

    def _tell(self, *_ignored: object) -> None:
        if self._showing:
            return
        found = [self._read(weekday, line) for weekday, line in enumerate(self.lines) if line.chip.isChecked()]
        days = tuple(day for day in found if day is not None)
        if len(days) == len(found) and days != self._told:
            self._told = days
            self.changed.emit(days)

    def _read(self, weekday: int, line: DayLine) -> DayWish | None:
        """The day of a line; None after its field has said what is wrong. What was typed stays."""
        index = line.place.index()
        place_id = self._places[index - 1].id if index > 0 else None
        start = minutes = None
        try:
            start = time_of_day(line.start.text())
            line.start.show_fault("")
        except InputError as error:
            line.start.show_fault(str(error))
        try:
            minutes = parse_time_min(line.minutes.text())
            day = DayWish(weekday=weekday, minutes=minutes, place_id=place_id, start=start)
            line.minutes.show_fault("")
        except InputError as error:
            line.minutes.show_fault(str(error))
            return None
        return None if line.start.fault() else day


def _lowered(chip: QWidget) -> QWidget:
    """In the middle of the fields beside it, wherever a fault below one of them leaves the row."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, (CONTROL_HEIGHT - chip.sizeHint().height()) // 2, 0, 0)
    column.addWidget(chip)
    return holder


def time_of_day(typed: str) -> datetime.time | None:
    """The time typed, None for nothing typed; `InputError` for what is no time."""
    text = typed.strip()
    if not text:
        return None
    hours, _, minutes = text.replace(".", ":").replace("h", ":").partition(":")
    plain = all(part.strip().isascii() and part.strip().isdigit() for part in (hours, minutes or "0"))
    if plain and int(hours) < 24 and int(minutes or 0) < 60:
        return datetime.time(int(hours), int(minutes or 0))
    raise InputError(text, "is no time of day", "write it like 18:00")
