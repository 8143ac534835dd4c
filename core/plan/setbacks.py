"""How far what happened moves a movement from its usual course, in steps.

The rules (judgement, no source, except where named):

- done, moved: nothing changes;
- partly: half the sets or more hold the course for a week, less counts as missed;
- missed, ill, away: the movements of that day stand still for a week;
- a whole week lost: everything steps back by one, two weeks by two, and so on; the first week after an illness is easy;
- harder than planned: the movements of that day stand still for a week, on two sessions running they ease off a step;
- easier than planned on two sessions running (ACSM 2009): one step further; a loaded walk never hurries.
"""

from __future__ import annotations

from collections.abc import Iterable

from core.plan.block_model import DAYS_A_WEEK, Happening, TrainingBlock, What
from core.plan.model import Block, DayKind, Wave
from core.plan.waves import BUILD, BUILD_WAVES, EASY, EASY_WAVE, waves

PART_THAT_COUNTS = 0.5
LOST = (What.MISSED, What.ILL, What.AWAY)
RUNNING = 2


def order_of(block: TrainingBlock) -> tuple[Wave, ...]:
    """The wave of each week; a building week that comes first after an illness is an easy one, in place of the next."""
    order = list(waves(len(block.weeks) - 1))
    for one in block.happened:
        back = (one.last_day + 1) // DAYS_A_WEEK
        if one.what is What.ILL and back < len(order) and order[back].name == BUILD:
            order[back] = EASY_WAVE
            if order[back + 1].name == EASY:
                order[back + 1] = BUILD_WAVES[0]
    return tuple(order)


def steps_back(
    block: TrainingBlock, order: tuple[Wave, ...], number: int, weekday: int, wanted: Block, *, since: int = 0
) -> int:
    """Steps (below 0: back) by which a block of week `number` differs from its usual step.

    Only what happened from week `since` on counts; before it the dose itself took in what was.
    """
    total = 0
    before = tuple(one for one in block.happened if since <= one.week < number)
    for week in range(since, number):
        mine = tuple(one for one in before if _touches(one, week))
        builds = order[week].name == BUILD
        if _whole_week_lost(mine, block, week):
            total -= 1 + builds
            continue
        concerning = tuple(one for one in mine if _concerns(one, block, week, wanted))
        total -= builds and any(_stands_still(one) for one in concerning)
    concerning = tuple(one for one in before if _concerns(one, block, one.week, wanted))
    total -= _running(concerning, What.HARDER)
    if block.pattern is not None and block.pattern.days[weekday].kind is DayKind.LOADED_WALK:
        return total
    return total + _running(concerning, What.EASIER)


def _running(concerning: Iterable[Happening], what: What) -> int:
    """How often two sessions running were such."""
    found = running = 0
    for one in concerning:
        running = running + 1 if one.what is what else 0
        if running == RUNNING:
            found, running = found + 1, 0
    return found


def _touches(one: Happening, week: int) -> bool:
    return one.first_day < DAYS_A_WEEK * (week + 1) and one.last_day >= DAYS_A_WEEK * week


def days_in(one: Happening, week: int) -> range:
    """The weekdays of a week that a happening covers."""
    first = one.first_day - DAYS_A_WEEK * week
    return range(max(0, first), min(DAYS_A_WEEK, one.last_day - DAYS_A_WEEK * week + 1))


def _whole_week_lost(mine: tuple[Happening, ...], block: TrainingBlock, week: int) -> bool:
    planned = {day.weekday for day in block.weeks[week].week.days if day.kind is not DayKind.REST}
    lost = {weekday for one in mine if _lost(one) for weekday in days_in(one, week)}
    return bool(planned) and planned <= lost


def _lost(one: Happening) -> bool:
    """Missed days; days away count as trained when they were planned with what is there (share 1)."""
    if one.what in (What.PARTLY, What.AWAY):
        return one.share < PART_THAT_COUNTS
    return one.what in LOST


def _stands_still(one: Happening) -> bool:
    return one.what in LOST or one.what in (What.PARTLY, What.HARDER)


def _concerns(one: Happening, block: TrainingBlock, week: int, wanted: Block) -> bool:
    """Whether it is about a day of this week on which the movement was planned."""
    days = block.weeks[week].week.days
    return any(
        planned.exercise.id == wanted.exercise.id for weekday in days_in(one, week) for planned in days[weekday].blocks
    )
