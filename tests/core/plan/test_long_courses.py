"""Walks, runs and loaded walks: one thing at a time, a tenth at most, inside the minutes and under the cap."""

from __future__ import annotations

from itertools import pairwise

import pytest

from core.effort.dose import Dose
from core.fit.setting import Setting
from core.plan.long_courses import (
    MOST_MASS_SHARE,
    PACE_M_PER_S,
    LongCourse,
    light_seconds,
    rounds_added,
    walk_facts,
)
from core.plan.model import Block, DayKind
from core.plan.rungs import MOST_STEP, Rungs
from tests.core.plan.block_examples import planned, setting_with
from tests.dipper import INES, daypack, tins

HOUR = Dose(sets=1, seconds=(3000, 3000), effort=4.0)
PACK = setting_with(daypack(), tins(24))


def long_course(block: Block, setting: Setting, most_s: int = 3000) -> LongCourse:
    cap = MOST_MASS_SHARE * setting.person.body_mass_kg
    return LongCourse(block, Rungs(block.exercise, setting, most_kg=cap), most_s)


@pytest.fixture
def loaded() -> LongCourse:
    return long_course(planned("loaded_walk", PACK, HOUR, 5.0), PACK)


@pytest.fixture
def run() -> LongCourse:
    return long_course(planned("easy_run", PACK, HOUR), PACK)


def test_a_run_begins_at_four_fifths_of_the_minutes(run: LongCourse) -> None:
    assert run.at(0).seconds == 2400


def test_a_run_grows_by_a_tenth_at_most_to_the_minutes_there_are(run: LongCourse) -> None:
    times = [run.at(step).seconds for step in range(12)]
    assert times == sorted(times)
    assert times[-1] == 3000
    assert all(after <= before * (1 + MOST_STEP) for before, after in pairwise(times))
    assert all(time % 60 == 0 for time in times)


def test_once_the_minutes_are_full_the_effort_grows_and_then_stays(run: LongCourse) -> None:
    added = [run.at(step).effort_added for step in range(14)]
    full = next(step for step in range(14) if run.at(step).seconds == 3000)
    assert set(added[: full + 1]) == {0.0}
    assert added[full + 1] == 0.5
    assert added[-1] == 1.0
    assert "minutes are full" in run.at(13).why


def test_a_loaded_walk_begins_at_five_to_ten_per_cent_of_the_body(loaded: LongCourse) -> None:
    assert 0.05 <= loaded.at(0).binding.load_kg / INES.body_mass_kg <= 0.10


def test_a_pattern_with_a_heavier_pack_begins_light_all_the_same() -> None:
    heavy = long_course(planned("loaded_walk", PACK, HOUR, 11.0), PACK)
    assert 0.05 <= heavy.at(0).binding.load_kg / INES.body_mass_kg <= 0.10


def test_only_one_of_mass_time_and_effort_changes_at_a_time(loaded: LongCourse) -> None:
    for step in range(1, 20):
        before, after = loaded.at(step - 1), loaded.at(step)
        changes = [
            after.binding.load_kg != before.binding.load_kg,
            after.seconds != before.seconds,
            after.effort_added != before.effort_added,
        ]
        assert sum(changes) <= 1


def test_mass_and_time_grow_by_turns(loaded: LongCourse) -> None:
    assert loaded.at(1).seconds > loaded.at(0).seconds
    assert loaded.at(2).binding.load_kg > loaded.at(1).binding.load_kg
    assert loaded.at(3).seconds > loaded.at(2).seconds


def test_no_loaded_walk_passes_its_cap_nor_the_published_step(loaded: LongCourse) -> None:
    masses = [loaded.at(step).binding.load_kg for step in range(40)]
    assert max(masses) <= MOST_MASS_SHARE * INES.body_mass_kg
    steps = [after / before - 1 for before, after in pairwise(masses)]
    wide = [at for at, step in enumerate(steps) if step > MOST_STEP + 1e-9]
    assert all("is a step of" in loaded.at(at + 1).note for at in wide)


def test_where_the_next_load_is_too_far_only_time_grows() -> None:
    few = setting_with(daypack(), tins(6))
    found = long_course(planned("loaded_walk", few, HOUR, 3.9), few, 3600)
    masses = [found.at(step).binding.load_kg for step in range(20)]
    assert max(masses) == min(masses) == pytest.approx(3.92, abs=0.01)
    assert "the load is at its cap" in found.at(19).why


def test_steps_back_shorten_and_leave_the_load(loaded: LongCourse) -> None:
    assert loaded.at(-1).seconds < loaded.at(0).seconds
    assert loaded.at(-1).binding.load_kg == loaded.at(0).binding.load_kg
    assert loaded.at(-40).seconds == loaded.at(-5).seconds


def test_a_light_week_takes_three_fifths_in_whole_minutes() -> None:
    assert light_seconds(3000) == 1800
    assert light_seconds(2280) % 60 == 0


def test_intervals_gain_one_round_after_two_steps_and_no_more() -> None:
    assert [rounds_added(step) for step in (-3, 0, 1, 2, 3, 9)] == [0, 0, 0, 1, 1, 1]


def test_a_loaded_walk_is_told_in_numbers(loaded: LongCourse) -> None:
    facts = walk_facts(loaded.block, DayKind.LOADED_WALK, INES.body_mass_kg)
    assert facts is not None
    assert facts.distance_m == pytest.approx(3000 * PACE_M_PER_S)
    assert facts.body_share == pytest.approx(facts.load_kg / 68)
    assert walk_facts(loaded.block, DayKind.EASY, 68) is None
