"""Double progression: amount first, then the next load inside the published step; what comes where it is too far."""

from __future__ import annotations

from itertools import pairwise

import pytest

from core.effort.dose import Dose
from core.exercise.model import Option
from core.fit.setting import Setting
from core.plan.clock import block_seconds, middle
from core.plan.courses import Course
from core.plan.model import Block
from core.plan.rungs import MOST_STEP, Rungs
from tests.core.plan.block_examples import planned, sack, setting_with
from tests.dipper import carrier

TEN = Dose(sets=3, reps=(8, 10), effort=8.0)
FINE = setting_with(carrier(1))
COARSE = setting_with(sack("small", 10.0), sack("big", 22.0))
MIDDLING = setting_with(sack("small", 10.0), sack("big", 14.0))


def course(block: Block, setting: Setting) -> Course:
    return Course(block, Rungs(block.exercise, setting))


def loads(found: Course, steps: range) -> list[float]:
    return [found.at(step).binding.load_kg for step in steps]


def reps(found: Course, step: int) -> tuple[int, int]:
    dose = found.dose(found.at(step))
    assert dose.reps is not None
    return dose.reps


def test_repetitions_grow_before_the_load() -> None:
    found = course(planned("hug_squat", FINE, TEN, 14.0), FINE)
    assert [reps(found, step) for step in range(3)] == [(8, 10), (9, 11), (10, 12)]
    assert len(set(loads(found, range(3)))) == 1
    assert found.at(3).binding.load_kg > found.at(2).binding.load_kg


def test_with_the_new_load_the_repetitions_come_back() -> None:
    found = course(planned("hug_squat", FINE, TEN, 14.0), FINE)
    assert middle(reps(found, 3)) < middle(reps(found, 2))
    assert "so the load goes from" in found.at(3).why


def test_a_step_of_the_load_stays_inside_two_to_ten_per_cent_where_the_house_can() -> None:
    found = course(planned("hug_squat", FINE, TEN, 14.0), FINE)
    masses = loads(found, range(24))
    steps = [after / before - 1 for before, after in pairwise(masses) if after != before]
    assert len(steps) >= 4
    assert all(0.02 - 1e-6 <= step <= MOST_STEP + 1e-6 for step in steps)
    assert not any(found.at(step).note for step in range(24))


def test_every_load_is_a_rung_of_the_ladder() -> None:
    block = planned("hug_squat", FINE, TEN, 14.0)
    found = course(block, FINE)
    load, need = block.binding.load, block.exercise.load_need
    assert load is not None
    assert need is not None
    masses = FINE.ladder(load.use, need.count, block.exercise.posture).masses_kg
    for kg in loads(found, range(-6, 24)):
        assert min(abs(kg - mass) for mass in masses) < 0.006


def test_load_and_repetitions_never_grow_in_the_same_step() -> None:
    found = course(planned("hug_squat", FINE, TEN, 14.0), FINE)
    for step in range(1, 24):
        before, after = found.at(step - 1), found.at(step)
        if after.binding.load_kg > before.binding.load_kg:
            assert middle(reps(found, step)) < middle(reps(found, step - 1))


def test_where_the_next_load_is_too_far_a_lever_comes_first() -> None:
    found = course(planned("hug_squat", COARSE, TEN, 10.0), COARSE)
    state = found.at(3)
    assert state.binding.load_kg == pytest.approx(10.0)
    assert state.lever in found.block.exercise.options
    assert "22.0 kg, 120 % more, so first" in state.why
    assert found.dose(state).options == (state.lever,)


def test_the_wide_step_comes_after_the_lever_and_says_so() -> None:
    found = course(planned("hug_squat", COARSE, TEN, 10.0), COARSE)
    at = next(step for step in range(30) if found.at(step).binding.load_kg > 12)
    assert any(found.at(step).lever for step in range(at))
    assert "10.0 to 22.0 kg is a step of 120 %, more than the published 2 to 10 %" in found.at(at).note
    assert found.at(at).lever is None
    assert middle(reps(found, at)) < middle(reps(found, 2))


def test_a_load_that_is_a_small_part_of_what_is_moved_may_step_wider_and_says_so() -> None:
    found = course(planned("hug_squat", MIDDLING, TEN, 10.0), MIDDLING)
    assert found.at(3).binding.load_kg == pytest.approx(14.0)
    assert "10.0 to 14.0 kg is a step of 40 %, but 6 % of all you move" in found.at(3).note


def test_at_the_top_of_the_ladder_a_lever_is_used_and_then_it_stays() -> None:
    only = setting_with(sack("only", 12.0))
    found = course(planned("hug_squat", only, TEN, 12.0), only)
    assert max(loads(found, range(30))) == min(loads(found, range(30))) == pytest.approx(12.0)
    assert any(found.at(step).lever for step in range(30))
    assert "top of its range" in found.at(29).why


def test_the_body_alone_grows_to_the_top_of_its_range_and_no_further() -> None:
    found = course(planned("push_up", FINE, Dose(sets=3, reps=(8, 12), effort=8.0)), FINE)
    top = found.block.exercise.typical[1]
    tops = [reps(found, step)[1] for step in range(20)]
    assert max(tops) <= top
    assert reps(found, 1) == (9, 13)


def test_a_hold_grows_by_five_seconds_to_the_top_of_its_range() -> None:
    found = course(planned("plank", FINE, Dose(sets=3, seconds=(35, 45))), FINE)
    assert [found.dose(found.at(step)).seconds for step in (0, 1, 2)] == [(35, 45), (40, 50), (45, 55)]
    assert found.dose(found.at(20)).seconds == (60, 60)


def test_a_carry_grows_in_way_before_load_and_never_in_both() -> None:
    found = course(planned("suitcase_carry", FINE, Dose(sets=3, distance_m=(30, 40)), 10.0), FINE)
    doses = [found.dose(found.at(step)) for step in range(16)]
    masses = loads(found, range(16))
    assert max(masses) > masses[0]
    for step in range(1, 16):
        way, before = doses[step].distance_m, doses[step - 1].distance_m
        assert way is not None
        assert before is not None
        assert not (masses[step] > masses[step - 1] and way[0] > before[0])


def test_steps_back_ease_off_and_take_a_lighter_load_in_the_end() -> None:
    found = course(planned("hug_squat", FINE, TEN, 14.0), FINE)
    assert reps(found, -1) == (7, 9)
    assert reps(found, -2) == (6, 8)
    assert found.at(-3).binding.load_kg < 14.0
    assert reps(found, -40) == reps(found, -6)


def test_the_share_of_the_maximum_follows_the_load() -> None:
    block = planned("hug_squat", FINE, Dose(sets=3, reps=(8, 10), share=0.6), 14.0)
    found = course(block, FINE)
    state = found.at(3)
    share = found.dose(state).share
    assert share is not None
    rungs = Rungs(block.exercise, FINE)
    assert share / 0.6 == pytest.approx(rungs.moved_kg(state.binding) / rungs.moved_kg(block.binding))


@pytest.mark.parametrize(("options", "seconds"), [((), 4.0), ((Option.SLOW_LOWERING,), 6.0), ((Option.PAUSE,), 6.0)])
def test_a_lever_that_takes_time_counts_on_the_clock(options: tuple[Option, ...], seconds: float) -> None:
    block = planned("hug_squat", FINE, TEN, 14.0)
    plain, slow = Dose(sets=1, reps=(10, 10)), Dose(sets=1, reps=(10, 10), options=options)
    gained = block_seconds(block.exercise, slow, 0) - block_seconds(block.exercise, plain, 0)
    assert gained == pytest.approx(10 * (seconds - 4.0))
