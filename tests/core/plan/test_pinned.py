"""A coach's own week: kinds, movements and doses pinned exactly, the clock adding up to the second."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.errors import InputError
from core.house.wishes import DayWish, Pin, PinnedDose, WeekWishes
from core.knowledge import Catalog
from core.plan.block import plan_block
from core.plan.model import DayKind, DayPlan, Status, Week, WeekRequest
from core.plan.pinned import dose_words
from core.plan.validate import find_week_errors
from core.plan.week import plan_week
from tests.dipper import INES, dipper

HEAVY = PinnedDose(sets=4, reps=(4, 6), rest_s=(30, 45))
SHORT = PinnedDose(sets=8, work_s=20, rest_s=(10, 10))
STATIONS = ("high_knee_march", "fast_feet", "jumping_jack", "heel_kicks", "side_shuffle")


def asked(*pins: Pin, minutes: float = 45) -> WeekRequest:
    days = (DayWish(weekday=0, minutes=minutes, place_id="towpath"), DayWish(weekday=3, minutes=minutes))
    return WeekRequest(wishes=WeekWishes(days=days, pins=pins))


def planned(request: WeekRequest, catalog: Catalog) -> Week:
    week = plan_week(request, dipper(), INES, catalog)
    assert list(find_week_errors(week, request, dipper(), INES)) == []
    return week


def test_a_movement_keeps_its_pinned_sets_reps_and_rest(catalog: Catalog) -> None:
    week = planned(asked(Pin(weekday=0, exercise_id="pack_squat", kind="strength", dose=HEAVY)), catalog)
    (squat,) = [block for block in week.days[0].blocks if block.exercise.id == "pack_squat"]
    assert (squat.dose.sets, squat.dose.reps, squat.rest_s) == (4, (4, 6), 45)
    assert squat.seconds == round(4 * 5 * squat.exercise.rep_s) + 3 * 45 + 30
    assert squat.why[1] == "The dose is pinned: 4 × 4–6, rest 30 to 45 s; the minutes count 45 s of rest."
    assert any("light for the reps you pinned" in line for line in squat.why)


def test_a_whole_strength_day_keeps_a_dose(catalog: Catalog) -> None:
    week = planned(asked(Pin(weekday=0, kind="strength", dose=HEAVY)), catalog)
    counted = [block for block in week.days[0].blocks if block.dose.reps is not None]
    assert len(counted) >= 4
    assert {(block.dose.sets, block.dose.reps, block.rest_s) for block in counted} == {(4, (4, 6), 45)}


def test_eight_rounds_of_20_10_on_five_movements_take_20_minutes(catalog: Catalog) -> None:
    pins = tuple(Pin(weekday=0, exercise_id=name, kind="intervals", dose=SHORT) for name in STATIONS)
    day = planned(asked(*pins, minutes=32), catalog).days[0]
    assert {block.exercise.id for block in day.blocks} == set(STATIONS)
    assert sum(block.seconds for block in day.blocks) == 20 * 60
    assert all((block.dose.sets, block.dose.seconds, block.rest_s) == (8, (20, 20), 10) for block in day.blocks)
    fixed_s = sum(block.seconds for block in (*day.warm_up, *day.cool_down))
    assert day.seconds == 20 * 60 + fixed_s
    exact = planned(asked(*pins, minutes=day.seconds / 60), catalog)
    assert exact.status is Status.OPTIMAL


def test_a_whole_interval_day_keeps_a_scheme(catalog: Catalog) -> None:
    day = planned(asked(Pin(weekday=0, kind="intervals", dose=SHORT)), catalog).days[0]
    assert len(day.blocks) == 5
    assert {(block.dose.sets, block.dose.seconds, block.rest_s) for block in day.blocks} == {(8, (20, 20), 10)}


def test_a_movement_of_another_pattern_can_be_pinned_into_intervals(catalog: Catalog) -> None:
    day = planned(asked(Pin(weekday=0, exercise_id="push_up", kind="intervals", dose=SHORT)), catalog).days[0]
    assert day.kind is DayKind.INTERVALS
    assert "push_up" in {block.exercise.id for block in day.blocks}


def test_a_walk_keeps_its_pinned_time(catalog: Catalog) -> None:
    dose = PinnedDose(sets=1, work_s=25 * 60)
    day = planned(asked(Pin(weekday=0, exercise_id="brisk_walk", kind="easy", dose=dose)), catalog).days[0]
    assert [block.seconds for block in day.blocks] == [25 * 60]


def test_a_dose_too_long_for_the_day_clashes_with_its_minutes(catalog: Catalog) -> None:
    pins = tuple(Pin(weekday=0, exercise_id=name, kind="intervals", dose=SHORT) for name in STATIONS)
    week = plan_week(asked(*pins, minutes=20), dipper(), INES, catalog)
    assert week.clash is not None
    assert "20 minutes on Monday" in week.clash.wishes
    assert any("8 × 20 s, rest 10 s" in wish for wish in week.clash.wishes)


def test_a_dose_in_reps_is_none_for_intervals(catalog: Catalog) -> None:
    with pytest.raises(InputError, match="give the seconds of work"):
        plan_week(asked(Pin(weekday=0, kind="intervals", dose=HEAVY)), dipper(), INES, catalog)
    week = plan_week(asked(Pin(weekday=0, exercise_id="jumping_jack", dose=HEAVY)), dipper(), INES, catalog)
    assert week.clash is not None
    assert "can't be done at 4 × 4–6" in week.clash.wishes[0]


def test_doses_that_no_day_can_have_are_told(catalog: Catalog) -> None:
    with pytest.raises(InputError, match="pinned to rest with a dose"):
        plan_week(asked(Pin(weekday=0, kind="rest", dose=HEAVY)), dipper(), INES, catalog)
    with pytest.raises(InputError, match="give 1 set and its time"):
        plan_week(asked(Pin(weekday=0, kind="easy", dose=SHORT)), dipper(), INES, catalog)
    twice = (Pin(weekday=0, exercise_id="push_up", dose=HEAVY), Pin(weekday=0, exercise_id="push_up", dose=SHORT))
    with pytest.raises(InputError, match="more than one dose"):
        plan_week(asked(*twice), dipper(), INES, catalog)


def test_a_dose_needs_reps_or_seconds_within_reason() -> None:
    with pytest.raises(InputError, match="either reps or seconds"):
        PinnedDose(sets=3)
    with pytest.raises(InputError, match="either reps or seconds"):
        PinnedDose(sets=3, reps=(5, 5), work_s=20)
    for wrong in ({"sets": 0}, {"reps": (6, 4)}, {"reps": (0, 4)}, {"rest_s": (0, 601)}, {"rest_s": (60, 30)}):
        with pytest.raises(InputError, match="can't be pinned"):
            PinnedDose(**({"sets": 3, "reps": (4, 6)} | wrong))  # type: ignore[arg-type]  # one field wrong at a time


def test_the_checker_sees_another_dose(catalog: Catalog) -> None:
    request = asked(Pin(weekday=0, exercise_id="pack_squat", kind="strength", dose=HEAVY))
    week = planned(request, catalog)
    day = week.days[0]
    wrong: tuple[dict[str, object], ...] = ({"sets": 3}, {"reps": (4, 7)})
    for changes in wrong:
        assert any("not done at the dose pinned" in line for line in _errors(_with(week, day, changes), request))
    rested = replace(day, blocks=tuple(replace(block, rest_s=60) for block in day.blocks))
    assert any("not done at the dose pinned" in line for line in _errors(_replaced(week, rested), request))


def _with(week: Week, day: DayPlan, changes: dict[str, object]) -> Week:
    blocks = tuple(replace(block, dose=replace(block.dose, **changes)) for block in day.blocks)  # type: ignore[arg-type]  # any fields
    return _replaced(week, replace(day, blocks=blocks))


def _replaced(week: Week, day: DayPlan) -> Week:
    return replace(week, days=tuple(day if one.weekday == day.weekday else one for one in week.days))


def _errors(week: Week, request: WeekRequest) -> list[str]:
    return list(find_week_errors(week, request, dipper(), INES))


def test_doses_in_words() -> None:
    assert dose_words(HEAVY) == "4 × 4–6, rest 30 to 45 s"
    assert dose_words(SHORT) == "8 × 20 s, rest 10 s"
    assert dose_words(PinnedDose(sets=1, work_s=1500)) == "25 min"
    assert dose_words(PinnedDose(sets=3, reps=(5, 5))) == "3 × 5"


def test_a_pinned_dose_is_kept_in_every_week_of_a_block(catalog: Catalog) -> None:
    request = asked(
        Pin(weekday=0, exercise_id="pack_squat", kind="strength", dose=HEAVY),
        Pin(weekday=3, kind="intervals", dose=SHORT),
    )
    weeks = plan_block(request, dipper(), INES, catalog, weeks=4).weeks
    assert len(weeks) == 5
    for one in weeks:
        assert not [line for line in _errors(one.week, request) if "dose pinned" in line]
