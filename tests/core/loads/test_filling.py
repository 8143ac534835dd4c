"""A container of the house, its fills, its weighings, and other ways to a mass."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.errors import InputError, Unreachable
from core.house.model import House
from core.loads.filling import Filling, additions, filling_of, other_ways
from core.loads.fills import HELD_CHEMICALS, NOT_AT_HAND, NOT_FOR_IT, fill_choices, packings
from core.mass.lessons import Taught
from core.mass.model import HeightLevel, Packing, ScaleKind, ShareLevel, VolumeLevel
from core.mass.weigh import reading_on
from core.things.fill_cautions import SPILLS
from core.things.model import Closure, Hazard, Thing
from core.things.weighed import known_mass
from tests.core.mass.examples import LEAD, RICE, SAND, WATER
from tests.dipper import bucket, carrier, coal, dipper

MATERIALS = (LEAD, RICE, SAND, WATER)
LINE = HeightLevel(height_cm=18.0)


def with_fills(thing: Thing, *fills: str) -> Thing:
    return replace(thing, fills=fills)


def filling(thing: Thing | None = None) -> Filling:
    return filling_of(thing or carrier(), WATER)


def test_usable_fills_come_first_then_what_is_missing_then_the_rest_with_reasons() -> None:
    choices = fill_choices(with_fills(carrier(), "sand_dry", "water"), ("water",), MATERIALS)
    assert [(choice.material.id, choice.why_not) for choice in choices] == [
        ("water", ""),
        ("sand_dry", NOT_AT_HAND),
        ("lead_shot", LEAD.why_not),
        ("rice_long", NOT_FOR_IT),
    ]
    assert [choice.at_hand for choice in choices] == [True, False, True, True]


def test_nothing_goes_into_what_held_chemicals() -> None:
    facts = replace(carrier().facts, hazards=frozenset({Hazard.HELD_CHEMICALS}))
    choices = fill_choices(replace(carrier(), facts=facts), ("water",), (WATER,))
    assert [choice.why_not for choice in choices] == [HELD_CHEMICALS]


def test_only_packings_with_a_figure_are_offered() -> None:
    assert packings(carrier(), WATER) == (Packing.LOOSE,)
    assert packings(carrier(), RICE) == (Packing.LOOSE,)
    assert packings(carrier(), SAND) == tuple(Packing)
    tied = replace(carrier(), facts=replace(carrier().facts, closure=Closure.TIED))
    assert Packing.TOPPED_UP not in packings(tied, SAND)


def test_what_is_nothing_to_fill_is_refused() -> None:
    with pytest.raises(InputError, match="nothing that can be filled"):
        filling_of(coal(), WATER)


def test_a_reading_of_this_fill_makes_it_surer_and_one_of_another_teaches() -> None:
    reading = reading_on(ScaleKind.BATHROOM_DIFFERENCE, 82.6, without_kg=68.0, at_level=LINE)
    before = filling().at(LINE)
    weighed = filling(replace(carrier(), readings=(replace(reading, reading_kg=68.0 + before.mass.value),)))
    here = weighed.at(VolumeLevel(volume_l=before.volume_l.value))
    assert here.weighing is not None
    assert here.mass.u < before.mass.u
    assert weighed.at(ShareLevel(share=0.9)).mass.u < filling().at(ShareLevel(share=0.9)).mass.u
    assert [lesson.what for lesson in weighed.lessons()] == [Taught.EMPTY, Taught.BRIM]


def test_readings_that_cannot_be_of_this_container_are_told_and_left_out() -> None:
    light = reading_on(ScaleKind.KITCHEN, 0.2, at_level=LINE)
    found = filling(replace(carrier(), readings=(light,)))
    assert "is less than the empty container weighs" in found.trouble
    assert found.at(LINE).mass == filling().at(LINE).mass


def test_a_new_reading_is_judged_before_it_is_kept() -> None:
    kg = filling().at(LINE).mass.value
    agreeing, far = (reading_on(ScaleKind.LUGGAGE, one, at_level=LINE) for one in (kg, kg + 4.0))
    assert filling().weighed(LINE, agreeing).agrees
    assert not filling().weighed(LINE, far).agrees
    trusted = replace(carrier(), facts=replace(carrier().facts, container=filling().doubted(LINE, far)))
    assert filling(trusted).weighed(LINE, far).agrees
    with pytest.raises(InputError, match="is less than the empty container weighs"):
        filling().weighed(LINE, reading_on(ScaleKind.KITCHEN, 0.2))


def test_cautions_of_thing_and_material_come_together() -> None:
    assert filling(bucket()).at(ShareLevel(share=0.5)).cautions[0] == SPILLS
    assert any("moves" in caution for caution in filling(bucket()).at(ShareLevel(share=0.5)).cautions)


def test_what_can_not_be_reached_has_other_ways() -> None:
    small = filling(bucket())
    with pytest.raises(Unreachable):
        small.to(15.0)
    ways = list(other_ways(small, dipper(), MATERIALS, 15.0))
    assert [(way.thing.id, way.added and way.added.id) for way in ways] == [("carrier", None), ("bucket", "coal")]
    assert ways[0].fill.volume_l == pytest.approx(13.9, abs=0.2)


def test_a_thing_added_reaches_what_full_does_not() -> None:
    small = filling(bucket())
    coal_bag, tin = list(additions(small, dipper(), 11.0))
    assert (coal_bag.count, tin.count) == (1, 4)
    for way in (coal_bag, tin):
        assert way.added is not None
        mass = known_mass(way.added)
        assert mass is not None
        assert way.fill.reaches.value + way.count * mass.value == pytest.approx(11.0)
    assert list(additions(small, dipper(), 5.0)) == []
    assert all(way.added is not None and way.count <= way.added.count for way in additions(small, dipper(), 12.0))


def test_another_fill_of_the_same_container_comes_first() -> None:
    sandy = with_fills(bucket(), "water", "sand_dry")
    house = House(name="Boat", things=(sandy, carrier()), fills=("water", "sand_dry"))
    ways = list(other_ways(filling(sandy), house, MATERIALS, 14.0))
    assert [(way.thing.id, way.material.id) for way in ways] == [("bucket", "sand_dry"), ("carrier", "water")]
    assert list(other_ways(filling(sandy), house, MATERIALS, 90.0)) == []
