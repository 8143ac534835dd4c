"""What may carry a person: standing and hanging by rating or recorded check, sitting and leaning by milder rules."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.exercise.model import Use
from core.things.affordance import Grade, grade_use
from core.things.model import Facts, Flight, Form, Handle, Hazard, RatingOrigin, Rigidity
from tests.core.things.examples import (
    BEAM,
    BOX_STEP,
    CHAIR,
    INES,
    TOWPATH,
    WET_TOWPATH,
    a_thing,
    checked,
    graded,
    owned,
    rated,
)

NEVER_STOOD_ON = [
    (Hazard.FOLDING, "it folds: never stand on it"),
    (Hazard.WHEELED, "it rolls: never stand on it"),
    (Hazard.GLASS, "glass: never stand on it"),
]


def test_standing_needs_a_rating_or_an_own_check() -> None:
    found = graded(BOX_STEP, Use.STEP)
    assert (found.grade, found.reason) == (Grade.NO, "no load rating; record your own check first")
    assert graded(BOX_STEP, Use.STEP, **rated(150)).grade is Grade.GOOD
    assert graded(BOX_STEP, Use.STEP, own_check=checked(100)).grade is Grade.GOOD


def test_body_and_load_together_stay_within_the_rating() -> None:
    step = a_thing(BOX_STEP, **rated(80))
    assert grade_use(step, Use.STEP, INES, load_kg=12.0).grade is Grade.GOOD
    found = grade_use(step, Use.STEP, INES, load_kg=12.1)
    assert (found.grade, found.reason) == (Grade.NO, "rated 80 kg: this puts 81 kg on it")


def test_an_own_check_covers_what_it_took_and_is_shown_as_theirs_and_dated() -> None:
    step = a_thing(BOX_STEP, own_check=checked(85))
    fine = grade_use(step, Use.STEP, INES, load_kg=17.0)
    assert fine.grade is Grade.GOOD
    assert "your check of 3 Nov 2026 took 85 kg" in fine.factors
    found = grade_use(step, Use.STEP, INES, load_kg=20.0)
    assert (found.grade, found.reason) == (Grade.NO, "your check of 3 Nov 2026 took 85 kg: this puts 88 kg on it")


def test_a_check_does_not_overrule_a_lower_label() -> None:
    assert graded(BOX_STEP, Use.STEP, own_check=checked(200), **rated(60)).grade is Grade.NO


def test_a_smaller_stated_share_does_not_lighten_standing_or_hanging() -> None:
    assert grade_use(a_thing(BOX_STEP, **rated(60)), Use.STEP, INES, bears=0.5).grade is Grade.NO
    assert grade_use(a_thing(BEAM, **rated(60)), Use.HANG_BAR, INES, bears=0.5).grade is Grade.NO


@pytest.mark.parametrize(("hazard", "reason"), NEVER_STOOD_ON)
@pytest.mark.parametrize("facts", [BOX_STEP, replace(CHAIR, surface_cm=30.0)])
def test_folding_wheeled_and_glass_things_are_never_stood_on(facts: Facts, hazard: Hazard, reason: str) -> None:
    found = graded(facts, Use.STEP, own_check=checked(200), hazards=frozenset({hazard}), **rated(300))
    assert (found.grade, found.reason) == (Grade.NO, reason)


def test_soft_and_small_things_are_not_stood_on() -> None:
    assert graded(BOX_STEP, Use.STEP, rigidity=Rigidity.SOFT, **rated(200)).reason == "it gives way under the foot"
    assert (
        graded(BOX_STEP, Use.STEP, length_cm=20.0, width_cm=10.0, **rated(200)).reason == "too small for a whole foot"
    )


def test_stairs_are_built_to_be_walked_on_and_need_no_figure() -> None:
    assert grade_use(owned("stairs"), Use.STEP, INES).grade is Grade.GOOD
    assert grade_use(owned("stairs"), Use.STAIRS, INES).grade is Grade.GOOD


@pytest.mark.parametrize(
    ("height_cm", "grade"),
    [(20.0, Grade.GOOD), (40.0, Grade.GOOD), (45.0, Grade.FAIR), (56.0, Grade.POOR), (62.0, Grade.NO)],
)
def test_a_step_is_the_worse_the_more_it_bends_the_knee(height_cm: float, grade: Grade) -> None:
    found = graded(BOX_STEP, Use.STEP, surface_cm=height_cm, **rated(200))
    assert found.grade is grade


def test_wet_stone_is_not_stepped_on() -> None:
    steps = owned("lock_steps")
    assert grade_use(steps, Use.STEP, INES, TOWPATH).grade is Grade.GOOD
    for use in (Use.STEP, Use.STAIRS):
        assert grade_use(steps, use, INES, WET_TOWPATH).reason == "slippery when wet: wait until it is dry"


def test_an_ordinary_chair_stays_useful() -> None:
    chair = owned("dining_chair")
    for use in (Use.SIT, Use.HANDS, Use.FEET, Use.BALANCE):
        assert grade_use(chair, use, INES).grade is Grade.GOOD, use
    assert grade_use(chair, Use.STEP, INES).grade is Grade.NO


def test_a_folding_stool_is_for_sitting_only() -> None:
    stool = owned("folding_stool")
    assert grade_use(stool, Use.SIT, INES).grade is Grade.FAIR
    assert grade_use(stool, Use.BALANCE, INES).grade is Grade.POOR
    for use in (Use.STEP, Use.HANDS, Use.FEET):
        assert grade_use(stool, use, INES).grade is Grade.NO, use


def test_wheels_roll_away_from_hands_and_feet_and_sit_badly() -> None:
    chair = owned("office_chair")
    assert grade_use(chair, Use.SIT, INES).grade is Grade.POOR
    for use in (Use.HANDS, Use.FEET, Use.BALANCE):
        assert grade_use(chair, use, INES).reason == "it rolls away", use


def test_a_known_rating_holds_for_sitting_and_leaning_too() -> None:
    assert graded(CHAIR, Use.SIT, **rated(60)).grade is Grade.NO
    assert graded(CHAIR, Use.HANDS, **rated(60)).grade is Grade.GOOD
    assert graded(CHAIR, Use.HANDS, **rated(40)).grade is Grade.NO


def test_light_things_that_tip_are_only_fair_to_lean_on() -> None:
    tips = frozenset({Hazard.TIPS})
    for use in (Use.SIT, Use.HANDS, Use.FEET, Use.BALANCE):
        assert graded(CHAIR, use, hazards=tips).grade is Grade.FAIR, use


def test_hanging_needs_a_rating_and_a_standing_check_is_none() -> None:
    assert graded(BEAM, Use.HANG_BAR).reason == "hanging needs a load rating"
    assert graded(BEAM, Use.HANG_BAR, own_check=checked(150)).grade is Grade.NO
    assert graded(BEAM, Use.HANG_BAR, **rated(150)).grade is Grade.GOOD
    assert graded(BEAM, Use.HANG_BAR, **rated(60)).grade is Grade.NO


def test_a_rating_by_the_owner_says_so() -> None:
    found = graded(BEAM, Use.HANG_BAR, **rated(150, RatingOrigin.OWN_CHECK))
    assert "rated 150 kg, by you" in found.factors


def test_a_bar_with_little_to_spare_allows_no_swinging() -> None:
    assert graded(BEAM, Use.HANG_BAR, **rated(80)).reason == "little to spare in the rating: no swinging, no jerks"


@pytest.mark.parametrize(
    ("height_cm", "grade"), [(118.0, Grade.NO), (200.0, Grade.FAIR), (225.0, Grade.GOOD), (260.0, Grade.FAIR)]
)
def test_a_bar_hangs_best_at_the_reach_of_the_arms(height_cm: float, grade: Grade) -> None:
    assert graded(BEAM, Use.HANG_BAR, surface_cm=height_cm, **rated(150)).grade is grade


def test_a_thick_beam_needs_rings_or_a_towel_to_hang_from() -> None:
    beam = replace(BEAM, form=Form.ANCHOR_POINT, handle=Handle.NONE)
    assert graded(beam, Use.HANG_BAR, **rated(200)).reason.startswith("too thick to hang from by hand")


def test_rows_need_a_rating_or_an_own_check() -> None:
    low = replace(BEAM, surface_cm=100.0)
    assert graded(low, Use.ROW_EDGE).grade is Grade.NO
    assert graded(low, Use.ROW_EDGE, **rated(60)).grade is Grade.GOOD
    assert graded(low, Use.ROW_EDGE, own_check=checked(70)).grade is Grade.FAIR
    assert graded(low, Use.ROW_EDGE, own_check=checked(40)).grade is Grade.NO


def test_tables_that_tip_fold_roll_or_are_glass_are_not_rowed_from() -> None:
    table = replace(CHAIR, form=Form.TABLE, surface_cm=75.0)
    for hazard in (Hazard.TIPS, Hazard.FOLDING, Hazard.WHEELED, Hazard.GLASS):
        assert graded(table, Use.ROW_EDGE, hazards=frozenset({hazard}), **rated(200)).grade is Grade.NO, hazard


def test_doors_and_rails_are_not_made_to_be_pulled_on() -> None:
    assert (
        grade_use(owned("door_frame"), Use.ANCHOR, INES).reason == "a door and its frame are not made to be pulled on"
    )
    assert grade_use(owned("handrail"), Use.ANCHOR, INES).grade is Grade.NO
    assert grade_use(owned("handrail"), Use.ROW_EDGE, INES).grade is Grade.NO
    assert grade_use(owned("handrail"), Use.BALANCE, INES).grade is Grade.GOOD


def test_an_anchor_carries_half_the_body_unless_the_movement_says_otherwise() -> None:
    post = replace(BEAM, form=Form.ANCHOR_POINT, surface_cm=120.0)
    assert graded(post, Use.ANCHOR, **rated(40)).grade is Grade.GOOD
    assert grade_use(a_thing(post, **rated(40)), Use.ANCHOR, INES, bears=0.7).grade is Grade.NO


def test_an_unmeasured_height_is_asked_for() -> None:
    for use in (Use.SIT, Use.HANDS, Use.FEET):
        assert graded(CHAIR, use, surface_cm=None).reason == "its height is not known: measure it"


def test_a_beam_overhead_is_nothing_to_hold_for_balance() -> None:
    assert graded(replace(BEAM, form=Form.ANCHOR_POINT), Use.BALANCE).reason == "too high to hold for balance"


def test_small_blocks_are_not_asked_to_bear_anyone() -> None:
    assert grade_use(owned("brick"), Use.SIT, INES).reason == "not a seat"
    assert grade_use(owned("concrete_block"), Use.SIT, INES).grade is Grade.GOOD


def test_without_a_person_a_rating_is_enough() -> None:
    assert grade_use(a_thing(BOX_STEP, **rated(50)), Use.STEP).grade is Grade.GOOD


def test_a_flight_counts_its_own_rise() -> None:
    steep = replace(owned("stairs").facts, flight=Flight(count=10, rise_cm=44.0))
    assert graded(steep, Use.STEP).reason.startswith("a high step: your knee starts bent to")
