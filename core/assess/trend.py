"""The course of results over time: a slope that single bad days can't bend, with an interval.

Theil (1950) and Sen (1968): the slope is the median of the slopes between all pairs of points; the interval comes from
Kendall's statistic by the normal approximation (Gilbert 1987, Statistical Methods for Environmental Pollution
Monitoring, section 16.5), with ties counted. With fewer points than `FEWEST` there is no interval.
"""

from __future__ import annotations

import datetime
import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist, median

from core.errors import InputError

FEWEST = 4
DAYS_A_WEEK = 7.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Trend:
    """Change a week: the slope, its interval at `level` (None with too few points), and how many points there were."""

    slope_per_week: float
    low_per_week: float | None
    high_per_week: float | None
    level: float
    points: int

    @property
    def is_clear(self) -> bool:
        """Whether the interval leaves zero out."""
        if self.low_per_week is None or self.high_per_week is None:
            return False
        return self.low_per_week > 0 or self.high_per_week < 0


def trend_of(points: Sequence[tuple[datetime.date, float]], *, level: float = 0.95) -> Trend | None:
    """The trend of dated values, in any order; None with fewer than two different days."""
    if not 0.5 <= level < 1:
        raise InputError(f"{level:g}", "is no level for an interval (0.5 to below 1)", "take 0.95")
    weeks = [(day.toordinal() / DAYS_A_WEEK, value) for day, value in points]
    slopes = sorted(
        (later[1] - first[1]) / (later[0] - first[0])
        for at, first in enumerate(weeks)
        for later in weeks[at + 1 :]
        if later[0] != first[0]
    )
    if not slopes:
        return None
    low, high = _interval(slopes, weeks, level) if len(weeks) >= FEWEST else (None, None)
    return Trend(slope_per_week=median(slopes), low_per_week=low, high_per_week=high, level=level, points=len(weeks))


def _interval(
    slopes: list[float], points: list[tuple[float, float]], level: float
) -> tuple[float | None, float | None]:
    """Ranked slopes at (N ± z √var) / 2; none where so few pairs can't give the level."""
    half = NormalDist().inv_cdf((1 + level) / 2) * math.sqrt(_variance(points))
    below = (len(slopes) - half) / 2
    above = (len(slopes) + half) / 2
    first, last = math.floor(below) - 1, math.ceil(above)
    if first < 0 or last >= len(slopes):
        return None, None
    return slopes[first], slopes[last]


def _variance(points: list[tuple[float, float]]) -> float:
    """Variance of Kendall's statistic, less for tied days and tied values."""
    count = len(points)
    total = _term(count)
    for place in (0, 1):
        total -= sum(_term(times) for times in Counter(point[place] for point in points).values())
    return max(total, 0.0) / 18


def _term(count: int) -> float:
    return count * (count - 1) * (2 * count + 5)
