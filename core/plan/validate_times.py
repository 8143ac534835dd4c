"""The checker's own reckoning of times: sessions within 48 hours, sessions in quiet hours. Minutes of the week."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence

from core.house.model import Place
from core.house.wishes import DayWish

DAY_MIN = 24 * 60
WEEK_MIN = 7 * DAY_MIN
RECOVERY_MIN = 48 * 60


def near_sessions(days: Sequence[DayWish]) -> Iterator[tuple[int, int]]:
    """Weekdays of every two sessions that begin less than 48 hours apart, the earlier first, over the week's turn too.

    A session without a time may begin at any; two such on days with one between count as far enough apart.
    """
    for one in days:
        for other in days:
            if one.weekday == other.weekday:
                continue
            gap_min = (other.weekday - one.weekday) % 7 * DAY_MIN
            if one.start is not None and other.start is not None:
                gap_min += _minute(other.start) - _minute(one.start)
            next_day = (other.weekday - one.weekday) % 7 == 1
            if next_day or gap_min < RECOVERY_MIN:
                yield one.weekday, other.weekday


def is_in_quiet_hours(wish: DayWish, place: Place) -> bool:
    """Whether any minute of the session is in the place's quiet hours; without a start nobody can say."""
    if place.quiet is None or wish.start is None:
        return False
    start, low, high = _minute(wish.start), _minute(place.quiet.start), _minute(place.quiet.end)
    length = (high - low) % DAY_MIN or DAY_MIN
    return (start - low) % DAY_MIN < length or (start - low) % DAY_MIN + wish.minutes > DAY_MIN


def _minute(time: datetime.time) -> int:
    return time.hour * 60 + time.minute
