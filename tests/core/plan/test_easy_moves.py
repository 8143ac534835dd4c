"""Warm-ups and cool-downs suit the kind of day and what is done in it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.exercise.model import Pattern
from core.fit.setting import Setting
from core.house.wishes import DayWish, Pin, WeekWishes
from core.knowledge import Catalog
from core.plan.easy_moves import easy_moves
from core.plan.menu import MenuRequest
from core.plan.model import DayKind, DayPlan, Week, WeekRequest
from core.plan.week import plan_week
from tests.dipper import CABIN, INES, dipper


def patterns(day: DayPlan) -> set[Pattern]:
    return {pattern for block in day.warm_up for pattern, _ in block.exercise.patterns}


def by_kind(week: Week, kind: DayKind) -> DayPlan:
    return next(day for day in week.days if day.kind is kind)


def test_a_light_rehearsal_ends_the_warm_up_of_strength_days_only(week: Week) -> None:
    for day in week.days:
        rehearsals = [block for block in day.warm_up if block.exercise.load_need is not None]
        assert bool(rehearsals) == (day.kind is DayKind.STRENGTH)
        if rehearsals:
            assert day.warm_up[-1] in rehearsals


@pytest.mark.parametrize(("name", "runs"), [("easy_run", True), ("brisk_walk", False)])
def test_a_jog_warms_up_for_a_run_and_not_for_a_walk(catalog: Catalog, name: str, runs: bool) -> None:
    day = DayWish(weekday=0, minutes=45, place_id="towpath")
    wishes = WeekWishes(days=(day,), pins=(Pin(weekday=0, kind="easy", exercise_id=name),))
    planned = plan_week(WeekRequest(wishes=wishes), dipper(), INES, catalog).days[0]
    assert (Pattern.RUN in patterns(planned)) is runs


def test_gentle_days_have_no_bouncing(week: Week) -> None:
    for kind in (DayKind.MOBILITY, DayKind.LOADED_WALK, DayKind.STRENGTH):
        assert Pattern.JUMP not in patterns(by_kind(week, kind))


def test_the_pulse_comes_first(week: Week) -> None:
    pulse = {Pattern.WALK, Pattern.MARCH, Pattern.QUICK_FEET}
    for day in week.days:
        if day.kind is not DayKind.REST:
            first = {pattern for pattern, _ in day.warm_up[0].exercise.patterns}
            assert first & pulse


def test_minutes_add_up_where_little_can_be_done(catalog: Catalog, week: Week) -> None:
    """With every move but one left out, that one goes on for all the minutes."""
    moves = [e.id for e in catalog.exercises if e.main_pattern is Pattern.WARM_UP and e.id != "warm_up_march"]
    setting = Setting(dipper(), INES, catalog.material_by_id, CABIN)
    order = MenuRequest(setting=setting, catalog=catalog, bans=frozenset(moves))
    blocks = by_kind(week, DayKind.STRENGTH).blocks
    (only,) = easy_moves(order, Pattern.WARM_UP, 300, DayKind.STRENGTH, blocks)
    assert only.seconds == 300
    none = replace(order, bans=frozenset([*moves, "warm_up_march"]))
    assert easy_moves(none, Pattern.WARM_UP, 300, DayKind.STRENGTH, blocks) == ()
