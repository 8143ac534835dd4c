"""A slope that single bad days can't bend, and an interval that is honest about few points."""

from __future__ import annotations

import datetime
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.assess.trend import FEWEST, trend_of
from core.errors import InputError

START = datetime.date(2026, 1, 5)


def weekly(*values: float) -> list[tuple[datetime.date, float]]:
    return [(START + datetime.timedelta(weeks=week), value) for week, value in enumerate(values)]


def test_a_straight_line_gives_its_own_slope() -> None:
    found = trend_of(weekly(*(10 + 0.5 * week for week in range(9))))
    assert found is not None
    assert found.slope_per_week == pytest.approx(0.5)
    assert found.is_clear
    assert found.low_per_week == pytest.approx(0.5)
    assert found.high_per_week == pytest.approx(0.5)


def test_one_wild_day_does_not_bend_it() -> None:
    values = [10 + 0.5 * week for week in range(9)]
    values[4] = 100
    found = trend_of(weekly(*values))
    assert found is not None
    assert found.slope_per_week == pytest.approx(0.5)


def test_a_slope_worked_by_hand() -> None:
    """Slopes between 1, 3, 2, 6 in weekly steps are 2, 0.5, 5/3, -1, 1.5 and 4: the median is (1.5 + 5/3) / 2."""
    found = trend_of(weekly(1, 3, 2, 6))
    assert found is not None
    assert found.slope_per_week == pytest.approx((1.5 + 5 / 3) / 2)


@pytest.mark.parametrize("points", [[], weekly(3), [(START, 3.0), (START, 5.0)]])
def test_less_than_two_days_have_no_trend(points: list[tuple[datetime.date, float]]) -> None:
    assert trend_of(points) is None


def test_few_points_have_a_slope_but_no_interval() -> None:
    found = trend_of(weekly(1, 2, 3))
    assert found is not None
    assert len(weekly(1, 2, 3)) < FEWEST
    assert (found.low_per_week, found.high_per_week, found.is_clear) == (None, None, False)


def test_the_order_of_the_points_does_not_matter() -> None:
    points = weekly(3, 1, 4, 1, 5, 9, 2, 6)
    assert trend_of(points) == trend_of(list(reversed(points)))


@given(st.lists(st.floats(-100, 100), min_size=5, max_size=20), st.floats(-3, 3), st.floats(0.5, 5))
def test_adding_a_line_and_stretching_move_slope_and_interval_alike(
    values: list[float], extra: float, stretch: float
) -> None:
    before = trend_of(weekly(*values))
    after = trend_of(weekly(*(stretch * value + extra * week for week, value in enumerate(values))))
    assert before is not None
    assert after is not None
    assert after.slope_per_week == pytest.approx(stretch * before.slope_per_week + extra, abs=1e-6)


def test_the_interval_holds_the_true_slope_about_as_often_as_it_says() -> None:
    chance = random.Random(4)
    hits = 0
    for _ in range(300):
        found = trend_of(weekly(*(0.3 * week + chance.gauss(0, 1) for week in range(12))))
        assert found is not None
        assert found.low_per_week is not None
        assert found.high_per_week is not None
        hits += found.low_per_week <= 0.3 <= found.high_per_week
    assert 0.91 <= hits / 300 <= 1.0


def test_a_level_that_is_none_is_refused() -> None:
    with pytest.raises(InputError, match="no level for an interval"):
        trend_of(weekly(1, 2, 3, 4), level=1.0)
