"""A weighed container must still follow a dragged fill line: 400 µs a level with six weighings, 8 ms a drawn frame."""

from __future__ import annotations

from dataclasses import replace

from core.loads.filling import filling_of
from core.mass.model import HeightLevel, ScaleKind
from core.mass.weigh import reading_on
from tests.benchmarks.conftest import Within
from tests.core.mass.examples import WATER
from tests.dipper import carrier

READINGS = tuple(
    reading_on(ScaleKind.LUGGAGE, 10.0 + step / 20, at_level=HeightLevel(height_cm=13.1 + step / 20))
    for step in range(6)
)


def test_a_hundred_levels_of_a_weighed_container_take_40_ms(within: Within) -> None:
    filling = filling_of(replace(carrier(), readings=READINGS), WATER)
    assert filling.teaching == READINGS
    within(lambda: [filling.at(HeightLevel(height_cm=step * 0.3)) for step in range(100)], bound_ms=40)
