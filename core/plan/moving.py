"""Moving a planned day to another day of the same week, where minutes, place, quiet hours and recovery allow it."""

from __future__ import annotations

from dataclasses import replace

from core.errors import InputError
from core.house.model import House
from core.house.wishes import WEEKDAYS, DayWish, WeekWishes
from core.plan.model import DayKind, DayPlan, Week, WeekRequest
from core.plan.problem import is_quiet
from core.plan.validate_times import near_sessions
from core.swap.filters import QUIET_NOISE


def moved(week: Week, weekday: int, to_weekday: int, request: WeekRequest, house: House) -> tuple[DayPlan, ...]:
    """The days of the week with a session put on a day of rest; `InputError` says why that can't be."""
    if not 0 <= to_weekday <= 6 or to_weekday == weekday:
        raise InputError(to_weekday, "is no other day of the week (0 Monday to 6 Sunday)", "give another day")
    one, other = week.days[weekday], week.days[to_weekday]
    if other.kind is not DayKind.REST:
        rule = f"is planned already ({other.kind.value.replace('_', ' ')})"
        raise InputError(WEEKDAYS[to_weekday], rule, "choose a day of rest, or move that one first")
    if any(pin.weekday == to_weekday and pin.kind == DayKind.REST for pin in request.wishes.pins):
        raise InputError(WEEKDAYS[to_weekday], "is kept as a day of rest", "let go of that pin, or choose another day")
    here = replace(one, weekday=to_weekday, limit_s=_limit_s(one, to_weekday, request))
    _check_quiet(here, request, house)
    by_day = {weekday: DayPlan(weekday=weekday, kind=DayKind.REST), to_weekday: here}
    days = tuple(by_day.get(day.weekday, day) for day in week.days)
    _check_recovery(days, to_weekday, wishes_with(days, request.wishes))
    return days


def wishes_with(days: tuple[DayPlan, ...], wishes: WeekWishes) -> WeekWishes:
    """The wishes as a week with moved days has them: their minutes where they are now, no pins where they were."""
    known = {wish.weekday for wish in wishes.days}
    extra = (
        DayWish(weekday=day.weekday, minutes=day.limit_s / 60, place_id=day.place_id)
        for day in days
        if day.kind is not DayKind.REST and day.weekday not in known
    )
    resting = {day.weekday for day in days if day.kind is DayKind.REST}
    pins = tuple(pin for pin in wishes.pins if pin.weekday not in resting or pin.kind == DayKind.REST)
    return replace(wishes, days=tuple(sorted((*wishes.days, *extra), key=lambda wish: wish.weekday)), pins=pins)


def _limit_s(day: DayPlan, to_weekday: int, request: WeekRequest) -> int:
    """The minutes of the new day; a day without any in the wishes is taken as it was for the old one."""
    wish = next((wish for wish in request.wishes.days if wish.weekday == to_weekday), None)
    if wish is None:
        return day.limit_s
    limit_s = round(60 * wish.minutes)
    if day.seconds > limit_s:
        rule = f"has {wish.minutes:g} minutes, the session takes {day.seconds / 60:.0f}"
        raise InputError(WEEKDAYS[to_weekday], rule, "choose a longer day")
    return limit_s


def _check_quiet(day: DayPlan, request: WeekRequest, house: House) -> None:
    wish = next((wish for wish in request.wishes.days if wish.weekday == day.weekday), None)
    place = next((place for place in house.places if place.id == day.place_id), None)
    if wish is None or place is None or not is_quiet(place.quiet, wish):
        return
    loud = next((block for block in day.blocks if block.exercise.noise > QUIET_NOISE), None)
    if loud is not None:
        name = WEEKDAYS[day.weekday]
        raise InputError(name, f"is quiet then, and {loud.exercise.name.lower()} is loud", "choose another day")


def _check_recovery(days: tuple[DayPlan, ...], weekday: int, wishes: WeekWishes) -> None:
    """48 hours between hard work of one pattern, on both sides of the day."""
    for pair in near_sessions(wishes.days):
        if weekday not in pair:
            continue
        near = pair[0] if pair[1] == weekday else pair[1]
        shared = _hard(days[weekday]) & _hard(days[near])
        if shared:
            family = min(shared).replace("_", " ")
            rule = f"is less than 48 hours from {WEEKDAYS[near]}, which trains {family} hard as well"
            raise InputError(WEEKDAYS[weekday], rule, "choose another day")


def _hard(day: DayPlan) -> set[str]:
    if day.kind is not DayKind.STRENGTH:
        return set()
    return {block.family.value for block in day.blocks if block.hard}
