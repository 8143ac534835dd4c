"""A plan kept in one step, so that one undo takes all of it back: the week, its block, and wishes that go with it."""

from __future__ import annotations

from dataclasses import dataclass

from core.house.wishes import WeekWishes
from core.store.changes import Part
from core.store.commands.base import Plan, known_places, put
from core.store.state import State
from core.store.values import SavedBlock, SavedWeek


@dataclass(frozen=True, slots=True)
class SavePlan:
    """Keep the week a person was given and the block made from it; `sentence` is for the undo line.

    Wishes are given when they changed with the plan, as when a session was moved.
    """

    person_id: str
    week: SavedWeek
    block: SavedBlock
    wishes: WeekWishes | None = None
    sentence: str = ""

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        name = state.person(self.person_id).name
        verb = "Changed" if self.person_id in state.weeks else "Planned"
        changes = [
            put(state, Part.WEEK, self.person_id, self.week),
            put(state, Part.BLOCK, self.person_id, self.block),
        ]
        if self.wishes is not None:
            known_places(state, (day.place_id for day in self.wishes.days))
            changes.insert(0, put(state, Part.WISHES, self.person_id, self.wishes))
        return Plan(tuple(changes), self.sentence or f"{verb} the week of {name}")
