"""How much to pour for a wanted mass: the inverse of the estimate, or a sentence why it cannot be."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError, Unreachable
from core.mass.model import EMPTY, FullLevel, HeightLevel, Material, Packing, ScaleKind, VolumeLevel
from core.mass.weigh import estimate, fill_for, learn, reading_on
from core.quantity import Measured
from core.quantity.units import UnitSystem
from tests.core.mass.examples import CARRIER, LEAD, RICE, SACK, SAND, WATER


@given(share=st.floats(0, 1), material=st.sampled_from([WATER, SAND, RICE]), temperature_c=st.floats(0, 40))
def test_pouring_what_it_says_gives_the_wanted_mass(share: float, material: Material, temperature_c: float) -> None:
    full = estimate(CARRIER, material, FullLevel(), temperature_c=temperature_c)
    wanted = full.tare.value + share * full.contents.value
    fill = fill_for(CARRIER, material, wanted, cup_l=0.25, temperature_c=temperature_c)
    poured = estimate(CARRIER, material, VolumeLevel(volume_l=fill.volume_l), temperature_c=temperature_c)
    assert poured.mass.value == pytest.approx(wanted, rel=1e-9)
    assert fill.height_cm is not None
    to_line = estimate(CARRIER, material, HeightLevel(height_cm=fill.height_cm), temperature_c=temperature_c)
    assert to_line.mass.value == pytest.approx(wanted, rel=1e-9)
    assert fill.reaches == Measured(wanted, to_line.mass.u)
    assert fill.cups == pytest.approx(fill.volume_l / 0.25)
    assert fill.share_of_nominal == pytest.approx(fill.volume_l / 25.0)


def test_the_line_is_given_from_the_base_and_from_the_brim() -> None:
    fill = fill_for(CARRIER, WATER, 12.0, cup_l=0.25)
    assert fill.height_cm is not None
    assert fill.from_brim_cm is not None
    assert fill.height_cm + fill.from_brim_cm == pytest.approx(CARRIER.shape.full_height_cm)
    assert fill.whole_cups == 45
    assert fill.one_more_cup_kg == pytest.approx(0.25 * 0.9991, abs=1e-4)


def test_without_a_cup_nothing_is_counted() -> None:
    fill = fill_for(CARRIER, WATER, 12.0)
    assert (fill.cups, fill.whole_cups, fill.one_more_cup_kg) == (None, None, None)


def test_a_soft_bag_is_filled_by_volume() -> None:
    fill = fill_for(SACK, RICE, 8.0)
    assert (fill.height_cm, fill.from_brim_cm) == (None, None)
    assert fill.volume_l == pytest.approx((8.0 - 0.1) / 0.785)


def test_more_than_full_says_what_full_is() -> None:
    with pytest.raises(
        Unreachable, match=r"^30\.0 kg is not reachable: full of water it is 25\.7 kg ± 0\.7\.$"
    ) as caught:
        fill_for(CARRIER, WATER, 30.0)
    assert caught.value.wanted_kg == 30.0
    assert caught.value.limit_kg == pytest.approx(estimate(CARRIER, WATER, FullLevel()).mass.value)


def test_more_than_full_names_the_lightest_material_that_reaches() -> None:
    heavier = replace(SAND, id="steel_shot", name="Steel shot", low_kg_m3=4200, typical_kg_m3=4500, high_kg_m3=4700)
    with pytest.raises(Unreachable, match=r"Full of dry sand it would be about 40\.7 kg\.$"):
        fill_for(CARRIER, WATER, 30.0, materials=[heavier, LEAD, SAND, RICE, WATER])
    with pytest.raises(Unreachable, match=r"full of water it is 25\.7 kg ± 0\.7\.$"):
        fill_for(CARRIER, WATER, 30.0, materials=[RICE, LEAD])


def test_less_than_empty_says_what_empty_is() -> None:
    with pytest.raises(Unreachable, match=r"empty it already weighs 0\.68 kg ± 0\.12"):
        fill_for(CARRIER, WATER, 0.5)


def test_refusals_use_the_readers_units() -> None:
    with pytest.raises(Unreachable, match=r"66\.1 lb is not reachable: full of water it is 56\.6 lb"):
        fill_for(CARRIER, WATER, 30.0, system=UnitSystem.US)


def test_exactly_full_and_exactly_empty_are_reachable() -> None:
    full = estimate(CARRIER, WATER, FullLevel()).mass.value
    assert fill_for(CARRIER, WATER, full).volume_l == pytest.approx(25.0)
    assert fill_for(CARRIER, WATER, CARRIER.tare_kg.value).volume_l == pytest.approx(0.0, abs=1e-12)


def test_weighings_move_the_line_and_narrow_what_it_reaches() -> None:
    kg = 25.0 * 1.5 + 0.68
    readings = [
        reading_on(ScaleKind.KITCHEN, 0.702, at_level=EMPTY),
        reading_on(ScaleKind.BATHROOM_DIFFERENCE, 68.0 + kg, without_kg=68.0, at_level=FullLevel()),
    ]
    before, after = fill_for(CARRIER, SAND, 20.0), fill_for(CARRIER, SAND, 20.0, readings=readings)
    assert after.volume_l > before.volume_l
    assert after.reaches.u < before.reaches.u
    learned = learn(CARRIER, SAND, readings)
    assert fill_for(learned, SAND, 20.0).volume_l == pytest.approx(after.volume_l, rel=1e-9)


def test_settled_sand_needs_less_room() -> None:
    loose, settled = fill_for(CARRIER, SAND, 20.0), fill_for(CARRIER, SAND, 20.0, packing=Packing.SETTLED)
    assert settled.volume_l < loose.volume_l


@pytest.mark.parametrize("wanted_kg", [0.0, -5.0, math.nan, math.inf, 2000.0])
def test_masses_that_cannot_be_wanted_are_refused(wanted_kg: float) -> None:
    with pytest.raises(InputError, match="is not a mass from 0 to 1000 kg"):
        fill_for(CARRIER, WATER, wanted_kg)


@pytest.mark.parametrize("cup_l", [0.0, -0.25, math.nan, 1000.0])
def test_cups_that_cannot_be_are_refused(cup_l: float) -> None:
    with pytest.raises(InputError, match="is not a cup to pour with"):
        fill_for(CARRIER, WATER, 12.0, cup_l=cup_l)


def test_what_must_not_be_a_fill_is_refused() -> None:
    with pytest.raises(InputError, match="is not a fill"):
        fill_for(CARRIER, LEAD, 12.0)
