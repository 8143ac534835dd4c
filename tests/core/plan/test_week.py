"""Weeks of the Dipper: pins and bans, the week there is, quiet hours, places, minutes, and the same week every time."""

from __future__ import annotations

import datetime
import hashlib
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from core.errors import InputError
from core.house.wishes import DayWish, Pin, WeekWishes
from core.knowledge import Catalog
from core.plan.model import DayKind, Status, Wave, Week, WeekRequest
from core.plan.validate import find_week_errors
from core.plan.week import plan_week
from core.store.codec_week import week_text
from tests.dipper import INES, dipper

ROOT = Path(__file__).parents[3]
LATE = datetime.time(20, 30)


def planned(request: WeekRequest, catalog: Catalog) -> Week:
    """Ines's week, sound."""
    week = plan_week(request, dipper(), INES, catalog)
    assert list(find_week_errors(week, request, dipper(), INES)) == []
    return week


def with_wishes(request: WeekRequest, **changes: object) -> WeekRequest:
    wishes: WeekWishes = replace(request.wishes, **changes)  # type: ignore[arg-type]  # any fields, as the test names them
    return replace(request, wishes=wishes)


def movements(week: Week) -> set[tuple[int, str]]:
    return {(day.weekday, block.exercise.id) for day in week.days for block in day.blocks}


def test_the_week_is_proven_best_and_fills_the_wished_days(week: Week, asked: WeekRequest) -> None:
    assert week.status is Status.OPTIMAL
    assert [day.weekday for day in week.days] == list(range(7))
    assert week.days[3].kind is DayKind.REST
    assert sum(day.kind is DayKind.STRENGTH for day in week.days) == 2
    assert all(day.kind is not DayKind.REST for wish in asked.wishes.days for day in [week.days[wish.weekday]])


def test_sessions_fit_their_minutes_to_the_second(week: Week, asked: WeekRequest) -> None:
    for wish in asked.wishes.days:
        day = week.days[wish.weekday]
        every = (*day.warm_up, *day.blocks, *day.cool_down)
        assert day.seconds == sum(block.seconds for block in every) + day.pour_s
        assert day.seconds <= wish.minutes * 60


def test_parts_of_a_minute_are_not_rounded_up(catalog: Catalog) -> None:
    day = DayWish(weekday=2, minutes=30.99 / 60 + 20, place_id="cabin")
    week = planned(WeekRequest(wishes=WeekWishes(days=(day,))), catalog)
    assert week.days[2].limit_s == 20 * 60 + 30


@pytest.mark.parametrize("kind", [kind for kind in DayKind if kind is not DayKind.REST])
def test_a_pinned_kind_is_kept(catalog: Catalog, asked: WeekRequest, kind: DayKind) -> None:
    week = planned(with_wishes(asked, pins=(Pin(weekday=1, kind=kind),)), catalog)
    assert week.days[1].kind is kind


def test_a_pinned_movement_is_kept_and_lifts_a_ban_there_only(catalog: Catalog, asked: WeekRequest) -> None:
    pins = (Pin(weekday=6, exercise_id="push_up", kind="strength"),)
    week = planned(with_wishes(asked, pins=pins, bans=("push_up",)), catalog)
    assert {weekday for weekday, name in movements(week) if name == "push_up"} == {6}


def test_a_banned_movement_stays_out(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    banned = tuple(sorted({name for _, name in movements(week)}))[:5]
    without = planned(with_wishes(asked, bans=banned), catalog)
    assert not {name for _, name in movements(without)} & set(banned)


def test_quiet_hours_keep_noise_out(catalog: Catalog, asked: WeekRequest) -> None:
    late = with_wishes(asked, days=tuple(replace(day, start=LATE) for day in asked.wishes.days))
    week = planned(late, catalog)
    towpath = [day for day in week.days if day.place_id == "towpath"]
    assert towpath
    every = [block.exercise for day in towpath for block in (*day.warm_up, *day.blocks, *day.cool_down)]
    assert all(exercise.noise <= 1 and exercise.impact <= 1 for exercise in every)


def test_a_loud_pin_in_quiet_hours_clashes_in_words(catalog: Catalog) -> None:
    pins = (Pin(weekday=0, exercise_id="jumping_jack"),)
    day = DayWish(weekday=0, minutes=40, place_id="towpath", start=LATE)
    week = plan_week(WeekRequest(wishes=WeekWishes(days=(day,), pins=pins)), dipper(), INES, catalog)
    assert week.status is Status.IMPOSSIBLE
    assert week.clash is not None
    assert week.clash.wishes == ("jumping jack pinned to Monday (it is too loud for quiet hours)",)
    early = replace(day, start=datetime.time(17))
    assert planned(WeekRequest(wishes=WeekWishes(days=(early,), pins=pins)), catalog).status is Status.OPTIMAL


def test_days_are_where_they_are_wished(week: Week, asked: WeekRequest) -> None:
    assert {wish.weekday: wish.place_id for wish in asked.wishes.days} == {
        day.weekday: day.place_id for day in week.days if day.kind is not DayKind.REST
    }


def test_two_sessions_36_hours_apart_share_no_hard_pattern(catalog: Catalog) -> None:
    days = tuple(
        DayWish(weekday=weekday, minutes=45, place_id="towpath", start=start)
        for weekday, start in ((0, datetime.time(19)), (2, datetime.time(7, 30)))
    )
    pins = tuple(Pin(weekday=weekday, kind="strength") for weekday in (0, 2))
    week = planned(WeekRequest(wishes=WeekWishes(days=days, pins=pins)), catalog)
    families = [{block.family for block in week.days[weekday].blocks} for weekday in (0, 2)]
    assert not families[0] & families[1]


def test_the_week_there_is_stays(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    again = planned(replace(asked, keep=week), catalog)
    assert movements(again) == movements(week)
    assert [day.kind for day in again.days] == [day.kind for day in week.days]
    assert again.fills == week.fills


def test_one_ban_changes_one_movement_a_day(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    banned = next(day for day in week.days if day.kind is DayKind.STRENGTH).blocks[0].exercise.id
    changed = planned(with_wishes(replace(asked, keep=week), bans=(banned,)), catalog)
    lost = movements(week) - movements(changed)
    assert {name for _, name in lost} == {banned}
    assert len(movements(changed) - movements(week)) <= len(lost)


def test_shorter_minutes_on_a_day_leave_the_other_days_alone(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    shorter = tuple(replace(day, minutes=35) if day.weekday == 6 else day for day in asked.wishes.days)
    changed = planned(with_wishes(replace(asked, keep=week), days=shorter), catalog)
    assert {pair for pair in movements(week) if pair[0] != 6} <= movements(changed)


def test_loaded_walks_begin_with_a_tenth_of_the_body_at_most(week: Week) -> None:
    (walk,) = next(day for day in week.days if day.kind is DayKind.LOADED_WALK).blocks
    assert 0.04 * INES.body_mass_kg <= walk.binding.load_kg <= 0.10 * INES.body_mass_kg


def test_an_easy_week_has_about_half_the_sets(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    easy = planned(replace(asked, wave=Wave(name="easy", sets=0.5, effort_shift=-1.0)), catalog)

    def sets(one: Week) -> int:
        return sum(block.dose.sets for day in one.days if day.kind is DayKind.STRENGTH for block in day.blocks)

    assert 0.35 * sets(week) <= sets(easy) <= 0.75 * sets(week)


def test_every_movement_says_why(week: Week) -> None:
    assert all(block.why for day in week.days for block in day.blocks)
    first = next(day for day in week.days if day.kind is DayKind.STRENGTH).blocks[0]
    assert re.match(
        r"Your .+: level [1-5] of 5, (right|a step up|on the easy side) for some experience\.$", first.why[0]
    )


def test_what_was_pinned_says_so(catalog: Catalog, asked: WeekRequest) -> None:
    pinned = planned(with_wishes(asked, pins=(Pin(weekday=6, exercise_id="push_up"),)), catalog)
    whys = {block.exercise.id: block.why for block in pinned.days[6].blocks}
    assert "You pinned it to this day." in whys.pop("push_up")
    assert not any("You pinned it to this day." in why for why in whys.values())


def test_the_week_there_is_comes_back_in_every_word(catalog: Catalog, week: Week, asked: WeekRequest) -> None:
    again = planned(replace(asked, keep=week), catalog)
    assert again.days == week.days
    assert again.checks == week.checks


def test_no_days_is_told(catalog: Catalog) -> None:
    with pytest.raises(InputError, match="give at least one day"):
        plan_week(WeekRequest(wishes=WeekWishes()), dipper(), INES, catalog)


def test_unknown_pins_are_told(catalog: Catalog, asked: WeekRequest) -> None:
    with pytest.raises(InputError, match="no movement in the catalog"):
        plan_week(with_wishes(asked, pins=(Pin(weekday=0, exercise_id="no_such"),)), dipper(), INES, catalog)
    with pytest.raises(InputError, match="no kind of day"):
        plan_week(with_wishes(asked, pins=(Pin(weekday=0, kind="no_such"),)), dipper(), INES, catalog)


PRINT_WEEK = """
import hashlib, sys
from catalog.load import load_catalog
from core.house.wishes import DayWish, WeekWishes
from core.plan.model import WeekRequest
from core.plan.week import plan_week
from core.store.codec_week import week_text
from tests.dipper import INES, dipper
days = tuple(DayWish(weekday=weekday, minutes=45, place_id="towpath") for weekday in (0, 2, 4, 5))
catalog = load_catalog()
text = week_text(plan_week(WeekRequest(wishes=WeekWishes(days=days)), dipper(), INES, catalog), catalog)
print(hashlib.sha256(text.encode()).hexdigest())
"""


def test_the_same_wishes_give_the_same_week_byte_for_byte(catalog: Catalog) -> None:
    days = tuple(DayWish(weekday=weekday, minutes=45, place_id="towpath") for weekday in (0, 2, 4, 5))
    here = week_text(planned(WeekRequest(wishes=WeekWishes(days=days)), catalog), catalog)
    expected = hashlib.sha256(here.encode()).hexdigest()
    environment = os.environ | {"PYTHONHASHSEED": "1"}  # here it is 0 in one run of the suite and 7 in the other
    told = subprocess.run(
        [sys.executable, "-c", PRINT_WEEK], cwd=ROOT, env=environment, capture_output=True, text=True, check=True
    )
    assert told.stdout.strip() == expected
