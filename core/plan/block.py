"""Eight weeks (or 4 to 16): a baseline week, building weeks with an easy week every fourth, and a retest.

Each week is planned with the same movements as the first where they still fit, at an effort that rises through the
building weeks; the load follows on the ladder because the effort does. Easy weeks halve the sets and leave more in
reserve (reported deloads: about a week every 5 to 6 weeks, less volume and effort, same exercises; survey 2024).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from core.errors import InputError
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.model import Block, DayKind, Status, Wave, Week, WeekRequest
from core.plan.week import plan_week

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

BLOCK_WEEKS = (4, 16)
EASY_EVERY = 4
TEST_WAVE = Wave(name="test", sets=0.5, effort_shift=-1.0)
EASY_WAVE = Wave(name="easy", sets=0.5, effort_shift=-1.0)
RETEST_WAVE = Wave(name="retest", sets=0.5, effort_shift=-0.5)
BUILD_WAVES = (
    Wave(name="build"),
    Wave(name="build", effort_shift=0.5),
    Wave(name="build", sets=1.25, effort_shift=1.0),
)
WIDE_STEP = 0.10


@dataclass(frozen=True, slots=True, kw_only=True)
class Test:
    """A test of the baseline and retest week: what to do and what to write down."""

    id: str
    name: str
    how: str
    unit: str


TESTS = (
    Test(id="push_up", name="Push-ups in one set", how="Full depth, no clock, stop when form goes.", unit="reps"),
    Test(id="squat", name="Squats in one set", how="Hold the same load both times, thighs level.", unit="reps"),
    Test(id="plank", name="Plank", how="Straight from head to heels; stop when the hips sag.", unit="s"),
    Test(id="mile", name="1.6 km run or walk", how="Flat way, steady, as quick as stays comfortable.", unit="min"),
)
"""Common practice, no source for the choice; each is repeated the same way at the retest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockWeek:
    """One week of the block: its number (0 is the baseline), its kind and plan, and steps wider than 10 %."""

    number: int
    kind: str
    week: Week
    notes: tuple[str, ...] = ()

    @property
    def load(self) -> int:
        """Hard sets times effort, for the picture of the block; a relative size only."""
        blocks = [block for day in self.week.days for block in day.blocks if block.hard]
        return round(sum(block.dose.sets * block.dose.effort for block in blocks))


@dataclass(frozen=True, slots=True, kw_only=True)
class TrainingBlock:
    """The weeks in order and the tests at both ends."""

    weeks: tuple[BlockWeek, ...]
    tests: tuple[Test, ...] = TESTS


def waves(weeks: int) -> tuple[Wave, ...]:
    """The kind of each week, the baseline week first (so one more than `weeks`)."""
    low, high = BLOCK_WEEKS
    if not low <= weeks <= high:
        raise InputError(f"{weeks} weeks", f"is no length for a block ({low} to {high})", "choose one in that range")
    found, build = [TEST_WAVE], 0
    for number in range(1, weeks + 1):
        if number == weeks:
            found.append(RETEST_WAVE)
        elif number % EASY_EVERY == 0:
            found.append(EASY_WAVE)
            build = 0
        else:
            found.append(BUILD_WAVES[min(build, len(BUILD_WAVES) - 1)])
            build += 1
    return tuple(found)


def plan_block(
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    *,
    weeks: int = 8,
    progress: Callable[[int, int], bool] | None = None,
    on_start: Callable[[cp_model.CpSolver], None] | None = None,
) -> TrainingBlock:
    """Plan every week of the block. `progress(done, all)` may return False to stop; what is planned so far is given.

    `on_start` receives each running solver, so a caller can stop it. When the wishes clash, the first week says so and
    is the only one.
    """
    order = waves(weeks)
    found: list[BlockWeek] = []
    keep = request.keep
    for number, wave in enumerate(order):
        asked = replace(request, wave=wave, keep=keep, keep_loads=False)
        week = plan_week(asked, house, person, catalog, on_start=on_start)
        if week.status is Status.STOPPED:
            break
        found.append(BlockWeek(number=number, kind=wave.name, week=week, notes=_wide_steps(found, week)))
        keep = week
        going_on = progress is None or progress(number + 1, len(order))
        if week.status is Status.IMPOSSIBLE or not going_on:
            break
    return TrainingBlock(weeks=tuple(found))


def _wide_steps(before: list[BlockWeek], week: Week) -> tuple[str, ...]:
    """Loads raised by more than the published 2 to 10 % (ACSM 2009) since the week they were last used."""
    last: dict[str, float] = {}
    for earlier in before:
        last.update({block.exercise.id: block.binding.load_kg for block in _blocks(earlier.week)})
    found = []
    for block in _blocks(week):
        old, new = last.get(block.exercise.id, 0.0), block.binding.load_kg
        if old > 0 and new > old * (1 + WIDE_STEP):
            step = 100 * (new - old) / old
            found.append(
                f"{block.exercise.name}: {old:.1f} to {new:.1f} kg is a step of {step:.0f} %; start with fewer reps."
            )
    return tuple(dict.fromkeys(found))


def _blocks(week: Week) -> list[Block]:
    return [block for day in week.days if day.kind is DayKind.STRENGTH for block in day.blocks]
