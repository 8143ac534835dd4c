"""Sand topped up with water: the pores fill, the estimate says that it is one."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from core.errors import InputError
from core.mass.fill import fill_for
from core.mass.mixture import SAID_SO
from core.mass.model import Container, Estimate, FullLevel, Level, Material, Packing, ShareLevel
from core.mass.weigh import estimate
from core.quantity import Measured
from tests.core.mass.examples import CARRIER, RICE, SAND

# A full litre of this sand: 1.6 kg of grains, 0.396 L of pores.
PORES = 1 - 1600 / 2650


def estimate_topped_up(container: Container, material: Material, level: Level) -> Estimate:
    return estimate(container, material, level, packing=Packing.TOPPED_UP)


def test_water_fills_most_of_the_pores() -> None:
    dry, wet = estimate(CARRIER, SAND, FullLevel()), estimate_topped_up(CARRIER, SAND, FullLevel())
    added = wet.mass.value - dry.mass.value
    assert added == pytest.approx(25.0 * PORES * 0.92 * 0.9991, rel=1e-3)
    assert SAND.porosity == pytest.approx(PORES)


def test_a_denser_fill_gains_less_than_its_own_weight() -> None:
    step = 25.0
    denser = replace(SAND, typical_kg_m3=1600 + step)
    gained = (
        estimate_topped_up(CARRIER, denser, FullLevel()).mass.value
        - estimate_topped_up(CARRIER, SAND, FullLevel()).mass.value
    )
    assert gained == pytest.approx(25.0 * step / 1000 * (1 - 0.92 * 0.9991 / 2.65), rel=1e-3)


def test_density_weighs_less_in_the_budget_than_when_dry() -> None:
    dry, wet = estimate(CARRIER, SAND, FullLevel()), estimate_topped_up(CARRIER, SAND, FullLevel())
    of_density = [next(line.u_kg for line in one.budget if "density" in line.source) for one in (dry, wet)]
    assert of_density[1] < of_density[0]
    assert math.fsum(line.u_kg**2 for line in wet.budget) == pytest.approx(wet.mass.u**2)
    assert "air left between the grains" in {line.source for line in wet.budget}


def test_it_says_that_it_is_an_estimate() -> None:
    assert estimate_topped_up(CARRIER, SAND, ShareLevel(share=0.5)).cautions[0] == SAID_SO


def test_only_the_doubt_of_the_volume_is_shared_with_the_dry_fill() -> None:
    exact = replace(CARRIER, nominal_l=Measured(25.0), tare_kg=Measured(0.68))
    wet = estimate_topped_up(exact, SAND, FullLevel(half_width_share=0.0))
    assert {line.source for line in wet.budget} == {"density of dry sand", "air left between the grains"}


def test_a_fill_whose_grains_are_unknown_is_refused() -> None:
    with pytest.raises(InputError, match="cannot be topped up with water"):
        estimate_topped_up(CARRIER, RICE, FullLevel())


def test_a_wanted_mass_is_reached_with_less_of_it() -> None:
    fill = fill_for(CARRIER, SAND, 30.0, packing=Packing.TOPPED_UP)
    assert estimate_topped_up(CARRIER, SAND, ShareLevel(share=fill.share_of_nominal)).mass.value == pytest.approx(30.0)
    assert fill.volume_l < fill_for(CARRIER, SAND, 30.0).volume_l
