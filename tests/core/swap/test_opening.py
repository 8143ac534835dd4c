"""What is left out says on what ground, and what one more thing would open is named, the cheap and near first."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.exercise.model import Demand
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.swap.additions import as_thing
from core.swap.model import Cause, Ground, Swap, SwapRequest
from core.swap.opening import would_open
from core.swap.swap import swap
from tests.dipper import dipper


@pytest.fixture(scope="module")
def catalog() -> Catalog:
    """The shipped catalog."""
    return load_catalog()


@pytest.fixture(scope="module")
def cabin(catalog: Catalog) -> Setting:
    """Ines in the cabin with what the household has."""
    house = dipper()
    return Setting(house, house.people[0], catalog.material_by_id, house.places[0])


@pytest.fixture(scope="module")
def bare(catalog: Catalog) -> Setting:
    """Ines in the cabin with nothing at all."""
    house = replace(dipper(), things=())
    return Setting(house, house.people[0], catalog.material_by_id, house.places[0])


def asked(
    name: str,
    setting: Setting,
    catalog: Catalog,
    *,
    cause: Cause = Cause.NO_GEAR,
    spare: frozenset[Demand] = frozenset(),
) -> Swap:
    request = SwapRequest(asked=catalog.exercise_by_id[name], cause=cause, spare=spare)
    return swap(request, setting, catalog)


def grounds(found: Swap) -> dict[str, Ground]:
    return {left.exercise_id: left.ground for left in found.left_out}


def test_what_lacks_a_thing_is_left_out_for_things(bare: Setting, catalog: Catalog) -> None:
    assert grounds(asked("pull_up", bare, catalog))["pull_up"] is Ground.THINGS


def test_what_is_spared_is_left_out_for_that(cabin: Setting, catalog: Catalog) -> None:
    found = asked("pull_up", cabin, catalog, spare=frozenset({Demand.HANGING}))
    assert grounds(found)["pull_up"] is Ground.SPARED


def test_what_is_too_big_for_the_place_is_left_out_for_the_place(cabin: Setting, catalog: Catalog) -> None:
    found = asked("easy_run", cabin, catalog)
    outdoors = [one for one in found.left_out if "outdoors" in one.why]
    assert outdoors
    assert {one.ground for one in outdoors} == {Ground.PLACE}


def test_the_movement_that_hurts_is_left_out_for_the_cause(cabin: Setting, catalog: Catalog) -> None:
    assert grounds(asked("push_up", cabin, catalog, cause=Cause.HURTS))["push_up"] is Ground.CAUSE


def test_each_opener_really_opens_what_it_names(bare: Setting, catalog: Catalog) -> None:
    openers = would_open(asked("pull_up", bare, catalog), bare, catalog)
    assert openers
    for opener in openers[:5]:
        with_it = bare.plus(as_thing(catalog.kind_by_id[opener.kind_id]))
        for exercise in opener.opens:
            assert isinstance(bind(exercise, bare), Missing)
            assert not isinstance(bind(exercise, with_it), Missing)


def test_of_things_that_open_as_near_movements_the_cheaper_comes_first(bare: Setting, catalog: Catalog) -> None:
    openers = would_open(asked("pull_up", bare, catalog), bare, catalog)
    order = [(-round(opener.near, 1), opener.cost) for opener in openers]
    assert order == sorted(order)


def test_what_the_house_has_is_not_offered(cabin: Setting, catalog: Catalog) -> None:
    openers = would_open(asked("pull_up", cabin, catalog), cabin, catalog)
    assert {opener.kind_id for opener in openers}.isdisjoint({thing.kind_id for thing in cabin.things})


def test_nothing_would_open_what_needs_a_gym(bare: Setting, catalog: Catalog) -> None:
    openers = would_open(asked("back_squat_bar", bare, catalog), bare, catalog)
    assert not any(exercise.needs_gym for opener in openers for exercise in opener.opens)
