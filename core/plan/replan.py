"""Planning again what is left of a block, from what happened. The past is never touched.

The rules stand in `core.plan.setbacks`. A moved day goes to a day of rest of that week (`core.plan.moving`); days away
are planned with what is there when the caller says what that is. What was predicted first stays with each week.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS
from core.knowledge import Catalog
from core.plan.block import made_week
from core.plan.block_model import DAYS_A_WEEK, BlockWeek, Happening, TrainingBlock, What
from core.plan.block_weeks import WeekMaker
from core.plan.model import Block, DayKind, DayPlan, Status, Wave, Week, WeekRequest
from core.plan.moving import moved
from core.plan.setbacks import days_in, order_of, steps_back
from core.plan.testing_days import held
from core.plan.waves import steps_at

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
    away: Away | None = None,
) -> TrainingBlock:
    """The block after this happened. Days up to its last day stay as they are; `InputError` where it can't be.

    The same block and happening give the same answer. Without `away`, days away are days without training.
    """
    _check(block, happening)
    if block.pattern is None:
        raise InputError("this block", "has no plan to go on from", "plan a block first")
    noted = replace(happening, share=0.0) if happening.what is What.AWAY and away is None else happening
    happened = tuple(sorted((*block.happened, noted), key=_in_order))
    changed = replace(block, happened=happened)
    maker = WeekMaker(block.pattern, request, house, person, catalog)
    if happening.what is What.MOVED:
        return _with_moved(changed, happening, maker)
    order = order_of(changed)
    weeks = tuple(_again(week, order, changed, noted, maker) for week in block.weeks)
    found = replace(changed, weeks=weeks)
    return found if away is None else _with_away(found, noted, away, person, catalog)


def _again(
    week: BlockWeek, order: tuple[Wave, ...], block: TrainingBlock, happening: Happening, maker: WeekMaker
) -> BlockWeek:
    """The week planned again as far as it lies ahead; days that were moved or planned for elsewhere stay."""
    number, settled = week.number, happening.last_day - DAYS_A_WEEK * week.number
    if settled >= DAYS_A_WEEK - 1:
        return week
    usual = steps_at(order)[number]

    def step_of(weekday: int, one: Block) -> int:
        return usual + steps_back(block, order, number, weekday, one)

    made = held(made_week(maker, number, order[number], step_of), week.tests, block.tests, maker)
    stay = _settled_by_hand(block, number) | set(range(settled + 1))
    elsewhere = _elsewhere(block, number)
    rest = {weekday: DayPlan(weekday=weekday, kind=DayKind.REST) for weekday in elsewhere}
    own = tuple(
        rest.get(new.weekday, old if new.weekday in stay else new)
        for old, new in zip(week.week.days, made.week.days, strict=True)
    )
    planned = merged(maker.finished(own, order[number]), week.week, elsewhere)
    return _kept(week, replace(made, week=planned))


def _settled_by_hand(block: TrainingBlock, number: int) -> set[int]:
    """Weekdays of a week that were exchanged."""
    mine = (one for one in block.happened if one.what is What.MOVED and one.week == number)
    return {weekday for one in mine for weekday in (one.weekday, one.to_weekday) if weekday is not None}


def _elsewhere(block: TrainingBlock, number: int) -> set[int]:
    """Weekdays of a week that are planned for another place."""
    mine = (one for one in block.happened if one.what is What.AWAY and one.share > 0)
    return {weekday for one in mine for weekday in days_in(one, number)}


def _kept(before: BlockWeek, after: BlockWeek) -> BlockWeek:
    """The week as planned now, with what was predicted first; the one before if nothing changed."""
    if after.week.days == before.week.days and after.kind == before.kind:
        return before
    predicted = before.predicted if before.predicted is not None else before.week
    return replace(after, tests=before.tests, predicted=predicted)


def _with_moved(block: TrainingBlock, happening: Happening, maker: WeekMaker) -> TrainingBlock:
    week = block.weeks[happening.week]
    to_weekday = happening.weekday if happening.to_weekday is None else happening.to_weekday
    days = moved(week.week, happening.weekday, to_weekday, maker.request, maker.house)
    changed = maker.finished(days, order_of(block)[week.number])
    tests = tuple(
        replace(test, weekday=to_weekday) if test.weekday == happening.weekday else test for test in week.tests
    )
    return _put(block, replace(_kept(week, replace(week, week=changed)), tests=tests))


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
        found = _put(found, _kept(week, replace(week, week=merged(week.week, days_there, gone))))
    return found


def _no_training(week: Week) -> Week:
    rest = tuple(DayPlan(weekday=weekday, kind=DayKind.REST) for weekday in range(DAYS_A_WEEK))
    return replace(week, days=rest, fills=())


def merged(own: Week, other: Week, weekdays: set[int]) -> Week:
    """The week with some days, and their pours, taken from another one."""
    if not weekdays:
        return own
    pairs = zip(own.days, other.days, strict=True)
    days = tuple(theirs if mine.weekday in weekdays else mine for mine, theirs in pairs)
    fills = [fill for fill in own.fills if fill.weekday not in weekdays]
    fills += [fill for fill in other.fills if fill.weekday in weekdays]
    return replace(own, days=days, fills=tuple(sorted(fills, key=lambda fill: fill.weekday)))


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
