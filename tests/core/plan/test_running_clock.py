"""The running clock: pause, skip, back, sleep; steps that are over end by themselves and the time adds up."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.plan.running_clock import LONGEST_GAP_S, RunningClock
from core.plan.session_steps import Step, StepKind

STEPS = (
    Step(kind=StepKind.WARM_UP, seconds=10, timed=True),
    Step(kind=StepKind.WORK, seconds=20, timed=False),
    Step(kind=StepKind.REST, seconds=30, timed=True),
    Step(kind=StepKind.COOL_DOWN, seconds=5, timed=True),
)


def after(clock: RunningClock, *moments: float) -> RunningClock:
    for now_s in moments:
        clock = clock.look(now_s)
    return clock


def seconds(first: int, last: int) -> list[float]:
    return [float(now) for now in range(first, last + 1)]


@pytest.fixture
def begun() -> RunningClock:
    return RunningClock(steps=STEPS).run(0.0)


def test_nothing_runs_before_it_is_begun() -> None:
    clock = RunningClock(steps=STEPS)
    assert not clock.running
    assert clock.look(100.0) == clock
    assert clock.session_left_s == 65


def test_a_timed_step_ends_by_itself_and_what_is_over_goes_to_the_next(begun: RunningClock) -> None:
    clock = after(begun, 4.0, 8.0, 11.5)
    assert clock.at == 1
    assert clock.spent_s == pytest.approx(1.5)
    assert clock.taken_s == ((0, 10),)


def test_a_counted_step_waits_for_the_person(begun: RunningClock) -> None:
    clock = after(begun, *seconds(1, 60))
    assert clock.at == 1
    assert clock.left_s == 0
    on = clock.skip(60.0)
    assert on.at == 2
    assert on.taken_s == ((0, 10), (1, 50.0))


def test_a_pause_stands_still(begun: RunningClock) -> None:
    paused = after(begun, 4.0).pause(6.0)
    assert not paused.running
    assert paused.look(500.0).spent_s == 6
    assert after(paused.run(500.0), 502.0).spent_s == 8


def test_time_asleep_does_not_count_and_the_clock_stands_paused(begun: RunningClock) -> None:
    clock = after(begun, 3.0, 3.0 + LONGEST_GAP_S + 1)
    assert (clock.running, clock.slept, clock.spent_s) == (False, True, 3.0)
    going = clock.run(3600.0)
    assert (going.running, going.slept) == (True, False)
    assert after(going, 3602.0).spent_s == 5


def test_skip_and_back(begun: RunningClock) -> None:
    clock = after(begun, 4.0).skip(5.0)
    assert (clock.at, clock.taken_s) == (1, ((0, 5.0),))
    again = clock.back(6.0)
    assert (again.at, again.spent_s, again.taken_s) == (0, 0.0, ())
    later = after(clock, 8.0).back(9.0)
    assert (later.at, later.spent_s) == (1, 0.0)


def test_back_at_the_very_beginning_stays_there(begun: RunningClock) -> None:
    assert begun.back(1.0).at == 0


def test_the_end_is_the_end(begun: RunningClock) -> None:
    clock = begun
    for now in range(1, 5):
        clock = clock.skip(float(now))
    assert clock.done
    assert (clock.step, clock.left_s, clock.session_left_s, clock.running) == (None, 0.0, 0.0, False)
    assert clock.skip(9.0) == clock
    assert clock.back(9.0).at == 3


def test_a_monotonic_time_that_went_back_does_no_harm(begun: RunningClock) -> None:
    assert after(begun, 5.0, 4.0).spent_s == 5.0


@given(st.lists(st.tuples(st.floats(0, 4), st.sampled_from(["look", "skip", "pause", "run"])), max_size=60))
def test_the_seconds_of_steps_add_up_to_the_time_it_ran(moves: list[tuple[float, str]]) -> None:
    clock, now_s, ran_s = RunningClock(steps=STEPS).run(0.0), 0.0, 0.0
    for passed_s, deed in moves:
        now_s += passed_s
        before, clock = clock, clock.look(now_s)
        if before.running:
            ran_s += _until_done(before, clock) if clock.done else passed_s
        clock = getattr(clock, deed)(now_s)
    spent = sum(seconds for _, seconds in clock.taken_s) + (0.0 if clock.done else clock.spent_s)
    assert spent == pytest.approx(ran_s, abs=1e-6)


def _until_done(before: RunningClock, after_it: RunningClock) -> float:
    """Of a look past the end only what the steps took counts."""
    taken = sum(seconds for _, seconds in after_it.taken_s)
    return taken - sum(seconds for _, seconds in before.taken_s) - before.spent_s
