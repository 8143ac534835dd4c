"""A block of weeks on the hand-made narrowboat: its shape, its loads, its steps, its tests, and that it repeats."""

from __future__ import annotations

import datetime
import hashlib
import os
import subprocess
import sys
import time
from dataclasses import replace
from itertools import pairwise

import pytest

from core.errors import InputError
from core.fit.setting import Setting
from core.house.wishes import DayWish, Pin, WeekWishes
from core.plan.block import plan_block, waves
from core.plan.long_courses import MOST_MASS_SHARE
from core.plan.model import Block, DayKind, DayPlan, Week
from core.plan.validate import find_week_errors
from core.plan.waves import LIGHT_KINDS, steps_at
from core.store.codec_block import block_text
from tests.core.plan.block_examples import HOUSE, MONDAY, PEOPLE, REQUEST, block_of, days_of, pattern, shipped
from tests.dipper import CABIN, TOWPATH

NAMES = tuple(PEOPLE)
PLACES = {place.id: place for place in (CABIN, TOWPATH)}


def blocks_of(week: Week) -> dict[tuple[int, str], Block]:
    return {(day.weekday, block.exercise.id): block for day in week.days for block in day.blocks}


# --- the shape of it ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("weeks", range(4, 17))
def test_a_block_begins_and_ends_with_tests_and_eases_off_in_between(weeks: int) -> None:
    kinds = [wave.name for wave in waves(weeks)]
    assert len(kinds) == weeks + 1
    assert (kinds[0], kinds[-1]) == ("test", "retest")
    assert set(kinds[1:-1]) <= {"build", "easy"}
    assert kinds[-2] == "build"
    longest = max(len(run) for run in "".join("b" if kind == "build" else " " for kind in kinds).split())
    assert longest <= 4


def test_eight_weeks_build_ease_build_and_test_again() -> None:
    kinds = [wave.name for wave in waves(8)]
    assert kinds == ["test", "build", "build", "build", "easy", "build", "build", "build", "retest"]
    assert steps_at(waves(8)) == (0, 0, 1, 2, 2, 3, 4, 5, 5)


@pytest.mark.parametrize("weeks", [-1, 0, 3, 17])
def test_a_block_of_another_length_is_refused(weeks: int) -> None:
    with pytest.raises(InputError, match=r"is no length for a block \(4 to 16\)"):
        plan_block(REQUEST, HOUSE, PEOPLE["ines"], shipped(), weeks=weeks)


def test_a_block_starts_on_a_monday() -> None:
    with pytest.raises(InputError, match="is no Monday, on which a week starts; give 2026-05-04"):
        plan_block(REQUEST, HOUSE, PEOPLE["ines"], shipped(), starts=datetime.date(2026, 5, 6))


@pytest.mark.parametrize("weeks", [4, 8, 11, 16])
def test_every_week_obeys_every_hard_rule(weeks: int) -> None:
    for name in NAMES:
        for week in block_of(name, weeks).weeks:
            assert list(find_week_errors(week.week, REQUEST, HOUSE, PEOPLE[name])) == [], (name, week.number)


def test_a_date_is_found_in_its_week() -> None:
    block = block_of("ines")
    assert block.monday_of(3) == datetime.date(2026, 5, 25)
    assert block.place_of(datetime.date(2026, 5, 26)) == (3, 1)
    assert block.place_of(MONDAY - datetime.timedelta(days=1)) is None
    assert block.place_of(MONDAY + datetime.timedelta(weeks=9)) is None
    assert replace(block, starts=None).place_of(MONDAY) is None


# --- movements and loads --------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_the_movements_stay_the_same_throughout(name: str) -> None:
    block = block_of(name)
    first = {key: one.exercise.id for key, one in blocks_of(block.weeks[0].week).items()}
    for week in block.weeks:
        assert {key: one.exercise.id for key, one in blocks_of(week.week).items()} == first


@pytest.mark.parametrize("name", NAMES)
def test_every_load_is_one_this_house_can_make(name: str) -> None:
    settings = {
        place_id: Setting(HOUSE, PEOPLE[name], shipped().material_by_id, place) for place_id, place in PLACES.items()
    }
    seen = 0
    for week in block_of(name, 16).weeks:
        for day in week.week.days:
            for one in day.blocks:
                load, need = one.binding.load, one.exercise.load_need
                if load is None or need is None or day.place_id is None:
                    continue
                ladder = settings[day.place_id].ladder(load.use, need.count, one.exercise.posture)
                assert min(abs(load.mass.value - kg) for kg in ladder.masses_kg) < 0.006, one.exercise.id
                seen += 1
    assert seen > 10


@pytest.mark.parametrize("name", NAMES)
def test_no_load_grows_by_more_than_a_tenth_without_saying_so(name: str) -> None:
    weeks = block_of(name, 16).weeks
    for before, after in pairwise(weeks):
        old, new = blocks_of(before.week), blocks_of(after.week)
        for key, one in new.items():
            was_kg, is_kg = old[key].binding.load_kg, one.binding.load_kg
            if was_kg > 0 and is_kg > was_kg * 1.10 + 1e-9:
                assert any(note.startswith(one.exercise.name) and "is a step of" in note for note in after.notes)


@pytest.mark.parametrize("name", NAMES)
def test_load_and_amount_never_grow_together(name: str) -> None:
    building = [week for week in block_of(name, 16).weeks if week.kind == "build"]
    for before, after in pairwise(building):
        old, new = blocks_of(before.week), blocks_of(after.week)
        for key, one in new.items():
            if one.binding.load_kg > old[key].binding.load_kg + 1e-9:
                was, now = old[key].dose, one.dose
                for first, second in (
                    (was.reps, now.reps),
                    (was.seconds, now.seconds),
                    (was.distance_m, now.distance_m),
                ):
                    assert first is None or second is None or sum(second) <= sum(first)


def test_something_grows_over_the_block_in_every_strength_movement_with_a_rising_load_somewhere() -> None:
    block = block_of("ines", 16)
    first, last = blocks_of(block.weeks[1].week), blocks_of(block.weeks[15].week)
    assert any(last[key].binding.load_kg > first[key].binding.load_kg for key in first)


@pytest.mark.parametrize("name", NAMES)
def test_a_light_week_halves_the_sets_and_leaves_load_and_movement(name: str) -> None:
    block = block_of(name)
    building, easy = block.weeks[3], block.weeks[4]
    old, new = blocks_of(building.week), blocks_of(easy.week)
    for key, one in new.items():
        assert one.binding.load_kg == old[key].binding.load_kg
        assert one.dose.effort <= old[key].dose.effort
    assert easy.load < 0.65 * building.load


@pytest.mark.parametrize("name", NAMES)
def test_effort_rises_through_the_building_weeks_and_never_to_the_last_repetition(name: str) -> None:
    for number in (1, 2):
        before, after = (
            blocks_of(block_of(name).weeks[number].week),
            blocks_of(block_of(name).weeks[number + 1].week),
        )
        assert all(after[key].dose.effort >= before[key].dose.effort for key in after)
    efforts = [one.dose.effort for week in block_of(name).weeks for one in blocks_of(week.week).values()]
    assert max(efforts) <= 9


# --- walks and runs -------------------------------------------------------------------------------------------------


def changes(before: DayPlan, after: DayPlan) -> tuple[bool, bool]:
    (old,), (new,) = before.blocks, after.blocks
    return new.binding.load_kg != old.binding.load_kg, new.seconds != old.seconds


def test_a_loaded_walk_begins_at_five_to_ten_per_cent_and_stays_under_its_cap() -> None:
    body_kg = PEOPLE["ines"].body_mass_kg
    masses = [day.blocks[0].binding.load_kg for _, day in days_of(block_of("ines", 16), DayKind.LOADED_WALK)]
    assert len(masses) == 17
    assert 0.05 * body_kg <= masses[0] <= 0.10 * body_kg
    assert max(masses) <= MOST_MASS_SHARE * body_kg


def test_a_loaded_walk_changes_in_one_thing_at_a_time() -> None:
    for (_, before), (_, after) in pairwise(days_of(block_of("ines", 16), DayKind.LOADED_WALK)):
        assert sum(changes(before, after)) <= 1


@pytest.mark.parametrize("kind", [DayKind.EASY, DayKind.LOADED_WALK])
def test_walks_and_runs_grow_by_a_tenth_a_week_at_most(kind: DayKind) -> None:
    block = block_of("ines", 16)
    light = {week.number for week in block.weeks if week.kind in LIGHT_KINDS}
    building = [day for number, day in days_of(block, kind) if number not in light]
    for before, after in pairwise(building):
        assert after.blocks[0].seconds <= before.blocks[0].seconds * 1.10 + 1e-9
    assert building[-1].blocks[0].seconds >= building[0].blocks[0].seconds


# --- tests at both ends ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_the_tests_stand_on_the_same_days_at_both_ends(name: str) -> None:
    block = block_of(name)
    assert block.weeks[0].tests == block.weeks[-1].tests
    assert [test.protocol_id for test in block.weeks[0].tests] == [protocol.id for protocol in block.tests]
    assert len(block.tests) >= 4
    assert not any(week.tests for week in block.weeks[1:-1])


@pytest.mark.parametrize("name", NAMES)
def test_tests_fit_into_the_minutes_of_their_day(name: str) -> None:
    block = block_of(name)
    minutes = {protocol.id: protocol.minutes for protocol in block.tests}
    for week in (block.weeks[0], block.weeks[-1]):
        for day in week.week.days:
            testing_s = sum(60 * minutes[test.protocol_id] for test in week.tests if test.weekday == day.weekday)
            assert day.kind is DayKind.REST or day.seconds + testing_s <= day.limit_s


def test_a_mile_is_tested_on_the_day_of_the_run() -> None:
    block = block_of("ines")
    mile = next(test for test in block.weeks[0].tests if test.protocol_id.startswith("mile"))
    assert mile.weekday is not None
    assert block.weeks[0].week.days[mile.weekday].kind is DayKind.EASY


# --- how it is planned ----------------------------------------------------------------------------------------------


def test_the_week_a_person_has_is_the_one_the_block_is_made_from() -> None:
    asked: list[object] = []
    request = replace(REQUEST, keep=pattern("ines"))
    block = plan_block(request, HOUSE, PEOPLE["ines"], shipped(), weeks=4, on_start=asked.append)
    assert asked == [], "nothing had to be solved"
    kept = {key: one.exercise.id for key, one in blocks_of(pattern("ines")).items()}
    assert {key: one.exercise.id for key, one in blocks_of(block.weeks[1].week).items()} == kept


def test_a_week_that_does_not_fit_the_wishes_any_more_is_planned_anew() -> None:
    asked: list[object] = []
    fewer = replace(REQUEST.wishes, days=REQUEST.wishes.days[:2])
    request = replace(REQUEST, wishes=fewer, keep=pattern("ines"))
    block = plan_block(request, HOUSE, PEOPLE["ines"], shipped(), weeks=4, on_start=asked.append)
    assert asked
    assert {day.weekday for day in block.weeks[1].week.days if day.kind is not DayKind.REST} <= {1, 3}


def test_nobody_waiting_any_more_ends_the_planning() -> None:
    request = replace(REQUEST, keep=pattern("ines"))
    told: list[tuple[int, int]] = []

    def progress(done: int, every: int) -> bool:
        told.append((done, every))
        return done < 3

    block = plan_block(request, HOUSE, PEOPLE["ines"], shipped(), progress=progress)
    assert told == [(1, 9), (2, 9), (3, 9)]
    assert len(block.weeks) == 3


def test_wishes_that_clash_are_told_in_the_only_week() -> None:
    wishes = WeekWishes(days=(DayWish(weekday=1, minutes=5),), pins=(Pin(weekday=1, kind="strength"),))
    block = plan_block(replace(REQUEST, wishes=wishes), HOUSE, PEOPLE["ines"], shipped())
    (only,) = block.weeks
    assert only.week.clash is not None
    assert block.pattern is None


def test_eight_weeks_from_a_week_take_far_less_than_two_seconds() -> None:
    request = replace(REQUEST, keep=pattern("ines"))
    begun = time.process_time()
    plan_block(request, HOUSE, PEOPLE["ines"], shipped())
    assert time.process_time() - begun < 2


GOLDEN = """
import hashlib
from core.store.codec_block import block_text
from tests.core.plan.block_examples import block_of, shipped
for name in ("ines", "tomas"):
    print(hashlib.sha256(block_text(block_of(name, 5), shipped()).encode()).hexdigest())
"""


def test_the_same_question_gives_the_same_block_whatever_the_hash_seed() -> None:
    """Here the seed is any, in the other process it is 1."""
    done = subprocess.run(
        [sys.executable, "-c", GOLDEN],
        check=True,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONHASHSEED": "1"},
    )
    texts = [block_text(block_of(name, 5), shipped()) for name in NAMES]
    assert done.stdout.split() == [hashlib.sha256(one.encode()).hexdigest() for one in texts]
