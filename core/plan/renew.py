"""A block after the wishes, the things or the days have changed: new from today on, the past as it was.

What happened is taken in again, one by one in its order, as far as it still makes sense for the new days; all of it
stays noted. A block that has another start or length, has not begun or is over, is simply the new one.
"""

from __future__ import annotations

import datetime
from dataclasses import replace

from core.errors import InputError
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.block_model import DAYS_A_WEEK, BlockWeek, Happening, TrainingBlock
from core.plan.block_weeks import WeekMaker
from core.plan.left_weeks import Left, merged
from core.plan.model import WeekRequest
from core.plan.replan import replan
from core.plan.setbacks import order_of


def renewed(
    old: TrainingBlock | None,
    new: TrainingBlock,
    today: datetime.date,
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
) -> TrainingBlock:
    """The block to go on with; `request`, `house` and `person` are those `new` was planned for."""
    if old is None or old.starts != new.starts or len(old.weeks) != len(new.weeks):
        return new
    place = old.place_of(today)
    if place is None:
        return new
    if new.pattern is not None:
        new = _from_here(new, place[0], WeekMaker(new.pattern, request, house, person, catalog))
    ahead = _with_what_happened(old.happened, new, request, house, person, catalog)
    pairs = zip(old.weeks, ahead.weeks, strict=True)
    weeks = tuple(_week(before, after, *place) for before, after in pairs)
    return replace(ahead, weeks=weeks, happened=old.happened)


def _from_here(block: TrainingBlock, number: int, maker: WeekMaker) -> TrainingBlock:
    """The block with this week as the one its pattern is from, which measured strength begins anew at."""
    changed = replace(block, pattern_week=number)
    left = Left(block=changed, order=order_of(changed), maker=maker, settled_day=DAYS_A_WEEK * number - 1)
    return replace(changed, weeks=left.weeks())


def _with_what_happened(
    happened: tuple[Happening, ...],
    block: TrainingBlock,
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
) -> TrainingBlock:
    for one in happened:
        try:
            block = replan(block, one, request, house, person, catalog)
        except InputError:  # that day is another one now; it stays noted and moves nothing
            continue
    return block


def _week(before: BlockWeek, after: BlockWeek, number: int, weekday: int) -> BlockWeek:
    """A week past as it was, the present one up to yesterday, one ahead as planned now with what was predicted."""
    if before.number < number:
        return before
    gone = set(range(weekday)) if before.number == number else set()
    week = merged(after.week, before.week, gone)
    if week.days == before.week.days and after.kind == before.kind:
        return before
    predicted = before.predicted if before.predicted is not None else before.week
    return replace(after, week=week, predicted=predicted)
