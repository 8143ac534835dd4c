"""The days of the tests: the same ones in the baseline and the retest week, where the minutes are.

A mile takes the place of that day's run, a loaded walk of that day's loaded walk: what is left of it shortens.
"""

from __future__ import annotations

from dataclasses import replace

from core.assess.choose import Possible
from core.assess.model import Protocol
from core.plan.block_model import BlockWeek, PlannedTest
from core.plan.block_weeks import LONG_KINDS, WeekMaker
from core.plan.model import DayKind, DayPlan, Wave
from core.plan.waves import RETEST, RETEST_WAVE, TEST, TEST_WAVE

SUITS = {
    DayKind.STRENGTH: ("push_up", "push_up_knees", "squat_load", "step_up_3_min", "plank", "chair_stand_30"),
    DayKind.EASY: ("mile_walk", "mile_jog", "mile_run", "mile_and_half_steady"),
    DayKind.LOADED_WALK: ("loaded_walk",),
}
"""The kind of day a test suits; any other day with the minutes will do."""
SHORTEST_LEFT_S = 300
"""A walk or run beside a test keeps at least this long."""
WAVE_OF: dict[str, Wave] = {TEST: TEST_WAVE, RETEST: RETEST_WAVE}


def with_tests(weeks: tuple[BlockWeek, ...], chosen: tuple[Possible, ...], maker: WeekMaker) -> tuple[BlockWeek, ...]:
    """The weeks with each test on its day; walks and runs of those days shortened to make room."""
    ends = [week for week in weeks if week.kind in WAVE_OF]
    if not ends or not chosen:
        return weeks
    left_s = {
        weekday: min(_left_s(week.week.days[weekday]) for week in ends)
        for weekday in range(7)
        if all(week.week.days[weekday].kind is not DayKind.REST for week in ends)
    }
    tests = tuple(_placed(one, ends[0].week.days, left_s) for one in chosen)
    protocols = tuple(one.protocol for one in chosen)
    return tuple(held(week, tests, protocols, maker) for week in weeks)


def _left_s(day: DayPlan) -> int:
    """Seconds a day has for tests, its walk or run shortened as far as may be."""
    spare_s = sum(max(0, block.seconds - SHORTEST_LEFT_S) for block in day.blocks) if day.kind in LONG_KINDS else 0
    return day.limit_s - day.seconds + spare_s


def _placed(one: Possible, days: tuple[DayPlan, ...], left_s: dict[int, int]) -> PlannedTest:
    """The first day that suits the test, is at a place for it and has the minutes; else none."""
    needed_s = round(60 * one.protocol.minutes)
    fitting = [day for day in days if day.place_id in one.place_ids and left_s.get(day.weekday, -1) >= needed_s]
    fitting.sort(key=lambda day: (one.protocol.id not in SUITS.get(day.kind, ()), day.weekday))
    if not fitting:
        return PlannedTest(protocol_id=one.protocol.id)
    left_s[fitting[0].weekday] -= needed_s
    return PlannedTest(protocol_id=one.protocol.id, weekday=fitting[0].weekday)


def held(
    week: BlockWeek, tests: tuple[PlannedTest, ...], protocols: tuple[Protocol, ...], maker: WeekMaker
) -> BlockWeek:
    """The week with these tests on their days, walks and runs shortened to make room; unchanged without tests."""
    if not tests or week.kind not in WAVE_OF:
        return week
    minutes = {protocol.id: protocol.minutes for protocol in protocols}
    taken_s = dict.fromkeys(range(7), 0)
    for test in tests:
        if test.weekday is not None:
            taken_s[test.weekday] += round(60 * minutes[test.protocol_id])
    days = tuple(_shortened(day, taken_s[day.weekday], maker) for day in week.week.days)
    return replace(week, week=maker.finished(days, WAVE_OF[week.kind]), tests=tests)


def _shortened(day: DayPlan, taken_s: int, maker: WeekMaker) -> DayPlan:
    """The day with its walk or run cut back, in whole minutes, to what the tests leave."""
    over_s = day.seconds + taken_s - day.limit_s
    if over_s <= 0 or day.kind not in LONG_KINDS:
        return day
    blocks = []
    for block in day.blocks:
        seconds = max(SHORTEST_LEFT_S, (block.seconds - over_s) // 60 * 60)
        blocks.append(replace(block, seconds=seconds, dose=replace(block.dose, seconds=(seconds, seconds))))
    return maker.timed(day, tuple(blocks))
