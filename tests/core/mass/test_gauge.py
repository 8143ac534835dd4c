"""The scale beside a vessel: marks where the mass is reached, heights and back, bags without a line."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mass.gauge import MOST_LABELS, Gauge, gauge_of
from core.mass.learning import Setting
from core.mass.model import (
    Container,
    HeightLevel,
    Material,
    Packing,
    ScaleKind,
    ShareLevel,
    StraightRound,
    VolumeLevel,
    shape_for_capacity,
)
from core.mass.weigh import estimate, fill_for, reading_on
from core.quantity import Measured
from core.quantity.display import UnitSystem
from tests.core.mass.examples import CARRIER, SACK, SAND, WATER


def gauge(container: Container = CARRIER, material: Material = WATER) -> Gauge:
    return gauge_of(Setting(container=container, material=material, temperature_c=15.0, packing=Packing.LOOSE))


def bottle(litres: float) -> Container:
    shape = shape_for_capacity(StraightRound(diameter_cm=8.0, full_height_cm=20.0), 1.04 * litres)
    return Container(
        shape=shape,
        nominal_l=Measured(litres, 0.01 * litres),
        brimful_l=Measured(1.04 * litres, 0.01 * litres),
        tare_kg=Measured(0.03 * litres, 0.003 * litres),
    )


@pytest.mark.parametrize("system", list(UnitSystem))
@pytest.mark.parametrize("material", [WATER, SAND], ids=lambda one: one.id)
def test_at_each_mark_the_whole_weighs_what_it_says(material: Material, system: UnitSystem) -> None:
    for mark in gauge(material=material).marks(system)[1:]:
        here = estimate(CARRIER, material, HeightLevel(height_cm=mark.height_cm))
        assert here.mass.value == pytest.approx(mark.mass_kg, abs=1e-6)


def test_the_marks_are_those_of_the_way_back_after_weighing() -> None:
    readings = tuple(
        reading_on(ScaleKind.LUGGAGE, kg, at_level=level)
        for kg, level in ((0.9, ShareLevel(share=0.0)), (15.4, HeightLevel(height_cm=18.0)))
    )
    setting = Setting(container=CARRIER, material=WATER, temperature_c=15.0, packing=Packing.LOOSE)
    for mark in gauge_of(setting, readings).marks(UnitSystem.METRIC)[3:-1:4]:
        fill = fill_for(CARRIER, WATER, mark.mass_kg, readings=readings)
        assert fill.height_cm == pytest.approx(mark.height_cm)


@given(st.floats(0.1, 200), st.sampled_from(UnitSystem))
def test_marks_rise_and_few_are_labelled(litres: float, system: UnitSystem) -> None:
    marks = gauge(bottle(litres)).marks(system)
    assert all(above.height_cm >= below.height_cm and above.mass_kg > below.mass_kg for below, above in pairwise(marks))
    labelled = [mark for mark in marks if mark.label]
    assert 3 <= len(labelled) <= MOST_LABELS + 3
    assert len(marks) <= 5 * (MOST_LABELS + 1) + 2


def test_round_masses_are_labelled_in_the_persons_unit() -> None:
    metric = [mark.label for mark in gauge().marks(UnitSystem.METRIC) if mark.label]
    assert metric == ["0.68 kg empty", "5 kg", "10 kg", "15 kg", "20 kg", "25.7 kg full"]
    us = [mark.label for mark in gauge().marks(UnitSystem.US) if mark.label]
    assert us[:3] == ["1.50 lb empty", "10 lb", "20 lb"]
    assert [mark.label for mark in gauge(bottle(0.5)).marks(UnitSystem.METRIC) if mark.label][1] == "100 g"
    assert [mark.label for mark in gauge(bottle(0.3)).marks(UnitSystem.US) if mark.label][1] == "2 oz"


def test_a_height_is_a_line_but_in_a_bag_a_volume() -> None:
    assert gauge().level_at(18.4) == HeightLevel(height_cm=18.4)
    level = gauge(SACK).level_at(25.0)
    assert isinstance(level, VolumeLevel)
    assert level.volume_l == pytest.approx(10.0)
    assert gauge(SACK).height_of_volume(10.0) == pytest.approx(25.0)


def test_the_band_spans_the_doubt_of_the_mass_on_the_scale() -> None:
    here = gauge()
    mass = Measured(14.7, 0.15)
    line_cm = here.height_of_mass(14.7)
    assert here.band_cm(line_cm, mass) == pytest.approx(
        (here.height_of_mass(15.0) - here.height_of_mass(14.4)) / 2, rel=1e-6
    )
    assert here.band_cm(0.0, mass) < here.band_cm(line_cm, mass)


def test_heights_beyond_the_vessel_are_held_inside() -> None:
    assert gauge().height_of_mass(0.1) == 0.0
    assert gauge().height_of_mass(99.0) == CARRIER.shape.full_height_cm


def test_a_line_stands_where_it_was_read_whatever_weighing_taught() -> None:
    readings = (reading_on(ScaleKind.LUGGAGE, 14.6, at_level=HeightLevel(height_cm=18.0)),)
    setting = Setting(container=CARRIER, material=WATER, temperature_c=15.0, packing=Packing.LOOSE)
    taught = gauge_of(setting, readings)
    assert taught.height_of(HeightLevel(height_cm=18.0)) == 18.0
    assert taught.height_of(VolumeLevel(volume_l=14.0)) < gauge().height_of(VolumeLevel(volume_l=14.0))
    assert gauge().height_of(ShareLevel(share=1.0)) == pytest.approx(gauge().full_cm)
    assert gauge().height_of(gauge().half()) == pytest.approx(gauge().height_of(ShareLevel(share=0.5)))
