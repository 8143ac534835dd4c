"""Which backups may go: all of two days stay, then one a day, one a week and one a month.

Days, weeks and months are counted where there are backups, not from today: a clock that is years wrong, or a year
without the program, thins nothing more than usual. Days are UTC days.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Sequence

ALL_FOR = datetime.timedelta(days=2)
DAILY, WEEKLY, MONTHLY = 12, 10, 9
NEWEST = 5
"""This many are never deleted, whatever the clock says."""


def surplus(made: Iterable[datetime.datetime], now: datetime.datetime) -> tuple[datetime.datetime, ...]:
    """The times of the backups that may be deleted, oldest first; all times are aware."""
    newest_first = sorted(set(made), reverse=True)
    kept = set(newest_first[:NEWEST])
    kept.update(time for time in newest_first if time > now - ALL_FOR)
    rest = [time for time in newest_first if time <= now - ALL_FOR]
    for bucket, most in ((_day, DAILY), (_week, WEEKLY), (_month, MONTHLY)):
        chosen, rest = _newest_of_each(rest, bucket, most)
        kept.update(chosen)
    return tuple(time for time in reversed(newest_first) if time not in kept)


def _newest_of_each(
    newest_first: Sequence[datetime.datetime], bucket: Callable[[datetime.datetime], object], most: int
) -> tuple[list[datetime.datetime], list[datetime.datetime]]:
    """The newest of each of the first `most` buckets, and what is older than those buckets."""
    chosen: dict[object, datetime.datetime] = {}
    for i, time in enumerate(newest_first):
        if len(chosen) == most and bucket(time) not in chosen:
            return list(chosen.values()), list(newest_first[i:])
        chosen.setdefault(bucket(time), time)
    return list(chosen.values()), []


def _day(time: datetime.datetime) -> object:
    return time.astimezone(datetime.UTC).date()


def _week(time: datetime.datetime) -> object:
    return time.astimezone(datetime.UTC).isocalendar()[:2]


def _month(time: datetime.datetime) -> object:
    utc = time.astimezone(datetime.UTC)
    return utc.year, utc.month
