"""Eight weeks (or 4 to 16): a baseline week, building weeks with an easy week every fourth, and a retest.

One week is planned by the solver, less a set here and there for minutes to grow into; every week of the block keeps its
movements, places and things and goes on along their courses, so progress can be seen and nothing is learnt anew. Loads
are always ones the house makes. What happens on the way is taken in by `core.plan.replan`.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from core.assess.choose import Possible, usual_tests
from core.fit.setting import Setting
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.block_model import (
    BLOCK_WEEKS,
    BlockWeek,
    Happening,
    PlannedTest,
    TrainingBlock,
    What,
    check_start,
)
from core.plan.block_weeks import StepOf, WeekMaker
from core.plan.model import USUAL_WAVE, Block, Status, Wave, Week, WeekRequest
from core.plan.testing_days import with_tests
from core.plan.waves import TEST, steps_at, waves

if TYPE_CHECKING:
    from core.plan.search import OnStart

__all__ = [
    "BLOCK_WEEKS",
    "BlockWeek",
    "Happening",
    "PlannedTest",
    "TrainingBlock",
    "What",
    "plan_block",
    "waves",
]


def plan_block(
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    *,
    weeks: int = 8,
    starts: datetime.date | None = None,
    progress: Callable[[int, int], bool] | None = None,
    on_start: OnStart | None = None,
) -> TrainingBlock:
    """Plan every week of the block. `progress(done, all)` may return False to stop; what is planned so far is given.

    `request.keep` is the week the person has: the block is made from it while it fits the wishes. `on_start` receives
    each running solver, so a caller can stop it; a stopped plan has no weeks. When the wishes clash, the first week
    says so and is the only one. Raises InputError for a length or a start that can't be.
    """
    order = waves(weeks)
    check_start(starts)
    pattern = _pattern(request, house, person, catalog, on_start)
    if pattern.status is Status.STOPPED:
        return TrainingBlock(weeks=(), starts=starts)
    if pattern.status is Status.IMPOSSIBLE:
        return TrainingBlock(weeks=(BlockWeek(number=0, kind=TEST, week=pattern),), starts=starts)
    pattern = WeekMaker(pattern, request, house, person, catalog).roomy()
    maker = WeekMaker(pattern, request, house, person, catalog)
    chosen = _tests(house, person, catalog, request, starts)
    made = with_tests(_weeks(maker, order, progress), chosen, maker)
    tests = tuple(one.protocol for one in chosen)
    return TrainingBlock(weeks=made, tests=tests, starts=starts, pattern=pattern)


def _pattern(
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    on_start: OnStart | None,
) -> Week:
    """The week the person has, if it is still sound for these wishes; else the best one, near to it."""
    from core.plan.validate import find_week_errors
    from core.plan.week import plan_week  # the solver, only when something is planned

    keep = request.keep
    if keep is not None and keep.days:
        usable = not any(find_week_errors(keep, request, house, person))
        limits = {wish.weekday: round(60 * wish.minutes) for wish in request.wishes.days}
        if usable and all(day.limit_s == limits.get(day.weekday, day.limit_s) for day in keep.days):
            return keep
    return plan_week(replace(request, wave=USUAL_WAVE), house, person, catalog, on_start=on_start)


def _weeks(
    maker: WeekMaker, order: tuple[Wave, ...], progress: Callable[[int, int], bool] | None
) -> tuple[BlockWeek, ...]:
    found: list[BlockWeek] = []
    for number, (wave, step) in enumerate(zip(order, steps_at(order), strict=True)):
        found.append(made_week(maker, number, wave, at_step(step)))
        if progress is not None and not progress(number + 1, len(order)):
            break
    return tuple(found)


def made_week(maker: WeekMaker, number: int, wave: Wave, step_of: StepOf) -> BlockWeek:
    """One week of the block, without its tests."""
    made = maker.make(wave, step_of)
    return BlockWeek(number=number, kind=wave.name, week=made.week, notes=made.notes)


def at_step(step: int) -> StepOf:
    """Every block at the same step."""

    def step_of(weekday: int, block: Block) -> int:  # noqa: ARG001 - the same for all
        return step

    return step_of


def _tests(
    house: House, person: Person, catalog: Catalog, request: WeekRequest, starts: datetime.date | None
) -> tuple[Possible, ...]:
    """The tests this person can do at the places of the house."""
    materials = catalog.material_by_id
    places = house.places or (None,)
    settings = [Setting(house, person, materials, place) for place in places]
    return usual_tests(
        catalog.protocol_by_id,
        catalog.exercise_by_id,
        settings,
        person,
        age=person.age_on(starts) if starts is not None else None,
        loaded_walks=request.wishes.goals.loaded_walk > 0,
    )
