"""Whether a saved week is still the answer to what it was planned from: wishes, things, places, the person."""

from __future__ import annotations

from dataclasses import dataclass

from core.house.model import House, Person, Place
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.plan.model import Week, WeekRequest
from core.plan.validate import find_week_errors
from core.store.values import SavedWeek
from core.things.model import Thing


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What a plan depends on."""

    wishes: WeekWishes
    person: Person
    places: tuple[Place, ...]
    things: tuple[Thing, ...]
    fills: tuple[str, ...]
    cup_l: float
    own: tuple[OwnEntry, ...]

    @classmethod
    def of(cls, wishes: WeekWishes, person: Person, house: House) -> Inputs:
        """What the plan of this person in this house depends on."""
        return cls(
            wishes=wishes,
            person=person,
            places=house.places,
            things=house.things,
            fills=house.fills,
            cup_l=house.cup_l,
            own=house.own,
        )


class Freshness:
    """Remembers, while the window is open, what each week was planned from.

    A week from an earlier session is taken as fresh if it breaks no rule today; from then on any change is noticed.
    """

    def __init__(self) -> None:
        self._planned: dict[str, Inputs] = {}

    def planned(self, saved: SavedWeek, inputs: Inputs) -> None:
        """This week was planned from these."""
        self._planned[saved.plan] = inputs

    def is_fresh(self, saved: SavedWeek, week: Week, inputs: Inputs, house: House) -> bool:
        """Whether planning again could only say the same."""
        if saved.plan in self._planned:
            return self._planned[saved.plan] == inputs
        request = WeekRequest(wishes=inputs.wishes)
        sound = not any(find_week_errors(week, request, house, inputs.person))
        if sound:
            self._planned[saved.plan] = inputs
        return sound
