"""Building a load: every way fits, makes its mass and matches; the best agrees with brute force over all there is."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.materials import load_materials
from core.errors import InputError
from core.exercise.model import Use
from core.fit.setting import Setting
from core.house.model import House
from core.loads.building import MATCH_PCT, PACKINGS, SECONDS_A_PCT, WAYS, WITHIN_PCT, Built, Way, build
from core.loads.ladder import Ladder, columns_of
from core.loads.packing import pack_volume_l
from core.loads.pieces import GRAIN_KG
from core.mass.model import Container, StraightRound, shape_for_capacity
from core.quantity import Measured
from core.things.model import Closure, Facts, Form, Thing
from tests.dipper import INES, dipper, without

MATERIALS = {material.id: material for material in load_materials()}
USES = (Use.HUG, Use.ONE_HAND, Use.PAIR, Use.BACK, Use.SHOULDER)


def bottle(count: int = 4) -> Thing:
    """Bottles of 1.5 L that close."""
    container = Container(
        shape=shape_for_capacity(StraightRound(diameter_cm=8, full_height_cm=30), 1.56),
        nominal_l=Measured.rectangular(1.5, 0.015),
        brimful_l=Measured.rectangular(1.56, 0.04),
        tare_kg=Measured.rectangular(0.035, 0.01),
    )
    facts = Facts(
        form=Form.VESSEL, container=container, length_cm=8.5, width_cm=8.5, height_cm=31, closure=Closure.SEALED
    )
    return Thing(id="bottle", kind_id="bottle", name="Water bottle", count=count, facts=facts, fills=("water",))


def house(*more: Thing) -> House:
    plain = dipper()
    return replace(plain, things=(*plain.things, *more))


def setting(home: House) -> Setting:
    return Setting(home, INES, MATERIALS)


def built(home: House, use: Use, kg: float, within_pct: float = WITHIN_PCT) -> Built:
    here = setting(home)
    ladder = here.ladder(use, 2 if use is Use.PAIR else 1)
    return build(ladder, kg, one_hand=here.ladder(Use.ONE_HAND), within_pct=within_pct)


def cost(way: Way, ladder: Ladder, target_kg: float) -> float:
    penalty = {source.thing.id: source.penalty_s for source in ladder.sources}[way.rung.recipe.thing_ids[0]]
    return 100 * abs(way.off_kg) / target_kg + (way.rung.set_up_s + penalty) / SECONDS_A_PCT


@pytest.mark.parametrize("use", USES)
@given(kg=st.floats(0.5, 40))
def test_every_way_is_near_enough_and_its_parts_add_up(use: Use, kg: float) -> None:
    found = built(house(bottle()), use, kg)
    assert len(found.ways) <= WAYS
    for way in found.ways:
        parts = way.rung.recipe.parts
        assert way.rung.mass.value == pytest.approx(sum(part.count * part.each.value for part in parts))
        assert way.off_kg == pytest.approx(way.rung.mass.value - kg)
        assert abs(way.off_kg) <= (WITHIN_PCT / 100) * kg + GRAIN_KG
        assert way.rung.mass.u95 > 0


@given(kg=st.floats(1.0, 40))
def test_the_best_single_way_is_the_cheapest_of_all_there_are(kg: float) -> None:
    ladder = setting(dipper()).ladder(Use.HUG)
    found = build(ladder, kg)
    every = [
        100 * abs(grain * GRAIN_KG - kg) / kg + (second + source.penalty_s) / SECONDS_A_PCT
        for source in ladder.sources
        for grain, second in zip(*(column.tolist() for column in columns_of(source)), strict=True)
        if grain > 0 and 100 * abs(grain * GRAIN_KG - kg) / kg <= WITHIN_PCT
    ]
    assert bool(found.ways) == bool(every)
    if every:
        # A rung is drawn to the nearest 10 g, the way says what it really makes.
        assert cost(found.ways[0], ladder, kg) == pytest.approx(min(every), abs=100 * GRAIN_KG / kg)


def test_a_bag_is_packed_within_its_room_and_its_rating() -> None:
    home = house(bottle())
    bag = home.thing("daypack")
    hold = bag.facts.hold
    assert hold is not None
    found = built(home, Use.BACK, 8.0)
    packed = [way.rung.recipe for way in found.ways if way.rung.recipe.packed]
    assert packed
    for recipe in packed:
        inside = recipe.parts[1:]
        assert sum(part.count * pack_volume_l(home.thing(part.thing_id)) for part in inside) <= hold.volume_l
        assert sum(part.count * part.each.value for part in inside) <= hold.limit_kg
        assert all(part.count <= home.thing(part.thing_id).count for part in inside)


def test_nothing_that_could_be_filled_rides_empty_in_a_bag() -> None:
    for kg in (2.0, 5.0, 8.0, 12.0):
        for way in built(house(bottle()), Use.BACK, kg, within_pct=10).ways:
            assert all(part.material_id is None or part.fill_l > 0 for part in way.rung.recipe.parts)


def test_ways_of_one_bag_differ_in_what_is_in_it() -> None:
    found = built(house(bottle()), Use.BACK, 3.0, within_pct=10)
    sorts = [tuple(sorted(way.rung.recipe.thing_ids)) for way in found.ways]
    assert len(sorts) == len(set(sorts))
    assert 1 < len(sorts) <= PACKINGS


def test_two_different_things_make_a_pair_only_when_they_match() -> None:
    home = without(house(), "daypack", "coal", "tins")
    home = replace(home, things=tuple(replace(one, count=1) for one in home.things))
    found = built(home, Use.PAIR, 12.0)
    assert [way.rung.recipe.thing_ids for way in found.ways] == [("bucket", "carrier")]
    for way in found.ways:
        left, right = way.rung.recipe.parts
        assert way.apart_kg is not None
        assert way.apart_kg == pytest.approx(abs(left.each.value - right.each.value))
        assert way.apart_kg <= MATCH_PCT / 100 * max(left.each.value, right.each.value)


@given(kg=st.floats(3.0, 18.0))
def test_the_unlike_pair_is_the_cheapest_that_matches(kg: float) -> None:
    home = without(house(), "daypack", "coal", "tins")
    home = replace(home, things=tuple(replace(one, count=1) for one in home.things))
    one_hand = setting(home).ladder(Use.ONE_HAND)
    carrier, bucket = one_hand.sources[1].states, one_hand.sources[0].states
    matching = [
        (a, b)
        for a, b in itertools.product(bucket.mass_kg.tolist(), carrier.mass_kg.tolist())
        if abs(a + b - kg) <= WITHIN_PCT / 100 * kg and abs(a - b) <= MATCH_PCT / 100 * max(a, b)
    ]
    found = built(home, Use.PAIR, kg)
    assert bool(found.ways) == bool(matching)
    if matching:
        parts = found.ways[0].rung.recipe.parts
        assert any((parts[0].each.value, parts[1].each.value) == pytest.approx(pair) for pair in matching)


def test_what_one_cup_measured_is_wrong_alike_in_both_hands() -> None:
    home = without(house(), "daypack", "coal", "tins")
    home = replace(home, things=tuple(replace(one, count=1) for one in home.things))
    rung = built(home, Use.PAIR, 12.0).ways[0].rung
    assert rung.mass.u == pytest.approx(sum(part.each.u for part in rung.recipe.parts))


def test_two_alike_are_not_apart() -> None:
    found = built(dipper(), Use.PAIR, 20.0)
    alike = [way for way in found.ways if len(way.rung.recipe.parts) == 1]
    assert [way.apart_kg for way in alike] == [0.0]
    assert alike[0].rung.recipe.parts[0].count == 2


def test_without_a_way_the_neighbours_are_told() -> None:
    found = built(dipper(), Use.BACK, 7.0)
    assert found.ways == ()
    assert found.below is not None
    assert found.above is not None
    assert found.below.rung.mass.value < 7.0 < found.above.rung.mass.value
    assert found.nearest == (found.below, found.above)
    too_heavy = built(dipper(), Use.BACK, 100.0)
    assert too_heavy.above is None
    assert [way.rung.mass.value for way in too_heavy.nearest] == [
        pytest.approx(setting(dipper()).ladder(Use.BACK).masses_kg[-1], abs=GRAIN_KG)
    ]


def test_a_house_with_nothing_for_the_use_has_no_way() -> None:
    assert built(House(name="Bare"), Use.HUG, 12.0).nearest == ()


@pytest.mark.parametrize("kg", [0.0, -3.0, 151.0, float("nan")])
def test_a_mass_no_load_can_have_is_refused(kg: float) -> None:
    with pytest.raises(InputError, match="is not a load from 0 to 150 kg"):
        built(dipper(), Use.HUG, kg)


@pytest.mark.parametrize("within_pct", [0.0, -1.0, 51.0, float("nan")])
def test_a_tolerance_that_can_not_be_is_refused(within_pct: float) -> None:
    with pytest.raises(InputError, match="is not a tolerance"):
        built(dipper(), Use.HUG, 12.0, within_pct=within_pct)


def test_the_same_house_gives_the_same_ways() -> None:
    assert built(house(bottle()), Use.HUG, 9.0) == built(house(bottle()), Use.HUG, 9.0)
