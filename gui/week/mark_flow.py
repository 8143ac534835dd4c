"""How a day went: done, missed, moved, ill …, said from a menu; what is left of the block is planned again."""

from __future__ import annotations

import datetime
from functools import partial

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from core.errors import FillmarkError
from core.house.wishes import WEEKDAYS
from core.plan.block_model import BlockWeek, Happening, TrainingBlock, What
from core.plan.model import DayKind
from core.store.commands import SaveBlock
from core.store.values import SavedBlock
from gui.desk.desk import Desk
from gui.week.block_words import WHAT_WORDS
from gui.week.orders import plan_order
from gui.week.planning import mark
from gui.week.ribbon import Ribbon
from gui.week.solving import Solving

AFTERWARDS = (
    (What.DONE, "Done as planned", 1.0),
    (What.PARTLY, "Done in part, more than half", 0.7),
    (What.PARTLY, "Done in part, less than half", 0.3),
    (What.MISSED, "Missed", 0.0),
    (What.HARDER, "Done, but clearly harder than planned", 1.0),
    (What.EASIER, "Done, and clearly easier than planned", 1.0),
)
"""What can be said of a day that has come, in words, and the share of it that was done."""
SPANS = (1, 3, 7, 14)


class MarkFlow(QObject):
    """`refused` (a sentence) when what happened makes no sense there."""

    refused = Signal(str)

    def __init__(self, desk: Desk, ribbon: Ribbon, window: QWidget) -> None:
        super().__init__(window)
        self._desk = desk
        self._ribbon = ribbon
        self._window = window
        self._menu: QMenu | None = None
        self.solving = Solving(self)

    def can_mark(self, weekday: int) -> bool:
        """Whether something can be said of this day of the week shown."""
        week = self._ribbon.shown()
        return week is not None and week.number <= self._ribbon.present() and self._is_training(week, weekday)

    def offer(self, weekday: int, at: QPoint) -> QMenu | None:
        """Open the menu for a day of the week shown."""
        block, week = self._ribbon.block(), self._ribbon.shown()
        if block is None or week is None or not self.can_mark(weekday):
            return None
        menu = self._menu = QMenu(self._window)
        menu.aboutToHide.connect(menu.deleteLater)
        if self._has_come(block, week.number, weekday):
            for what, words, share in AFTERWARDS:
                self._add(menu, words, Happening(what=what, week=week.number, weekday=weekday, share=share))
            menu.addSeparator()
        self._offer_days(menu.addMenu("Moved, this week only"), week, weekday)
        for what, words in ((What.ILL, "Ill from this day"), (What.AWAY, "Away from this day, without training")):
            spans = menu.addMenu(words)
            for days in SPANS:
                happening = Happening(what=what, week=week.number, weekday=weekday, days=days)
                self._add(spans, f"{days} {'day' if days == 1 else 'days'}", happening)
        menu.popup(at)
        return menu

    def note(self, happening: Happening) -> None:
        """Note what happened; the newest counts."""
        order = plan_order(self._desk, self._ribbon, None)
        if order is None:
            return
        done = partial(self._keep, order.person.id, happening)
        self.solving.start(partial(mark, order, happening), done=done, failed=self._fail)

    def close(self) -> None:
        """Wait until nothing is planned any more."""
        self.solving.close()

    def _has_come(self, block: TrainingBlock, number: int, weekday: int) -> bool:
        monday = block.monday_of(number)
        return monday is not None and monday + datetime.timedelta(days=weekday) <= self._ribbon.today()

    @staticmethod
    def _is_training(week: BlockWeek, weekday: int) -> bool:
        return week.week.days[weekday].kind is not DayKind.REST

    def _offer_days(self, menu: QMenu, week: BlockWeek, weekday: int) -> None:
        for to_weekday, name in enumerate(WEEKDAYS):
            if not self._is_training(week, to_weekday):
                happening = Happening(what=What.MOVED, week=week.number, weekday=weekday, to_weekday=to_weekday)
                self._add(menu, f"To {name}", happening)

    def _add(self, menu: QMenu, words: str, happening: Happening) -> None:
        action = QAction(words, menu)
        action.triggered.connect(partial(self.note, happening))
        menu.addAction(action)

    def _keep(self, person_id: str, happening: Happening, found: tuple[TrainingBlock, SavedBlock]) -> None:
        block, saved = found
        self._ribbon.expect(saved, block)
        words = WHAT_WORDS[happening.what]
        name = WEEKDAYS[happening.weekday]
        self._desk.do(SaveBlock(person_id, saved, f"{name}, {words}; the days ahead follow from it"))

    def _fail(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.refused.emit(str(error))
