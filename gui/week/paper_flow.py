"""Printing a week and taking it to a calendar: asks where, makes the file off the GUI thread, whole or not at all."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from core.errors import FillmarkError
from core.house.model import House, Person
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.plan.model import Week
from core.quantity.display import UnitSystem
from gui.worker import Errand, Report


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperOrder:
    """The week to write, whose it is, the Monday it starts on, a note for the page, and the time now."""

    week: Week
    house: House
    person: Person
    wishes: WeekWishes
    catalog: Catalog
    system: UnitSystem
    starts: datetime.date
    now: datetime.datetime
    note: str = ""


def sheet(order: PaperOrder) -> bytes:
    """The page as PDF; the libraries that draw it load at the first one."""
    from core.paper.lettering import find_lettering
    from core.paper.page import Paper
    from core.paper.sheet import SheetRequest, week_sheet

    paper = Paper.LETTER if order.system is UnitSystem.US else Paper.A4
    request = SheetRequest(
        week=order.week,
        house=order.house,
        person=order.person,
        materials=order.catalog.material_by_id,
        wishes=order.wishes,
        starts=order.starts,
        note=order.note,
        system=order.system,
    )
    return week_sheet(request, paper=paper, lettering=find_lettering())


def calendar(order: PaperOrder) -> bytes:
    """The days as a calendar file."""
    from core.paper.calendar import CalendarRequest, week_calendar

    request = CalendarRequest(
        week=order.week,
        house=order.house,
        person=order.person,
        starts=order.starts,
        stamp=order.now,
        materials=order.catalog.material_by_id,
        wishes=order.wishes,
        system=order.system,
    )
    return week_calendar(request)


class PaperFlow(QObject):
    """`said` (a sentence) when the file is there, or why it is not."""

    said = Signal(str)

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._errand = Errand(self)

    def print_week(self, order: PaperOrder) -> None:
        """Ask for a file and write the week sheet into it."""
        self._write(order, sheet, "Print the week into", "PDF (*.pdf)")

    def to_calendar(self, order: PaperOrder) -> None:
        """Ask for a file and write the days into it, to be opened by a calendar."""
        self._write(order, calendar, "Save the week for a calendar as", "Calendar (*.ics)")

    def close(self) -> None:
        """Wait until nothing is being written."""
        self._errand.close()

    def _write(self, order: PaperOrder, make: Callable[[PaperOrder], bytes], title: str, kind: str) -> None:
        ending = kind.partition("*.")[2].rstrip(")")
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        proposed = str(Path(folder) / f"{file_stem(order)}.{ending}")
        chosen, _ = QFileDialog.getSaveFileName(self._window, title, proposed, kind)
        if chosen:
            named = Path(chosen)
            path = named if named.suffix else named.with_suffix(f".{ending}")
            # The dialog has asked whether a file of the name it saw may be replaced, and only that one.
            work = partial(_written, order, make, path, replace=path == named)
            self._errand.start(work, done=self._done, failed=self._failed)

    def _done(self, path: Path) -> None:
        again = " Open it with your calendar; a later one of the same week updates the days."
        self.said.emit(f"The week is in {path}.{again if path.suffix == '.ics' else ''}")

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.said.emit(str(error))


def file_stem(order: PaperOrder) -> str:
    """Name of the file proposed: “week-ines-2026-05-04”."""
    name = "".join(letter if letter.isalnum() else " " for letter in order.person.name).split()
    return f"week-{'-'.join(name).lower()[:40] or 'mine'}-{order.starts.isoformat()}"


def _written(
    order: PaperOrder, make: Callable[[PaperOrder], bytes], path: Path, report: Report, *, replace: bool
) -> Path:
    """Runs in the worker."""
    from core.paper.whole_file import write_whole

    content = make(order)
    report(1, 2)
    write_whole(path, content, replace=replace)
    return path
