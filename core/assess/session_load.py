"""How much training a week was: minutes times felt effort for each session, their sum, and how alike the days were.

Foster et al. 2001, J Strength Cond Res 15:109-15 (session load: effort of 0 to 10 times minutes); Foster 1998, Med Sci
Sports Exerc 30:1164-8 (monotony: mean of the daily loads over their standard deviation; strain: the week's load times
monotony). The abstract does not say which standard deviation; the sample's (n - 1) is used here. Rest days count as 0.
A ratio of this week to the weeks before is left out on purpose: as a predictor of injury it says no more than chance
(Impellizzeri et al. 2020).
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from statistics import fmean, stdev

from core.house.log import SessionDay

DAYS = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekLoad:
    """The loads of seven days from a Monday on. `unknown` counts sessions without minutes or effort, left out."""

    monday: datetime.date
    days: tuple[float, ...]
    unknown: int = 0

    @property
    def total(self) -> float:
        """The week's load."""
        return sum(self.days)

    @property
    def monotony(self) -> float | None:
        """Mean over standard deviation of the days; None where every day is alike (or nothing was done)."""
        spread = stdev(self.days)
        return fmean(self.days) / spread if spread > 0 else None

    @property
    def strain(self) -> float | None:
        """Load times monotony, where there is one."""
        monotony = self.monotony
        return None if monotony is None else self.total * monotony


def session_load(minutes: float, effort: float) -> float:
    """Minutes times the effort felt over the whole session (0 to 10)."""
    return minutes * effort


def week_loads(sessions: Iterable[SessionDay]) -> tuple[WeekLoad, ...]:
    """Every week from the first session to the last, weeks without any among them."""
    days: dict[datetime.date, float] = {}
    unknown: dict[datetime.date, int] = {}
    for session in sessions:
        monday = session.date - datetime.timedelta(days=session.date.weekday())
        unknown.setdefault(monday, 0)
        if session.effort is None or session.minutes <= 0:
            unknown[monday] += 1
            continue
        days[session.date] = days.get(session.date, 0.0) + session_load(session.minutes, session.effort)
    if not unknown:
        return ()
    count = (max(unknown) - min(unknown)).days // DAYS + 1
    mondays = (min(unknown) + datetime.timedelta(weeks=week) for week in range(count))
    return tuple(_week(monday, days, unknown.get(monday, 0)) for monday in mondays)


def _week(monday: datetime.date, days: dict[datetime.date, float], unknown: int) -> WeekLoad:
    dates = (monday + datetime.timedelta(days=day) for day in range(DAYS))
    return WeekLoad(monday=monday, days=tuple(days.get(date, 0.0) for date in dates), unknown=unknown)
