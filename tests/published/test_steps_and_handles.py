"""Steps, seats and handles against building codes and handling guidance; each figure in its own units.

Stairs: International Residential Code 2018 R311.7.5.1 (home riser at most 7 3/4 in), International Building Code
1011.5.2 (public riser 4 to 7 in) and 1011.10 (spiral riser at most 9 1/2 in), the latter two second-hand. Step ladders:
ANSI A14 duty ratings. Seats: BIFMA guideline 15 to 19.9 in, second-hand; adult school chairs 46 cm, EN 1729. Handles:
coupling classes of the revised NIOSH lifting equation, Publication 94-110 (revised 2021).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.exercise.model import Use
from core.things.affordance import Grade, grade_use
from core.things.grip import HANDLE_CM, HANDLE_LENGTH_CM, HANDLE_ROOM_CM
from core.things.load_uses import LIFT_LENGTH_CM
from core.things.model import Thing
from core.things.plain_uses import HOME_RISER_CM, STEEP_RISER_CM
from tests.dipper import INES, TOWPATH, carrier, steps

INCH_CM = 2.54
KINDS = load_catalog().kind_by_id
DUTY_RATINGS_LB = {"IAA": 375, "IA": 300, "I": 250, "II": 225, "III": 200}


def flight(rise_cm: float) -> Thing:
    thing = steps()
    assert thing.facts.flight is not None
    return replace(thing, facts=replace(thing.facts, flight=replace(thing.facts.flight, rise_cm=rise_cm)))


def test_home_stairs_rise_no_more_than_the_code_allows() -> None:
    assert pytest.approx(7.75 * INCH_CM, abs=0.05) == HOME_RISER_CM
    kind = KINDS["stairs"].facts.flight
    assert kind is not None
    assert kind.rise_cm <= 7.75 * INCH_CM


def test_public_steps_rise_between_four_and_seven_inches() -> None:
    kind = KINDS["public_steps"].facts.flight
    assert kind is not None
    assert 4 * INCH_CM <= kind.rise_cm <= 7 * INCH_CM


def test_steeper_than_a_spiral_stair_is_very_steep() -> None:
    assert pytest.approx(9.5 * INCH_CM, abs=0.05) == STEEP_RISER_CM


@pytest.mark.parametrize(
    ("rise_cm", "grade"),
    [(7 * INCH_CM, Grade.GOOD), (7.75 * INCH_CM, Grade.GOOD), (8.5 * INCH_CM, Grade.FAIR), (10 * INCH_CM, Grade.POOR)],
)
def test_flights_are_graded_by_their_risers(rise_cm: float, grade: Grade) -> None:
    assert grade_use(flight(rise_cm), Use.STAIRS, INES, TOWPATH).grade is grade


def test_a_step_stool_carries_the_lowest_duty_rating() -> None:
    kg = DUTY_RATINGS_LB["III"] * 0.45359237
    assert KINDS["step_stool"].facts.rating_kg == pytest.approx(kg, abs=0.05)


@pytest.mark.parametrize("kind_id", ["dining_chair", "folding_chair", "office_chair", "bench", "park_bench", "stool"])
def test_ordinary_seats_stand_within_the_range_of_chairs(kind_id: str) -> None:
    seat_cm = KINDS[kind_id].facts.surface_cm
    assert seat_cm is not None
    assert 15 * INCH_CM <= seat_cm <= 19.9 * INCH_CM


def test_the_best_handle_is_the_one_of_the_coupling_classes() -> None:
    assert pytest.approx((0.75 * INCH_CM, 1.5 * INCH_CM), abs=0.02) == HANDLE_CM
    assert pytest.approx(4.5 * INCH_CM, abs=0.1) == HANDLE_LENGTH_CM
    assert pytest.approx(2 * INCH_CM, abs=0.1) == HANDLE_ROOM_CM
    assert pytest.approx(16 * INCH_CM, abs=0.7) == LIFT_LENGTH_CM


@pytest.mark.parametrize(
    ("grip_cm", "grade"),
    [(2.0, Grade.GOOD), (3.8, Grade.GOOD), (1.5, Grade.FAIR), (4.5, Grade.FAIR), (0.5, Grade.POOR), (9.0, Grade.POOR)],
)
def test_a_handle_off_those_sizes_is_graded_lower(grip_cm: float, grade: Grade) -> None:
    jug = carrier()
    handled = replace(jug, facts=replace(jug.facts, grip_cm=grip_cm, grip_length_cm=11.5, grip_room_cm=5.0))
    assert grade_use(handled, Use.ONE_HAND, INES, TOWPATH).grade is grade
