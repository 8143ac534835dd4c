"""The owner's own pours: read as typed, checked to rise and to fill it, as true as the shape they went into."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.mass.model import HeightLevel, PourTable, StraightBox
from core.mass.own_pours import poured_container, read_pours
from core.mass.weigh import estimate
from tests.core.mass.examples import CARRIER, WATER


@pytest.mark.parametrize(
    ("typed", "pours"),
    [
        ("4 cups 5.2 cm; 8 cups 9.8 cm", ((1.0, 5.2), (2.0, 9.8))),
        ("2 L at 9 cm; 25 L = 36 cm", ((2.0, 9.0), (25.0, 36.0))),
        ("12 x 250 mL -> 16.2 cm", ((3.0, 16.2),)),
        ("1 L 50 mm\n2 L 4 in", ((1.0, 5.0), (2.0, 10.16))),
        ("1 L: 5 cm;", ((1.0, 5.0),)),
    ],
)
def test_pours_are_read_as_typed(typed: str, pours: tuple[tuple[float, float], ...]) -> None:
    assert read_pours(typed, 0.25) == tuple(pytest.approx(pour) for pour in pours)


@pytest.mark.parametrize(
    ("typed", "rule"),
    [
        ("", "tells nothing"),
        ("5 cm", "is no pour"),
        ("4 cups", "is no pour"),
        ("80% 5 cm", "is no volume"),
        ("4 cups 5 L", "is no pour"),
        ("x" * 700, "is too long"),
    ],
)
def test_what_is_no_pour_is_refused(typed: str, rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        read_pours(typed, 0.25)


def test_pours_must_rise_and_fill_the_container() -> None:
    with pytest.raises(InputError, match="does not rise above"):
        poured_container(CARRIER, ((10.0, 20.0), (8.0, 30.0), (25.0, 36.0)))
    with pytest.raises(InputError, match="is less than it holds when full"):
        poured_container(CARRIER, ((5.0, 8.0), (12.0, 18.0)))


@given(height=st.floats(1, 36))
def test_pours_into_a_straight_box_weigh_what_the_box_does(height: float) -> None:
    box = StraightBox(length_cm=29, width_cm=24, full_height_cm=37)
    steps = tuple((box.volume_l(step), step) for step in (6.0, 15.0, 24.0, 37.0))
    taught = poured_container(CARRIER, steps)
    assert isinstance(taught.shape, PourTable)
    found = estimate(taught, WATER, HeightLevel(height_cm=height))
    assert found.volume_l.value == pytest.approx(box.volume_l(height), rel=1e-6)
    assert found.mass.u95 < 0.06 * 26
