"""Rules of the masses one piece can have: what was weighed teaches per material, and what stands in it is a state."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from catalog.load import load_catalog
from core.exercise.model import Use
from core.fit.setting import Setting
from core.house.model import House
from core.loads.filling import filling_of
from core.loads.pieces import FETCH_S, learnt_container, piece_mass, standing_mass, states_of
from core.mass.model import FullLevel, Packing, ScaleKind, ScaleReading, VolumeLevel
from core.mass.weigh import reading_on
from core.quantity import Measured
from core.things.model import Fill, Thing
from tests.dipper import INES, TOWPATH, bucket, carrier, coal, daypack, dipper, without

MATERIALS = load_catalog().material_by_id
WATER, SAND = MATERIALS["water"], MATERIALS["sand_dry"]
CUP_L = 0.25


def weighed_full(kg: float, material_id: str | None = None) -> ScaleReading:
    return replace(
        reading_on(ScaleKind.LUGGAGE, kg, at_level=FullLevel()), material_id=material_id, packing=Packing.LOOSE
    )


def sandy(**changes: object) -> Thing:
    thing = replace(bucket(), fills=("water", "sand_dry"))
    return replace(thing, **changes)  # type: ignore[arg-type]  # fields of a thing


def test_a_reading_with_sand_teaches_the_sand_and_leaves_the_water_alone() -> None:
    thing = sandy(readings=(weighed_full(15.5, "sand_dry"),))
    plain = sandy()
    assert learnt_container(thing, WATER) == thing.facts.container
    assert learnt_container(thing, SAND) != thing.facts.container
    of_water = [piece_mass(one, "water", 5.0, MATERIALS, CUP_L) for one in (plain, thing)]
    of_sand = [piece_mass(one, "sand_dry", 5.0, MATERIALS, CUP_L) for one in (plain, thing)]
    assert of_water[0] == of_water[1]
    assert of_sand[1].u < of_sand[0].u


def test_a_reading_of_the_empty_container_teaches_every_material() -> None:
    empty = replace(
        reading_on(ScaleKind.KITCHEN, 0.51, at_level=VolumeLevel(volume_l=0.0)), material_id=None, packing=Packing.LOOSE
    )
    thing = sandy(readings=(empty,))
    for material in (WATER, SAND):
        learnt = learnt_container(thing, material)
        assert learnt is not None
        assert learnt.tare_kg.value == pytest.approx(0.51, abs=0.03)


def test_a_reading_that_cannot_be_one_teaches_nothing() -> None:
    thing = sandy(readings=(weighed_full(0.05, "water"),))
    assert learnt_container(thing, WATER) == thing.facts.container
    assert len(states_of(thing, MATERIALS, ("water",), CUP_L))


def test_masses_agree_with_the_filling_screen_before_and_after_weighing() -> None:
    for thing in (carrier(), replace(carrier(), readings=(weighed_full(26.4, "water"),))):
        filling = filling_of(thing, WATER)
        for litres in (2.5, 10.0, 24.0):
            here = piece_mass(thing, "water", litres, MATERIALS, CUP_L)
            there = filling.at(VolumeLevel(volume_l=litres)).mass
            assert here.value == pytest.approx(there.value, abs=0.02)


def test_what_stands_in_it_now_is_a_state_that_needs_no_pouring() -> None:
    thing = replace(carrier(), fill=Fill(material_id="water", volume_l=10.37))
    states = states_of(thing, MATERIALS, ("water",), CUP_L)
    at = states.index_of("water", 10.37)
    assert at is not None
    assert states.set_up_s[at] == FETCH_S
    assert (np.diff(states.fill_l) > 0).all()
    mass = piece_mass(thing, "water", 10.37, MATERIALS, CUP_L)
    assert states.mass_kg[at] == pytest.approx(mass.value)


def test_a_standing_fill_at_a_whole_cup_is_one_state_not_two() -> None:
    thing = replace(carrier(), fill=Fill(material_id="water", volume_l=10.0))
    assert len(states_of(thing, MATERIALS, ("water",), CUP_L)) == len(
        states_of(carrier(), MATERIALS, ("water",), CUP_L)
    )


def test_what_stands_in_it_counts_even_where_the_house_has_no_more_of_it() -> None:
    thing = sandy(fill=Fill(material_id="sand_dry", volume_l=6.0))
    states = states_of(thing, MATERIALS, ("water",), CUP_L)
    at = states.index_of("sand_dry", 6.0)
    assert at is not None
    assert sum(states.material_id(index) == "sand_dry" for index in range(len(states))) == 1
    assert states.mass_kg[at] == pytest.approx(standing_mass(thing, SAND).value)


def test_settled_sand_standing_weighs_more_than_loose_sand_poured() -> None:
    loose, settled = (
        standing_mass(sandy(fill=Fill(material_id="sand_dry", volume_l=6.0, packing=packing)), SAND)
        for packing in (Packing.LOOSE, Packing.SETTLED)
    )
    assert settled.value > loose.value


def test_a_reading_of_the_standing_fill_is_what_the_load_weighs() -> None:
    here = replace(
        reading_on(ScaleKind.LUGGAGE, 11.9, at_level=VolumeLevel(volume_l=10.5)),
        material_id="water",
        packing=Packing.LOOSE,
    )
    thing = replace(carrier(), fill=Fill(material_id="water", volume_l=10.5), readings=(here,))
    unweighed = replace(thing, readings=())
    assert abs(standing_mass(thing, WATER).value - 11.9) < abs(standing_mass(unweighed, WATER).value - 11.9)
    assert standing_mass(thing, WATER).u < standing_mass(unweighed, WATER).u


def test_a_weighed_thing_that_is_not_filled_weighs_what_the_scale_and_the_label_say_together() -> None:
    thing = replace(
        coal(),
        facts=replace(coal().facts, mass=Measured(10.2, 0.3)),
        readings=(reading_on(ScaleKind.KITCHEN, 9.9, at_level=None),),
    )
    states = states_of(thing, {}, (), CUP_L)
    assert states.mass_kg[0] == pytest.approx(piece_mass(thing, None, 0.0, {}, CUP_L).value)
    assert 9.85 < states.mass_kg[0] < 10.0


def test_a_weighed_bag_carries_its_weighed_mass() -> None:
    bag = replace(daypack(), readings=(reading_on(ScaleKind.KITCHEN, 1.2, at_level=None),))
    house = without(dipper(), "daypack")
    setting = Setting(House(name="x", things=(*house.things, bag)), INES, MATERIALS, TOWPATH)
    empty = setting.ladder(Use.BACK).rung(0)
    assert empty.recipe.thing_ids == ("daypack",)
    assert empty.mass.value == pytest.approx(1.2, abs=0.01)
