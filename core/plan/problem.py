"""The choice a week is: days with limits, menus per day and kind, and every wish as a named, removable rule."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.fit.setting import ANYWHERE, Setting
from core.house.model import House, Person, Place, QuietHours
from core.house.wishes import WEEKDAYS, DayWish, Pin
from core.knowledge import Catalog
from core.plan.day_menus import filled_menu, short_menu
from core.plan.frame import LEAST_TRAINING_S, cool_down_seconds, wanted_kinds, warm_up_seconds
from core.plan.menu import Candidate, MenuRequest, strength_menu
from core.plan.model import DayKind, WeekRequest

RECOVERY = "recovery"
LONG_KINDS = (DayKind.EASY, DayKind.LOADED_WALK)


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
        unmet_pins=_unmet(request, days),
        counts={thing.id: thing.count for thing in house.things},
    )


class _Kitchen:
    """Makes menus, each distinct one once: places, quiet and lengths repeat over the week."""

    def __init__(self, request: WeekRequest, house: House, person: Person, catalog: Catalog) -> None:
        self._request = request
        self._house = house
        self._person = person
        self._catalog = catalog
        self._settings: dict[str, Setting] = {}
        self._menus: dict[tuple[str, DayKind, bool, int, frozenset[str]], tuple[Candidate, ...]] = {}

    def day(self, wish: DayWish) -> DayChoice:
        limit_s = round(wish.minutes * 60)
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
        return replace(ANYWHERE, outdoors=True, walk_m=2000.0) if outdoors else _indoors(self._house)

    def _menu(self, wish: DayWish, kind: DayKind, place: Place, room_s: int) -> tuple[Candidate, ...]:
        quiet = is_quiet(place.quiet, wish)
        must = self._must(wish.weekday)
        length_s = room_s if kind in LONG_KINDS else 0
        key = (place.id, kind, quiet, length_s, must)
        if key not in self._menus:
            self._menus[key] = self._made(kind, place, quiet, length_s, must)
        return self._menus[key]

    def _must(self, weekday: int) -> frozenset[str]:
        """Movements that must stay on the menu of a day: pinned there, or in the plan the person has."""
        pinned = {pin.exercise_id for pin in self._request.wishes.pins if pin.exercise_id and pin.weekday == weekday}
        keep = self._request.keep
        days = keep.days if keep is not None else ()
        kept = {block.exercise.id for day in days if day.weekday == weekday for block in day.blocks}
        return frozenset(pinned | (kept - set(self._request.wishes.bans)))

    def _made(
        self, kind: DayKind, place: Place, quiet: bool, length_s: int, must: frozenset[str]
    ) -> tuple[Candidate, ...]:
        if place.id not in self._settings:
            materials = self._catalog.material_by_id
            self._settings[place.id] = Setting(self._house, self._person, materials, place)
        order = MenuRequest(
            setting=self._settings[place.id],
            catalog=self._catalog,
            bans=frozenset(self._request.wishes.bans) - must,
            must=must,
            quiet=quiet,
            wave=self._request.wave,
            last=frozenset(self._request.last),
        )
        if kind is DayKind.STRENGTH:
            return strength_menu(order)
        if kind in LONG_KINDS:
            return filled_menu(order, kind, length_s)
        return short_menu(order, kind)


def _indoors(house: House) -> Place:
    return house.places[0] if house.places else ANYWHERE


def is_quiet(quiet: QuietHours | None, wish: DayWish) -> bool:
    """Whether the session runs into the place's quiet hours (over midnight too); an unknown start counts as not."""
    if quiet is None or wish.start is None:
        return False
    start = _minute(wish.start)
    session = (start, start + wish.minutes)
    low, high = _minute(quiet.start), _minute(quiet.end)
    spans = [(low, high)] if low < high else [(low - 1440, high), (low, high + 1440)]
    return any(session[0] < end and begin < session[1] for begin, end in spans)


def _minute(time: datetime.time) -> int:
    return time.hour * 60 + time.minute


def _unmet(request: WeekRequest, days: tuple[DayChoice, ...]) -> dict[Pin, str]:
    """Pins that nothing can answer whatever else gives way."""
    found = {}
    by_day = {day.weekday: day for day in days}
    for pin in request.wishes.pins:
        day = by_day.get(pin.weekday)
        if day is None:
            if pin.kind != DayKind.REST:
                found[pin] = f"{WEEKDAYS[pin.weekday]} has no minutes"
            continue
        reason = _unanswered(pin, day)
        if reason:
            found[pin] = reason
    return found


def _unanswered(pin: Pin, day: DayChoice) -> str:
    menus = {kind.value: menu for kind, menu in day.menus.items()}
    if pin.kind is not None and pin.kind != DayKind.REST and not menus.get(pin.kind):
        return f"nothing can be planned for it on {WEEKDAYS[pin.weekday]}"
    if pin.exercise_id is None:
        return ""
    kinds = [pin.kind] if pin.kind is not None else list(menus)
    if any(candidate.exercise.id == pin.exercise_id for kind in kinds for candidate in menus.get(kind, ())):
        return ""
    return "it can't be done there with what you own"
