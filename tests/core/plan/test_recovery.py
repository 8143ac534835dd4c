"""48 hours and quiet hours, counted twice in two ways that must agree: the planner's and the checker's."""

from __future__ import annotations

import datetime
from itertools import product

import pytest

from core.house.model import Place, QuietHours
from core.house.wishes import DayWish
from core.plan.problem import is_quiet
from core.plan.recovery import near_days, too_near
from core.plan.validate_times import is_in_quiet_hours, near_sessions

TIMES = (None, datetime.time(0), datetime.time(6, 30), datetime.time(18), datetime.time(23, 45))


def at(weekday: int, start: datetime.time | None = None, minutes: float = 45) -> DayWish:
    return DayWish(weekday=weekday, minutes=minutes, start=start)


def test_neighbouring_days_are_near_whatever_the_time() -> None:
    assert too_near(at(0, datetime.time(0)), at(1, datetime.time(23, 45)))
    assert too_near(at(6), at(0))
    assert not too_near(at(0), at(6))


def test_two_days_on_it_depends_on_the_time() -> None:
    assert too_near(at(0, datetime.time(18)), at(2, datetime.time(6, 30)))
    assert not too_near(at(0, datetime.time(18)), at(2, datetime.time(18)))
    assert not too_near(at(0, datetime.time(18)), at(2))
    assert too_near(at(5, datetime.time(18)), at(0, datetime.time(6, 30)))


def test_planner_and_checker_agree_on_48_hours() -> None:
    for (here, there), (first, second) in product(product(range(7), repeat=2), product(TIMES, repeat=2)):
        if here < there:
            days = (at(here, first), at(there, second))
            planner = {frozenset((days[a].weekday, days[b].weekday)) for a, b in near_days(days)}
            assert planner == {frozenset(pair) for pair in near_sessions(days)}, days


QUIET = (
    QuietHours(start=datetime.time(20), end=datetime.time(7)),
    QuietHours(start=datetime.time(13), end=datetime.time(15)),
    QuietHours(start=datetime.time(0, 30), end=datetime.time(6)),
    QuietHours(start=datetime.time(22), end=datetime.time(22)),
)


@pytest.mark.parametrize("quiet", QUIET)
def test_planner_and_checker_agree_on_quiet_hours(quiet: QuietHours) -> None:
    place = Place(id="place", name="Place", quiet=quiet)
    for hour, minute, minutes in product(range(24), (0, 30), (15, 30, 45, 90, 300)):
        wish = at(0, datetime.time(hour, minute), minutes)
        assert is_quiet(quiet, wish) == is_in_quiet_hours(wish, place), (wish, quiet)


def test_a_session_that_touches_quiet_hours_is_quiet() -> None:
    evening = QUIET[0]
    assert is_quiet(evening, at(0, datetime.time(19, 30), 31))
    assert not is_quiet(evening, at(0, datetime.time(19, 30), 30))
    assert is_quiet(evening, at(0, datetime.time(6, 59)))
    assert not is_quiet(evening, at(0, datetime.time(7)))
    assert is_quiet(QUIET[2], at(0, datetime.time(23, 30), 90))
    assert not is_quiet(evening, at(0))
    assert not is_quiet(None, at(0, datetime.time(22)))
