"""Quantities of own entries: typed in any usual way, kept in kg, cm, L, and written back as they were."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.quantity.display import UnitSystem
from gui.own.field import percent, percent_words
from gui.own.quantities import LENGTH, MASS, Quantity, parse_dose_range, percent_range, write_dose

CM, KG = Quantity(LENGTH, UnitSystem.METRIC), Quantity(MASS, UnitSystem.METRIC)
INCHES = Quantity(LENGTH, UnitSystem.US)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [("20 to 45 cm", 20, 45), ("20-45", 20, 45), ("20 – 45 cm", 20, 45), ("8 in to 16 in", 20.32, 40.64)],
)
def test_a_range_is_read(text: str, low: float, high: float) -> None:
    assert CM.parse_range(text) == [low, high]


def test_a_range_takes_the_unit_of_its_second_number() -> None:
    assert INCHES.parse_range("8 to 16 in") == [20.32, 40.64]
    assert CM.parse_range("0.2 to 0.4 m") == [20.0, 40.0]


@pytest.mark.parametrize("text", ["20", "20 to", "to 45", "low to high"])
def test_what_is_no_range_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        CM.parse_range(text)


@given(st.integers(1, 4000), st.integers(0, 100))
def test_a_value_with_its_doubt_comes_back(value: int, half: int) -> None:
    pair = [value / 10, half / 100]
    assert KG.parse_doubt(KG.write_doubt(pair)) == pytest.approx(pair)


def test_without_a_doubt_a_hundredth_is_taken() -> None:
    assert KG.parse_doubt("12 kg") == [12.0, 0.12]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("8 to 15", [8, 15]),
        ("12", [12, 12]),
        ("20 to 60 s", [20, 60]),
        ("20-40 min", [1200, 2400]),
        ("1 km", [1000] * 2),
    ],
)
def test_a_usual_dose_is_read(text: str, found: list[float]) -> None:
    assert parse_dose_range(text) == found


def test_a_usual_dose_is_written() -> None:
    assert write_dose([8.0, 15.0]) == "8 to 15"
    assert write_dose([12.0, 12.0]) == "12"


@given(st.integers(0, 1000))
def test_a_share_comes_back(tenths: int) -> None:
    assert percent(percent_words(tenths / 1000)) == pytest.approx(tenths / 1000)


def test_two_shares_are_read_with_the_words_around_them_left_out() -> None:
    assert percent_range("5 to 30 %") == [0.05, 0.3]
