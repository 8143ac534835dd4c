"""What a person wishes for the week: days and minutes, goals, bans and pins. Weekdays run 0 Monday to 6 Sunday."""

from __future__ import annotations

import datetime
import math
from collections import Counter
from dataclasses import dataclass

from core.errors import InputError

DAY_MINUTES = (5.0, 300.0)
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


@dataclass(frozen=True, slots=True, kw_only=True)
class DayWish:
    """A day to train on, the minutes there are (warm-up and cool-down inside them) and where; None is any place.

    `start` is the local time the session begins, needed only where a place has quiet hours.
    """

    weekday: int
    minutes: float
    place_id: str | None = None
    start: datetime.time | None = None

    def __post_init__(self) -> None:
        _check_weekday(self.weekday)
        low, high = DAY_MINUTES
        if not low <= self.minutes <= high:
            rule = f"is no session length this program plans for ({low:.0f} to {high:.0f} minutes)"
            raise InputError(f"{self.minutes:g} min", rule, "give the minutes you have, or leave the day out")


@dataclass(frozen=True, slots=True, kw_only=True)
class Goals:
    """How much each part of training matters, as weights from 0 (none of it) to 1; only their proportion counts."""

    strength: float = 1.0
    run_walk: float = 0.5
    loaded_walk: float = 0.25
    mobility: float = 0.25

    def __post_init__(self) -> None:
        weights = (self.strength, self.run_walk, self.loaded_walk, self.mobility)
        for weight in weights:
            if not 0 <= weight <= 1:
                raise InputError(f"{weight:g}", "is no weight for a goal (0 to 1)", "move it inside that range")
        if not math.fsum(weights) > 0:
            raise InputError("0 for every goal", "leaves nothing to plan", "raise at least one of them")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pin:
    """Something the plan must keep on a weekday: an exercise, a kind of day (such as strength or rest), or both."""

    weekday: int
    exercise_id: str | None = None
    kind: str | None = None

    def __post_init__(self) -> None:
        _check_weekday(self.weekday)
        if not (self.exercise_id or self.kind):
            raise InputError(WEEKDAYS[self.weekday], "is pinned to nothing", "name an exercise or a kind of day")


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekWishes:
    """One person's wishes: at most one `DayWish` a weekday, goals, exercise ids never to plan, and pins."""

    days: tuple[DayWish, ...] = ()
    goals: Goals = Goals()
    bans: tuple[str, ...] = ()
    pins: tuple[Pin, ...] = ()

    def __post_init__(self) -> None:
        for weekday, times in sorted(Counter(day.weekday for day in self.days).items()):
            if times > 1:
                raise InputError(WEEKDAYS[weekday], "is listed more than once", "keep one entry a day")


def _check_weekday(weekday: int) -> None:
    if not 0 <= weekday <= 6:
        raise InputError(weekday, "is no weekday (0 Monday to 6 Sunday)", "give a number from 0 to 6")
