"""What a day may be chosen from: nothing beaten, nothing refused, no load a fixture may not bear."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.exercise.model import Family, Pattern
from core.fit.bind import bearable_kg, bind
from core.fit.model import Binding
from core.fit.setting import Setting
from core.house.model import Experience
from core.knowledge import Catalog
from core.plan.menu import MenuRequest, allowed, in_grains, refusal, strength_menu, undominated
from core.plan.model import Wave
from core.plan.pinned import DayPins
from tests.core.plan.examples import candidate, movement, water
from tests.dipper import CABIN, INES, TOWPATH, dipper


def order(catalog: Catalog, **changes: object) -> MenuRequest:
    setting = Setting(dipper(), INES, catalog.material_by_id, TOWPATH)
    plain = MenuRequest(setting=setting, catalog=catalog)
    return replace(plain, **changes)  # type: ignore[arg-type]  # any fields, as the test names them


def test_what_another_beats_in_every_way_is_not_offered() -> None:
    squat, lunge = movement("squat"), movement("lunge")
    best = candidate(squat, seconds=300, cost=10)
    slower = candidate(lunge, seconds=310, cost=10)
    filled = candidate(lunge, seconds=300, cost=10, fills=[(water("jug", 1), 1)])
    cheaper = candidate(movement("cheap"), seconds=320, cost=0)
    fewer = candidate(lunge, seconds=200, cost=10, sets=2)
    assert undominated([best, slower, filled, cheaper, fewer], frozenset()) == (best, cheaper, fewer)
    assert slower in undominated([best, slower], frozenset({"lunge"}))


def test_a_pair_at_a_fill_does_not_beat_a_single_one() -> None:
    jug = water("jug", 1)
    pair = candidate(movement("pair"), seconds=290, cost=0, fills=[(jug, 2)])
    single = candidate(movement("single"), seconds=300, cost=0, fills=[(jug, 1)])
    assert undominated([pair, single], frozenset()) == (pair, single)


def test_costs_are_counted_in_grains_of_five() -> None:
    assert [in_grains(points) for points in (0, 2, 3, 7, 8, 5000)] == [0, 0, 1, 1, 2, 1000]


def test_a_pin_lifts_level_and_ban_but_not_noise_nor_what_is_spared(catalog: Catalog) -> None:
    jack = catalog.exercise_by_id["jumping_jack"]
    name = frozenset({jack.id})
    pins = DayPins(movements=name)
    assert allowed(jack, order(catalog))
    assert refusal(jack, order(catalog, bans=name)) == "you banned it"
    assert allowed(jack, order(catalog, bans=name, pins=pins))
    assert refusal(jack, order(catalog, pins=pins, quiet=True)) == "it is too loud for quiet hours"
    cabin = Setting(dipper(), INES, catalog.material_by_id, CABIN)
    assert refusal(jack, order(catalog, pins=pins, setting=cabin)) == "it is too loud for the neighbours"
    sparing = Setting(dipper(), replace(INES, spares=jack.demands), catalog.material_by_id, TOWPATH)
    assert "which you spare" in refusal(jack, order(catalog, pins=pins, setting=sparing))
    hardest = max((e for e in catalog.exercises if not e.needs_gym), key=lambda e: (e.level, e.id))
    novice = Setting(dipper(), replace(INES, experience=Experience.NEW), catalog.material_by_id, TOWPATH)
    assert "work up to it" in refusal(hardest, order(catalog, setting=novice))
    assert allowed(hardest, order(catalog, setting=novice, pins=DayPins(movements=frozenset({hardest.id}))))


def test_every_family_offers_two_numbers_of_sets(catalog: Catalog) -> None:
    menu = strength_menu(order(catalog))
    assert {one.dose.sets for one in menu} == {2, 3}
    assert {one.dose.sets for one in strength_menu(order(catalog, wave=Wave(sets=0.5)))} == {1, 2}
    assert {one.dose.sets for one in strength_menu(order(catalog, wave=Wave(sets=1.25)))} == {3, 4}
    families = {one.exercise.family for one in menu}
    assert families >= {Family.SQUAT, Family.HINGE, Family.PUSH_LEVEL, Family.PULL_LEVEL, Family.CARRY, Family.TRUNK}


def test_a_plain_hinge_comes_before_a_lift_overhead(catalog: Catalog) -> None:
    hinges = [one for one in strength_menu(order(catalog)) if one.exercise.family is Family.HINGE]
    assert min(hinges, key=lambda one: one.cost).exercise.main_pattern is Pattern.HINGE


def test_no_offered_load_passes_what_its_fixture_may_bear(catalog: Catalog) -> None:
    """A bench rated for 45 kg bears a hand's share of Ines and 24 kg: rows on it keep below, at shared fills too."""
    house = dipper()
    weak = tuple(
        replace(thing, facts=replace(thing.facts, rating_kg=45.0)) if thing.id == "bench" else thing
        for thing in house.things
    )
    trained = replace(INES, experience=Experience.TRAINED)
    setting = Setting(replace(house, things=weak), trained, catalog.material_by_id, CABIN)
    menu = strength_menu(order(catalog, setting=setting, pins=DayPins(movements=frozenset({"one_hand_row"}))))
    loaded = [one for one in menu if one.binding.load is not None and "bench" in one.binding.thing_ids]
    assert loaded
    for one in loaded:
        assert one.binding.load is not None
        mass = one.binding.load.mass
        assert mass.value + mass.u95 <= bearable_kg(one.exercise, one.binding, setting)


def test_what_fixtures_bear_is_told(catalog: Catalog) -> None:
    setting = Setting(dipper(), INES, catalog.material_by_id, TOWPATH)
    row = catalog.exercise_by_id["inverted_row_bent_knees"]
    bound = bind(row, setting)
    assert isinstance(bound, Binding)
    (need,) = [need for need in row.needs if need.bears]
    assert bearable_kg(row, bound, setting) == pytest.approx(150.0 - need.bears * INES.body_mass_kg)
    plank = catalog.exercise_by_id["plank"]
    free = bind(plank, setting)
    assert isinstance(free, Binding)
    assert bearable_kg(plank, free, setting) == float("inf")
