"""Propagation of uncertainty against published worked examples.

EURACHEM/CITAC Guide (QUAM), example A1: cadmium standard, c = 1000 m P / V = 1002.7 ± 0.9 mg/L. NIST Technical Note
1297 section 4.6 and QUAM appendix E.1: a rectangular half-width of 1.5 is u = 0.87; of a triangular one, a / √6. JCGM
100:2008 (GUM) H.1, end gauge: components of 25, 9.7, 2.9 and 16.6 nm combine to 32 nm (figures from memory). Graybill
and Deal 1959, Biometrics 15:543-550: weights by inverse variance. The three cases at the end are our own, computed once
by another route and kept as regression values.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from core.mass.model import (
    Container,
    FullLevel,
    MaterialKind,
    Packing,
    ScaleKind,
    ScaleReading,
    Standing,
    StraightRound,
)
from core.mass.weigh import combine, estimate
from core.quantity import Measured, combined
from tests.core.mass.examples import SAND, WATER

TIN = StraightRound(diameter_cm=10, full_height_cm=20)
EXACTLY_FULL = FullLevel(half_width_share=0.0)


def _direct(kg: float, u: float) -> ScaleReading:
    return ScaleReading(
        kind=ScaleKind.DIRECT, reading_kg=kg, resolution_kg=0.0, repeatability_kg=u, offset_doubt_kg=0.0
    )


def test_the_cadmium_standard_of_the_eurachem_guide() -> None:
    """Mass 100.28 (0.05), purity 0.9999 (0.000058), volume 100.0 (0.07): the same product, in our engine's inputs."""
    half_width = 0.05 * math.sqrt(6) * 1000  # a symmetric triangle of standard uncertainty 0.05 per litre
    metal = replace(
        SAND,
        kind=MaterialKind.POWDER,
        low_kg_m3=100_280 - half_width,
        typical_kg_m3=100_280,
        high_kg_m3=100_280 + half_width,
        settled=Measured(0.9999, 0.000058),
    )
    per_volume = Measured(1 / 100.0, 0.07 / 100.0**2)
    flask = Container(shape=TIN, nominal_l=per_volume, brimful_l=per_volume, tare_kg=Measured(0.0))
    found = estimate(flask, metal, EXACTLY_FULL, packing=Packing.SETTLED).mass
    assert found.value * 1000 == pytest.approx(1002.7, abs=0.05)
    assert found.u * 1000 == pytest.approx(0.9, abs=0.05)
    assert found.u * 1000 == pytest.approx(0.8637, abs=1e-3)


def test_the_relative_contributions_of_the_cadmium_standard_add_in_quadrature() -> None:
    parts = [Measured(0.0, u) for u in (0.000058, 0.0005, 0.0007)]
    assert combined(parts).u == pytest.approx(0.0009, abs=5e-5)


def test_rectangular_and_triangular_half_widths() -> None:
    assert Measured.rectangular(0.0, 1.5).u == pytest.approx(0.87, abs=0.005)
    assert Measured.triangular(0.0, 0.1).u == pytest.approx(0.041, abs=0.0005)


def test_the_flask_volume_of_the_eurachem_guide() -> None:
    """QUAM A1: calibration 0.1 (triangular), repeatability 0.02, temperature 4 × 2.1e-4 (rectangular) give 0.07 mL."""
    parts = (Measured.triangular(100, 0.1), Measured(0, 0.02), Measured.rectangular(0, 100 * 4 * 2.1e-4))
    assert combined(parts).u == pytest.approx(0.07, abs=0.004)


def test_the_end_gauge_of_the_gum() -> None:
    parts = [Measured(0.0, u) for u in (25.0, 9.7, 2.9, 16.6)]
    assert combined(parts).u == pytest.approx(31.7, abs=0.05)


def test_the_weighted_mean_of_three() -> None:
    """18.9(5), 19.6(8), 20.4(12): 19.241 ± 0.400 with χ² = 1.60 on two degrees of freedom (our own case)."""
    found = combine(Measured(18.9, 0.5), [_direct(19.6, 0.8), _direct(20.4, 1.2)])
    assert found.agrees
    assert found.mass.value == pytest.approx(19.241, abs=5e-4)
    assert found.mass.u == pytest.approx(0.400, abs=5e-4)
    values = ((18.9, 0.5), (19.6, 0.8), (20.4, 1.2))
    assert math.fsum(((x - found.mass.value) / u) ** 2 for x, u in values) == pytest.approx(1.60, abs=0.005)


def test_a_gallon_jug_of_water() -> None:
    """V 3.785411784 L ± 1 % rectangular, tare 61 ± 9 g triangular: 3840 ± 22 g (our own case)."""
    gallon = Measured.rectangular(3.785411784, 0.03785411784)
    jug = Container(shape=TIN, nominal_l=gallon, brimful_l=gallon, tare_kg=Measured.triangular(0.061, 0.009))
    found = estimate(jug, WATER, EXACTLY_FULL, temperature_c=20.0).mass
    assert found.value == pytest.approx(3.840, abs=0.001)
    assert found.u == pytest.approx(0.022, abs=0.001)


def test_a_bucket_of_dry_sand_is_ruled_by_the_density() -> None:
    """18.0 ± 0.5 L, 1550 ± 150 kg/m³ and 1.0 ± 0.2 kg, all rectangular: 28.9 ± 1.6 kg (our own case)."""
    sand = replace(SAND, low_kg_m3=1400, typical_kg_m3=1550, high_kg_m3=1700, standing=Standing.WEAK)
    volume = Measured.rectangular(18.0, 0.5)
    bucket = Container(shape=TIN, nominal_l=volume, brimful_l=volume, tare_kg=Measured.rectangular(1.0, 0.2))
    found = estimate(bucket, sand, EXACTLY_FULL)
    assert found.mass.value == pytest.approx(28.9, abs=0.05)
    expected = math.sqrt((18.0 * 0.15) ** 2 + (1.55 * 0.5) ** 2 + 0.2**2) / math.sqrt(3)
    assert found.mass.u == pytest.approx(expected, rel=1e-9)
    assert found.mass.u == pytest.approx(1.6, abs=0.05)
    assert found.budget[0].source == "density of dry sand"
