"""A block planned again on the way: the past stays, what happened counts, the rest is new."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.house.wishes import DayWish, WeekWishes
from core.plan.block import plan_block
from core.plan.block_model import Happening, TrainingBlock, What
from core.plan.model import WeekRequest
from core.plan.renew import renewed
from core.plan.replan import replan
from tests.dipper import INES, dipper

STARTS = datetime.date(2026, 5, 4)
WEDNESDAY = datetime.date(2026, 5, 20)
"""The Wednesday of week 2."""
WISHES = WeekWishes(
    days=(DayWish(weekday=0, minutes=30), DayWish(weekday=2, minutes=20), DayWish(weekday=5, minutes=30))
)
OTHER = replace(WISHES, bans=("push_up",), days=(*WISHES.days[:2], DayWish(weekday=6, minutes=40)))
HOUSE, CATALOG = dipper(), load_catalog()
MISSED = Happening(what=What.MISSED, week=1, weekday=0)


def block_of(wishes: WeekWishes, weeks: int = 8, starts: datetime.date = STARTS) -> TrainingBlock:
    return plan_block(WeekRequest(wishes=wishes), HOUSE, INES, CATALOG, weeks=weeks, starts=starts)


@pytest.fixture(scope="module")
def old() -> TrainingBlock:
    return replan(block_of(WISHES), MISSED, WeekRequest(wishes=WISHES), HOUSE, INES, CATALOG)


@pytest.fixture(scope="module")
def new() -> TrainingBlock:
    return block_of(OTHER)


def again(old: TrainingBlock | None, new: TrainingBlock, today: datetime.date = WEDNESDAY) -> TrainingBlock:
    return renewed(old, new, today, WeekRequest(wishes=OTHER), HOUSE, INES, CATALOG)


def test_weeks_gone_by_stay_to_the_letter(old: TrainingBlock, new: TrainingBlock) -> None:
    found = again(old, new)
    assert found.weeks[:2] == old.weeks[:2]
    assert found.happened == old.happened == (MISSED,)


def test_days_gone_by_of_the_present_week_stay(old: TrainingBlock, new: TrainingBlock) -> None:
    found = again(old, new)
    assert found.weeks[2].week.days[:2] == old.weeks[2].week.days[:2]
    assert found.weeks[2].week.days[6].blocks


def test_what_lies_ahead_is_new_and_what_was_predicted_is_kept(old: TrainingBlock, new: TrainingBlock) -> None:
    found = again(old, new)
    for before, after in zip(old.weeks[3:], found.weeks[3:], strict=True):
        assert {day.weekday for day in after.week.days if day.blocks} == {0, 2, 6}
        assert after.predicted == (before.predicted if before.predicted is not None else before.week)


def test_what_happened_still_counts(old: TrainingBlock, new: TrainingBlock) -> None:
    plain = again(replace(old, happened=()), new)
    assert again(old, new).weeks[3:] != plain.weeks[3:]


def test_what_makes_no_sense_any_more_is_only_noted(old: TrainingBlock, new: TrainingBlock) -> None:
    saturday = Happening(what=What.MISSED, week=1, weekday=5)
    noted = replace(old, happened=(saturday,))
    found = again(noted, new)
    assert found.happened == (saturday,)
    assert found.weeks[3:] == again(replace(old, happened=()), new).weeks[3:]


def test_another_start_length_or_time_makes_a_new_block(old: TrainingBlock, new: TrainingBlock) -> None:
    assert again(None, new) == new
    later = replace(new, starts=STARTS + datetime.timedelta(weeks=1))
    assert again(old, later) == later
    shorter = replace(new, weeks=new.weeks[:5])
    assert again(old, shorter) == shorter
    assert again(old, new, STARTS - datetime.timedelta(days=1)) == new
    assert again(old, new, STARTS + datetime.timedelta(weeks=20)) == new
