"""What a swap may hand to anyone: light first loads, doses inside their range, nothing that is refused elsewhere."""

from __future__ import annotations

import pytest

from catalog.load import load_catalog
from core.effort.capacity import Prescription
from core.fit.first_load import most_at_first_kg
from core.fit.setting import Setting
from core.house.model import Experience, Person
from core.swap.model import Answer, Cause, SwapRequest
from core.swap.swap import swap
from tests.dipper import CABIN, INES, TOMAS, TOWPATH, dipper

CATALOG = load_catalog()
ELDER = Person(id="elder", name="Someone", body_mass_kg=52.0, height_cm=158.0, experience=Experience.NEW)
ASKED = ("bench_press_bar", "back_squat_bar", "deadlift_bar", "pull_up", "overhead_press_bar", "cable_row", "easy_run")


def answers(asked_id: str, person: Person, prescription: Prescription | None = None) -> tuple[Answer, ...]:
    found: list[Answer] = []
    for place in (CABIN, TOWPATH):
        setting = Setting(dipper(), person, CATALOG.material_by_id, place)
        asked = CATALOG.exercise_by_id[asked_id]
        found.extend(swap(SwapRequest(asked=asked, prescription=prescription), setting, CATALOG).answers)
    return tuple(found)


@pytest.mark.parametrize("asked_id", ASKED)
@pytest.mark.parametrize("person", [ELDER, TOMAS, INES], ids=lambda person: str(person.id))
def test_no_answer_starts_heavier_than_a_first_load(asked_id: str, person: Person) -> None:
    for answer in answers(asked_id, person):
        load, need = answer.binding.load, answer.exercise.load_need
        if load is not None and need is not None:
            most_kg = most_at_first_kg(answer.exercise, load.use, need.count, person)
            assert load.mass.value <= most_kg + 1e-9, answer.exercise.id


def test_a_light_load_says_that_it_is_where_to_begin() -> None:
    pressed = [answer for answer in answers("bench_press_bar", ELDER) if answer.exercise.id == "one_hand_floor_press"]
    assert pressed
    assert all(any("is where to begin" in why for why in answer.why) for answer in pressed)


def test_a_written_load_is_proof_enough() -> None:
    wanted = Prescription(sets=4, reps=8, load_kg=60.0, effort=8.0)
    heaviest = max(answer.binding.load_kg for answer in answers("deadlift_bar", TOMAS, wanted))
    assert heaviest > 0.2 * TOMAS.body_mass_kg


@pytest.mark.parametrize("seconds", [20.0, 300.0, 1740.0, 7200.0])
@pytest.mark.parametrize("asked_id", ["easy_run", "stair_climb", "plank", "towel_row_hold"])
def test_long_and_short_times_stay_within_each_movements_own_range(asked_id: str, seconds: float) -> None:
    for answer in answers(asked_id, INES, Prescription(sets=3, seconds=seconds)):
        if answer.dose.seconds is not None:
            low, high = answer.exercise.typical
            assert low <= answer.dose.seconds[0] <= answer.dose.seconds[1] <= high, answer.exercise.id


@pytest.mark.parametrize("cause", list(Cause))
def test_repetitions_stay_within_each_movements_own_range(cause: Cause) -> None:
    for asked_id in ("push_up", "pull_up", "body_squat", "lat_pulldown_machine"):
        request = SwapRequest(asked=CATALOG.exercise_by_id[asked_id], cause=cause)
        for place in (CABIN, TOWPATH):
            for answer in swap(request, Setting(dipper(), INES, CATALOG.material_by_id, place), CATALOG).answers:
                if answer.dose.reps is not None:
                    assert 1 <= answer.dose.reps[0] <= answer.dose.reps[1] <= answer.exercise.typical[1]
