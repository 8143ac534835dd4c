"""Bulk density from low, typical and high: the typical value, and a doubt that spans the range."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mass.density import bulk_density, density_in
from core.mass.model import LearnedDensity, Packing, Standing
from core.mass.weigh import water_density_kg_m3
from core.quantity import Measured
from tests.core.mass.examples import CARRIER, RICE, SAND, WATER


@given(low=st.floats(100, 3000), step=st.floats(0, 500), rest=st.floats(0, 500))
def test_the_doubt_is_the_root_mean_square_distance_of_a_triangle_from_its_peak(
    low: float, step: float, rest: float
) -> None:
    typical, high = low + step, low + step + rest
    sand = replace(SAND, low_kg_m3=low, typical_kg_m3=typical, high_kg_m3=high)
    found = bulk_density(sand, 15.0, Packing.LOOSE).loose_kg_l
    # Each side of the triangle, width w and weight w / (high - low), has its mean square distance w² / 6.
    expected = math.sqrt((step**3 + rest**3) / (6 * (step + rest))) if step + rest > 0 else 0.0
    assert found.value == pytest.approx(typical / 1000)
    assert found.u == pytest.approx(expected / 1000, rel=1e-6, abs=1e-6)


def test_the_triangle_agrees_with_draws_from_it() -> None:
    draws = np.random.default_rng(3).triangular(1440, 1600, 1680, size=200_000)
    found = bulk_density(SAND, 15.0, Packing.LOOSE).loose_kg_l
    assert found.u * 1000 == pytest.approx(float(np.sqrt(np.mean((draws - 1600) ** 2))), rel=0.01)


@pytest.mark.parametrize("standing", [Standing.MEMORY, Standing.WEAK])
def test_a_range_from_memory_claims_no_likelier_middle(standing: Standing) -> None:
    found = bulk_density(replace(SAND, standing=standing), 15.0, Packing.LOOSE).loose_kg_l
    assert found.u * 1000 == pytest.approx(160 / math.sqrt(3))


@pytest.mark.parametrize("temperature_c", [0.0, 4.0, 15.0, 38.0, 40.0])
def test_water_carries_the_doubt_of_its_temperature(temperature_c: float) -> None:
    found = bulk_density(WATER, temperature_c, Packing.LOOSE).loose_kg_l
    off = [min(max(temperature_c + step, 0.0), 40.0) for step in (-5.0, 5.0)]
    widest = max(abs(water_density_kg_m3(t) - water_density_kg_m3(temperature_c)) for t in off)
    assert found.value * 1000 == pytest.approx(water_density_kg_m3(temperature_c))
    assert widest / math.sqrt(3) <= found.u * 1000 <= widest + 0.5


def test_what_was_learned_in_this_container_goes_before_the_range() -> None:
    learned = LearnedDensity(material_id=SAND.id, packing=Packing.LOOSE, kg_l=Measured(1.52, 0.01))
    container = replace(CARRIER, learned=(learned,))
    assert density_in(container, SAND, 15.0, Packing.LOOSE).kg_l == 1.52
    assert density_in(container, SAND, 15.0, Packing.SETTLED).kg_l == pytest.approx(1.6 * 1.04)
    assert density_in(container, RICE, 15.0, Packing.LOOSE).kg_l == pytest.approx(0.785)
