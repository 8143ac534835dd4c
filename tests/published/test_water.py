"""Density of water against other formulations and published figures.

Tanaka et al. 2001, Metrologia 38:301-309. IAPWS-95 as the `iapws` package computes it. Kell 1975, J. Chem. Eng. Data
20:97-105. CoolProp 8.0.0 (Bell et al. 2014, Ind. Eng. Chem. Res. 53:2498-2508), whose figures were computed with
`PropsSI("D", "T", t + 273.15, "P", 101325, "Water")` and are kept here, since the package is not needed otherwise. One
reprint of Kell (Jones and Harris 1992, J. Res. NIST 97) swaps digits in the denominator, 16.897850e-3 for
16.879850e-3, which would be 0.27 kg/m³ low at 20 °C. Gallon weights: worked unit conversions at 15 °C and 30 °C, and
Babcock & Wilcox, Steam, table 10 (62 °F).
"""

from __future__ import annotations

import importlib
from typing import Any

import pytest

from core.mass.weigh import water_density_kg_m3

# The package carries no types.
iapws: Any = importlib.import_module("iapws")

GALLON_L, POUND_KG, CUBIC_FOOT_L = 3.785411784, 0.45359237, 28.316846592


def _kell_kg_m3(t: float, denominator: float = 16.879850e-3) -> float:
    powers = (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
    return sum(factor * t**n for n, factor in enumerate(powers)) / (1 + denominator * t)


@pytest.mark.parametrize(
    ("temperature_c", "kg_m3"), [(0, 999.8428), (10, 999.7027), (15, 999.1026), (20, 998.2067), (30, 995.6488)]
)
def test_the_published_figures_of_tanaka_are_met(temperature_c: float, kg_m3: float) -> None:
    assert water_density_kg_m3(temperature_c) == pytest.approx(kg_m3, abs=6e-5)


@pytest.mark.parametrize("temperature_c", [0.1, 4, 10, 15, 20, 30, 40])
def test_iapws_95_agrees_to_ten_parts_in_a_million(temperature_c: float) -> None:
    other = iapws.IAPWS95(T=273.15 + temperature_c, P=0.101325).rho
    assert water_density_kg_m3(temperature_c) == pytest.approx(other, rel=1e-5)


@pytest.mark.parametrize(
    ("temperature_c", "kg_m3"),
    [
        (0.1, 999.8498),
        (4, 999.9749),
        (10, 999.7025),
        (15, 999.1026),
        (20, 998.2072),
        (30, 995.6495),
        (40, 992.2164),
    ],
)
def test_coolprop_agrees_to_two_parts_in_a_million(temperature_c: float, kg_m3: float) -> None:
    assert water_density_kg_m3(temperature_c) == pytest.approx(kg_m3, rel=2e-6)


@pytest.mark.parametrize("temperature_c", [0, 10, 20, 30, 40])
def test_kell_agrees_to_ten_parts_in_a_million(temperature_c: float) -> None:
    assert water_density_kg_m3(temperature_c) == pytest.approx(_kell_kg_m3(temperature_c), rel=1e-5)


def test_the_misprinted_denominator_would_be_noticed() -> None:
    assert water_density_kg_m3(20) - _kell_kg_m3(20, denominator=16.897850e-3) == pytest.approx(0.27, abs=0.01)


def test_water_is_densest_near_four_degrees() -> None:
    assert water_density_kg_m3(3.983) == pytest.approx(999.975, abs=1e-3)
    assert water_density_kg_m3(3.983) > max(water_density_kg_m3(3.0), water_density_kg_m3(5.0))


@pytest.mark.parametrize(
    ("temperature_c", "pounds", "within"),
    [
        (15.0, 8.337915, 2e-5),  # worked conversion
        (30.0, 8.309104, 2e-5),  # worked conversion
        (50 / 3, 8.333, 4e-3),  # 62 °F, Babcock & Wilcox: 8 1/3 lb
        (4.0, 8.34, 6e-3),  # the household figure, true near freezing
    ],
)
def test_a_us_gallon_of_water_weighs_what_is_published(temperature_c: float, pounds: float, within: float) -> None:
    assert GALLON_L * water_density_kg_m3(temperature_c) / 1000 / POUND_KG == pytest.approx(pounds, abs=within)


def test_a_cubic_foot_of_water_at_62_f_weighs_62_355_lb() -> None:
    """Babcock & Wilcox, Steam, table 10."""
    assert CUBIC_FOOT_L * water_density_kg_m3(50 / 3) / 1000 / POUND_KG == pytest.approx(62.355, abs=0.01)
