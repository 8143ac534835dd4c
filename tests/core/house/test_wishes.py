"""The rules a person's wishes for the week obey."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from core.errors import InputError
from core.house.wishes import DayWish, Goals, Pin, WeekWishes


def test_empty_wishes_are_allowed() -> None:
    assert WeekWishes() == WeekWishes(days=(), goals=Goals(), bans=(), pins=())


def test_a_weekday_is_listed_once() -> None:
    with pytest.raises(InputError, match=r"Tuesday.*more than once"):
        WeekWishes(days=(DayWish(weekday=1, minutes=30), DayWish(weekday=1, minutes=50)))


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: DayWish(weekday=7, minutes=30), "no weekday"),
        (lambda: DayWish(weekday=-1, minutes=30), "no weekday"),
        (lambda: DayWish(weekday=0, minutes=4), "5 to 300 minutes"),
        (lambda: DayWish(weekday=0, minutes=301), "5 to 300 minutes"),
        (lambda: DayWish(weekday=0, minutes=float("nan")), "5 to 300 minutes"),
        (lambda: Goals(strength=1.5), "no weight"),
        (lambda: Goals(mobility=float("nan")), "no weight"),
        (lambda: Goals(strength=0, run_walk=0, loaded_walk=0, mobility=0), "nothing to plan"),
        (lambda: Pin(weekday=9, kind="rest"), "no weekday"),
        (lambda: Pin(weekday=2), "Wednesday.*pinned to nothing"),
    ],
)
def test_a_wish_out_of_range_is_refused(make: Callable[[], object], words: str) -> None:
    with pytest.raises(InputError, match=words):
        make()
