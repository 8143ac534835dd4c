"""What a house can't train and what would open it, against trying every kind on every movement."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations_with_replacement

import pytest

from catalog.load import load_catalog
from core.exercise.model import Demand, Exercise, Family
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.model import House, Place
from core.knowledge import Catalog
from core.swap.additions import as_thing
from core.swap.gaps import gaps, settings_of
from core.things.model import Thing, ThingKind
from tests.core.swap.truth_houses import house_named
from tests.dipper import CABIN, INES, TOWPATH, dipper, without

WHOLE = load_catalog()
SMALL = Catalog(
    exercises=WHOLE.exercises[::12], kinds=WHOLE.kinds[::9], materials=WHOLE.materials, sources=WHOLE.sources
)
ROOM = Place(id="room", name="Room", ceiling_cm=240.0, floor_m2=4.0, walk_m=5.0)


def in_a_room(name: str) -> House:
    return replace(house_named(name), places=(ROOM,))


HOUSES = {
    "empty": in_a_room("empty"),
    "chair": in_a_room("chair"),
    "flat": in_a_room("flat"),
    "dipper": dipper(),
    "no carrier": without(dipper(), "carrier", "beam"),
}


def counted(catalog: Catalog) -> list[Exercise]:
    return [exercise for exercise in catalog.exercises if not exercise.needs_gym]


def doable(house: House, catalog: Catalog, extra: tuple[Thing, ...] = ()) -> set[str]:
    """Movements that bind in some place with the extra things, tried one by one."""
    added = replace(house, things=(*house.things, *extra))
    found = set()
    for setting in settings_of(added, INES, catalog):
        found |= {e.id for e in counted(catalog) if not isinstance(bind(e, setting), Missing)}
    return found


@pytest.mark.parametrize("name", HOUSES)
def test_every_addition_opens_exactly_what_trying_it_opens(name: str) -> None:
    house = HOUSES[name]
    found = gaps(house, INES, SMALL)
    have = {thing.kind_id for thing in house.things}
    before = doable(house, SMALL)
    told = {helper.kind_id: helper.movements for helper in found.would_help}
    for kind in SMALL.kinds:
        opened = set() if kind.id in have else doable(house, SMALL, (as_thing(kind),)) - before
        assert told.get(kind.id, 0) == len(opened), kind.id


@pytest.mark.parametrize("name", HOUSES)
def test_a_family_counts_what_can_be_done_and_says_why_where_nothing_can(name: str) -> None:
    house = HOUSES[name]
    able = doable(house, SMALL)
    for state in gaps(house, INES, SMALL).families:
        mine = {e.id for e in counted(SMALL) if e.family is state.family}
        assert set(state.exercise_ids) == mine & able
        assert state.movements == len(state.exercise_ids)
        assert bool(state.why) is (state.movements == 0)


def carrying(kinds: tuple[ThingKind, ...]) -> Catalog:
    """Only what needs two things at once: towel-grip carries, rows over a towel and a bar."""
    ids = ("towel_grip_carry", "towel_hang", "pack_inverted_row", "towel_pull_up")
    return Catalog(
        exercises=tuple(WHOLE.exercise_by_id[one] for one in sorted(ids)), kinds=kinds, materials=WHOLE.materials
    )


def test_where_no_single_thing_opens_a_family_the_cheapest_two_do_by_trying_all_pairs() -> None:
    kinds = tuple(WHOLE.kind_by_id[one] for one in ("bottle_five_litre", "kettlebell", "pull_up_bar_wall", "towel"))
    catalog = carrying(kinds)
    house = replace(in_a_room("empty"), places=(replace(ROOM, walk_m=20.0),))
    found = gaps(house, INES, catalog)
    assert not any(helper.opens for helper in found.would_help)
    pairs = list(combinations_with_replacement(kinds, 2))
    for pair in found.together:
        family = pair.opens[0]
        mine = {e.id for e in catalog.exercises if e.family is family}
        opening = {}
        for one, other in pairs:
            extra = (as_thing(one, 2),) if one is other else (as_thing(one), as_thing(other))
            opened = len(doable(house, catalog, extra) & mine)
            if opened:
                opening[(one.id, other.id)] = (one.cost + other.cost, -opened)
        cheapest = min(opening.values())
        assert (pair.cost, -pair.movements) == cheapest
        assert opening[pair.kind_ids] == cheapest
    assert {pair.opens[0] for pair in found.together} == {Family.CARRY, Family.PULL_OVERHEAD}


@pytest.mark.parametrize("name", HOUSES)
def test_what_opens_a_family_comes_first_and_nothing_to_buy_before_what_costs(name: str) -> None:
    house = HOUSES[name]
    helpers = gaps(house, INES, SMALL).would_help
    assert helpers
    before, had, order = doable(house, SMALL), set[str](), []
    for helper in helpers:
        opened = doable(house, SMALL, (as_thing(SMALL.kind_by_id[helper.kind_id]),)) - before
        order.append((not opened - had, not helper.opens, helper.cost > 0))
        had |= opened
    assert order == sorted(order)


def test_what_opens_the_same_again_stands_behind_what_opens_something_new() -> None:
    told = [helper.kind_id for helper in gaps(dipper(), INES, WHOLE).would_help]
    alike = sorted(told.index(one) for one in ("chest_of_drawers", "desk", "washing_machine"))
    assert alike[0] < told.index("pull_up_bar_door") < alike[1]


def test_what_is_spared_is_no_gap() -> None:
    spared = replace(INES, spares=frozenset({Demand.HANGING, Demand.OVERHEAD_REACH}))
    found = gaps(HOUSES["chair"], spared, SMALL)
    offered = {one for state in found.families for one in state.exercise_ids}
    assert all(WHOLE.exercise_by_id[one].demands.isdisjoint(spared.spares) for one in offered)


def test_the_order_of_things_and_places_changes_nothing() -> None:
    house = dipper()
    turned = replace(house, things=house.things[::-1], places=house.places[::-1])
    one, other = gaps(house, INES, SMALL), gaps(turned, INES, SMALL)
    assert one.would_help == other.would_help
    assert [state.exercise_ids for state in one.families] == [state.exercise_ids for state in other.families]


def test_an_empty_house_outdoors_still_walks() -> None:
    found = gaps(House(name="Path", places=(TOWPATH,)), INES, WHOLE)
    gait = next(state for state in found.families if state.family is Family.GAIT)
    assert "easy_walk" in gait.exercise_ids
    assert found.movements == sum(state.movements for state in found.families)


def test_a_place_that_rules_it_out_is_told_rather_than_a_thing_to_buy() -> None:
    low = House(name="Low", places=(replace(CABIN, ceiling_cm=150.0),))
    catalog = Catalog(exercises=(WHOLE.exercise_by_id["standing_press"],), kinds=WHOLE.kinds, materials=WHOLE.materials)
    found = gaps(low, INES, catalog)
    assert found.would_help == ()
    state = next(state for state in found.families if state.family is Family.PUSH_OVERHEAD)
    assert "1.50 m high" in state.why


def test_settings_are_one_a_place() -> None:
    assert [setting.place.id for setting in settings_of(dipper(), INES, WHOLE)] == ["cabin", "towpath"]
    assert len(settings_of(House(name="x"), INES, WHOLE)) == 1
    assert isinstance(settings_of(House(name="x"), INES, WHOLE)[0], Setting)
