"""Quiet hours of each place, saved as they are typed: no jumping and nothing loud is planned into them."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from core.errors import InputError
from core.house.model import Place, QuietHours
from gui.theme import Space, TextRole
from gui.week.days_panel import time_of_day
from gui.widgets import Card, Ink, LineField, SectionHeader, Text

BOTH = "Give both times, or neither."


@dataclass(frozen=True, slots=True)
class QuietLine:
    """The widgets of one place."""

    place: Place
    start: LineField
    end: LineField


class QuietPanel(Card):
    """`changed` (a place's id, `QuietHours` or None) when both ends of a line are sound or empty."""

    changed = Signal(str, object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.lines: tuple[QuietLine, ...] = ()
        self._holder = QWidget()
        self.body.addWidget(SectionHeader("When must it be quiet?"))
        hint = "Nothing loud is planned into these hours; it needs the start of the day."
        self.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        self.body.addWidget(self._holder)
        self.body.addStretch(1)

    def show_places(self, places: tuple[Place, ...]) -> None:
        """Paint the places; a line with a fault keeps what was typed while its place stays as it was."""
        self.setVisible(bool(places))
        if tuple(line.place.id for line in self.lines) != tuple(place.id for place in places):
            self._rebuild(places)
        lines = []
        for line, place in zip(self.lines, places, strict=True):
            if not (line.place == place and (line.start.fault() or line.end.fault())):
                line.start.show_text(f"{place.quiet.start:%H:%M}" if place.quiet else "")
                line.end.show_text(f"{place.quiet.end:%H:%M}" if place.quiet else "")
                line.end.show_fault("")
                line.start.show_fault("")
            lines.append(QuietLine(place, line.start, line.end))
        self.lines = tuple(lines)

    def _rebuild(self, places: tuple[Place, ...]) -> None:
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(Space.M)
        grid.setVerticalSpacing(Space.XS)
        for column, heading in enumerate(("where", "from", "to")):
            grid.addWidget(Text(heading, TextRole.SMALL, Ink.SOFT), 0, column)
        self.lines = tuple(_line(place) for place in places)
        for row, line in enumerate(self.lines, start=1):
            grid.addWidget(Text(line.place.name, wrap=True), row, 0)
            for column, field in ((1, line.start), (2, line.end)):
                grid.addWidget(field, row, column)
                field.edit.setProperty("row", row - 1)
                field.edit.editingFinished.connect(self._tell)
        for column, share in ((0, 3), (1, 2), (2, 2)):
            grid.setColumnStretch(column, share)
        self.body.replaceWidget(self._holder, holder)
        self._holder.hide()
        self._holder.deleteLater()
        self._holder = holder

    def _tell(self) -> None:
        line = self.lines[int(self.sender().property("row"))]
        try:
            start, end = time_of_day(line.start.text()), time_of_day(line.end.text())
        except InputError as error:
            line.end.show_fault(str(error))
            return
        if (start is None) != (end is None):
            # Not said while the other end is about to be typed.
            line.end.show_fault("" if line.start.edit.hasFocus() or line.end.edit.hasFocus() else BOTH)
            return
        line.end.show_fault("")
        quiet = None if start is None or end is None else QuietHours(start=start, end=end)
        if quiet != line.place.quiet:
            self.changed.emit(line.place.id, quiet)


def _line(place: Place) -> QuietLine:
    return QuietLine(
        place,
        LineField("", "20:00", name=f"Quiet from, {place.name}"),
        LineField("", "07:00", name=f"Quiet to, {place.name}"),
    )
