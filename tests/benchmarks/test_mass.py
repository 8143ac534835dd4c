"""An estimate must be quick enough to follow a dragged fill line: 200 µs each, so 100 in 20 ms."""

from __future__ import annotations

from core.mass.model import HeightLevel
from core.mass.weigh import estimate, fill_for
from tests.benchmarks.conftest import Within
from tests.core.mass.examples import CARRIER, WATER

HEIGHTS_CM = [step * 0.4 for step in range(100)]


def test_a_hundred_estimates_take_20_ms(within: Within) -> None:
    within(lambda: [estimate(CARRIER, WATER, HeightLevel(height_cm=height)) for height in HEIGHTS_CM], bound_ms=20)


def test_a_hundred_fills_take_60_ms(within: Within) -> None:
    within(lambda: [fill_for(CARRIER, WATER, 1.0 + height / 2, cup_l=0.25) for height in HEIGHTS_CM], bound_ms=60)
