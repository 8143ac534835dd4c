"""The week that is shown, on paper and for a calendar: what the two buttons of the week screen do."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from gui.desk.desk import Desk
from gui.week.paper_flow import PaperFlow, PaperOrder
from gui.week.week_flow import WeekFlow


class Papers(QObject):
    """`said` (a sentence) when a file is there, or why it is not."""

    said = Signal(str)

    def __init__(self, desk: Desk, flow: WeekFlow, window: QWidget) -> None:
        super().__init__(window)
        self._desk = desk
        self._flow = flow
        self._paper = PaperFlow(window)
        self._paper.said.connect(self.said)

    def print_week(self) -> None:
        """Ask for a file and write the week sheet into it."""
        order = self._order()
        if order is not None:
            self._paper.print_week(order)

    def to_calendar(self) -> None:
        """Ask for a file and write the days into it."""
        order = self._order()
        if order is not None:
            self._paper.to_calendar(order)

    def close(self) -> None:
        """Wait until nothing is being written."""
        self._paper.close()

    def _order(self) -> PaperOrder | None:
        person, week = self._desk.person(), self._flow.shown_week()
        saved = None if person is None else self._desk.record.week(person.id)
        if person is None or week is None or saved is None:
            return None
        return PaperOrder(
            week=week,
            house=self._desk.house(),
            person=person,
            wishes=self._desk.wishes(),
            catalog=self._desk.catalog,
            system=self._desk.units(),
            starts=self._flow.monday() or saved.starts,
            now=self._desk.record.clock(),
            note=self._flow.title(),
        )
