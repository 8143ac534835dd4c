"""Which backups may go, as a table, over years, and with a clock that is years wrong."""

from __future__ import annotations

import datetime
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.store.thinning import DAILY, MONTHLY, NEWEST, WEEKLY, surplus

NOW = datetime.datetime(2026, 5, 15, 12, 0, tzinfo=datetime.UTC)
HOUR = datetime.timedelta(hours=1)
DAY = datetime.timedelta(days=1)


def _before(*ages: datetime.timedelta) -> list[datetime.datetime]:
    return [NOW - age for age in ages]


@pytest.mark.parametrize(
    ("present", "going"),
    [
        ([], []),
        (_before(HOUR), []),
        (_before(*(HOUR * n for n in range(48))), []),  # all of two days
        (_before(*(3 * DAY + HOUR * n for n in range(5))), []),  # never fewer than the newest five
        # a sixth on one day: the oldest of that day goes
        (_before(*(3 * DAY + HOUR * n for n in range(6))), _before(3 * DAY + 5 * HOUR)),
        (_before(*(3 * DAY + n * DAY for n in range(DAILY))), []),  # one a day for twelve days
        # after those days, one a week: 1 May is the Friday, 30 and 29 April are in the same week
        (_before(*((1 + n) * DAY for n in range(16))), _before(15 * DAY, 16 * DAY)),
    ],
)
def test_the_table_of_what_goes(present: list[datetime.datetime], going: list[datetime.datetime]) -> None:
    assert surplus(present, NOW) == tuple(sorted(going))


def test_four_times_a_day_for_three_years_leaves_a_ladder_into_the_past() -> None:
    present: list[datetime.datetime] = []
    now = NOW
    for quarter in range(3 * 365 * 4):
        now = NOW + quarter * 6 * HOUR
        present.append(now)
        present = sorted(set(present) - set(surplus(present, now)))
    ages = sorted((now - time) / DAY for time in present)
    assert len([age for age in ages if age < 2]) == 8
    assert len(ages) <= 8 + DAILY + WEEKLY + MONTHLY
    assert 320 < ages[-1] < 420  # 2 days, 12 days, 10 weeks and 9 months ago
    gaps = [later - earlier for earlier, later in pairwise(ages)]
    assert max(gaps) < 62


@pytest.mark.parametrize("jump", [-3653 * DAY, -400 * DAY, 400 * DAY, 3653 * DAY])
def test_a_clock_that_is_years_wrong_takes_no_more_than_one_that_is_right(jump: datetime.timedelta) -> None:
    present = _before(*(6 * HOUR * n for n in range(8)), *(DAY * n for n in range(3, 200)))
    steady = [time for time in present if time not in surplus(present, NOW)]
    left = [time for time in steady if time not in surplus(steady, NOW + jump)]
    assert left[:NEWEST] == steady[:NEWEST]
    days = {time.date() for time in steady}
    assert len({time.date() for time in left} & days) >= min(len(days), DAILY)


times = st.integers(-5000, 5000).map(lambda hours: NOW + hours * 17 * HOUR)


@given(st.lists(times, max_size=60), times)
def test_the_newest_five_and_two_days_are_never_deleted(
    present: list[datetime.datetime], now: datetime.datetime
) -> None:
    going = surplus(present, now)
    newest = sorted(set(present))[-NEWEST:]
    assert not set(going) & {*newest, *(time for time in present if time > now - 2 * DAY)}


@given(st.lists(times, max_size=60), times)
def test_thinning_twice_is_thinning_once(present: list[datetime.datetime], now: datetime.datetime) -> None:
    left = set(present) - set(surplus(present, now))
    assert surplus(left, now) == ()
