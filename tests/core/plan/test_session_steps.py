"""The steps of a session add up to its seconds, to the second, for every day of every week of a block."""

from __future__ import annotations

import pytest

from core.exercise.model import Sides
from core.plan.model import DayKind, DayPlan
from core.plan.session_steps import Step, StepKind, session_steps
from tests.core.plan.block_examples import PEOPLE, block_of

DAYS = [
    pytest.param(week.week.days[day.weekday], week.week.fills, id=f"{name}-{week.number}-{day.weekday}")
    for name in PEOPLE
    for week in block_of(name).weeks[:4]
    for day in week.week.days
    if day.kind is not DayKind.REST
]


def of_kind(steps: tuple[Step, ...], kind: StepKind) -> list[Step]:
    return [step for step in steps if step.kind is kind]


@pytest.mark.parametrize(("day", "fills"), DAYS)
def test_the_steps_add_up_to_the_session(day: DayPlan, fills: object) -> None:
    steps = session_steps(day, fills)  # type: ignore[arg-type]  # the fills of its week
    assert sum(step.seconds for step in steps) == pytest.approx(day.seconds, abs=1e-6)
    assert all(step.seconds >= 0 for step in steps)


@pytest.mark.parametrize(("day", "fills"), DAYS)
def test_every_set_of_every_side_is_a_step(day: DayPlan, fills: object) -> None:
    steps = session_steps(day, fills)  # type: ignore[arg-type]  # the fills of its week
    work = of_kind(steps, StepKind.WORK)
    sided = day.kind in (DayKind.STRENGTH, DayKind.MOBILITY)
    expected = sum(block.dose.sets * (2 if sided and block.exercise.sides is Sides.EACH else 1) for block in day.blocks)
    assert len(work) == expected
    assert len(of_kind(steps, StepKind.POUR)) == day.pour_s // 60


def test_a_session_begins_with_the_warm_up_and_ends_with_the_cool_down() -> None:
    day = block_of("ines").weeks[1].week.days[1]
    kinds = [step.kind for step in session_steps(day)]
    assert kinds[: len(day.warm_up)] == [StepKind.WARM_UP] * len(day.warm_up)
    assert kinds[-len(day.cool_down) :] == [StepKind.COOL_DOWN] * len(day.cool_down)


def test_repetitions_are_counted_and_holds_are_timed() -> None:
    steps = of_kind(session_steps(block_of("ines").weeks[1].week.days[1]), StepKind.WORK)
    for step in steps:
        assert step.block is not None
        assert step.timed is (step.block.dose.seconds is not None)
