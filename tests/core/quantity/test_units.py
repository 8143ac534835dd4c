"""What people type becomes kg, cm, L, min, °C and m, or one clear sentence."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.quantity.units import (
    parse_distance_m,
    parse_length_cm,
    parse_mass_kg,
    parse_temperature_c,
    parse_time_min,
    parse_volume_l,
)

PARSERS: tuple[Callable[[str], float], ...] = (
    parse_mass_kg,
    parse_length_cm,
    parse_volume_l,
    parse_time_min,
    parse_distance_m,
    parse_temperature_c,
)


@pytest.mark.parametrize(
    ("parse", "text", "expected"),
    [
        (parse_volume_l, "2.5 gal", 2.5 * 3.785411784),
        (parse_mass_kg, "35 lb", 35 * 0.45359237),
        (parse_mass_kg, "2 lbs.", 2 * 0.45359237),
        (parse_length_cm, "7 3/4 in", 7.75 * 2.54),
        (parse_length_cm, "7-3/4 inches", 7.75 * 2.54),
        (parse_length_cm, "7¾ in", 7.75 * 2.54),
        (parse_volume_l, "14 L", 14.0),
        (parse_mass_kg, "14,5 kg", 14.5),
        (parse_mass_kg, "0,125 kg", 0.125),
        (parse_mass_kg, ",5 kg", 0.5),
        (parse_volume_l, "1 1/2 cups", 1.5 * 0.2365882365),
        (parse_volume_l, "1½ cups", 1.5 * 0.2365882365),
        (parse_length_cm, "6 ft 2 in", 74 * 2.54),
        (parse_length_cm, "5'11\"", 71 * 2.54),
        (parse_length_cm, "5'11", 71 * 2.54),
        (parse_length_cm, "5 feet and 11 inches", 71 * 2.54),
        (parse_volume_l, "250 ml", 0.25),
        (parse_volume_l, "250 mL", 0.25),
        (parse_volume_l, "500 cm3", 0.5),
        (parse_volume_l, "2 m³", 2000.0),
        (parse_mass_kg, "10 st 9 lb", 149 * 0.45359237),
        (parse_time_min, "90 s", 1.5),
        (parse_time_min, "1 h 20 min", 80.0),
        (parse_time_min, "1h30", 90.0),
        (parse_distance_m, "1/4 mile", 402.336),
        (parse_distance_m, "5 km", 5000.0),
        (parse_temperature_c, "54 °F", 110 / 9),
        (parse_temperature_c, "-5 C", -5.0),
        (parse_temperature_c, "288.15 K", 15.0),
        (parse_temperature_c, "12 degrees", 12.0),
    ],
)
def test_usual_ways_of_writing_are_read(parse: Callable[[str], float], text: str, expected: float) -> None:
    assert parse(text) == pytest.approx(expected, rel=1e-12)


def test_a_bare_number_takes_the_default_unit() -> None:
    assert parse_mass_kg("12") == 12.0
    assert parse_mass_kg("12", "lb") == pytest.approx(12 * 0.45359237)
    assert parse_temperature_c("50", "F") == pytest.approx(10.0)


@pytest.mark.parametrize(
    ("parse", "text", "part"),
    [
        (parse_mass_kg, "", "is empty"),
        (parse_mass_kg, "   ", "is empty"),
        (parse_mass_kg, "lbs", "is not a mass"),
        (parse_mass_kg, "nan", "is not a mass"),
        (parse_mass_kg, "inf kg", "is not a mass"),
        (parse_mass_kg, "1e400 kg", "is more than 10,000 kg"),
        (parse_mass_kg, "-3 kg", "is a negative mass"),
        (parse_mass_kg, "−3 kg", "is a negative mass"),
        (parse_mass_kg, "1e9 kg", "is more than 10,000 kg"),
        (parse_mass_kg, "1,250 kg", "could mean a thousand or a decimal comma"),
        (parse_mass_kg, "5 m", "is a length, not a mass"),
        (parse_volume_l, "5 kg", "is a mass, not a volume"),
        (parse_volume_l, "8 oz", "could be a mass or a volume"),
        (parse_volume_l, "3 bananas", "has no unit of volume that is known here"),
        (parse_volume_l, "3 hectares", "has no unit of volume that is known here"),
        (parse_mass_kg, "3 kg*kg", "has no unit of mass that is known here"),
        (parse_mass_kg, "5 kg 3", "has no unit of mass that is known here"),
        (parse_mass_kg, "1/0 kg", "divides by zero"),
        (parse_length_cm, "2 in 6 ft", "has its units out of order"),
        (parse_temperature_c, "hot", "is not a temperature"),
        (parse_temperature_c, "-", "is not a temperature"),
        (parse_temperature_c, "12 kg", "is not a temperature in °C or °F"),
        (parse_temperature_c, "900 C", "is outside -60 to 100 °C"),
        (parse_mass_kg, "9" * 10_000, "is longer than 60 characters"),
        (parse_mass_kg, "²", "is not a mass"),
    ],
)
def test_what_cannot_be_used_is_refused_with_value_rule_and_way_out(
    parse: Callable[[str], float], text: str, part: str
) -> None:
    with pytest.raises(InputError) as caught:
        parse(text)
    assert part in str(caught.value)
    assert caught.value.way_out
    assert len(str(caught.value)) < 250


@given(text=st.text(max_size=40))
def test_any_text_gives_a_finite_number_or_one_clear_error(text: str) -> None:
    for parse in PARSERS:
        try:
            value = parse(text)
        except InputError:
            continue
        assert math.isfinite(value)


@given(value=st.floats(0.001, 900), unit=st.sampled_from(["kg", "g", "lb", "oz", "st"]))
def test_a_number_is_scaled_by_its_unit_alone(value: float, unit: str) -> None:
    assert parse_mass_kg(f"{value!r} {unit}") == pytest.approx(value * parse_mass_kg(f"1 {unit}"), rel=1e-12)
