"""What the swap screen asks for and gets: found and answered off the GUI thread, the newest question wins.

First comes `Found` (movement, names that come near, answers), then `WaysOut` (what one more thing, another place or
sparing less would open), worked out one after the other on the same thread. `Kept` is only ever used there.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial

from PySide6.QtCore import QObject, Signal

from core.effort.capacity import Prescription
from core.errors import FillmarkError
from core.exercise.find import FoundExercise, find_exercises
from core.exercise.model import Demand
from core.fit.setting import Setting
from core.house.model import House, Person, Place
from core.knowledge import Catalog
from core.swap.model import Cause, Swap, SwapRequest
from core.swap.opening import Opener, would_open
from core.swap.swap import swap
from gui.desk.desk import Desk
from gui.worker import Errand, Report

NEAR_NAMES = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Everything an answer depends on; `place_id` None is anywhere, `using` the id of a thing or empty."""

    text: str
    cause: Cause
    spare: frozenset[Demand]
    prescription: Prescription | None
    place_id: str | None
    using: str
    house: House
    person: Person
    catalog: Catalog


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The names that come near what was typed, best first, and the swap for the first of them (None: no name does)."""

    question: Question
    near: tuple[FoundExercise, ...]
    swap: Swap | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Elsewhere:
    """How many movements would fit in another place of the house."""

    place: Place
    many: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Unspared:
    """How many more movements would fit if this were not spared."""

    demand: Demand
    more: int


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysOut:
    """What would open more: things, other places (most first), sparing less (most first), and another reason.

    `uncaused` is how many movements would fit if only gear were in the way; 0 where that is what was asked.
    """

    question: Question
    openers: tuple[Opener, ...]
    elsewhere: tuple[Elsewhere, ...]
    unspared: tuple[Unspared, ...]
    uncaused: int


class Kept:
    """The last settings made, so that typing on doesn't weigh the house again."""

    def __init__(self) -> None:
        self._of: tuple[House, Person] | None = None
        self._made: dict[str | None, Setting] = {}

    def setting(self, question: Question, place: Place | None) -> Setting:
        """The person in a place of the house, made once as long as house and person stay the same."""
        if (question.house, question.person) != self._of:
            self._of, self._made = (question.house, question.person), {}
        place_id = None if place is None else place.id
        if place_id not in self._made:
            materials = question.catalog.material_by_id
            self._made[place_id] = Setting(question.house, question.person, materials, place)
        return self._made[place_id]


def find_answers(question: Question, kept: Kept, report: Report) -> Found:
    """The movement that answers to the text, and what can be done instead."""
    report(0, 1)
    near = find_exercises(question.text, question.catalog, NEAR_NAMES)
    made = _swap(question, near[0], kept, _place(question)) if near else None
    return Found(question=question, near=near, swap=made)


def find_ways(found: Found, kept: Kept, report: Report) -> WaysOut:
    """What would open more than `found` has; the report stops it between its parts."""
    question, best = found.question, found.near[0]
    base = found.swap if found.swap is not None else _swap(question, best, kept, _place(question))
    openers = would_open(base, kept.setting(question, _place(question)), question.catalog)
    anything = replace(question, using="")  # the thing may not be there
    elsewhere = [
        Elsewhere(place=place, many=len(_swap(anything, best, kept, place).answers))
        for place in question.house.places
        if place.id != question.place_id and report(1, 4)
    ]
    unspared = [
        Unspared(demand=demand, more=_without(demand, question, best, kept) - len(base.answers))
        for demand in Demand
        if demand in question.spare and report(2, 4)
    ]
    plain = replace(question, cause=Cause.NO_GEAR)
    asks_more = question.cause is not Cause.NO_GEAR and report(3, 4)
    return WaysOut(
        question=question,
        openers=openers,
        elsewhere=tuple(sorted(elsewhere, key=lambda one: (-one.many, one.place.id))),
        unspared=tuple(sorted((one for one in unspared if one.more > 0), key=lambda one: (-one.more, one.demand))),
        uncaused=len(_swap(plain, best, kept, _place(plain)).answers) if asks_more else 0,
    )


def _place(question: Question) -> Place | None:
    return next((place for place in question.house.places if place.id == question.place_id), None)


def _without(demand: Demand, question: Question, best: FoundExercise, kept: Kept) -> int:
    less = replace(question, spare=question.spare - {demand})
    return len(_swap(less, best, kept, _place(question)).answers)


def _swap(question: Question, best: FoundExercise, kept: Kept, place: Place | None) -> Swap:
    request = SwapRequest(
        asked=best.exercise,
        cause=question.cause,
        spare=question.spare,
        prescription=question.prescription,
        using=question.using,
    )
    return swap(request, kept.setting(question, place), question.catalog)


def _go_on(_done: int, _total: int) -> bool:
    return True


class Asking(QObject):
    """`answered` (a `Found`) for the newest question, then `ways` (a `WaysOut`) where a movement was found."""

    answered = Signal(object)
    ways = Signal(object)

    def __init__(self, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._kept = Kept()
        self._errand = Errand(self)

    def ask(self, question: Question) -> None:
        """Put a question; an older one that waits is dropped."""
        self._errand.start(partial(find_answers, question, self._kept), done=self._answer, failed=self._fail)

    def answer_now(self, question: Question) -> None:
        """Answer here and now, for pictures; whatever was awaited is dropped."""
        self.close()
        found = find_answers(question, self._kept, _go_on)
        self.answered.emit(found)
        if found.swap is not None:
            self.ways.emit(find_ways(found, self._kept, _go_on))

    def stop(self) -> None:
        """Nobody waits any more."""
        self._errand.stop()

    def is_busy(self) -> bool:
        """Whether anything is still awaited."""
        return self._errand.is_busy()

    def close(self) -> None:
        """Wait until no thread is left."""
        self._errand.close()

    def _answer(self, found: Found) -> None:
        if found.swap is not None:
            self._errand.start(partial(find_ways, found, self._kept), done=self.ways.emit, failed=self._fail)
        self.answered.emit(found)

    def _fail(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self._desk.refused.emit(str(error))
