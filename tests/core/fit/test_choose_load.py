"""Which load is taken: a sound hold before a poor one, unless the poor one is clearly nearer."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.fit.bind import bind
from core.fit.model import Binding
from core.fit.setting import Setting
from core.house.model import House
from core.things.affordance import Grade
from core.things.model import Thing
from tests.dipper import INES, TOWPATH, coal, daypack, tins

CATALOG = load_catalog()


def pack_squat(*things: Thing, wanted_kg: float) -> Binding:
    house = House(name="Dipper", places=(TOWPATH,), people=(INES,), things=things)
    setting = Setting(house, INES, CATALOG.material_by_id, TOWPATH)
    bound = bind(CATALOG.exercise_by_id["pack_squat"], setting, wanted_kg=wanted_kg)
    assert isinstance(bound, Binding)
    return bound


def test_a_dusty_sack_goes_into_the_pack_and_not_onto_the_back() -> None:
    load = pack_squat(coal(), daypack(), wanted_kg=10.2).load
    assert load is not None
    assert load.recipe.thing_ids == ("daypack", "coal")
    assert load.mass.value == pytest.approx(11.3)


def test_a_poor_hold_is_taken_when_its_load_is_clearly_nearer() -> None:
    small = daypack()
    hold = small.facts.hold
    assert hold is not None
    small = replace(small, facts=replace(small.facts, hold=replace(hold, volume_l=8.0)))
    bound = pack_squat(coal(), small, tins(), wanted_kg=12.0)
    assert bound.load is not None
    assert bound.load.recipe.thing_ids == ("coal",)
    assert bound.load_grade is Grade.POOR


def test_a_poor_hold_is_left_when_a_sound_one_comes_nearly_as_near() -> None:
    small = daypack()
    hold = small.facts.hold
    assert hold is not None
    small = replace(small, facts=replace(small.facts, hold=replace(hold, volume_l=8.0)))
    bound = pack_squat(coal(), small, tins(count=12), wanted_kg=8.0)
    assert bound.load is not None
    assert bound.load.recipe.thing_ids == ("daypack", "tins")
    assert bound.load_grade is Grade.GOOD
