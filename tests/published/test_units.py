"""Units against their exact definitions and pint's.

NIST Special Publication 811 appendix B.8 and NIST Handbook 44 appendix C: inch 25.4 mm, pound 0.45359237 kg, US gallon
231 in³, imperial gallon 4.54609 L, cubic foot 7.481 US gallons, cup 8 fluid ounces, international mile 1609.344 m.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pint
import pytest

from core.quantity.units import (
    parse_distance_m,
    parse_length_cm,
    parse_mass_kg,
    parse_temperature_c,
    parse_time_min,
    parse_volume_l,
)

REGISTRY: pint.UnitRegistry[Any] = pint.UnitRegistry()


@pytest.mark.parametrize(
    ("parse", "text", "exact"),
    [
        (parse_length_cm, "1 in", 2.54),
        (parse_length_cm, "1 ft", 30.48),
        (parse_length_cm, "1 yd", 91.44),
        (parse_distance_m, "1 mile", 1609.344),
        (parse_mass_kg, "1 lb", 0.45359237),
        (parse_mass_kg, "1 oz", 0.028349523125),
        (parse_mass_kg, "1 st", 6.35029318),
        (parse_volume_l, "1 gal", 3.785411784),
        (parse_volume_l, "1 qt", 0.946352946),
        (parse_volume_l, "1 pt", 0.473176473),
        (parse_volume_l, "1 cup", 0.2365882365),
        (parse_volume_l, "1 fl oz", 0.0295735295625),
        (parse_volume_l, "1 imp gal", 4.54609),
        (parse_volume_l, "1 cu ft", 28.316846592),
        (parse_time_min, "1 h", 60.0),
        (parse_temperature_c, "68 F", 20.0),
        (parse_temperature_c, "32 F", 0.0),
    ],
)
def test_units_have_their_exact_size(parse: Callable[[str], float], text: str, exact: float) -> None:
    assert parse(text) == pytest.approx(exact, rel=1e-14, abs=1e-12)


def test_a_gallon_is_231_cubic_inches_and_a_cubic_foot_7_481_gallons() -> None:
    assert parse_volume_l("1 gal") == pytest.approx(231 * parse_length_cm("1 in") ** 3 / 1000, rel=1e-14)
    assert parse_volume_l("1 cu ft") / parse_volume_l("1 gal") == pytest.approx(7.481, abs=5e-4)
    assert parse_volume_l("8 fl oz") == pytest.approx(parse_volume_l("1 cup"), rel=1e-14)


@pytest.mark.parametrize(
    ("parse", "number", "unit", "pint_unit", "into"),
    [
        (parse_mass_kg, 35, "lb", "pound", "kilogram"),
        (parse_mass_kg, 12.5, "oz", "ounce", "kilogram"),
        (parse_length_cm, 7.75, "in", "inch", "centimeter"),
        (parse_volume_l, 2.5, "gal", "gallon", "liter"),
        (parse_volume_l, 2.5, "imp gal", "imperial_gallon", "liter"),
        (parse_volume_l, 12, "fl oz", "fluid_ounce", "liter"),
        (parse_volume_l, 1.5, "cups", "cup", "liter"),
        (parse_distance_m, 3.1, "mi", "mile", "meter"),
        (parse_time_min, 1.25, "h", "hour", "minute"),
    ],
)
def test_pint_reads_the_same(
    parse: Callable[[str], float], number: float, unit: str, pint_unit: str, into: str
) -> None:
    other = REGISTRY.Quantity(number, pint_unit).to(into).magnitude
    assert parse(f"{number} {unit}") == pytest.approx(other, rel=1e-12)


@pytest.mark.parametrize("fahrenheit", [-40, 0, 54, 98.6])
def test_pint_reads_temperatures_the_same(fahrenheit: float) -> None:
    other = REGISTRY.Quantity(fahrenheit, "degF").to("degC").magnitude
    assert parse_temperature_c(f"{fahrenheit} F") == pytest.approx(other, abs=1e-9)
