"""Planning again what is left of a block, from what happened. The past is never touched.

The rules stand in `core.plan.setbacks`. A moved day goes to a day of rest of that week (`core.plan.moving`); days away
are planned with what is there when the caller says what that is. What was predicted first stays with each week.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS
from core.knowledge import Catalog
from core.plan.block_model import DAYS_A_WEEK, BlockWeek, Happening, TrainingBlock, What
from core.plan.block_weeks import WeekMaker
from core.plan.left_weeks import Left, kept, merged
from core.plan.model import DayKind, DayPlan, Status, Week, WeekRequest
from core.plan.moving import moved
from core.plan.setbacks import days_in, order_of

SPANS = (What.ILL, What.AWAY)


@dataclass(frozen=True, slots=True, kw_only=True)
class Away:
    """Where someone is for some days: that house with its places and things, and the wishes for a week there."""

    house: House
    request: WeekRequest


def replan(
    block: TrainingBlock,
    happening: Happening,
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    *,
    today: datetime.date | None = None,
    away: Away | None = None,
) -> TrainingBlock:
    """The block after this happened. Days up to its last day, and up to the day before `today`, stay as they are.

    The same block and happening give the same answer. Without `away`, days away are days without training.
    `InputError` where it can't have happened, or where the house no longer has what the block is made with.
    """
    _check(block, happening)
    pattern = usable_pattern(block, house)
    noted = replace(happening, share=0.0) if happening.what is What.AWAY and away is None else happening
    happened = tuple(sorted((*block.happened, noted), key=_in_order))
    changed = replace(block, happened=happened)
    maker = WeekMaker(pattern, request, house, person, catalog)
    if happening.what is What.MOVED:
        return _with_moved(changed, happening, maker)
    settled_day = max(noted.last_day, day_before(block, today))
    left = Left(block=changed, order=order_of(changed), maker=maker, settled_day=settled_day)
    found = replace(changed, weeks=left.weeks())
    return found if away is None else _with_away(found, noted, away, person, catalog)


def usable_pattern(block: TrainingBlock, house: House) -> Week:
    """The week the block is made from; `InputError` if there is none or the house lacks something of it."""
    if block.pattern is None:
        raise InputError("this block", "has no plan to go on from", "plan a block first")
    owned = {thing.id: thing.count for thing in house.things}
    for day in block.pattern.days:
        for one in (*day.warm_up, *day.blocks, *day.cool_down):
            missing = next((thing_id for thing_id in one.binding.thing_ids if thing_id not in owned), None)
            if missing is not None:
                rule = f"is planned with something the house no longer has ({missing})"
                raise InputError(one.exercise.name, rule, "plan the rest of the block again")
    return block.pattern


def day_before(block: TrainingBlock, today: datetime.date | None) -> int:
    """The last day before today, counted from the Monday of week 0; -1 where nothing is known of either."""
    return -1 if today is None or block.starts is None else (today - block.starts).days - 1


def _with_moved(block: TrainingBlock, happening: Happening, maker: WeekMaker) -> TrainingBlock:
    week = block.weeks[happening.week]
    to_weekday = happening.weekday if happening.to_weekday is None else happening.to_weekday
    days = moved(week.week, happening.weekday, to_weekday, maker.request, maker.house)
    changed = maker.finished(days, order_of(block)[week.number])
    tests = tuple(
        replace(test, weekday=to_weekday) if test.weekday == happening.weekday else test for test in week.tests
    )
    return _put(block, replace(kept(week, replace(week, week=changed)), tests=tests))


def _put(block: TrainingBlock, week: BlockWeek) -> TrainingBlock:
    return replace(block, weeks=(*block.weeks[: week.number], week, *block.weeks[week.number + 1 :]))


def _with_away(
    block: TrainingBlock, happening: Happening, away: Away, person: Person, catalog: Catalog
) -> TrainingBlock:
    """The days away planned with what is there, in place of those the block had."""
    from core.plan.week import plan_week  # the solver, only when something is planned

    found = block
    last = min(happening.last_day // DAYS_A_WEEK, len(block.weeks) - 1)
    for number in range(happening.week, last + 1):
        gone = set(days_in(happening, number))
        days = tuple(day for day in away.request.wishes.days if day.weekday in gone)
        request = replace(away.request, wishes=replace(away.request.wishes, days=days))
        there = plan_week(request, away.house, person, catalog) if days else None
        if there is not None and there.status is Status.IMPOSSIBLE:
            raise InputError("the days away", "can't be planned with what is there", "change the wishes for them")
        week = block.weeks[number]
        days_there = there if there is not None else _no_training(week.week)
        found = _put(found, kept(week, replace(week, week=merged(week.week, days_there, gone))))
    return found


def _no_training(week: Week) -> Week:
    rest = tuple(DayPlan(weekday=weekday, kind=DayKind.REST) for weekday in range(DAYS_A_WEEK))
    return replace(week, days=rest, fills=())


def _check(block: TrainingBlock, happening: Happening) -> None:
    if not 0 <= happening.week < len(block.weeks):
        rule = f"is no week of this block (0 to {len(block.weeks) - 1})"
        raise InputError(happening.week, rule, "give a number from that range")
    day = block.weeks[happening.week].week.days[happening.weekday]
    if day.kind is DayKind.REST and happening.what not in SPANS:
        name = f"{WEEKDAYS[happening.weekday]} of week {happening.week}"
        raise InputError(name, "is a day of rest", "choose a day with training")
    where = (happening.week, happening.weekday, happening.what)
    if any((one.week, one.weekday, one.what) == where for one in block.happened):
        raise InputError(happening.words(), "is already written down", "choose another day")


def _in_order(one: Happening) -> tuple[int, int, str]:
    return one.week, one.weekday, one.what.value
