"""The choice a week is: days with limits, menus per day and kind, and every wish as a named, removable rule."""

from __future__ import annotations

import datetime
import math
from collections.abc import Mapping
from dataclasses import dataclass

from core.exercise.model import Exercise, Family
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import ANYWHERE, OUTSIDE, Setting
from core.house.model import House, Person, Place, QuietHours
from core.house.wishes import WEEKDAYS, DayWish, Pin
from core.knowledge import Catalog
from core.plan.day_menus import EASY_PATTERNS, filled_menu, short_menu
from core.plan.frame import LEAST_TRAINING_S, cool_down_seconds, wanted_kinds, warm_up_seconds
from core.plan.menu import Candidate, MenuRequest, refusal, strength_menu
from core.plan.model import KIND_WORDS, DayKind, WeekRequest
from core.plan.pinned import LONG_KINDS, DayPins, day_pins, dose_words

RECOVERY = "recovery"
DAY_MIN = 24 * 60


@dataclass(frozen=True, slots=True, kw_only=True)
class DayChoice:
    """One day of the choice: limit, fixed seconds for warm-up and cool-down, and the menu of each possible kind."""

    wish: DayWish
    limit_s: int
    fixed_s: int
    places: Mapping[DayKind, Place]
    menus: Mapping[DayKind, tuple[Candidate, ...]]

    @property
    def weekday(self) -> int:
        """0 Monday to 6 Sunday."""
        return self.wish.weekday


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """All days, what to aim for, and the request. `unmet_pins` are pins nothing on the menu can answer, with why."""

    days: tuple[DayChoice, ...]
    wanted: Mapping[DayKind, int]
    request: WeekRequest
    person: Person
    unmet_pins: Mapping[Pin, str]
    counts: Mapping[str, int]


def build_problem(request: WeekRequest, house: House, person: Person, catalog: Catalog) -> Problem:
    """Lay out the choice for this person's wishes in this house."""
    cook = _Kitchen(request, house, person, catalog)
    days = tuple(cook.day(wish) for wish in sorted(request.wishes.days, key=lambda wish: wish.weekday))
    possible = frozenset(kind for day in days for kind, menu in day.menus.items() if menu)
    return Problem(
        days=days,
        wanted=wanted_kinds(len(days), request.wishes.goals, possible),
        request=request,
        person=person,
        unmet_pins=_unmet(cook, request, days),
        counts={thing.id: thing.count for thing in house.things},
    )


_MenuKey = tuple[str, DayKind, bool, int, DayPins, frozenset[str]]


class _Kitchen:
    """Makes menus, each distinct one once: places, quiet and lengths repeat over the week."""

    def __init__(self, request: WeekRequest, house: House, person: Person, catalog: Catalog) -> None:
        self._request = request
        self._house = house
        self._person = person
        self._catalog = catalog
        self._settings: dict[str, Setting] = {}
        self._menus: dict[_MenuKey, tuple[Candidate, ...]] = {}

    def day(self, wish: DayWish) -> DayChoice:
        limit_s = math.floor(wish.minutes * 60 + 1e-6)
        fixed_s = warm_up_seconds(limit_s) + cool_down_seconds(limit_s)
        kinds: list[DayKind] = [kind for kind in DayKind if kind is not DayKind.REST]
        places = {kind: self._place(wish, kind) for kind in kinds}
        room_s = limit_s - fixed_s
        menus: dict[DayKind, tuple[Candidate, ...]] = {}
        if room_s >= LEAST_TRAINING_S or any(pin.weekday == wish.weekday for pin in self._request.wishes.pins):
            menus = {kind: self._menu(wish, kind, place, room_s) for kind, place in places.items()}
        return DayChoice(wish=wish, limit_s=limit_s, fixed_s=fixed_s, places=places, menus=menus)

    def _place(self, wish: DayWish, kind: DayKind) -> Place:
        named = [place for place in self._house.places if place.id == wish.place_id]
        if named:
            return named[0]
        outdoors = kind in LONG_KINDS
        fitting = [place for place in self._house.places if place.outdoors == outdoors]
        if fitting:
            return fitting[0]
        return OUTSIDE if outdoors else _indoors(self._house)

    def _menu(self, wish: DayWish, kind: DayKind, place: Place, room_s: int) -> tuple[Candidate, ...]:
        quiet = is_quiet(place.quiet, wish)
        length_s = room_s if kind in LONG_KINDS else 0
        pins, kept = day_pins(self._request.wishes.pins, wish.weekday, kind), self._kept(wish.weekday)
        key = (place.id, kind, quiet, length_s, pins, kept)
        if key not in self._menus:
            self._menus[key] = self._made(kind, self._order(place, quiet, pins, kept), length_s)
        return self._menus[key]

    def _kept(self, weekday: int) -> frozenset[str]:
        days = self._request.keep.days if self._request.keep is not None else ()
        return frozenset(block.exercise.id for day in days if day.weekday == weekday for block in day.blocks)

    def _order(self, place: Place, quiet: bool, pins: DayPins, kept: frozenset[str]) -> MenuRequest:
        if place.id not in self._settings:
            materials = self._catalog.material_by_id
            self._settings[place.id] = Setting(self._house, self._person, materials, place)
        return MenuRequest(
            setting=self._settings[place.id],
            catalog=self._catalog,
            bans=frozenset(self._request.wishes.bans),
            pins=pins,
            kept=kept,
            quiet=quiet,
            wave=self._request.wave,
            last=frozenset(self._request.last),
        )

    def why_not(self, pin: Pin, wish: DayWish) -> str:
        """Why a movement pinned to a day can't be planned there, in words."""
        exercise = self._catalog.exercise_by_id[pin.exercise_id or ""]
        kind = DayKind(pin.kind) if pin.kind is not None else _usual_kind(exercise)
        place = self._place(wish, kind)
        order = self._order(place, is_quiet(place.quiet, wish), day_pins((pin,), wish.weekday, kind), frozenset())
        bound = bind(exercise, order.setting)
        reason = refusal(exercise, order) or (bound.why[0] if isinstance(bound, Missing) else "")
        if reason:
            return reason
        if pin.dose is not None:
            return f"it can't be done at {dose_words(pin.dose)}"
        if kind in LONG_KINDS and pin.kind is None:
            return f"{wish.minutes:g} minutes are too few for it"
        return f"it is no part of a day of {KIND_WORDS[kind].lower()}"

    def _made(self, kind: DayKind, order: MenuRequest, length_s: int) -> tuple[Candidate, ...]:
        if kind is DayKind.STRENGTH:
            return strength_menu(order)
        if kind in LONG_KINDS:
            return filled_menu(order, kind, length_s)
        return short_menu(order, kind)


def _usual_kind(exercise: Exercise) -> DayKind:
    """The kind of day a movement is mostly done on."""
    if exercise.family is Family.MOBILITY:
        return DayKind.MOBILITY
    if exercise.family is not Family.GAIT:
        return DayKind.STRENGTH
    if exercise.main_pattern in EASY_PATTERNS:
        return DayKind.EASY if exercise.load_need is None else DayKind.LOADED_WALK
    return DayKind.INTERVALS


def _indoors(house: House) -> Place:
    return house.places[0] if house.places else ANYWHERE


def is_quiet(quiet: QuietHours | None, wish: DayWish) -> bool:
    """Whether the session runs into the place's quiet hours, either over midnight; an unknown start counts as not."""
    if quiet is None or wish.start is None:
        return False
    start = _minute(wish.start)
    session = (start, start + wish.minutes)
    low, high = _minute(quiet.start), _minute(quiet.end)
    length = high - low if low < high else high - low + DAY_MIN
    begins = (low - DAY_MIN, low, low + DAY_MIN)
    return any(session[0] < begin + length and begin < session[1] for begin in begins)


def _minute(time: datetime.time) -> int:
    return time.hour * 60 + time.minute


def _unmet(cook: _Kitchen, request: WeekRequest, days: tuple[DayChoice, ...]) -> dict[Pin, str]:
    """Pins that nothing can answer whatever else gives way."""
    found = {}
    by_day = {day.weekday: day for day in days}
    for pin in request.wishes.pins:
        day = by_day.get(pin.weekday)
        if day is None:
            if pin.kind != DayKind.REST:
                found[pin] = f"{WEEKDAYS[pin.weekday]} has no minutes"
            continue
        reason = _unanswered(cook, pin, day)
        if reason:
            found[pin] = reason
    return found


def _unanswered(cook: _Kitchen, pin: Pin, day: DayChoice) -> str:
    menus = {kind.value: menu for kind, menu in day.menus.items()}
    if pin.exercise_id is None and pin.kind != DayKind.REST and not menus.get(pin.kind or ""):
        return f"nothing can be planned for it on {WEEKDAYS[pin.weekday]}"
    if pin.exercise_id is None:
        return ""
    kinds = [pin.kind] if pin.kind is not None else list(menus)
    if any(candidate.exercise.id == pin.exercise_id for kind in kinds for candidate in menus.get(kind, ())):
        return ""
    return cook.why_not(pin, day.wish)
