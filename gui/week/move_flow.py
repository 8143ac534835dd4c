"""Moving a session to another day: at once where every rule still holds, else said why not and planned around it."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from PySide6.QtCore import QObject, Signal

from core.errors import FillmarkError
from core.house.wishes import WEEKDAYS, Pin, WeekWishes
from core.plan.model import DayKind
from core.store.commands import SavePlan, SetWishes
from gui.desk.desk import Desk
from gui.week.day_words import kind_names
from gui.week.freshness import Freshness, Inputs
from gui.week.orders import plan_order
from gui.week.planning import Kept, MovedPlan, PlanOrder
from gui.week.planning import move as move_plan
from gui.week.ribbon import Ribbon
from gui.week.solving import Solving

AROUND = "Plan around it"


class MoveFlow(QObject):
    """`moved` (the weekday it went to) after a move; `refused` (a sentence) when it would break a rule.

    After a refusal `plan_around` saves the wishes as they would be, the kind of day kept where it was dropped.
    """

    moved = Signal(int)
    refused = Signal(str)

    def __init__(self, desk: Desk, ribbon: Ribbon, fresh: Freshness, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._ribbon = ribbon
        self._fresh = fresh
        self._around: WeekWishes | None = None
        self.solving = Solving(self)

    def move(self, source: int, target: int) -> None:
        """Move the session of a weekday, in every week from now on; the newest wish counts."""
        week, order = self._desk.week(), plan_order(self._desk, self._ribbon, None)
        self._around = None
        if week is None or order is None or week.days[source].kind is DayKind.REST:
            return
        what = kind_names(week)[source]
        done = partial(self._take, order, (what, source, target))
        self.solving.start(partial(move_plan, order, week, source, target), done=done, failed=self._fail)

    def close(self) -> None:
        """Wait until nothing is moved any more."""
        self.solving.close()

    def _take(self, order: PlanOrder, told: tuple[str, int, int], found: MovedPlan) -> None:
        what, source, target = told
        if found.errors:
            self._around = _kept(found, target)
            why = found.errors[0].replace("_", " ")
            self.refused.emit(f"{what} can’t just move to {WEEKDAYS[target]}. {why[:1].upper()}{why[1:]}")
        elif found.kept is not None:
            sentence = (
                f"Moved {what[:1].lower()}{what[1:]} from {WEEKDAYS[source]} to {WEEKDAYS[target]}, in every week"
            )
            if self._save(order, found.kept, found.wishes, sentence):
                self.moved.emit(target)

    def _save(self, order: PlanOrder, kept: Kept, wishes: WeekWishes, sentence: str) -> bool:
        """Keep the moved week; it needs no new plan."""
        self._ribbon.expect(kept.saved_block, kept.block)
        self._fresh.planned(kept.saved_week, Inputs.of(wishes, order.person, order.house))
        return self._desk.do(SavePlan(order.person.id, kept.saved_week, kept.saved_block, wishes, sentence))

    def _fail(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.refused.emit(str(error))

    def plan_around(self) -> bool:
        """Save the wishes of the move that was refused; False when there is none."""
        person, wishes = self._desk.person(), self._around
        self._around = None
        return person is not None and wishes is not None and self._desk.do(SetWishes(person.id, wishes))


def _kept(moved: MovedPlan, target: int) -> WeekWishes:
    """The wishes after the move, with that kind of day kept there; only movements can still give way."""
    pin = Pin(weekday=target, kind=moved.week.days[target].kind.value)
    others = tuple(one for one in moved.wishes.pins if one.weekday != target or not one.kind)
    return replace(moved.wishes, pins=(*others, pin))
