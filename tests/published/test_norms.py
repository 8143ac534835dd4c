"""Spot values of the published tables of test results.

Canadian Society for Exercise Physiology, push-ups (rows for men of 15 to 29 as a college prints them, the rest as a
clinic prints the Canadian Standardized Fitness Test); Centers for Disease Control and Prevention 2017, STEADI 30-second
chair stand; student symposium 2014, Linfield, forearm plank of 168 people of 18 to 25.
"""

from __future__ import annotations

import pytest

from catalog.protocols import load_norms, load_protocols
from core.assess.norms import NoNorm, Place, place_of
from core.house.model import Sex

NORMS = load_norms()
PROTOCOLS = {protocol.id: protocol for protocol in load_protocols()}


def place(test: str, result: float, sex: Sex, age: int) -> Place:
    found = place_of(NORMS, PROTOCOLS[test], result, age=age, sex=sex)
    assert isinstance(found, Place), found
    return found


@pytest.mark.parametrize(
    ("reps", "age", "band"),
    [
        (39, 18, "excellent"),
        (38, 18, "very good"),
        (29, 18, "very good"),
        (23, 18, "good"),
        (18, 18, "fair"),
        (17, 18, "needs improvement"),
        (36, 25, "excellent"),
        (35, 25, "very good"),
        (22, 25, "good"),
        (21, 25, "fair"),
        (16, 25, "needs improvement"),
    ],
)
def test_push_ups_of_men_up_to_29(reps: int, age: int, band: str) -> None:
    assert place("push_up", reps, Sex.MALE, age).band == band


@pytest.mark.parametrize(
    ("reps", "age", "band"),
    [
        (33, 17, "excellent"),
        (30, 25, "excellent"),
        (20, 35, "very good"),
        (10, 35, "fair"),
        (4, 45, "needs improvement"),
    ],
)
def test_push_ups_of_women_are_those_from_the_knees(reps: int, age: int, band: str) -> None:
    assert place("push_up_knees", reps, Sex.FEMALE, age).band == band


def test_a_woman_on_her_toes_has_no_row_in_the_canadian_table() -> None:
    found = place_of(NORMS, PROTOCOLS["push_up"], 20, age=30, sex=Sex.FEMALE)
    assert isinstance(found, NoNorm)
    assert "no row for women of 30" in found.why


STEADI = {
    Sex.MALE: {62: 14, 67: 12, 72: 12, 77: 11, 82: 10, 87: 8, 92: 7},
    Sex.FEMALE: {62: 12, 67: 11, 72: 10, 77: 10, 82: 9, 87: 8, 92: 4},
}


@pytest.mark.parametrize(("sex", "age", "cut_off"), [(s, a, c) for s, rows in STEADI.items() for a, c in rows.items()])
def test_chair_stands_below_the_cut_off_are_below_average(sex: Sex, age: int, cut_off: int) -> None:
    assert place("chair_stand_30", cut_off, sex, age).band == "average or above"
    assert place("chair_stand_30", cut_off - 1, sex, age).band == "below average"


@pytest.mark.parametrize("age", [59, 95])
def test_chair_stands_outside_60_to_94_have_no_norm(age: int) -> None:
    assert isinstance(place_of(NORMS, PROTOCOLS["chair_stand_30"], 12, age=age, sex=Sex.MALE), NoNorm)


@pytest.mark.parametrize(
    ("seconds", "sex", "band"),
    [
        (76, Sex.MALE, "lowest quarter"),
        (77, Sex.MALE, "second quarter"),
        (128, Sex.MALE, "third quarter"),
        (129, Sex.MALE, "highest quarter"),
        (62, Sex.FEMALE, "lowest quarter"),
        (121, Sex.FEMALE, "highest quarter"),
    ],
)
def test_planks_of_students(seconds: int, sex: Sex, band: str) -> None:
    assert place("plank", seconds, sex, 20).band == band


def test_every_table_says_where_it_comes_from_and_how_far_it_was_checked() -> None:
    for table in NORMS:
        assert table.source_ids
        assert len(table.note) > 10
