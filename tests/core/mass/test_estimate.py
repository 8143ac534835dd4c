"""The estimate is tare + density × volume, its ± is the GUM's, and its budget adds up."""

from __future__ import annotations

import importlib
import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.mass.density import bulk_density
from core.mass.levels import level_volume
from core.mass.model import (
    EMPTY,
    BrimLevel,
    Container,
    CupsLevel,
    Estimate,
    FullLevel,
    HeightLevel,
    Level,
    Material,
    Packing,
    ShareLevel,
    VolumeLevel,
)
from core.mass.weigh import estimate, water_density_kg_m3
from core.quantity import Measured
from core.quantity.units import UnitSystem
from tests.core.mass.examples import CARRIER, LEAD, RICE, SACK, SAND, WATER

# The package carries no types.
uncertainties: Any = importlib.import_module("uncertainties")

LEVELS: list[Level] = [
    FullLevel(),
    BrimLevel(),
    ShareLevel(share=0.5),
    EMPTY,
    VolumeLevel(volume_l=14.0),
    CupsLevel(count=12, cup_l=0.25),
    HeightLevel(height_cm=18.4),
]


def _known(value: float, u: float) -> Any:
    return uncertainties.ufloat(value, u) if u > 0 else value


def _by_uncertainties(container: Container, material: Material, level: Level, packing: Packing) -> tuple[float, float]:
    """Mass and u by automatic differentiation, from the same inputs."""
    density = bulk_density(material, 15.0, packing)
    at = level_volume(container, level, heaped=material is not WATER)
    nominal = _known(container.nominal_l.value, container.nominal_l.u)
    brimful = _known(container.brimful_l.value, container.brimful_l.u)
    tare = _known(container.tare_kg.value, container.tare_kg.u)
    loose = _known(density.loose_kg_l.value, density.loose_kg_l.u)
    packed = _known(density.packed_by.value, density.packed_by.u)
    volumes: dict[type[Level], Any] = {
        FullLevel: nominal,
        BrimLevel: brimful,
        ShareLevel: nominal * getattr(level, "share", 0.0),
        VolumeLevel: at.volume_l,
        CupsLevel: at.volume_l,
        HeightLevel: brimful * (container.shape.volume_l(18.4) / container.shape.full_volume_l),
    }
    volume = volumes[type(level)] + _known(0, at.u_reading_l) + _known(0, at.u_cup_l) + _known(0, at.u_shape_l)
    mass = tare + loose * packed * volume
    return uncertainties.nominal_value(mass), uncertainties.std_dev(mass)


@pytest.mark.parametrize("level", LEVELS, ids=lambda level: type(level).__name__)
@pytest.mark.parametrize(
    ("material", "packing"), [(WATER, Packing.LOOSE), (SAND, Packing.SETTLED), (SAND, Packing.DAMP)]
)
def test_mass_and_uncertainty_agree_with_automatic_differentiation(
    material: Material, packing: Packing, level: Level
) -> None:
    mass, u = _by_uncertainties(CARRIER, material, level, packing)
    found = estimate(CARRIER, material, level, packing=packing).mass
    assert found.value == pytest.approx(mass, rel=1e-12)
    assert found.u == pytest.approx(u, rel=1e-9)


def _squares(result: Estimate) -> float:
    return math.fsum(line.u_kg**2 for line in result.budget)


@given(
    share=st.floats(0.01, 1),
    tare=st.floats(0, 3),
    doubt=st.floats(0, 0.3),
    material=st.sampled_from([WATER, SAND, RICE]),
    by_height=st.booleans(),
)
def test_the_budget_adds_up_and_is_sorted(
    share: float, tare: float, doubt: float, material: Material, by_height: bool
) -> None:
    container = replace(CARRIER, tare_kg=Measured(tare, doubt * tare))
    level = HeightLevel(height_cm=share * CARRIER.shape.full_height_cm) if by_height else ShareLevel(share=share)
    result = estimate(container, material, level)
    assert _squares(result) == pytest.approx(result.mass.u**2, rel=1e-9)
    sizes = [line.u_kg for line in result.budget]
    assert sizes == sorted(sizes, reverse=True)
    assert all(size > 0 for size in sizes)
    assert result.mass.value == pytest.approx(result.contents.value + result.tare.value)


def test_water_takes_its_density_from_its_temperature() -> None:
    cold = estimate(CARRIER, WATER, FullLevel(), temperature_c=4.0)
    warm = estimate(CARRIER, WATER, FullLevel(), temperature_c=35.0)
    assert cold.contents.value / 25.0 == pytest.approx(water_density_kg_m3(4.0) / 1000)
    assert warm.contents.value / 25.0 == pytest.approx(water_density_kg_m3(35.0) / 1000)


@pytest.mark.parametrize("temperature_c", [-0.1, 40.1, math.nan, math.inf])
def test_water_outside_0_to_40_degrees_is_refused(temperature_c: float) -> None:
    with pytest.raises(InputError, match="is outside 0 to 40 °C"):
        estimate(CARRIER, WATER, FullLevel(), temperature_c=temperature_c)


def test_an_empty_container_weighs_its_tare() -> None:
    result = estimate(CARRIER, WATER, EMPTY)
    assert result.mass == Measured(CARRIER.tare_kg.value, CARRIER.tare_kg.u)
    assert result.cautions == ()


def test_judging_by_eye_is_wider_than_pouring_and_pouring_wider_than_the_mark() -> None:
    by_eye = estimate(CARRIER, WATER, ShareLevel(share=0.5)).mass.u
    poured = estimate(CARRIER, WATER, VolumeLevel(volume_l=12.5)).mass.u
    by_cup = estimate(CARRIER, WATER, CupsLevel(count=50, cup_l=0.25)).mass.u
    assert by_eye > 2 * poured
    assert by_eye > 2 * by_cup


def test_cups_are_wrong_alike_but_poured_apart() -> None:
    one = level_volume(CARRIER, CupsLevel(count=1, cup_l=0.25), heaped=False)
    many = level_volume(CARRIER, CupsLevel(count=64, cup_l=0.25), heaped=False)
    assert many.u_cup_l == pytest.approx(64 * one.u_cup_l)
    assert many.u_reading_l == pytest.approx(8 * one.u_reading_l)


def test_the_same_line_is_read_half_as_well_in_grain() -> None:
    level = HeightLevel(height_cm=18.4)
    smooth, heaped = (level_volume(CARRIER, level, heaped=heaped).u_reading_l for heaped in (False, True))
    assert heaped == pytest.approx(2 * smooth)


def test_a_line_near_the_base_or_the_rim_keeps_the_whole_doubt_of_reading() -> None:
    middle = level_volume(CARRIER, HeightLevel(height_cm=10.0), heaped=False).u_reading_l
    base = level_volume(CARRIER, HeightLevel(height_cm=0.0), heaped=False).u_reading_l
    assert base == pytest.approx(middle)


def test_a_part_filled_liquid_warns_that_it_moves_and_a_brimful_one_does_not() -> None:
    assert any("moves" in note for note in estimate(CARRIER, WATER, ShareLevel(share=0.5)).cautions)
    assert not any("moves" in note for note in estimate(CARRIER, WATER, BrimLevel()).cautions)


def test_a_line_in_a_soft_bag_is_doubted_and_said_so() -> None:
    result = estimate(SACK, RICE, HeightLevel(height_cm=25.0))
    assert result.budget[0].source == "shape of the container"
    assert result.height_cm is None
    assert any("bag" in note for note in result.cautions)


def test_settled_fills_weigh_more_and_name_their_packing() -> None:
    loose = estimate(CARRIER, SAND, FullLevel())
    settled = estimate(CARRIER, SAND, FullLevel(), packing=Packing.SETTLED)
    assert settled.mass.value > loose.mass.value
    assert "how it is packed" in {line.source for line in settled.budget}


def test_advice_names_one_action_and_what_it_leaves() -> None:
    heavy = estimate(CARRIER, SAND, FullLevel())
    assert heavy.advice == "Weigh it once on a bathroom scale, you with it and without, and this drops to ± 0.3 kg."
    light = replace(CARRIER, nominal_l=Measured.rectangular(2.0, 0.02))
    assert estimate(light, WATER, FullLevel()).advice.startswith("Weigh it once on a kitchen scale")
    tare_only = replace(CARRIER, nominal_l=Measured(25.0), tare_kg=Measured(1.0, 0.5))
    exact = estimate(tare_only, WATER, FullLevel(half_width_share=0.0))
    assert exact.advice.startswith("Weigh it empty once")
    assert "lb" in estimate(CARRIER, SAND, FullLevel(), system=UnitSystem.US).advice


def test_advice_says_when_a_scale_would_not_help() -> None:
    known = replace(CARRIER, nominal_l=Measured(25.0), tare_kg=Measured(1.0, 0.001))
    result = estimate(known, WATER, FullLevel(half_width_share=0.001))
    assert result.advice == "A household scale would not make this much better."


@pytest.mark.parametrize(
    ("level", "rule"),
    [
        (HeightLevel(height_cm=90.0), "is not a height inside the container"),
        (HeightLevel(height_cm=-1.0), "is not a height inside the container"),
        (VolumeLevel(volume_l=26.5), "is not a volume this container can hold"),
        (VolumeLevel(volume_l=math.nan), "is not a volume this container can hold"),
        (CupsLevel(count=105, cup_l=0.25), "is not a volume this container can hold"),
        (CupsLevel(count=-1, cup_l=0.25), "is not a number of cups"),
        (CupsLevel(count=4, cup_l=0.0), "is not a number of cups"),
        (ShareLevel(share=1.2), "is not a share of the capacity"),
        (ShareLevel(share=-0.1), "is not a share of the capacity"),
    ],
)
def test_levels_that_cannot_be_are_refused(level: Level, rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        estimate(CARRIER, WATER, level)


@pytest.mark.parametrize(
    "ends", [(0.0, 1600.0, 1680.0), (0.0, 0.0, 0.0), (1700.0, 1600.0, 1680.0), (1440.0, 1600.0, math.inf)]
)
def test_densities_that_do_not_rise_from_above_zero_are_refused(ends: tuple[float, float, float]) -> None:
    low, typical, high = ends
    broken = replace(SAND, low_kg_m3=low, typical_kg_m3=typical, high_kg_m3=high)
    with pytest.raises(InputError, match="is not a density range"):
        estimate(CARRIER, broken, FullLevel())


def test_what_must_not_be_a_fill_is_refused_with_its_reason() -> None:
    with pytest.raises(InputError, match="lead is poisonous"):
        estimate(CARRIER, LEAD, FullLevel())


@pytest.mark.parametrize(("material", "packing"), [(WATER, Packing.SETTLED), (RICE, Packing.DAMP)])
def test_packing_that_is_not_known_is_refused(material: Material, packing: Packing) -> None:
    with pytest.raises(InputError, match="cannot be used for"):
        estimate(CARRIER, material, FullLevel(), packing=packing)


@pytest.mark.parametrize(
    ("nominal", "brimful", "tare"), [(27.0, 26.0, 1.0), (0.0, 26.0, 1.0), (25.0, math.inf, 1.0), (25.0, 26.0, -0.1)]
)
def test_containers_that_cannot_be_are_refused(nominal: float, brimful: float, tare: float) -> None:
    with pytest.raises((InputError, ValueError)):
        Container(shape=CARRIER.shape, nominal_l=Measured(nominal), brimful_l=Measured(brimful), tare_kg=Measured(tare))


@pytest.mark.parametrize("material", [WATER, SAND], ids=lambda material: material.id)
def test_linear_propagation_agrees_with_drawing_every_input(material: Material) -> None:
    """The product of density and volume bends the sum of squares by less than a fiftieth (JCGM 101:2008)."""
    random = np.random.default_rng(11)
    draws = 100_000
    density = bulk_density(material, 15.0, Packing.LOOSE).loose_kg_l
    tare = random.normal(CARRIER.tare_kg.value, CARRIER.tare_kg.u, draws)
    half = CARRIER.nominal_l.u * math.sqrt(3)
    nominal = random.uniform(CARRIER.nominal_l.value - half, CARRIER.nominal_l.value + half, draws)
    filled = random.uniform(-0.02 * 25.0, 0.02 * 25.0, draws)
    kg_l = random.normal(density.value, density.u, draws)
    masses = tare + kg_l * (nominal + filled)
    found = estimate(CARRIER, material, FullLevel()).mass
    assert found.value == pytest.approx(float(masses.mean()), rel=1e-3)
    assert found.u == pytest.approx(float(masses.std()), rel=0.02)
    inside = np.mean(np.abs(masses - found.value) <= found.u95)
    assert 0.93 <= inside <= 0.99
