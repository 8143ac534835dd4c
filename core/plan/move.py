"""A session moved to another day by the person: the two days change places, minutes, place and start go along.

Nothing is planned anew. Pours and checks are counted again, because they depend on the order of the days; whether the
moved week still obeys every rule is for `core.plan.validate` to say.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.house.model import House, Person
from core.house.wishes import WeekWishes
from core.plan.checks import week_checks
from core.plan.model import DayKind, Week, WeekRequest
from core.plan.pours import fill_steps, with_shared_pours, without_shared
from core.plan.validate import find_week_errors


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """The week after the move, the wishes that go with it, and a sentence for each rule it would break."""

    week: Week
    wishes: WeekWishes
    errors: tuple[str, ...] = ()


def move_session(week: Week, source: int, target: int, wishes: WeekWishes, house: House, person: Person) -> Moved:
    """Exchange two days (0 Monday to 6 Sunday) of a planned week, and all that is wished for them.

    `ValueError` when the source is a day of rest or both are the same day.
    """
    if source == target or week.days[source].kind is DayKind.REST:
        raise ValueError(f"day {source} has no session to move to day {target}")
    moved_wishes = exchanged(wishes, source, target)
    to = {source: target, target: source}
    days = [replace(without_shared(day), weekday=to.get(day.weekday, day.weekday)) for day in week.days]
    ordered = with_shared_pours(tuple(sorted(days, key=lambda day: day.weekday)))
    moved = replace(week, days=ordered, fills=tuple(fill_steps(ordered, house)))
    request = WeekRequest(wishes=moved_wishes)
    moved = replace(moved, checks=week_checks(moved, house, person, request=request))
    return Moved(week=moved, wishes=moved_wishes, errors=tuple(find_week_errors(moved, request, house, person)))


def exchanged(wishes: WeekWishes, source: int, target: int) -> WeekWishes:
    """The wishes with everything about two weekdays exchanged."""
    to = {source: target, target: source}
    days = (replace(day, weekday=to.get(day.weekday, day.weekday)) for day in wishes.days)
    pins = tuple(replace(pin, weekday=to.get(pin.weekday, pin.weekday)) for pin in wishes.pins)
    return replace(wishes, days=tuple(sorted(days, key=lambda day: day.weekday)), pins=pins)
