"""Session loads of a week, after Foster et al. 2001 and Foster 1998; the weeks are worked by hand."""

from __future__ import annotations

import datetime

import pytest

from core.assess.session_load import WeekLoad, session_load, week_loads
from core.house.log import SessionDay

MONDAY = datetime.date(2026, 5, 4)


def day(offset: int, minutes: float = 30.0, effort: float | None = 5.0) -> SessionDay:
    date = MONDAY + datetime.timedelta(days=offset)
    return SessionDay(session_id=f"s{offset}", date=date, minutes=minutes, effort=effort, sets=0)


def test_a_session_is_minutes_times_effort() -> None:
    assert session_load(50, 6) == 300


@pytest.mark.parametrize(
    ("days", "total", "monotony", "strain"),
    [
        ((300, 0, 180, 0, 240, 400, 0), 1120, 0.9774, 1094.6),
        ((200, 220, 210, 190, 200, 210, 0), 1230, 2.2507, 2768.3),
    ],
)
def test_sum_monotony_and_strain_of_a_week(
    days: tuple[float, ...], total: float, monotony: float, strain: float
) -> None:
    week = WeekLoad(monday=MONDAY, days=days)
    assert week.total == total
    assert week.monotony == pytest.approx(monotony, abs=0.0001)
    assert week.strain == pytest.approx(strain, abs=0.1)


@pytest.mark.parametrize("days", [(0.0,) * 7, (100.0,) * 7])
def test_days_all_alike_have_no_monotony(days: tuple[float, ...]) -> None:
    week = WeekLoad(monday=MONDAY, days=days)
    assert (week.monotony, week.strain) == (None, None)


def test_two_sessions_of_a_day_add_up_and_weeks_without_any_are_there() -> None:
    weeks = week_loads([day(0), day(0, 20, 4), day(16, 60, 3)])
    assert [week.monday for week in weeks] == [MONDAY + datetime.timedelta(weeks=n) for n in range(3)]
    assert [week.total for week in weeks] == [230, 0, 180]
    assert weeks[0].days[0] == 230


def test_a_session_without_an_effort_is_counted_as_unknown_not_as_nothing() -> None:
    (week,) = week_loads([day(0), day(2, effort=None), day(3, minutes=0)])
    assert (week.total, week.unknown) == (150, 2)


def test_no_sessions_are_no_weeks() -> None:
    assert week_loads([]) == ()
