"""Moving a session to another day: at once where every rule still holds, else said why not and planned around it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from core.house.model import Person
from core.house.wishes import WEEKDAYS, Pin, WeekWishes
from core.plan.model import DayKind
from core.plan.move import Moved, move_session
from core.store.codec_week import WEEK_VERSION, week_text
from core.store.commands import MoveSession, SetWishes
from core.store.values import SavedWeek
from gui.desk.desk import Desk
from gui.week.day_words import kind_names
from gui.week.freshness import Freshness, Inputs

AROUND = "Plan around it"


class MoveFlow(QObject):
    """`moved` (the weekday it went to) after a move; `refused` (a sentence) when it would break a rule.

    After a refusal `plan_around` saves the wishes as they would be, the kind of day kept where it was dropped.
    """

    moved = Signal(int)
    refused = Signal(str)

    def __init__(self, desk: Desk, fresh: Freshness, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._fresh = fresh
        self._around: WeekWishes | None = None

    def move(self, source: int, target: int) -> None:
        """Move the session of a weekday."""
        person, week, house = self._desk.person(), self._desk.week(), self._desk.house()
        self._around = None
        if person is None or week is None or week.days[source].kind is DayKind.REST:
            return
        found = move_session(week, source, target, self._desk.wishes(), house, person)
        what = kind_names(week)[source]
        if found.errors:
            self._around = _kept(found, target)
            why = found.errors[0].replace("_", " ")
            self.refused.emit(f"{what} can’t just move to {WEEKDAYS[target]}. {why[:1].upper()}{why[1:]}")
            return
        if self._save(person, found, (f"{what[:1].lower()}{what[1:]}", source, target)):
            self.moved.emit(target)

    def _save(self, person: Person, found: Moved, told: tuple[str, int, int]) -> bool:
        """Keep the moved week; it needs no new plan."""
        old = self._desk.record.week(person.id)
        if old is None:
            return False
        saved = SavedWeek(starts=old.starts, version=WEEK_VERSION, plan=week_text(found.week, self._desk.catalog))
        if not self._desk.do(MoveSession(person.id, found.wishes, saved, *told)):
            return False
        self._fresh.planned(saved, Inputs.of(found.wishes, person, self._desk.house()))
        return True

    def plan_around(self) -> bool:
        """Save the wishes of the move that was refused; False when there is none."""
        person, wishes = self._desk.person(), self._around
        self._around = None
        return person is not None and wishes is not None and self._desk.do(SetWishes(person.id, wishes))


def _kept(moved: Moved, target: int) -> WeekWishes:
    """The wishes after the move, with that kind of day kept there; only movements can still give way."""
    pin = Pin(weekday=target, kind=moved.week.days[target].kind.value)
    others = tuple(one for one in moved.wishes.pins if one.weekday != target or not one.kind)
    return replace(moved.wishes, pins=(*others, pin))
