"""Which days lie less than 48 hours apart, so that one pattern is not trained hard on both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from core.house.wishes import DayWish

RECOVERY_H = 48
"""Between hard work for one pattern: common practice (ACSM 2009 asks for one to two days between)."""


def near_days(days: Sequence[DayWish]) -> Iterator[tuple[int, int]]:
    """Positions of every two days less than 48 hours apart, the next week's days included, each two once."""
    for first in range(len(days)):
        for second in range(first + 1, len(days)):
            if too_near(days[first], days[second]) or too_near(days[second], days[first]):
                yield first, second


def too_near(before: DayWish, after: DayWish) -> bool:
    """Whether the session `after` begins within 48 hours of `before`.

    Neighbouring days always do. Two days on it depends on the time of day; without both times they are far enough.
    """
    apart = (after.weekday - before.weekday) % 7
    if apart == 2 and before.start is not None and after.start is not None:
        return after.start < before.start
    return apart == 1
