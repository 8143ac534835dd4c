"""Why a day is of its kind: what the goals ask for, how long it suits, what the person keeps, what must lie apart."""

from __future__ import annotations

from core.house.wishes import WEEKDAYS, WeekWishes
from core.plan.frame import HARD_KINDS, SUITING_MINUTES, wanted_kinds
from core.plan.model import DayKind, DayPlan, Week
from gui.desk.names import DAY_KIND_NAMES
from gui.desk.wording import counted, glued
from gui.week.day_words import whole_minutes


def why_this_day(week: Week, weekday: int, wishes: WeekWishes) -> tuple[str, ...]:
    """The reasons, a sentence each."""
    day = week.days[weekday]
    found = [_pinned(day, wishes), _wanted(week, day, wishes), _suits(day), _apart(week, day)]
    return tuple(glued(sentence) for sentence in found if sentence)


def _pinned(day: DayPlan, wishes: WeekWishes) -> str:
    pinned = any(pin.weekday == day.weekday and pin.kind == day.kind.value for pin in wishes.pins)
    return "You asked to keep it here." if pinned else ""


def _wanted(week: Week, day: DayPlan, wishes: WeekWishes) -> str:
    if not wishes.days:
        return ""
    possible = frozenset(kind for kind in DayKind if kind is not DayKind.REST)
    wanted = wanted_kinds(len(wishes.days), wishes.goals, possible)[day.kind]
    have = sum(other.kind is day.kind for other in week.days)
    name = DAY_KIND_NAMES[day.kind].lower()
    if not wanted:
        return f"Your goals do not ask for {name}; nothing that they ask for fits here."
    return f"Your goals ask for {counted(wanted, 'day')} of {name}; the week has {have}."


def _suits(day: DayPlan) -> str:
    low, high = SUITING_MINUTES[day.kind]
    minutes = whole_minutes(day.limit_s)
    name = DAY_KIND_NAMES[day.kind].lower()
    if low <= minutes <= high:
        return f"{minutes} min suits {name} ({low:g} to {high:g} min)."
    return f"{minutes} min is {'short' if minutes < low else 'long'} for {name} ({low:g} to {high:g} min)."


def _apart(week: Week, day: DayPlan) -> str:
    """Hard days lie apart where they can."""
    if day.kind not in HARD_KINDS:
        return ""
    beside = [week.days[(day.weekday + step) % 7] for step in (-1, 1)]
    hard = [WEEKDAYS[other.weekday] for other in beside if other.kind in HARD_KINDS]
    if not hard:
        return "No other hard day lies beside it."
    return f"{' and '.join(hard)} beside it {'is' if len(hard) == 1 else 'are'} hard too, but not for the same pattern."
