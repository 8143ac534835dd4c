"""Every plan obeys every hard rule, whatever the household; every "impossible" names a smallest clash."""

from __future__ import annotations

import pytest

from core.house.wishes import DayWish, Pin, WeekWishes
from core.knowledge import Catalog
from core.plan.clash import rules_of, smallest_clash
from core.plan.model import Status, WeekRequest
from core.plan.problem import RECOVERY, build_problem
from core.plan.rules import pin_rule
from core.plan.search import Ending
from core.plan.solve import holds
from core.plan.validate import find_week_errors
from core.plan.week import plan_week
from tests.core.plan.households import household
from tests.dipper import INES, dipper

HOUSEHOLDS = 120


@pytest.mark.parametrize("first", range(0, HOUSEHOLDS, 10))
def test_every_plan_obeys_every_hard_rule(catalog: Catalog, first: int) -> None:
    endings = set()
    for number in range(first, first + 10):
        case = household(number)
        week = plan_week(case.request, case.house, case.person, catalog)
        assert list(find_week_errors(week, case.request, case.house, case.person)) == [], number
        endings.add(week.status)
    assert endings <= {Status.OPTIMAL, Status.IMPOSSIBLE}
    assert Status.OPTIMAL in endings


@pytest.mark.parametrize("number", [8, 13, 44, 67, 70, 98, 105])
def test_a_clash_clashes_alone_and_stops_when_any_wish_is_dropped(catalog: Catalog, number: int) -> None:
    case = household(number)
    problem = build_problem(case.request, case.house, case.person, catalog)
    clash = smallest_clash(problem)
    assert len(clash) >= 2
    others = frozenset(rules_of(problem)) - frozenset(clash)
    assert holds(problem, others) is Ending.NONE
    for rule in clash:
        assert holds(problem, others | {rule}) is Ending.PROVEN


def test_two_hard_days_for_one_pattern_clash_with_the_48_hours(catalog: Catalog) -> None:
    pins = (Pin(weekday=0, exercise_id="push_up"), Pin(weekday=1, exercise_id="push_up"))
    days = (DayWish(weekday=0, minutes=40), DayWish(weekday=1, minutes=40))
    request = WeekRequest(wishes=WeekWishes(days=days, pins=pins))
    problem = build_problem(request, dipper(), INES, catalog)
    assert smallest_clash(problem) == (RECOVERY, pin_rule(0), pin_rule(1))
    clash = plan_week(request, dipper(), INES, catalog).clash
    assert clash is not None
    assert clash.wishes == (
        "48 hours between hard work for the same pattern",
        "push-up pinned to Monday",
        "push-up pinned to Tuesday",
    )


def test_too_few_minutes_for_a_pin_are_named_with_a_way_out(catalog: Catalog) -> None:
    pins = (Pin(weekday=3, exercise_id="push_up"),)
    request = WeekRequest(wishes=WeekWishes(days=(DayWish(weekday=3, minutes=8),), pins=pins))
    week = plan_week(request, dipper(), INES, catalog)
    assert week.status is Status.IMPOSSIBLE
    assert week.clash is not None
    assert week.clash.wishes == ("8 minutes on Thursday", "push-up pinned to Thursday")
    assert week.clash.ways_out == ("give Thursday more minutes", "take the pin off push-up on Thursday")
