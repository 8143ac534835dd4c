"""A block of 4 to 16 weeks as it is kept: its weeks, the tests at both ends, and what happened on the way.

Week 0 is the baseline. Every week keeps the plan it had when its time came (`week`) and, if it was planned again since
the block began, what was predicted for it first (`predicted`). Weekdays run from 0 (Monday) to 6. No solver here.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import StrEnum

from core.assess.model import Protocol
from core.errors import InputError
from core.house.wishes import WEEKDAYS
from core.plan.model import Week

BLOCK_WEEKS = (4, 16)
DAYS_A_WEEK = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedTest:
    """A test of the baseline or retest week and its day; `weekday` None where no day has the minutes for it."""

    protocol_id: str
    weekday: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockWeek:
    """One week: its number, its kind (test, build, easy, retest), its plan, what to know, and its tests.

    `predicted` is the plan the block began with, if it is another one by now.
    """

    number: int
    kind: str
    week: Week
    notes: tuple[str, ...] = ()
    tests: tuple[PlannedTest, ...] = ()
    predicted: Week | None = None

    @property
    def load(self) -> int:
        """Hard sets times effort, for the picture of the block; a relative size only."""
        blocks = [block for day in self.week.days for block in day.blocks if block.hard]
        return round(sum(block.dose.sets * block.dose.effort for block in blocks))


class What(StrEnum):
    """What can happen to a planned day (or, ill and away, to several from it on)."""

    DONE = "done"
    PARTLY = "partly"
    MISSED = "missed"
    MOVED = "moved"
    ILL = "ill"
    AWAY = "away"
    HARDER = "harder"
    EASIER = "easier"


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """What happened on a planned day of a week. `to_weekday` is where it moved to, `days` how long ill or away.

    `share` is the part of the sets that was done (partly), `session_id` the logged session, if there is one.
    """

    what: What
    week: int
    weekday: int
    to_weekday: int | None = None
    days: int = 1
    share: float = 1.0
    session_id: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        if not 0 <= self.weekday < DAYS_A_WEEK:
            raise InputError(self.weekday, "is no weekday (0 Monday to 6 Sunday)", "give a number from 0 to 6")
        if not 0 <= self.share <= 1:
            raise InputError(f"{self.share:g}", "is no part of a session (0 to 1)", "give what was done of it")
        if not 1 <= self.days <= 100:
            raise InputError(f"{self.days} days", "is no time away (1 to 100 days)", "check the number")
        if (self.what is What.MOVED) != (self.to_weekday is not None):
            raise InputError(self.what.value, "names a day it moved to only when moved", "give both, or neither")

    @property
    def first_day(self) -> int:
        """Days from the Monday of week 0 to the day it began."""
        return DAYS_A_WEEK * self.week + self.weekday

    @property
    def last_day(self) -> int:
        """The last day it settles: the planned day, the one it moved from, or the last day ill or away."""
        return self.first_day + (self.days - 1 if self.what in (What.ILL, What.AWAY) else 0)

    def words(self) -> str:
        """Week 3, Tuesday: missed."""
        return f"Week {self.week}, {WEEKDAYS[self.weekday]}: {self.what.value}"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrainingBlock:
    """The weeks in order and the tests at both ends, with the Monday it starts on and what happened so far.

    `pattern` is the week all weeks from `pattern_week` on are made from (its movements, places and things); None where
    none is possible.
    """

    weeks: tuple[BlockWeek, ...]
    tests: tuple[Protocol, ...] = ()
    starts: datetime.date | None = None
    happened: tuple[Happening, ...] = ()
    pattern: Week | None = None
    pattern_week: int = 0

    def monday_of(self, number: int) -> datetime.date | None:
        """The Monday of a week; None while the block has no date."""
        return None if self.starts is None else self.starts + datetime.timedelta(weeks=number)

    def place_of(self, day: datetime.date) -> tuple[int, int] | None:
        """Week number and weekday of a date; None outside the block or without a date."""
        if self.starts is None:
            return None
        number, weekday = divmod((day - self.starts).days, DAYS_A_WEEK)
        return (number, weekday) if 0 <= number < len(self.weeks) else None


def check_start(starts: datetime.date | None) -> None:
    """`InputError` unless a block can start on this day."""
    if starts is not None and starts.weekday() != 0:
        monday = starts - datetime.timedelta(days=starts.weekday())
        raise InputError(starts.isoformat(), "is no Monday, on which a week starts", f"give {monday.isoformat()}")
