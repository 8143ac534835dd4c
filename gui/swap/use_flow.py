"""After "Use this": the answer is pinned to a day, another day may be chosen, and the week can be planned again."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject

from core.exercise.model import Exercise
from core.house.wishes import WEEKDAYS
from core.store.commands import SetPins, SetWishes
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.swap.used_card import UsedCard
from gui.swap.using import Used, best_day, training_days


class UseFlow(QObject):
    """Puts answers into the week through the desk and says so on the card."""

    def __init__(self, desk: Desk, card: UsedCard, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._used: Used | None = None
        card.moved.connect(self._move)
        card.plan_wanted.connect(self._plan)
        card.week_wanted.connect(self._go)
        card.ban_wanted.connect(self._ban)

    def use(self, exercise: Exercise, asked: Exercise, came_from: int | None) -> None:
        """Pin `exercise` to the day that suits it best, in place of `asked`."""
        wishes = self._desk.wishes()
        weekday = best_day(exercise, asked, self._desk.week(), wishes, came_from)
        if weekday is None:
            self._used = None
            self._card.show_used("You have no training days yet. Give your days, then use it.", (), None, "")
            return
        self._put(Used(exercise=exercise, asked=asked, weekday=weekday, before=wishes))

    def _put(self, used: Used) -> None:
        person = self._desk.person()
        if person is not None and self._desk.do(SetPins(person.id, used.wishes().pins)):
            self._used = used
            self._say(used)

    def _say(self, used: Used) -> None:
        instead = f" in place of {used.asked.name.lower()}" if used.asked.id != used.exercise.id else ""
        sentence = f"{used.exercise.name} is in your week on {WEEKDAYS[used.weekday]}{instead}, from the next plan on."
        self._card.show_used(
            sentence, training_days(self._desk.week(), used.before), used.weekday, self._ban_words(used)
        )

    def _ban_words(self, used: Used) -> str:
        asked, wishes = used.asked, self._desk.wishes()
        banned = asked.id in wishes.bans or asked.needs_gym or asked.id == used.exercise.id
        return "" if banned else f"Leave {asked.name.lower()} out of my weeks"

    def _move(self, weekday: int) -> None:
        if self._used is not None:
            self._put(replace(self._used, weekday=weekday))

    def _ban(self) -> None:
        person, used = self._desk.person(), self._used
        if person is None or used is None:
            return
        wishes = self._desk.wishes()
        if self._desk.do(SetWishes(person.id, replace(wishes, bans=(*wishes.bans, used.asked.id)))):
            self._say(used)

    def _plan(self) -> None:
        self._card.hide()
        self._desk.jump.emit(Jump(screen=ScreenName.WEEK, plan=True))

    def _go(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.WEEK))
