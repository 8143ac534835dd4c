"""A week and what is wished for it, changed in one step, so that one undo takes both back."""

from __future__ import annotations

from dataclasses import dataclass

from core.house.wishes import WEEKDAYS, WeekWishes
from core.store.changes import Part
from core.store.commands.base import Plan, known_places, put
from core.store.state import State
from core.store.values import SavedWeek


@dataclass(frozen=True, slots=True)
class MoveSession:
    """Keep a week whose session `what` moved from one weekday to another, with the wishes that moved along."""

    person_id: str
    wishes: WeekWishes
    week: SavedWeek
    what: str
    source: int
    target: int

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        state.person(self.person_id)
        known_places(state, (day.place_id for day in self.wishes.days))
        changes = (
            put(state, Part.WISHES, self.person_id, self.wishes),
            put(state, Part.WEEK, self.person_id, self.week),
        )
        return Plan(changes, f"Moved {self.what} from {WEEKDAYS[self.source]} to {WEEKDAYS[self.target]}")
