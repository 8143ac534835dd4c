"""Which readings count for the fill in hand, what they taught, and what trusting a scale does."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.mass.learning import Setting
from core.mass.lessons import Taught, lessons
from core.mass.model import (
    BrimLevel,
    Container,
    HeightLevel,
    Level,
    Material,
    Packing,
    ScaleKind,
    ScaleReading,
    ShareLevel,
    VolumeLevel,
)
from core.mass.trust import doubting, doubting_mass
from core.mass.weigh import combine, estimate, reading_on
from core.mass.weighings import teaching, weighings_of
from core.quantity import Measured, Origin
from tests.core.mass.examples import CARRIER, SAND, WATER

EMPTY = ShareLevel(share=0.0)
LINE = HeightLevel(height_cm=18.0)


def reading(kg: float, level: Level | None, material: Material | None = WATER) -> ScaleReading:
    found = reading_on(ScaleKind.LUGGAGE, kg, at_level=level)
    return found if material is None else replace(found, material_id=material.id)


def setting(material: Material = WATER, container: Container = CARRIER) -> Setting:
    return Setting(container=container, material=material, temperature_c=15.0, packing=Packing.LOOSE)


def test_a_reading_of_this_very_fill_tells_its_mass() -> None:
    volume_l = estimate(CARRIER, WATER, LINE).volume_l.value
    found = weighings_of(CARRIER, WATER, Packing.LOOSE, VolumeLevel(volume_l=volume_l), [reading(14.9, LINE)])
    assert found.now == (0,)
    assert found.readings[0].at_level is None
    assert found.level == LINE


def test_a_reading_of_another_fill_keeps_its_level() -> None:
    other = reading(14.9, LINE)
    found = weighings_of(CARRIER, WATER, Packing.LOOSE, HeightLevel(height_cm=9.0), [other])
    assert (found.now, found.readings, found.level) == ((), (other,), HeightLevel(height_cm=9.0))


def test_what_sand_weighed_says_nothing_of_water_but_the_empty_container_does() -> None:
    sand, empty, unknown = reading(30.0, LINE, SAND), reading(0.7, EMPTY, SAND), reading(14.8, LINE, None)
    assert teaching(CARRIER, WATER, Packing.LOOSE, [sand, empty, unknown]) == (empty, unknown)
    assert teaching(CARRIER, SAND, Packing.LOOSE, [sand, empty, unknown]) == (sand, empty, unknown)
    assert teaching(CARRIER, SAND, Packing.SETTLED, [sand]) == ()


def test_readings_that_no_longer_fit_the_container_are_left_out() -> None:
    assert teaching(CARRIER, WATER, Packing.LOOSE, [reading(40.0, VolumeLevel(volume_l=39.0))]) == ()
    assert teaching(CARRIER, WATER, Packing.LOOSE, [reading(14.8, None)]) == ()


def test_weighing_it_empty_teaches_the_empty_mass_alone() -> None:
    found = lessons(setting(), [reading(0.72, EMPTY)])
    assert [lesson.what for lesson in found] == [Taught.EMPTY]
    assert found[0].after.u < found[0].before.u
    assert found[0].before == CARRIER.tare_kg


def test_weighing_sand_teaches_how_dense_it_lies() -> None:
    found = lessons(setting(SAND), [reading(24.0, LINE, SAND)])
    assert Taught.DENSITY in {lesson.what for lesson in found}
    assert lessons(setting(SAND), []) == ()


@pytest.mark.parametrize("material", [WATER, SAND], ids=lambda one: one.id)
@given(kg=st.floats(5.0, 31.0))
def test_a_trusted_scale_agrees_afterwards_and_carries_the_day(material: Material, kg: float) -> None:
    now = reading(kg, None)
    trusted = doubting(setting(material), LINE, [now])
    after = estimate(trusted, material, LINE, readings=[now])
    assert after.weighing is not None
    assert after.weighing.agrees
    before = estimate(CARRIER, material, LINE)
    if abs(kg - before.mass.value) > 2 * before.mass.u95:
        assert abs(after.mass.value - kg) < 0.5 * abs(kg - before.mass.value)


def test_a_scale_that_agrees_puts_nothing_in_doubt() -> None:
    kg = estimate(CARRIER, WATER, LINE).mass.value
    assert doubting(setting(), LINE, [reading(kg, None)]) is CARRIER


def test_an_exact_container_is_doubted_too() -> None:
    exact = Container(
        shape=CARRIER.shape, nominal_l=Measured(25.0), brimful_l=Measured(26.0), tare_kg=Measured(0.68), shape_doubt=0.0
    )
    now = reading(16.5, None)
    trusted = doubting(setting(container=exact), LINE, [now])
    assert trusted.tare_kg.u > 0
    weighing = estimate(trusted, WATER, LINE, readings=[now]).weighing
    assert weighing is not None
    assert weighing.agrees


def test_a_known_mass_is_doubted_as_far_as_the_scale_asks() -> None:
    label = Measured(10.0, 0.05, Origin.LABEL)
    now = reading(11.0, None)
    assert not combine(label, [now]).agrees
    doubted = doubting_mass(label, [now])
    assert combine(doubted, [now]).agrees
    assert combine(doubted, [now]).mass.value == pytest.approx(11.0, abs=0.1)
    assert doubting_mass(label, [reading(10.05, None)]) == label


def test_a_reading_far_above_brimful_is_not_trusted() -> None:
    brim = estimate(CARRIER, WATER, BrimLevel()).mass.value
    with pytest.raises(InputError, match="is far more than it could weigh full to the brim"):
        doubting(setting(), LINE, [reading(1.4 * brim, None)])
    assert doubting(setting(), LINE, [reading(1.1 * brim, None)]) is not CARRIER
