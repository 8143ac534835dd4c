"""The length of one bout, whatever it is counted in."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.load import load_catalog
from core.effort.bout import CARRY_M_S, RUN_M_S, WALK_M_S, bout_s, dose_bout_s, pace_m_s
from core.effort.capacity import Prescription
from core.effort.dose import Dose
from core.exercise.model import Exercise

CATALOG = load_catalog()
BY_ID = CATALOG.exercise_by_id


def test_the_usual_walking_pace_is_that_of_the_marching_tables() -> None:
    # FM 21-18 by way of FM 21-20: strides of 30 in at 106 a minute are 4.85 km/h.
    assert pytest.approx(30 * 0.0254 * 106 / 60, abs=0.01) == WALK_M_S


@pytest.mark.parametrize(
    ("exercise_id", "pace"), [("easy_run", RUN_M_S), ("brisk_walk", WALK_M_S), ("pair_carry", CARRY_M_S)]
)
def test_pace_goes_with_the_movement(exercise_id: str, pace: float) -> None:
    assert pace_m_s(BY_ID[exercise_id]) == pace


def test_a_written_set_lasts_as_long_as_it_says() -> None:
    assert bout_s(BY_ID["plank"], Prescription(seconds=45.0)) == 45.0
    assert bout_s(BY_ID["easy_run"], Prescription(distance_m=2500.0)) == pytest.approx(1000.0)
    assert bout_s(BY_ID["push_up"], Prescription(reps=10)) == 10 * BY_ID["push_up"].rep_s


@given(st.sampled_from(CATALOG.exercises))
def test_without_a_word_it_is_the_middle_of_the_exercises_own_range(exercise: Exercise) -> None:
    low, high = exercise.typical
    middle = (low + high) / 2
    unit = {"time": 1.0, "reps": exercise.rep_s, "distance": 1 / pace_m_s(exercise)}[exercise.dose.value]
    assert bout_s(exercise, Prescription()) == pytest.approx(middle * unit)


def test_a_dose_counts_at_the_middle_of_its_range() -> None:
    assert dose_bout_s(BY_ID["plank"], Dose(sets=3, seconds=(30, 40))) == 35.0
    assert dose_bout_s(BY_ID["push_up"], Dose(sets=3, reps=(8, 12))) == 10 * BY_ID["push_up"].rep_s
    assert dose_bout_s(BY_ID["pair_carry"], Dose(sets=3, distance_m=(30, 50))) == pytest.approx(40.0)
