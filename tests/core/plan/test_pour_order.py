"""Pours of a session: counted exactly, and never more than the best order of its blocks needs."""

from __future__ import annotations

import random
from itertools import permutations

import pytest

from core.exercise.model import Pattern
from core.plan.menu import Candidate
from core.plan.pour_order import in_order, least_pours, pours_during
from core.plan.validate_pours import fewest_pours
from tests.core.plan.examples import candidate, movement, water

A, B, C = water("jug", 1), water("jug", 2), water("jug", 3)


def filled(name: str, pattern: Pattern, *fills: tuple[object, int]) -> Candidate:
    return candidate(movement(name, pattern), fills=fills)  # type: ignore[arg-type]  # states, as the test names them


def count(blocks: tuple[Candidate, ...], pieces: int = 1) -> int:
    return sum(1 for _ in pours_during(blocks, {"jug": pieces, "bucket": 1}))


def test_equal_fills_are_done_together() -> None:
    squat, hinge, push = (
        filled(name, pattern, (state, 1))
        for name, pattern, state in (
            ("squat", Pattern.SQUAT, A),
            ("hinge", Pattern.HINGE, B),
            ("push", Pattern.PUSH_LEVEL, A),
        )
    )
    assert count((squat, hinge, push)) == 2
    ordered = in_order((hinge, push, squat), {"jug": 1})
    assert [one.exercise.id for one in ordered] == ["squat", "push", "hinge"]
    assert count(ordered) == 1


def test_the_usual_order_stays_where_no_pour_is_saved() -> None:
    squat, hinge = filled("squat", Pattern.SQUAT, (A, 1)), filled("hinge", Pattern.HINGE, (B, 1))
    plank = candidate(movement("plank", Pattern.BRACE_FRONT))
    push = candidate(movement("push", Pattern.PUSH_LEVEL))
    ordered = in_order((plank, hinge, push, squat), {"jug": 2})
    assert [one.exercise.id for one in ordered] == ["squat", "hinge", "push", "plank"]


def test_a_pair_takes_two_pieces() -> None:
    single, pair = filled("squat", Pattern.SQUAT, (A, 1)), filled("hinge", Pattern.HINGE, (B, 2))
    assert count((single, pair), pieces=2) == 1
    assert count((single, pair), pieces=3) == 0
    assert least_pours((single, pair), {"jug": 2}) == 1


@pytest.mark.parametrize("seed", range(150))
def test_no_order_needs_fewer_pours(seed: int) -> None:
    draw = random.Random(seed)
    pieces = draw.choice((1, 2))
    patterns = (Pattern.SQUAT, Pattern.HINGE, Pattern.LUNGE, Pattern.PUSH_LEVEL, Pattern.PULL_LEVEL)
    blocks = []
    for pattern in draw.sample(patterns, draw.choice((3, 4, 5))):
        fills: list[tuple[object, int]] = [(draw.choice((A, B, C)), draw.randint(1, pieces))]
        if draw.random() < 0.3:
            fills.append((water("bucket", draw.choice((4.0, 6.0))), 1))
        blocks.append(filled(str(pattern), pattern, *fills))
    every = [count(order, pieces) for order in permutations(blocks)]
    ordered = in_order(blocks, {"jug": pieces, "bucket": 1})
    assert count(ordered, pieces) == min(every)
    assert least_pours(blocks, {"jug": pieces, "bucket": 1}) <= min(every)


def test_the_checker_counts_pours_by_itself() -> None:
    one, two, three = ("water", 1.0), ("water", 2.0), ("water", 3.0)
    assert fewest_pours([(one, 1), (two, 1), (one, 1)], 1) == 2
    assert fewest_pours([(one, 1), (two, 1), (one, 1)], 2) == 0
    assert fewest_pours([(one, 1), (two, 1), (three, 1), (one, 1)], 2) == 1
    assert fewest_pours([(one, 2), (two, 1), (one, 2)], 2) == 2
