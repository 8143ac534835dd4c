"""No dose leaves the range an exercise is trained in, whatever is asked of whom."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.load import load_catalog
from core.effort.capacity import Prescription, ceiling
from core.effort.dose import equivalent_dose
from core.effort.relation import LONGEST_REPS
from core.exercise.model import Exercise
from core.fit.model import Binding
from core.house.model import Experience, Person
from core.loads.model import Recipe, Rung
from core.quantity import Measured
from tests.dipper import INES, TOMAS

CATALOG = load_catalog()
EXERCISES = st.sampled_from(CATALOG.exercises)
PEOPLE = st.builds(
    Person,
    id=st.just("p"),
    name=st.just("Someone"),
    body_mass_kg=st.floats(30, 250),
    height_cm=st.floats(120, 230),
    experience=st.sampled_from(Experience),
)
ASKED = st.one_of(
    st.builds(Prescription, reps=st.floats(1, 200), effort=st.floats(1, 10)),
    st.builds(Prescription, seconds=st.floats(1, 14400), effort=st.floats(1, 10)),
    st.builds(Prescription, distance_m=st.floats(1, 100_000), effort=st.floats(1, 10)),
)
SHARES = st.one_of(st.none(), st.floats(0.05, 1.0))


def bound(exercise: Exercise, load_kg: float = 0.0) -> Binding:
    need = exercise.load_need
    if need is None or load_kg == 0:
        return Binding(exercise_id=exercise.id)
    rung = Rung(use=need.uses[0], mass=Measured(load_kg, 0.1), recipe=Recipe(parts=()), set_up_s=0.0)
    return Binding(exercise_id=exercise.id, load=rung)


@given(EXERCISES, PEOPLE, ASKED, SHARES, st.floats(0, 100))
def test_no_dose_passes_the_upper_end_of_the_exercises_own_range(
    exercise: Exercise, person: Person, asked: Prescription, share: float | None, load_kg: float
) -> None:
    dose = equivalent_dose(exercise, bound(exercise, load_kg), person, ceiling(exercise, person), asked, share)
    amounts = dose.reps or dose.seconds or dose.distance_m
    assert amounts is not None
    low, high = amounts
    assert 1 <= low <= high <= exercise.typical[1]
    if dose.reps is None:
        assert low >= exercise.typical[0]
    else:
        assert high <= LONGEST_REPS
    assert dose.sets >= 1
    assert 0 <= dose.reachable <= 1


@given(EXERCISES, st.floats(1, 14400))
def test_one_long_bout_is_never_repeated(exercise: Exercise, seconds: float) -> None:
    asked = Prescription(sets=5, seconds=seconds)
    dose = equivalent_dose(exercise, bound(exercise), INES, ceiling(exercise, INES), asked, None)
    if dose.seconds is not None and dose.seconds[1] > 240:
        assert dose.sets == 1


@pytest.mark.parametrize(("exercise_id", "seconds"), [("stair_climb", 1800), ("towel_row_hold", 720), ("plank", 600)])
def test_a_long_time_asked_for_stays_within_what_the_movement_is_held(exercise_id: str, seconds: float) -> None:
    exercise = CATALOG.exercise_by_id[exercise_id]
    asked = Prescription(seconds=seconds)
    dose = equivalent_dose(exercise, bound(exercise), TOMAS, ceiling(exercise, TOMAS), asked, None)
    assert dose.seconds is not None
    assert dose.seconds[1] <= exercise.typical[1]


def test_slow_lowering_pull_ups_stay_few() -> None:
    exercise = CATALOG.exercise_by_id["slow_lowering_pull_up"]
    strong = replace(INES, experience=Experience.TRAINED)
    asked = Prescription(sets=3, reps=12, effort=7.0)
    dose = equivalent_dose(exercise, bound(exercise), strong, ceiling(exercise, strong), asked, 0.6)
    assert dose.reps is not None
    assert dose.reps[1] <= 6


def test_the_very_movement_that_was_written_keeps_its_written_repetitions() -> None:
    exercise = CATALOG.exercise_by_id["push_up"]
    top = replace(ceiling(exercise, INES), measured=True, one_rep=Measured(60.0, 3.0))
    asked = Prescription(sets=3, reps=25, effort=8.0)
    dose = equivalent_dose(exercise, bound(exercise), INES, top, asked, None)
    assert dose.reps is not None
    assert exercise.typical[1] < dose.reps[1] <= 25
