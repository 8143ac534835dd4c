"""A session as a list of steps in order, each with its planned seconds; their sum is the session's, to the second.

Timed steps (holds, walks, rests, changes, pours, warm-up, cool-down) end by themselves; counted ones (repetitions, a
way to carry) end when the person says so, and their seconds only plan.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from core.exercise.model import Sides
from core.plan.clock import REFILL_S, set_seconds
from core.plan.model import Block, DayKind, DayPlan, FillStep


class StepKind(StrEnum):
    """What a step is."""

    WARM_UP = "warm_up"
    WORK = "work"
    REST = "rest"
    CHANGE = "change"
    POUR = "pour"
    COOL_DOWN = "cool_down"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step: its kind, planned seconds, and for work the movement, which set of how many, and the side (1 or 2)."""

    kind: StepKind
    seconds: float
    timed: bool
    block: Block | None = None
    set_number: int = 0
    sets: int = 0
    side: int = 0
    pour: FillStep | None = None


def session_steps(day: DayPlan, fills: tuple[FillStep, ...] = ()) -> tuple[Step, ...]:
    """The steps of a day; `fills` are those of its week, of which the pours during this day are taken."""
    pours = [fill for fill in fills if fill.weekday == day.weekday and fill.during]
    return tuple(_steps(day, pours))


def _steps(day: DayPlan, pours: list[FillStep]) -> Iterator[Step]:
    yield from (_whole(block, StepKind.WARM_UP) for block in day.warm_up)
    for block in day.blocks:
        for pour in [pour for pour in pours if pour.for_exercise == block.exercise.name]:
            yield Step(kind=StepKind.POUR, seconds=REFILL_S, timed=True, pour=pour, block=block)
        if day.kind is DayKind.INTERVALS:
            yield from _rounds(block)
        elif day.kind in (DayKind.STRENGTH, DayKind.MOBILITY):
            yield from _sets(block)
        else:
            yield _whole(block, StepKind.WORK)
    yield from (_whole(block, StepKind.COOL_DOWN) for block in day.cool_down)


def _whole(block: Block, kind: StepKind) -> Step:
    return Step(kind=kind, seconds=block.seconds, timed=True, block=block, set_number=1, sets=1)


def _rounds(block: Block) -> Iterator[Step]:
    """Rounds of work and rest; the last rest is the change to the next movement."""
    rounds = block.dose.sets
    for number in range(1, rounds + 1):
        work_s = block.seconds / rounds - block.rest_s
        yield Step(kind=StepKind.WORK, seconds=work_s, timed=True, block=block, set_number=number, sets=rounds)
        yield Step(kind=StepKind.REST, seconds=block.rest_s, timed=True, block=block)


def _sets(block: Block) -> Iterator[Step]:
    """Sets, one side after the other where each is worked in turn, rests between them, then the change."""
    dose, spent_s = block.dose, 0.0
    sides = 2 if block.exercise.sides is Sides.EACH else 1
    side_s = set_seconds(block.exercise, dose) / sides
    for number in range(1, dose.sets + 1):
        for side in range(1, sides + 1):
            spent_s += side_s
            yield Step(
                kind=StepKind.WORK,
                seconds=side_s,
                timed=dose.seconds is not None,
                block=block,
                set_number=number,
                sets=dose.sets,
                side=side if sides == 2 else 0,
            )
        if number < dose.sets and block.rest_s:
            spent_s += block.rest_s
            yield Step(kind=StepKind.REST, seconds=block.rest_s, timed=True, block=block)
    yield Step(kind=StepKind.CHANGE, seconds=block.seconds - spent_s, timed=True)
