"""The days one trains: seven lines with minutes, place and start, saved as they are changed."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from core.errors import InputError
from core.house.model import Place
from core.house.wishes import WEEKDAYS, DayWish
from core.quantity.units import parse_time_min
from gui.theme import Space, TextRole
from gui.widgets import Card, ChoiceChip, ChoiceField, Ink, LineField, PrimaryButton, SectionHeader, Text

USUAL_MINUTES = "40"


@dataclass(frozen=True, slots=True)
class _Line:
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
        self._showing = False
        self._lines = tuple(self._line(name) for name in WEEKDAYS)
        self.button = PrimaryButton("Plan my week")
        self.button.clicked.connect(self.done)
        self.body.addWidget(SectionHeader("Which days, and how long?"))
        hint = "Warm-up and cool-down are inside the minutes. The start matters only where a place has quiet hours."
        self.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        self.body.addWidget(self._grid())
        self.body.addWidget(self.button)
        self.body.addStretch(1)

    def show_days(self, days: tuple[DayWish, ...], places: tuple[Place, ...]) -> None:
        """Paint the wishes."""
        self._showing = True
        self._places = places
        names = ("anywhere", *(place.name for place in places))
        by_day = {day.weekday: day for day in days}
        for weekday, line in enumerate(self._lines):
            self._show_line(line, by_day.get(weekday), names)
        self._showing = False

    def line(self, weekday: int) -> tuple[ChoiceChip, LineField, ChoiceField, LineField]:
        """Chip, minutes, place and start of a day."""
        line = self._lines[weekday]
        return line.chip, line.minutes, line.place, line.start

    def _line(self, name: str) -> _Line:
        line = _Line(
            chip=ChoiceChip(name),
            minutes=LineField("", "40 min", name=f"Minutes on {name}"),
            place=ChoiceField("", ("anywhere",), name=f"Place on {name}"),
            start=LineField("", "18:00", name=f"Start on {name}"),
        )
        line.chip.setCheckable(True)
        line.chip.toggled.connect(self._chip_toggled)
        line.minutes.edit.editingFinished.connect(self._tell)
        line.start.edit.editingFinished.connect(self._tell)
        line.place.chosen.connect(self._tell)
        return line

    def _grid(self) -> QWidget:
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(Space.M)
        grid.setVerticalSpacing(Space.XS)
        for column, heading in enumerate(("day", "minutes", "where", "start")):
            grid.addWidget(Text(heading, TextRole.SMALL, Ink.SOFT), 0, column)
        for row, line in enumerate(self._lines, start=1):
            for column, widget in enumerate((line.chip, line.minutes, line.place, line.start)):
                grid.addWidget(widget, row, column)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(2, 2)
        grid.setColumnStretch(3, 1)
        return holder

    def _show_line(self, line: _Line, day: DayWish | None, names: tuple[str, ...]) -> None:
        line.chip.setChecked(day is not None)
        line.minutes.show_text(f"{day.minutes:g} min" if day is not None else "")
        line.start.show_text(day.start.strftime("%H:%M") if day is not None and day.start is not None else "")
        ids = [place.id for place in self._places]
        index = ids.index(day.place_id) + 1 if day is not None and day.place_id in ids else 0
        line.place.show_options(names, index)
        self._enable(line)

    def _enable(self, line: _Line) -> None:
        for widget in (line.minutes, line.place, line.start):
            widget.setEnabled(line.chip.isChecked())

    def _chip_toggled(self, checked: bool) -> None:
        for line in self._lines:
            self._enable(line)
            if checked and line.chip.isChecked() and not line.minutes.text() and not self._showing:
                line.minutes.show_text(f"{USUAL_MINUTES} min")
        self._tell()

    def _tell(self, *_ignored: object) -> None:
        if self._showing:
            return
        found = [self._read(weekday, line) for weekday, line in enumerate(self._lines) if line.chip.isChecked()]
        days = tuple(day for day in found if day is not None)
        if len(days) == len(found):
            self.changed.emit(days)

    def _read(self, weekday: int, line: _Line) -> DayWish | None:
        """The day of a line; None after its field has said what is wrong."""
        index = line.place.index()
        place_id = self._places[index - 1].id if index > 0 else None
        try:
            start = _time(line.start.text())
        except InputError as error:
            line.start.show_fault(str(error))
            return None
        try:
            minutes = parse_time_min(line.minutes.text())
            return DayWish(weekday=weekday, minutes=minutes, place_id=place_id, start=start)
        except InputError as error:
            line.minutes.show_fault(str(error))
            return None


def _time(typed: str) -> datetime.time | None:
    """The time typed, None for nothing typed; `InputError` for what is no time."""
    text = typed.strip()
    if not text:
        return None
    for shape in ("%H:%M", "%H.%M", "%H"):
        try:
            return datetime.datetime.strptime(text, shape).time()  # noqa: DTZ007  # a time of day, no date
        except ValueError:
            continue
    raise InputError(text, "is no time of day", "write it like 18:00")
