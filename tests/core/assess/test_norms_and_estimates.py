"""A norm is read only where a table covers age and sex; an estimate belongs to its own test."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.assess.aerobic import Estimate, NoEstimate
from core.assess.model import NormRow, NormTable, Standing
from core.assess.norms import NoNorm, Place, place_of
from core.assess.strength import capacities_after, capacity_from_test, with_capacities
from core.assess.vo2 import oxygen_uptake
from core.effort.capacity import ceiling
from core.exercise.model import Exercise
from core.house.model import Person, Sex
from core.knowledge import Catalog
from tests.core.assess.examples import CHAIR, JULY, MAY, MILE, SQUATS, result
from tests.dipper import INES

TABLE = NormTable(
    id="invented",
    protocol_id="chair_stand_30",
    name="An invented table",
    bands=("low", "middle", "high"),
    rows=(
        NormRow(sex=Sex.FEMALE, ages=(60, 64), starts=(10.0, 15.0)),
        NormRow(sex=Sex.FEMALE, ages=(70, 74), starts=(8.0, 12.0)),
    ),
    standing=Standing.SEEN,
    note="Invented for the test.",
    source_ids=("x",),
)


@pytest.fixture(scope="module")
def hug_squat(catalog: Catalog) -> Exercise:
    return catalog.exercise_by_id["hug_squat"]


@pytest.mark.parametrize(("reps", "band"), [(0, "low"), (9, "low"), (10, "middle"), (14, "middle"), (15, "high")])
def test_a_result_lies_in_the_band_that_begins_at_or_below_it(reps: int, band: str) -> None:
    found = place_of((TABLE,), CHAIR, reps, age=62, sex=Sex.FEMALE)
    assert isinstance(found, Place)
    assert found.band == band


def test_a_band_says_where_it_begins_and_ends() -> None:
    found = place_of((TABLE,), CHAIR, 12, age=62, sex=Sex.FEMALE)
    assert isinstance(found, Place)
    assert (found.starts, found.next_starts) == (10.0, 15.0)


@pytest.mark.parametrize(
    ("age", "sex", "words"),
    [
        (None, Sex.FEMALE, "age and sex"),
        (62, None, "age and sex"),
        (67, Sex.FEMALE, "no row for women of 67"),
        (62, Sex.MALE, "no row for men of 62"),
    ],
)
def test_no_table_is_stretched(age: int | None, sex: Sex | None, words: str) -> None:
    found = place_of((TABLE,), CHAIR, 12, age=age, sex=sex)
    assert isinstance(found, NoNorm)
    assert words in found.why


def test_a_test_without_a_table_says_so() -> None:
    found = place_of((TABLE,), MILE, 14, age=62, sex=Sex.FEMALE)
    assert isinstance(found, NoNorm)
    assert "No published norm is known" in found.why


def test_an_estimate_belongs_to_its_own_test() -> None:
    walker = replace(INES, birth_year=1986, sex=Sex.FEMALE)
    assert isinstance(oxygen_uptake(MILE, result(MILE, 14.5, pulse_bpm=130), walker), Estimate)
    assert oxygen_uptake(SQUATS, result(SQUATS, 12, load_kg=15), walker) is None


def test_an_estimate_without_a_pulse_or_an_age_says_what_is_missing() -> None:
    walker = replace(INES, birth_year=1986, sex=Sex.FEMALE)
    missing = oxygen_uptake(MILE, result(MILE, 14.5), walker)
    unknown = oxygen_uptake(MILE, result(MILE, 14.5, pulse_bpm=130), INES)
    assert isinstance(missing, NoEstimate)
    assert "pulse" in missing.why
    assert isinstance(unknown, NoEstimate)
    assert "age and sex" in unknown.why


def test_a_strength_test_becomes_the_capacity_that_doses_are_worked_out_from(hug_squat: Exercise) -> None:
    done = result(SQUATS, 12, load_kg=15.1)
    found = capacity_from_test(SQUATS, hug_squat, done, INES.body_mass_kg)
    assert found is not None
    assert found.pattern is hug_squat.main_pattern
    tested = ceiling(hug_squat, replace(INES, capacities=(found,)))
    assert tested.measured
    assert tested.one_rep.value == pytest.approx(found.one_rep_kg.value)
    assert "squats holding a load on 2026-05-04" in tested.told_by


def test_reps_left_in_the_tank_count_as_done(hug_squat: Exercise) -> None:
    one = capacity_from_test(SQUATS, hug_squat, result(SQUATS, 12, load_kg=15), 68)
    other = capacity_from_test(replace(SQUATS, reps_left=0), hug_squat, result(SQUATS, 14, load_kg=15), 68)
    assert one is not None
    assert other is not None
    assert one.one_rep_kg.value == pytest.approx(other.one_rep_kg.value)


@pytest.mark.parametrize("reps", [0, 29, 60])
def test_too_few_or_too_many_reps_say_nothing_of_strength(hug_squat: Exercise, reps: int) -> None:
    assert capacity_from_test(SQUATS, hug_squat, result(SQUATS, reps, load_kg=15), 68) is None


def test_an_endurance_test_says_nothing_of_strength(hug_squat: Exercise) -> None:
    assert capacity_from_test(MILE, hug_squat, result(MILE, 14, pulse_bpm=130), 68) is None


def test_a_newer_test_takes_the_place_of_an_older_one(hug_squat: Exercise) -> None:
    old = capacity_from_test(SQUATS, hug_squat, result(SQUATS, 8, MAY, load_kg=15), 68)
    new = capacity_from_test(SQUATS, hug_squat, result(SQUATS, 12, JULY, load_kg=15), 68)
    assert old is not None
    assert new is not None
    tested: Person = replace(INES, capacities=with_capacities(replace(INES, capacities=(old,)), [new]))
    assert tested.capacities == (new,)
    assert with_capacities(INES, [old, new]) == (new,)


def test_capacities_after_a_test_hold_the_new_one_and_nothing_where_it_says_nothing(hug_squat: Exercise) -> None:
    after = capacities_after(SQUATS, hug_squat, result(SQUATS, 12, load_kg=15), INES)
    assert after is not None
    assert [one.exercise_id for one in after] == ["hug_squat"]
    assert capacities_after(MILE, hug_squat, result(MILE, 14, pulse_bpm=130), INES) is None
