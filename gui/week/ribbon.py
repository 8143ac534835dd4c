"""The ribbon of the whole block: planned off the GUI thread once there is a week, one bar a week to look at."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QWidget

from core.errors import FillmarkError
from core.plan.model import WeekRequest
from gui.desk.desk import Desk
from gui.theme import Space
from gui.week.planning import Brake, PlanOrder, Solving
from gui.widgets import Card, EffortBars, WeekMark
from gui.worker import Report

if TYPE_CHECKING:  # the module brings the solver, which is loaded off the GUI thread
    from core.plan.block import TrainingBlock

WEEKS = 8
PRESENT = 1
"""The week that is saved is the first after the test week."""


def plan_all(order: PlanOrder, brake: Brake, report: Report) -> TrainingBlock:
    """Plan every week of the block; stops as soon as nobody waits any more. Runs in the worker."""
    from core.plan.block import plan_block

    return plan_block(
        order.request, order.house, order.person, order.catalog, weeks=WEEKS, progress=report, on_start=brake.hold
    )


class Ribbon(Card):
    """`week_wanted` (a `BlockWeek`, or None for the present week) when a bar is pressed."""

    week_wanted = Signal(object)

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, parent=parent)
        self._desk = desk
        self.solving = Solving(self)
        self._block: TrainingBlock | None = None
        self._planned_for: tuple[object, ...] = ()
        self._person_id = ""
        self._shown = PRESENT
        self.bars = EffortBars()
        self.bars.week_chosen.connect(self.show_week)
        self.body.addWidget(self.bars)

    def shown(self) -> int:
        """The week looked at."""
        return self._shown

    def block(self) -> TrainingBlock | None:
        """The weeks, once they are planned."""
        return self._block

    def refresh(self) -> None:
        """Plan the block again if there is another week; waits for it while nobody looks.

        Wishes changed since leave it alone, as they leave the week: both follow when the person plans again. Until the
        new block is there, the bars stay as they were, but lead nowhere.
        """
        person, week = self._desk.person(), self._desk.week()
        if person is None or week is None or person.id != self._person_id:
            self._forget()
        if self.isVisible() and person is not None and (person.id, week) != self._planned_for:
            self.plan_block()

    def plan_block(self) -> None:
        """Plan the block of the week on disk, whether or not anybody looks."""
        person, week = self._desk.person(), self._desk.week()
        if person is None or week is None:
            return
        self._person_id, self._planned_for = person.id, (person.id, week)
        self._shown = PRESENT
        self._paint()
        wishes, house = self._desk.wishes(), self._desk.house()
        request = WeekRequest(wishes=wishes, keep=week)
        order = PlanOrder(request=request, house=house, person=person, catalog=self._desk.catalog)
        self.solving.start(partial(plan_all, order), done=self.show_block, failed=self._leave)

    def pause(self) -> None:
        """Give way to the plan of the present week; the next `refresh` begins anew."""
        if self.solving.is_busy():
            self.solving.stop()
            self._planned_for = ()

    def show_week(self, number: int) -> None:
        """Look at another week, or go back to the present one."""
        if self._block is None or self.solving.is_busy() or number >= len(self._block.weeks):
            return
        self._shown = number
        self._paint()
        self.week_wanted.emit(None if number == PRESENT else self._block.weeks[number])

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()

    def _forget(self) -> None:
        self.solving.stop()
        self._planned_for = ()
        self._person_id = ""
        self._block, self._shown = None, PRESENT
        self._paint()

    def show_block(self, block: TrainingBlock) -> None:
        """Paint a block, if it is whole."""
        if len(block.weeks) == WEEKS + 1:
            self._block = block
            self._paint()

    def _leave(self, error: Exception) -> None:
        """The week's own plan says why no block can be planned, so the bars only stay flat."""
        if not isinstance(error, FillmarkError):
            raise error
        self._paint()

    def _paint(self) -> None:
        self.bars.show_weeks(_flat_marks() if self._block is None else marks(self._block, self._shown))
        self.bars.setEnabled(self._block is not None and not self.solving.is_busy())


def marks(block: TrainingBlock, shown: int) -> tuple[WeekMark, ...]:
    """One bar a week; the height is hard sets times effort, a relative size."""
    most = max((week.load for week in block.weeks), default=0) or 1
    return tuple(_mark(week.number, week.kind, week.load / most, shown) for week in block.weeks)


def _flat_marks() -> tuple[WeekMark, ...]:
    """Before the block is planned."""
    return tuple(_mark(number, "build" if number else "test", 0.0, PRESENT) for number in range(WEEKS + 1))


def _mark(number: int, kind: str, share: float, shown: int) -> WeekMark:
    label = "test" if kind == "test" else f"{number}" if kind == "build" else f"{number} {kind}"
    return WeekMark(
        label=label,
        share=share,
        spoken=f"week {number} of {WEEKS}" if kind != "test" else "before week 1",
        current=number == PRESENT,
        looked_at=number == shown and number != PRESENT,
    )


def week_title(number: int, kind: str) -> str:
    """What the page is called while a week is shown."""
    name = "Test week" if kind == "test" else f"Week {number} of {WEEKS}"
    return name if number == PRESENT else f"{name}, preview"
