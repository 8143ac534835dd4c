"""Quantities are written in the person's units, with digits that the uncertainty supports."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from core.quantity import Measured
from core.quantity.display import format_doubts, format_measured_density, format_measured_volume
from core.quantity.units import (
    UnitSystem,
    format_distance,
    format_length,
    format_mass,
    format_measured_mass,
    format_temperature,
    format_volume,
    parse_mass_kg,
)

METRIC, US = UnitSystem.METRIC, UnitSystem.US


@pytest.mark.parametrize(
    ("kg", "u", "metric", "us"),
    [
        (14.7, 0.15, "14.7 kg ± 0.3", "32.4 lb ± 0.7"),
        (14.7, 0.08, "14.70 kg ± 0.16", "32.4 lb ± 0.4"),
        (14.7, 0.049, "14.70 kg ± 0.10", "32.4 lb ± 0.2"),
        (31.0, 6.0, "31 kg ± 12", "68 lb ± 26"),
        (0.062, 0.0045, "62 g ± 9", "2.2 oz ± 0.3"),
        (0.48, 0.0001, "0.4800 kg ± 0.0002", "1.0582 lb ± 0.0004"),
        (3.0, 0.0, "3.00 kg", "6.61 lb"),
        (3.0, 1e-9, "3.00 kg", "6.61 lb"),
    ],
)
def test_the_uncertainty_chooses_the_digits(kg: float, u: float, metric: str, us: str) -> None:
    assert format_measured_mass(Measured(kg, u), METRIC) == metric
    assert format_measured_mass(Measured(kg, u), US) == us


@given(kg=st.floats(0.1, 500), u=st.floats(1e-5, 20), system=st.sampled_from(UnitSystem))
def test_the_shown_uncertainty_is_never_zero_and_within_a_tenth_or_half_a_digit(
    kg: float, u: float, system: UnitSystem
) -> None:
    number, _, wide = format_measured_mass(Measured(kg, u), system).partition(" ± ")
    unit = number.partition(" ")[2]
    factor = {"kg": 1.0, "g": 1000.0, "lb": 1 / 0.45359237, "oz": 16 / 0.45359237}[unit]
    assert float(wide) > 0
    assert float(wide) == pytest.approx(2 * u * factor, rel=0.26)
    assert len(number.partition(" ")[0].partition(".")[2]) == len(wide.partition(".")[2])


@given(kg=st.floats(0.001, 900), system=st.sampled_from(UnitSystem))
@example(kg=0.0999, system=METRIC)
@example(kg=0.1015625, system=US)
@example(kg=0.25 * 0.45359237, system=US)
def test_a_shown_mass_reads_back_as_itself(kg: float, system: UnitSystem) -> None:
    shown = format_mass(kg, system)
    assert parse_mass_kg(shown) == pytest.approx(kg, rel=0.01, abs=0.051)
    assert format_mass(parse_mass_kg(shown), system) == shown


@pytest.mark.parametrize(
    ("shown", "expected"),
    [
        (format_mass(14.7, METRIC), "14.7 kg"),
        (format_mass(14.7, US), "32.4 lb"),
        (format_mass(0.0, METRIC), "0 g"),
        (format_mass(0.062, METRIC), "62 g"),
        (format_volume(14.0, METRIC), "14.0 L"),
        (format_volume(0.25, METRIC), "250 mL"),
        (format_volume(14.0, US), "3.70 gal"),
        (format_volume(0.25, US), "8.5 fl oz"),
        (format_length(18.4, METRIC), "18.4 cm"),
        (format_length(171.0, METRIC), "171 cm"),
        (format_length(18.4, US), "7.2 in"),
        (format_length(182.8, US), "6 ft 0 in"),
        (format_distance(400.0, METRIC), "400 m"),
        (format_distance(1609.344, METRIC), "1.6 km"),
        (format_distance(400.0, US), "437 yd"),
        (format_distance(1609.344, US), "1.0 mi"),
        (format_temperature(12.0, METRIC), "12 °C"),
        (format_temperature(12.0, US), "54 °F"),
        (format_temperature(-0.3, METRIC), "0 °C"),
    ],
)
def test_each_quantity_has_its_usual_form(shown: str, expected: str) -> None:
    assert shown == expected


def test_contributions_are_shown_one_digit_finer_than_the_whole() -> None:
    mass = Measured(14.7, 0.14)
    assert format_doubts((0.12, 0.08, 0.005), mass, UnitSystem.METRIC) == ("0.24 kg", "0.16 kg", "0.01 kg")
    assert format_doubts((0.001,), mass, UnitSystem.METRIC) == ("< 0.01 kg",)
    assert format_doubts((0.12,), mass, UnitSystem.US) == ("0.53 lb",)
    assert format_doubts((0.002,), Measured(0.05, 0.002), UnitSystem.METRIC) == ("4.0 g",)


@pytest.mark.parametrize(
    ("volume_l", "system", "text"),
    [
        (Measured(24.81, 0.1), UnitSystem.METRIC, "24.8 L ± 0.2"),
        (Measured(25.0), UnitSystem.METRIC, "25.0 L"),
        (Measured(24.81, 0.1), UnitSystem.US, "6.55 gal ± 0.05"),
    ],
)
def test_a_measured_volume_shows_its_doubt(volume_l: Measured, system: UnitSystem, text: str) -> None:
    assert format_measured_volume(volume_l, system) == text


def test_a_density_is_shown_per_litre_or_gallon() -> None:
    assert format_measured_density(Measured(1.58, 0.03), UnitSystem.METRIC) == "1.58 kg/L ± 0.06"
    assert format_measured_density(Measured(1.58, 0.03), UnitSystem.US) == "13.2 lb/gal ± 0.5"
