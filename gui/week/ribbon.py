"""The ribbon of the whole block: planned off the GUI thread once there is a week, one bar a week to look at."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.block import TrainingBlock
from core.plan.model import Week, WeekRequest
from gui.desk.desk import Desk
from gui.theme import Space
from gui.week.present import ribbon
from gui.widgets import Card, EffortBars
from gui.worker import Errand, Report

WEEKS = 8


def plan_all(request: WeekRequest, house: House, person: Person, catalog: Catalog, report: Report) -> TrainingBlock:
    """Plan every week of the block; stops as soon as nobody waits any more."""
    from core.plan.block import plan_block

    return plan_block(request, house, person, catalog, weeks=WEEKS, progress=report)


class Ribbon(Card):
    """`week_wanted` (a `Week`) when a bar is pressed. Hidden until the block is planned."""

    week_wanted = Signal(object)

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, parent=parent)
        self._desk = desk
        self._errand = Errand(self)
        self._block: TrainingBlock | None = None
        self._asked: tuple[object, ...] = ()
        self._shown = 1
        self._bars = EffortBars()
        self._bars.week_chosen.connect(self._choose)
        self.body.addWidget(self._bars)
        self.hide()
        self.refresh()

    def title(self) -> str:
        """What the page is called while this week is shown."""
        if self._block is None:
            return "Week"
        kind = self._block.weeks[self._shown].kind
        return "Test week" if kind == "test" else f"Week {self._shown} of {WEEKS}"

    def refresh(self) -> None:
        """Plan the block again if what it depends on has changed."""
        person, week = self._desk.person(), self._desk.week()
        if person is None or week is None:
            self._block = None
            self.hide()
            return
        asked = (self._desk.wishes(), self._desk.house(), person)
        if asked == self._asked:
            return
        self._asked = asked
        request = WeekRequest(wishes=self._desk.wishes())
        work = partial(plan_all, request, self._desk.house(), person, self._desk.catalog)
        self._errand.start(work, done=self._show_block, failed=self._leave)

    def _show_block(self, block: TrainingBlock) -> None:
        if len(block.weeks) <= 1:
            self.hide()
            return
        self._block, self._shown = block, 1
        self._bars.show_weeks(ribbon(block, self._shown))
        self.show()

    def _leave(self, error: Exception) -> None:
        """The block could not be planned; the week's own plan says why, so the ribbon only stays away."""
        self._block = None
        self.hide()
        from core.errors import FillmarkError

        if not isinstance(error, FillmarkError):
            raise error

    def _choose(self, number: int) -> None:
        if self._block is None:
            return
        self._shown = number
        self._bars.show_weeks(ribbon(self._block, number))
        self.week_wanted.emit(self._week_shown())

    def _week_shown(self) -> Week:
        if self._block is None:
            raise RuntimeError("no block is planned")
        own = self._desk.week()
        return own if self._shown == 1 and own is not None else self._block.weeks[self._shown].week
