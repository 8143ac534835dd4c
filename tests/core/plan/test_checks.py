"""What a week is held to, in numbers: each check is met by a sound week and not by one broken for it."""

from __future__ import annotations

import datetime
from dataclasses import replace

from core.plan.checks import moderate_seconds, week_checks
from core.plan.model import Check, DayKind, DayPlan, Week, WeekRequest
from tests.dipper import INES, dipper

HARD = {"48 h between hard work of one pattern", "every day inside its minutes", "quiet after 20:00"}


def checks(week: Week, request: WeekRequest) -> dict[str, Check]:
    return {check.rule: check for check in week_checks(week, dipper(), INES, request=request)}


def with_days(week: Week, *days: DayPlan) -> Week:
    new = {day.weekday: day for day in days}
    return replace(week, days=tuple(new.get(day.weekday, day) for day in week.days))


def by_kind(week: Week, kind: DayKind) -> DayPlan:
    return next(day for day in week.days if day.kind is kind)


def test_hard_checks_are_met_by_every_plan(week: Week, asked: WeekRequest) -> None:
    found = checks(week, asked)
    assert {rule for rule, check in found.items() if check.hard} == HARD
    assert all(check.met for check in found.values() if check.hard)
    assert week.checks == tuple(found.values())


def test_strength_days_and_muscle_groups_are_counted(week: Week, asked: WeekRequest) -> None:
    found = checks(week, asked)
    assert found["strength on 2 days"].met
    assert found["each major muscle group on 2 days"].met
    strength = by_kind(week, DayKind.STRENGTH)
    without = checks(with_days(week, DayPlan(weekday=strength.weekday, kind=DayKind.REST)), asked)
    assert without["strength on 2 days"] == Check(
        rule="strength on 2 days", met=False, note="1 day (WHO 2020 asks for 2)"
    )
    assert "chest" in without["each major muscle group on 2 days"].note


def test_an_interval_second_counts_twice_and_a_rest_not_at_all(week: Week) -> None:
    day = by_kind(week, DayKind.INTERVALS)
    assert moderate_seconds(day) == sum(2 * 3 * 40 for _ in day.blocks)
    assert moderate_seconds(by_kind(week, DayKind.EASY)) == sum(b.seconds for b in by_kind(week, DayKind.EASY).blocks)
    assert moderate_seconds(by_kind(week, DayKind.STRENGTH)) == 0


def test_150_minutes_of_moderate_movement(week: Week, asked: WeekRequest) -> None:
    easy = by_kind(week, DayKind.EASY)
    long = replace(easy, blocks=(replace(easy.blocks[0], seconds=9000),))
    assert checks(with_days(week, long), asked)["150 min of moderate movement"].met
    rested = with_days(week, *(DayPlan(weekday=day, kind=DayKind.REST) for day in range(7)))
    assert checks(rested, asked)["150 min of moderate movement"].note.startswith("short by 150 min")


def test_sets_below_the_range_are_named(week: Week, asked: WeekRequest) -> None:
    strength = by_kind(week, DayKind.STRENGTH)
    fewer = replace(strength, blocks=strength.blocks[:1])
    note = checks(with_days(week, fewer), asked)["4 hard sets a pattern"].note
    assert note.startswith("below: ")
    assert strength.blocks[-1].family.value.replace("_", " ") in note


def test_three_hard_days_in_a_row_are_told(week: Week, asked: WeekRequest) -> None:
    hard = by_kind(week, DayKind.LOADED_WALK)
    three = with_days(week, *(replace(hard, weekday=weekday) for weekday in (5, 6, 0)))
    assert checks(three, asked)["no three hard days in a row"].note.endswith("in a row")
    every = with_days(week, *(replace(hard, weekday=weekday) for weekday in range(7)))
    assert checks(every, asked)["no three hard days in a row"].note == "7 in a row"
    spread = with_days(week, *(DayPlan(weekday=weekday, kind=DayKind.REST) for weekday in (0, 2, 4, 6)))
    assert checks(spread, asked)["no three hard days in a row"].met


def test_broken_hard_rules_show(week: Week, asked: WeekRequest) -> None:
    strength = by_kind(week, DayKind.STRENGTH)
    after = replace(strength, weekday=(strength.weekday + 1) % 7)
    assert not checks(with_days(week, after), asked)["48 h between hard work of one pattern"].met
    over = replace(strength, seconds=strength.limit_s + 1)
    assert not checks(with_days(week, over), asked)["every day inside its minutes"].met
    late = tuple(replace(day, start=datetime.time(21)) for day in asked.wishes.days)
    request = replace(asked, wishes=replace(asked.wishes, days=late))
    block = strength.warm_up[0]
    loud = replace(strength, warm_up=(replace(block, exercise=replace(block.exercise, noise=3)),))
    assert not checks(with_days(week, loud), request)["quiet after 20:00"].met
