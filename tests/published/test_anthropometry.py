"""Body proportions against ANSUR II (US Army 2012, 4,082 men and 1,986 women; Gordon et al. 2014), mean and SD.

The ratios were computed per person from the open data. They describe fit adults, neither children nor the frail.
Drillis & Contini 1966 (as redrawn in Winter's textbook, second-hand) are kept apart: they overstate some breadths.
"""

from __future__ import annotations

import pytest

from catalog.load import load_catalog
from core.house.model import ARM_OF_STATURE, SHANK_TOP_OF_STATURE, SHOULDER_OF_STATURE, Person
from core.things.bodies import (
    HAND_OF_STATURE,
    HIP_OF_STATURE,
    SITTING_DROP_OF_STATURE,
    THIGH_OF_STATURE,
    knee_angle_deg,
)
from core.things.bodies import SHOULDER_OF_STATURE as SHOULDER_OF_THINGS

ANSUR = {
    "shoulder": ((0.8203, 0.0096), (0.8198, 0.0087)),
    "top of the shin": ((0.2665, 0.0081), (0.2687, 0.0084)),
    "hip": ((0.5128, 0.0152), (0.5190, 0.0144)),
    "hand": ((0.1101, 0.0042), (0.1112, 0.0047)),
    "upper arm": ((0.1909, 0.0061), (0.1911, 0.0065)),
    "forearm": ((0.1525, 0.0061), (0.1482, 0.0068)),
    "seat": ((0.2446, 0.0079), (0.2383, 0.0089)),
}
OURS = {
    "shoulder": SHOULDER_OF_STATURE,
    "top of the shin": SHANK_TOP_OF_STATURE,
    "hip": HIP_OF_STATURE,
    "hand": HAND_OF_STATURE,
}
DRILLIS_CONTINI_THIGH, DRILLIS_CONTINI_SHOULDER = 0.245, 0.818


def someone(height_cm: float) -> Person:
    return Person(id="p", name="Someone", body_mass_kg=70.0, height_cm=height_cm)


@pytest.mark.parametrize("part", OURS)
def test_a_ratio_lies_between_the_means_of_men_and_women_or_within_half_a_standard_deviation(part: str) -> None:
    (men, men_sd), (women, women_sd) = ANSUR[part]
    assert min(men - men_sd / 2, women - women_sd / 2) <= OURS[part] <= max(men + men_sd / 2, women + women_sd / 2)


def test_the_arm_is_the_sum_of_its_parts() -> None:
    for sex in (0, 1):
        parts = sum(ANSUR[part][sex][0] for part in ("upper arm", "forearm", "hand"))
        assert pytest.approx(parts, abs=0.005) == ARM_OF_STATURE


def test_reach_overhead_is_shoulder_and_arm() -> None:
    assert someone(175.0).reach_cm == pytest.approx((0.820 + 0.45) * 175.0)
    assert SHOULDER_OF_THINGS == SHOULDER_OF_STATURE


def test_sitting_down_lowers_the_shoulders_by_what_is_left_of_their_height() -> None:
    # Derived: shoulder 0.820 less seat 0.242 (both sexes) and shoulder above the seat 0.34 (ANSUR II).
    seat = sum(ANSUR["seat"][sex][0] for sex in (0, 1)) / 2
    assert pytest.approx(0.820 - seat - 0.34, abs=0.005) == SITTING_DROP_OF_STATURE


def test_thigh_and_shoulder_agree_with_drillis_and_contini() -> None:
    assert pytest.approx(DRILLIS_CONTINI_THIGH) == THIGH_OF_STATURE
    assert pytest.approx(DRILLIS_CONTINI_SHOULDER, abs=0.005) == SHOULDER_OF_STATURE


@pytest.mark.parametrize(("height_cm", "shoulder_mm"), [(150.0, 1230), (160.0, 1312), (175.0, 1435), (190.0, 1558)])
def test_shoulder_heights_for_statures(height_cm: float, shoulder_mm: float) -> None:
    assert 10 * SHOULDER_OF_STATURE * height_cm == pytest.approx(shoulder_mm, abs=1)


@pytest.mark.parametrize("height_cm", [150.0, 170.0, 190.0])
def test_a_stair_is_an_easy_step_and_a_thigh_high_one_a_right_angle(height_cm: float) -> None:
    person = someone(height_cm)
    assert 0.10 <= 19.7 / height_cm <= 0.132
    assert knee_angle_deg(19.7, person) < 75
    assert knee_angle_deg(THIGH_OF_STATURE * height_cm, person) == pytest.approx(90.0)


def test_an_ordinary_chair_is_too_high_a_step_for_many_women() -> None:
    # Derived: 45 cm stands above the seat height of most women (mean 38.8 cm, 95th percentile 42.8 cm).
    chair_cm = load_catalog().kind_by_id["dining_chair"].facts.surface_cm
    assert chair_cm is not None
    assert knee_angle_deg(chair_cm, someone(158.0)) > 90
