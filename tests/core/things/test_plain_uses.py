"""Cloth, sticks, pads, places and gym gear, where things are, and the list of uses shown for a thing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.exercise.model import GYM_USES, Use
from core.things.affordance import Grade, affordances, form_serves, grade_use
from core.things.model import Flight
from tests.core.things.examples import CABIN, HALL, INES, TOWPATH, WET_TOWPATH, a_thing, owned, shipped

BEST = {
    "towel": Use.TOWEL,
    "resistance_band": Use.BAND,
    "broom": Use.STICK,
    "furniture_slider": Use.SLIDER,
    "mat": Use.PAD,
    "wall": Use.WALL,
    "door_frame": Use.DOOR_FRAME,
    "clear_floor": Use.FLOOR,
    "stairs": Use.STAIRS,
    "towpath": Use.ROUTE,
    "barbell": Use.BARBELL,
    "rack": Use.RACK,
    "flat_bench": Use.FLAT_BENCH,
    "machine": Use.MACHINE,
    "cable_machine": Use.CABLE,
    "rings": Use.RINGS,
}


@pytest.mark.parametrize(("kind_id", "use"), BEST.items())
def test_each_plain_use_has_a_thing_made_for_it(kind_id: str, use: Use) -> None:
    assert grade_use(owned(kind_id), use, INES).grade is Grade.GOOD


@pytest.mark.parametrize(("kind_id", "use"), BEST.items())
def test_a_plain_use_refuses_other_things(kind_id: str, use: Use) -> None:
    del kind_id
    assert grade_use(owned("brick"), use, INES).grade is Grade.NO


def test_gym_uses_are_served_by_gym_gear_only() -> None:
    for kind in shipped().values():
        if kind.group != "gear":
            assert not [use for use in GYM_USES if form_serves(kind.facts, use)], kind.id


def test_rings_need_a_rating_above_the_body() -> None:
    rings = owned("rings").facts
    assert grade_use(a_thing(rings, rating_kg=60.0), Use.RINGS, INES).grade is Grade.NO
    assert grade_use(a_thing(rings, rating_kg=None), Use.RINGS, INES).reason == "hanging needs a load rating"


def test_sliding_wants_a_floor_indoors() -> None:
    assert grade_use(owned("towel"), Use.SLIDER, INES, HALL).grade is Grade.FAIR
    assert grade_use(owned("towel"), Use.SLIDER, INES, TOWPATH).grade is Grade.NO


@pytest.mark.parametrize(
    ("count", "rise_cm", "grade"),
    [(13, 19.0, Grade.GOOD), (3, 19.0, Grade.FAIR), (13, 22.0, Grade.FAIR), (13, 26.0, Grade.POOR)],
)
def test_stairs_are_the_better_the_longer_and_flatter(count: int, rise_cm: float, grade: Grade) -> None:
    facts = replace(owned("stairs").facts, flight=Flight(count=count, rise_cm=rise_cm))
    assert grade_use(a_thing(facts), Use.STAIRS, INES).grade is grade


@pytest.mark.parametrize(
    ("metres", "grade"), [(500.0, Grade.GOOD), (10.0, Grade.FAIR), (3.0, Grade.POOR), (0.0, Grade.POOR)]
)
def test_a_way_is_the_better_the_longer(metres: float, grade: Grade) -> None:
    assert grade_use(a_thing(owned("towpath").facts, route_m=metres), Use.ROUTE, INES).grade is grade


def test_a_wet_path_is_poor() -> None:
    assert grade_use(owned("towpath"), Use.ROUTE, INES, WET_TOWPATH).grade is Grade.POOR


def test_lock_steps_are_not_in_the_cabin_and_stairs_not_on_the_towpath() -> None:
    assert grade_use(owned("lock_steps"), Use.STEP, INES, CABIN).reason == "it is outdoors, Cabin is indoors"
    assert grade_use(owned("stairs"), Use.STEP, INES, TOWPATH).reason == "it is indoors, Towpath is outdoors"


def test_a_thing_with_places_is_only_there_and_a_loose_one_everywhere() -> None:
    stairs = replace(owned("stairs"), place_ids=("towpath",))
    assert grade_use(stairs, Use.STEP, INES, TOWPATH).grade is Grade.GOOD
    assert grade_use(stairs, Use.STEP, INES, HALL).reason == "it is not in Hall"
    assert grade_use(owned("backpack"), Use.BACK, INES, TOWPATH).grade is Grade.GOOD


def test_affordances_list_what_the_form_can_serve_with_refusals_in_order_of_use() -> None:
    found = affordances(owned("coal_bag"), INES, CABIN)
    uses = [item.use for item in found]
    assert uses == sorted(uses, key=list(Use).index)
    grades = {item.use: item.grade for item in found}
    assert grades[Use.HUG] is Grade.GOOD
    assert grades[Use.ONE_HAND] is Grade.NO
    assert Use.WALL not in grades


@pytest.mark.parametrize("kind_id", sorted(shipped()))
def test_every_answer_has_a_reason(kind_id: str) -> None:
    for place in (None, CABIN, TOWPATH):
        for found in affordances(owned(kind_id, count=2), INES, place):
            assert found.reason, found
            assert not found.reason.endswith(("!", "."))
