"""What a person wishes for the week: days and minutes, goals, bans and pins. Weekdays run 0 Monday to 6 Sunday."""

from __future__ import annotations

import datetime
import math
from collections import Counter
from dataclasses import dataclass

from core.errors import InputError

DAY_MINUTES = (5.0, 300.0)
PINNED_SETS, PINNED_REPS = (1, 60), (1, 300)
PINNED_WORK_S, PINNED_REST_S = (5, 14_400), (0, 600)
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
class PinnedDose:
    """A dose to be kept exactly: `sets` of `reps` (low, high) or of `work_s` seconds, with a rest (low, high) in s.

    On an interval day a set is a round, and its rest is counted after the last one too, as the change to the next
    movement. Without `rest_s` the usual rest is taken.
    """

    sets: int
    reps: tuple[int, int] | None = None
    work_s: int | None = None
    rest_s: tuple[int, int] | None = None

    def __post_init__(self) -> None:
        if (self.reps is None) == (self.work_s is None):
            raise InputError(f"{self.sets} sets", "need either reps or seconds of work", "give one of the two")
        _check_within("sets", (self.sets, self.sets), PINNED_SETS)
        if self.reps is not None:
            _check_within("reps", self.reps, PINNED_REPS)
        if self.work_s is not None:
            _check_within("s of work", (self.work_s, self.work_s), PINNED_WORK_S)
        if self.rest_s is not None:
            _check_within("s of rest", self.rest_s, PINNED_REST_S)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pin:
    """Something the plan must keep on a weekday: an exercise, a kind of day (such as strength or rest), or both.

    A `dose` is kept exactly: by the exercise, or without one by every movement of the day.
    """

    weekday: int
    exercise_id: str | None = None
    kind: str | None = None
    dose: PinnedDose | None = None

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


def _check_within(what: str, span: tuple[int, int], limits: tuple[int, int]) -> None:
    low, high = span
    if not limits[0] <= low <= high <= limits[1]:
        shown = f"{low}" if low == high else f"{low} to {high}"
        rule = f"can't be pinned ({limits[0]} to {limits[1]}, the smaller number first)"
        raise InputError(f"{shown} {what}", rule, "check the numbers")


def _check_weekday(weekday: int) -> None:
    if not 0 <= weekday <= 6:
        raise InputError(weekday, "is no weekday (0 Monday to 6 Sunday)", "give a number from 0 to 6")
