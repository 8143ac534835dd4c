"""A session moved by the person: what goes along, what is counted again, what is told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.house.wishes import DayWish, Pin, WeekWishes
from core.plan.model import DayKind, Week, WeekRequest
from core.plan.move import exchanged, move_session
from core.plan.pours import SHARED_WORDS
from core.plan.week import plan_week
from tests.dipper import INES, dipper

WISHES = WeekWishes(
    days=(DayWish(weekday=0, minutes=30), DayWish(weekday=2, minutes=20), DayWish(weekday=5, minutes=30))
)
HOUSE = dipper()


@pytest.fixture(scope="module")
def week() -> Week:
    return plan_week(WeekRequest(wishes=WISHES), HOUSE, INES, load_catalog())


def test_a_move_there_and_back_changes_nothing(week: Week) -> None:
    there = move_session(week, 5, 6, WISHES, HOUSE, INES)
    back = move_session(there.week, 6, 5, there.wishes, HOUSE, INES)
    assert there.errors == back.errors == ()
    assert there.week != week
    assert back.week == week
    assert back.wishes == WISHES


def test_minutes_go_along_and_the_blocks_stay_as_they_are(week: Week) -> None:
    moved = move_session(week, 0, 2, WISHES, HOUSE, INES)
    assert moved.errors == ()
    assert [moved.week.days[at].limit_s for at in (0, 2)] == [20 * 60, 30 * 60]
    before = [block.exercise.id for block in week.days[0].blocks]
    assert [block.exercise.id for block in moved.week.days[2].blocks] == before


def test_pours_and_reasons_are_told_for_the_new_days(week: Week) -> None:
    moved = move_session(week, 0, 2, WISHES, HOUSE, INES)
    used = {day.weekday: {state for block in day.blocks for state in block.states} for day in moved.week.days}
    for fill in moved.week.fills:
        assert (fill.thing_id, fill.volume_l) in {(state.thing_id, state.volume_l) for state in used[fill.weekday]}
    for day in moved.week.days:
        for block in day.blocks:
            assert sum(reason.startswith(SHARED_WORDS) for reason in block.why) <= 1


def test_a_rule_that_would_break_is_told(week: Week) -> None:
    kinds = [day.weekday for day in week.days if day.kind is DayKind.STRENGTH]
    assert kinds == [0, 2]
    moved = move_session(week, 0, 1, WISHES, HOUSE, INES)
    assert any("within 48 hours" in error for error in moved.errors)


def test_a_day_of_rest_has_nothing_to_move(week: Week) -> None:
    for source, target in ((1, 3), (0, 0)):
        with pytest.raises(ValueError, match="has no session to move"):
            move_session(week, source, target, WISHES, HOUSE, INES)


@pytest.mark.parametrize("pair", [(0, 1), (1, 0), (6, 2)])
def test_exchanging_wishes_twice_gives_them_back(pair: tuple[int, int]) -> None:
    wishes = replace(WISHES, pins=(Pin(weekday=0, kind="strength"), Pin(weekday=2, exercise_id="push_up")))
    once = exchanged(wishes, *pair)
    assert [day.weekday for day in once.days] == sorted(day.weekday for day in once.days)
    assert exchanged(once, *pair) == wishes
