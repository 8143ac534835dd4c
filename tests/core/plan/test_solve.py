"""The solver's week is the best there is: compared with every week of small problems."""

from __future__ import annotations

import pytest

from core.exercise.model import Pattern
from core.house.wishes import Pin
from core.plan.model import DayKind, Status
from core.plan.problem import Problem
from core.plan.solve import solve
from tests.core.plan.examples import candidate, day_choice, movement, problem, random_problem, water
from tests.core.plan.exhaustive import best_costs, movements_cost, pours


def assert_best(small: Problem) -> None:
    expected = best_costs(small)
    found = solve(small)
    if not expected:
        assert found.status is Status.IMPOSSIBLE
        return
    assert found.status is Status.OPTIMAL
    assert found.kinds in expected
    assert found.objective == expected[found.kinds]
    assert movements_cost(small, found.chosen) == found.objective


@pytest.mark.parametrize("seed", range(40))
def test_the_best_week_of_a_small_problem(seed: int) -> None:
    assert_best(random_problem(seed))


@pytest.mark.parametrize("seed", range(40, 56))
def test_the_best_week_beside_the_one_there_is(seed: int) -> None:
    assert_best(random_problem(seed, kept=True))


@pytest.mark.parametrize("seed", range(60, 76))
def test_the_best_week_with_a_pin(seed: int) -> None:
    small = random_problem(seed)
    day = small.days[seed % len(small.days)]
    chosen = day.menus[DayKind.STRENGTH][seed % len(day.menus[DayKind.STRENGTH])]
    pins = (Pin(weekday=day.weekday, exercise_id=chosen.exercise.id),)
    assert_best(problem(small.days, dict(small.wanted), counts=dict(small.counts), pins=pins))


def test_fills_that_no_order_keeps_together_are_counted() -> None:
    """Two jugs and two buckets at two fills each, crosswise: the bound says two pours, every order takes three."""
    jug, jug2, bucket, bucket2 = water("jug", 1), water("jug", 2), water("bucket", 3), water("bucket", 5)
    crossed = ((jug, bucket), (jug, bucket2), (jug2, bucket), (jug2, bucket2))
    patterns = (Pattern.SQUAT, Pattern.HINGE, Pattern.PUSH_LEVEL, Pattern.PULL_LEVEL)
    menu = tuple(
        candidate(movement(f"m{at}", pattern), seconds=300, sets=3, fills=[(one, 1), (other, 1)])
        for at, (pattern, (one, other)) in enumerate(zip(patterns, crossed, strict=True))
    )
    small = problem([day_choice(0, {DayKind.STRENGTH: menu}, minutes=28)], {DayKind.STRENGTH: 1})
    assert pours(small, menu) == 3
    assert_best(small)
    assert len(solve(small).chosen[0]) == 4
    shorter = problem([day_choice(0, {DayKind.STRENGTH: menu}, minutes=27)], {DayKind.STRENGTH: 1})
    assert_best(shorter)
    assert len(solve(shorter).chosen[0]) == 3
