"""A vessel described by pouring: after so many litres the surface stood so high.

Between the points runs the monotone cubic of Fritsch & Carlson (SIAM J. Numer. Anal. 17:238-246, 1980) with the
harmonic-mean slopes of Fritsch & Butland (SIAM J. Sci. Stat. Comput. 5:300-304, 1984): it never overshoots.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise


def monotone_slopes(heights: Sequence[float], volumes: Sequence[float]) -> tuple[float, ...]:
    """dV/dh at each point such that the cubic between neighbours is monotone; needs two or more points."""
    steps = [b - a for a, b in pairwise(heights)]
    rates = [(b - a) / step for (a, b), step in zip(pairwise(volumes), steps, strict=True)]
    if len(rates) == 1:
        return (rates[0], rates[0])
    inner = [_harmonic(steps[i], steps[i + 1], rates[i], rates[i + 1]) for i in range(len(rates) - 1)]
    first = _end_slope(steps[0], steps[1], rates[0], rates[1])
    last = _end_slope(steps[-1], steps[-2], rates[-1], rates[-2])
    return (first, *inner, last)


def _harmonic(step: float, next_step: float, rate: float, next_rate: float) -> float:
    before, after = 2 * next_step + step, next_step + 2 * step
    return (before + after) / (before / rate + after / next_rate)


def _end_slope(step: float, next_step: float, rate: float, next_rate: float) -> float:
    """Three-point slope at an end, held between zero and three times the end's own rate (all rates are positive)."""
    slope = ((2 * step + next_step) * rate - step * next_rate) / (step + next_step)
    return min(max(slope, 0.0), 3 * rate)


def cubic_volume(heights: Sequence[float], volumes: Sequence[float], slopes: Sequence[float], height: float) -> float:
    """Volume at `height`, which lies within the table."""
    i = min(max(bisect_right(heights, height) - 1, 0), len(heights) - 2)
    return _within(heights, volumes, slopes, i, height - heights[i])[0]


def cubic_height(heights: Sequence[float], volumes: Sequence[float], slopes: Sequence[float], volume: float) -> float:
    """Height at `volume`, which lies within the table: Newton's rule kept inside the interval's bracket."""
    i = min(max(bisect_right(volumes, volume) - 1, 0), len(volumes) - 2)
    if volume == volumes[i]:
        return heights[i]
    low, high = 0.0, heights[i + 1] - heights[i]
    depth = high * (volume - volumes[i]) / (volumes[i + 1] - volumes[i])
    for _ in range(200):
        reached, slope = _within(heights, volumes, slopes, i, depth)
        if reached == volume:
            return heights[i] + depth
        low, high = (low, depth) if reached > volume else (depth, high)
        step = depth - (reached - volume) / slope if slope > 0 else low
        following = step if low < step < high else (low + high) / 2
        if abs(following - depth) <= 1e-15 * (heights[i] + depth):
            return heights[i] + following
        depth = following
    return heights[i] + depth


def _within(
    heights: Sequence[float], volumes: Sequence[float], slopes: Sequence[float], i: int, depth: float
) -> tuple[float, float]:
    """Volume and dV/dh at `depth` above point `i`."""
    step = heights[i + 1] - heights[i]
    rate = (volumes[i + 1] - volumes[i]) / step
    bend = (3 * rate - 2 * slopes[i] - slopes[i + 1]) / step
    twist = (slopes[i] + slopes[i + 1] - 2 * rate) / step**2
    volume = volumes[i] + depth * (slopes[i] + depth * (bend + depth * twist))
    return volume, slopes[i] + depth * (2 * bend + 3 * depth * twist)
