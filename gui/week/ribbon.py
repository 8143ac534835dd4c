"""The ribbon of the block: one bar a week, the present one marked by the date, the others to look into.

The block is read off the GUI thread, for it is long; what was just planned is known already.
"""

from __future__ import annotations

import datetime
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from core.errors import FillmarkError
from core.plan.block_model import BlockWeek, TrainingBlock
from core.plan.model import WeekRequest
from core.plan.waves import waves
from core.store.values import SavedBlock
from gui.desk.desk import Desk
from gui.theme import Space
from gui.week.planning import USUAL_WEEKS, PlanOrder, derive, monday_of
from gui.week.solving import Solving
from gui.widgets import Card, EffortBars, WeekMark

MOST_KNOWN = 8
"""Blocks kept as read, so that an undo shows the one before at once."""


class Ribbon(Card):
    """`block_known` when a block was read; `week_wanted` (a `BlockWeek`, or None for the present one) on a bar."""

    block_known = Signal()
    week_wanted = Signal(object)

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.M, parent=parent)
        self._desk = desk
        self.solving = Solving(self)
        self._block: TrainingBlock | None = None
        self._read: tuple[str | None, object, object] = (None, None, None)
        self._known: dict[str, TrainingBlock] = {}
        self._shown: int | None = None
        self.bars = EffortBars()
        self.bars.week_chosen.connect(self.show_week)
        self.body.addWidget(self.bars)
        self._paint()

    def block(self) -> TrainingBlock | None:
        """The block, once it is read."""
        return self._block

    def today(self) -> datetime.date:
        """The day it is."""
        return self._desk.record.clock().date()

    def present(self) -> int:
        """The week it is: the first one before the block has begun, the last one when it is over."""
        block = self._block
        if block is None or block.starts is None:
            return 0
        place = block.place_of(self.today())
        if place is not None:
            return place[0]
        return 0 if self.today() < block.starts else len(block.weeks) - 1

    def shown(self) -> BlockWeek | None:
        """The week looked at; the present one where no other is, None while no block is read."""
        number = self.present() if self._shown is None else self._shown
        return None if self._block is None else self._block.weeks[number]

    def looks_elsewhere(self) -> bool:
        """Whether another week than the present one is looked at."""
        return self._shown is not None and self._shown != self.present()

    def is_running(self) -> bool:
        """Whether today lies inside the block."""
        return self._block is not None and self._block.place_of(self.today()) is not None

    def expect(self, saved: SavedBlock, block: TrainingBlock) -> None:
        """This text is about to be saved, and is this block."""
        self._known[saved.plan] = block
        while len(self._known) > MOST_KNOWN:
            self._known.pop(next(iter(self._known)))

    def refresh(self) -> None:
        """Read the block on disk if it is another one; without one, make it from the week."""
        person, week = self._desk.person(), self._desk.week()
        saved = None if person is None else self._desk.record.block(person.id)
        key = (None if person is None else person.id, week, saved)
        if key == self._read:
            return
        if person is None or week is None or person.id != self._read[0]:
            self._forget()
        self._read = key
        if person is None or week is None:
            return
        if saved is not None and saved.plan in self._known:
            self.solving.stop()
            self.show_block(self._known[saved.plan])
        else:
            order = PlanOrder(
                request=WeekRequest(wishes=self._desk.wishes(), keep=week),
                house=self._desk.house(),
                person=person,
                catalog=self._desk.catalog,
                today=self.today(),
                starts=self._begun(person.id),
                weeks=USUAL_WEEKS,
                old=saved,
            )
            self.solving.start(partial(derive, order), done=partial(self._show_read, saved), failed=self._leave)

    def show_week(self, number: int) -> None:
        """Look at another week, or go back to the present one."""
        if self._block is None or number >= len(self._block.weeks):
            return
        self._shown = None if number == self.present() else number
        self._paint()
        self.week_wanted.emit(self.shown() if self.looks_elsewhere() else None)

    def show_present(self) -> None:
        """Go back to the present week."""
        self.show_week(self.present())

    def show_block(self, block: TrainingBlock) -> None:
        """Paint a block; a look at another week ends if the block has no such week."""
        self._block = block if block.weeks else None
        if self._shown is not None and self._shown >= len(block.weeks):
            self._shown = None
        self._paint()
        self.block_known.emit()

    def _show_read(self, saved: SavedBlock | None, block: TrainingBlock) -> None:
        if saved is not None:
            self.expect(saved, block)
        self.show_block(block)

    def _begun(self, person_id: str) -> datetime.date:
        saved = self._desk.record.week(person_id)
        return saved.starts if saved is not None else monday_of(self.today())

    def _forget(self) -> None:
        self.solving.stop()
        self._block = self._shown = None
        self._paint()

    def _leave(self, error: Exception) -> None:
        """Bars stay flat; the week itself is there, and a new plan makes a new block."""
        if not isinstance(error, FillmarkError):
            raise error
        self._forget()
        self.block_known.emit()

    def _paint(self) -> None:
        block = self._block
        shown = -1 if self._shown is None else self._shown
        self.bars.show_weeks(_flat_marks() if block is None else marks(block, self.present(), shown))
        self.bars.setEnabled(block is not None)


def marks(block: TrainingBlock, present: int, shown: int) -> tuple[WeekMark, ...]:
    """One bar a week; the height is hard sets times effort, a relative size."""
    most = max((week.load for week in block.weeks), default=0) or 1
    last = len(block.weeks) - 1
    return tuple(
        _mark(week.number, week.kind, week.load / most, (week.number == present, week.number == shown), last)
        for week in block.weeks
    )


def _flat_marks() -> tuple[WeekMark, ...]:
    """Before there is a block."""
    order = waves(USUAL_WEEKS)
    return tuple(_mark(at, wave.name, 0.0, (False, False), USUAL_WEEKS) for at, wave in enumerate(order))


def _mark(number: int, kind: str, share: float, where: tuple[bool, bool], last: int) -> WeekMark:
    present, shown = where
    label = "test" if kind == "test" else f"{number}" if kind == "build" else f"{number} {kind}"
    return WeekMark(
        label=label,
        share=share,
        spoken=f"week {number} of {last}" if kind != "test" else "before week 1",
        current=present,
        looked_at=shown and not present,
    )
