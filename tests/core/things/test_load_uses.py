"""What may be held, carried and pressed: grips by size, and the safety rules for things in the hands."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from core.exercise.model import LOAD_USES, Posture, Use
from core.house.model import Place
from core.quantity import Measured
from core.things.affordance import Grade, grade_use
from core.things.model import Closure, Form, Handle, Hazard, Rigidity
from tests.core.things.examples import CABIN, HALL, INES, JUG, SACK, TOWPATH, a_thing, graded, owned

IN_HAND = tuple(use for use in LOAD_USES if use not in (Use.BARBELL, Use.MACHINE, Use.CABLE))


def test_a_handled_sealed_jug_is_good_in_one_hand_and_overhead() -> None:
    assert graded(JUG, Use.ONE_HAND).grade is Grade.GOOD
    assert graded(JUG, Use.OVERHEAD).grade is Grade.GOOD


@pytest.mark.parametrize("use", IN_HAND)
def test_what_held_chemicals_is_never_a_load(use: Use) -> None:
    found = graded(JUG, use, count=2, hazards=frozenset({Hazard.HELD_CHEMICALS}))
    assert found.grade is Grade.NO
    assert found.reason == "it held fuel or chemicals: keep it out of training"


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"hazards": frozenset({Hazard.GLASS})}, "glass: never overhead"),
        ({"hazards": frozenset({Hazard.DUSTY})}, "dusty: never over your face"),
        ({"hazards": frozenset({Hazard.SPLITS})}, "it can split: never overhead"),
        ({"closure": Closure.OPEN}, "not sealed: never overhead"),
        ({"closure": Closure.LID}, "not sealed: never overhead"),
        ({"closure": Closure.TIED}, "not sealed: never overhead"),
        ({"handle": Handle.NONE}, "no handle: never overhead"),
        ({"handle": Handle.RIM}, "no handle: never overhead"),
    ],
)
def test_glass_dusty_unsealed_and_unhandled_things_never_go_overhead(changes: dict[str, Any], reason: str) -> None:
    found = graded(JUG, Use.OVERHEAD, **changes)
    assert (found.grade, found.reason) == (Grade.NO, reason)


def test_a_body_the_hand_closes_round_counts_as_its_handle_overhead() -> None:
    assert graded(JUG, Use.OVERHEAD, handle=Handle.NONE, length_cm=7.0, width_cm=7.0).grade is Grade.GOOD


def test_nothing_goes_above_the_ceiling_and_the_reason_gives_both_heights() -> None:
    found = grade_use(a_thing(JUG), Use.OVERHEAD, INES, CABIN)
    assert (found.grade, found.reason) == (Grade.NO, "Cabin is 1.93 m high, you reach 2.20 m")


def test_a_tall_thing_needs_more_room_overhead_than_a_low_one() -> None:
    place = replace(CABIN, ceiling_cm=224.0)
    assert grade_use(a_thing(JUG, height_cm=12.0), Use.OVERHEAD, INES, place).grade is Grade.GOOD
    assert grade_use(a_thing(JUG, height_cm=45.0), Use.OVERHEAD, INES, place).grade is Grade.NO


def test_seated_or_lying_a_low_cabin_leaves_room_overhead() -> None:
    jug = a_thing(JUG)
    assert grade_use(jug, Use.OVERHEAD, INES, CABIN, posture=Posture.SEATED).grade is Grade.GOOD
    assert grade_use(jug, Use.OVERHEAD, INES, CABIN, posture=Posture.FLOOR).grade is Grade.GOOD
    lower = replace(CABIN, ceiling_cm=180.0)
    assert grade_use(jug, Use.OVERHEAD, INES, lower, posture=Posture.SEATED).reason.endswith("m seated")


@pytest.mark.parametrize("place", [HALL, TOWPATH, None])
def test_a_high_or_open_place_does_not_limit_pressing(place: Place | None) -> None:
    assert grade_use(a_thing(JUG), Use.OVERHEAD, INES, place).grade is Grade.GOOD


def test_without_a_person_the_ceiling_is_a_note() -> None:
    found = grade_use(a_thing(JUG), Use.OVERHEAD, None, CABIN)
    assert found.grade is Grade.GOOD
    assert found.factors == ("Cabin is 1.93 m high: choose a person to check the reach",)


@pytest.mark.parametrize(
    ("grip_cm", "grade"),
    [(0.4, Grade.POOR), (1.5, Grade.FAIR), (1.9, Grade.GOOD), (3.8, Grade.GOOD), (4.5, Grade.FAIR), (8.0, Grade.POOR)],
)
def test_a_handle_suits_the_hand_between_19_and_38_mm(grip_cm: float, grade: Grade) -> None:
    """NIOSH Publication 94-110, table 6: handle diameter 1.9 to 3.8 cm."""
    assert graded(JUG, Use.ONE_HAND, grip_cm=grip_cm).grade is grade


def test_a_handle_shorter_than_the_published_length_is_noted_and_one_too_short_for_the_fingers_is_fair() -> None:
    assert graded(JUG, Use.ONE_HAND, grip_length_cm=11.5).factors == ()
    noted = graded(JUG, Use.ONE_HAND, grip_length_cm=10.0)
    assert (noted.grade, noted.factors) == (Grade.GOOD, ("short handle: 10 cm",))
    assert graded(JUG, Use.ONE_HAND, grip_length_cm=7.0).grade is Grade.FAIR
    assert graded(JUG, Use.ONE_HAND, grip_room_cm=2.0).grade is Grade.FAIR


def test_a_big_sack_has_nothing_to_grip_in_one_hand() -> None:
    found = graded(SACK, Use.ONE_HAND)
    assert (found.grade, found.reason) == (Grade.NO, "nothing to grip")


@pytest.mark.parametrize(
    ("thickness_cm", "grade"), [(6.0, Grade.GOOD), (9.0, Grade.FAIR), (11.0, Grade.POOR), (13.0, Grade.NO)]
)
def test_a_round_body_is_gripped_the_worse_the_thicker_it_is(thickness_cm: float, grade: Grade) -> None:
    found = graded(JUG, Use.ONE_HAND, handle=Handle.NONE, length_cm=thickness_cm, width_cm=thickness_cm)
    assert found.grade is grade


def test_a_pair_takes_two_alike() -> None:
    assert graded(JUG, Use.PAIR, count=2).grade is Grade.GOOD
    found = graded(JUG, Use.PAIR, count=1)
    assert (found.grade, found.reason) == (Grade.NO, "you have one: it takes two alike")


def test_a_soft_dusty_sack_is_good_to_hug_and_on_the_shoulder_with_the_dust_named() -> None:
    sack = owned("coal_bag")
    for use in (Use.HUG, Use.SHOULDER):
        found = grade_use(sack, use, INES)
        assert found.grade is Grade.GOOD
        assert "dusty: keep it off your face" in found.factors


def test_an_open_bucket_is_for_hanging_arms_only() -> None:
    bucket = owned("bucket_ten", count=2)
    assert grade_use(bucket, Use.PAIR, INES).grade is Grade.GOOD
    assert grade_use(bucket, Use.HUG, INES).grade is Grade.POOR
    for use in (Use.SHOULDER, Use.BACK, Use.SWING, Use.OVERHEAD):
        assert grade_use(bucket, use, INES).grade is Grade.NO, use


def test_straps_make_a_bag_good_on_the_back_and_a_jug_is_not() -> None:
    assert grade_use(owned("backpack"), Use.BACK, INES).grade is Grade.GOOD
    assert graded(JUG, Use.BACK).reason == "no straps: put it in a backpack"


def test_dragging_is_for_outdoors_and_marks_a_floor_inside() -> None:
    sack = a_thing(SACK)
    assert grade_use(sack, Use.DRAG, INES, TOWPATH).grade is Grade.GOOD
    assert grade_use(sack, Use.DRAG, INES, HALL).grade is Grade.FAIR
    assert grade_use(sack, Use.DRAG, INES).factors == ("needs clear ground outdoors",)


def test_only_one_solid_handled_piece_is_good_to_swing() -> None:
    assert grade_use(owned("kettlebell"), Use.SWING, INES).grade is Grade.GOOD
    assert graded(JUG, Use.SWING).grade is Grade.POOR
    assert graded(SACK, Use.SWING).grade is Grade.NO


def test_a_load_of_unknown_mass_must_be_weighed_first() -> None:
    found = graded(JUG, Use.HUG, mass=None)
    assert (found.grade, found.reason) == (Grade.NO, "its mass is not known: weigh it or give its label")


def test_a_fixed_thing_is_no_load() -> None:
    assert graded(JUG, Use.HUG, fixed=True).reason == "it is fixed in its place"


@pytest.mark.parametrize(("size", "grade"), [(40.0, Grade.GOOD), (95.0, Grade.POOR), (130.0, Grade.NO)])
def test_hugging_ends_where_the_arms_do(size: float, grade: Grade) -> None:
    assert graded(SACK, Use.HUG, length_cm=size).grade is grade


def test_a_thing_that_is_no_load_is_refused_in_the_words_of_the_use() -> None:
    found = grade_use(owned("wall"), Use.HUG, INES)
    assert (found.grade, found.reason, found.factors) == (Grade.NO, "not a load to hold", ())


def test_two_hands_need_a_long_handle_or_two() -> None:
    assert graded(JUG, Use.TWO_HANDS, grip_length_cm=20.0).grade is Grade.GOOD
    assert graded(JUG, Use.TWO_HANDS).reason == "the hands overlap on one handle"
    assert graded(JUG, Use.TWO_HANDS, handle=Handle.TWO_LOOPS).grade is Grade.GOOD
    assert graded(SACK, Use.TWO_HANDS).grade is Grade.FAIR


def test_lifting_between_the_feet_ends_at_40_cm_of_width() -> None:
    """NIOSH Publication 94-110, table 6: containers longer than 40 cm are harder to lift."""
    wide: dict[str, Any] = {"handle": Handle.TWO_LOOPS, "height_cm": 20.0}
    assert graded(JUG, Use.BETWEEN_FEET, length_cm=60.0, width_cm=39.0, **wide).grade is Grade.GOOD
    assert graded(JUG, Use.BETWEEN_FEET, length_cm=60.0, width_cm=45.0, **wide).reason == "too wide to stand over"


def test_soft_things_sag_in_front_and_lie_well_on_a_shoulder() -> None:
    soft: dict[str, Any] = {"rigidity": Rigidity.SOFT}
    assert graded(SACK, Use.FRONT, length_cm=38.0, **soft).reason == "it sags: hold it from below"
    assert graded(SACK, Use.SHOULDER, **soft).grade is Grade.GOOD
    assert graded(SACK, Use.SHOULDER).reason == "hard edges on the shoulder: pad it well"


def test_the_same_question_has_the_same_answer() -> None:
    first = grade_use(a_thing(JUG), Use.OVERHEAD, INES, CABIN)
    assert grade_use(a_thing(JUG), Use.OVERHEAD, INES, CABIN) == first


def test_a_barbell_serves_the_uses_of_a_bar_and_not_the_hug() -> None:
    bar = owned("barbell")
    assert bar.facts.form is Form.BARBELL
    assert bar.facts.mass is not None
    assert bar.facts.mass.value == pytest.approx(Measured(20.0).value)
    assert grade_use(bar, Use.BACK, INES).grade is Grade.GOOD
    assert grade_use(bar, Use.HUG, INES).grade is Grade.NO
