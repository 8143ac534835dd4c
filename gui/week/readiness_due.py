"""Whether somebody still has to be asked before their first plan.

The record keeps one day for the household. Where somebody else has a week already, that day was theirs: a newcomer is
asked too, once while the window is open, until there is a week of their own.
"""

from __future__ import annotations

from dataclasses import replace

from core.house.model import Person
from core.store.commands import ChangeSettings
from gui.desk.desk import Desk


class ReadinessDue:
    """Knows who has answered while the window is open."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._answered: set[str] = set()

    def is_due(self, person: Person) -> bool:
        """Whether the questions come before a plan for this person."""
        if self._desk.settings().ready_on is None:
            return True
        if person.id in self._answered or self._desk.record.week(person.id) is not None:
            return False
        others = (one.id for one in self._desk.house().people if one.id != person.id)
        return any(self._desk.record.week(other) is not None for other in others)

    def answer(self) -> None:
        """The person in hand has answered today."""
        person = self._desk.person()
        if person is not None:
            self._answered.add(person.id)
        today = self._desk.record.clock().date()
        self._desk.do(ChangeSettings(replace(self._desk.settings(), ready_on=today)))
