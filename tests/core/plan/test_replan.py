"""What happens changes what is left and never what is past, by stated rules; the same case gives the same plan."""

from __future__ import annotations

import datetime
from dataclasses import replace
from itertools import pairwise

import pytest

from core.effort.capacity import ceiling
from core.errors import InputError
from core.exercise.model import Pattern
from core.house.model import Capacity, House
from core.house.wishes import DayWish, Pin, WeekWishes
from core.plan.block_model import Happening, TrainingBlock, What
from core.plan.model import Block, DayKind, WeekRequest
from core.plan.moving import wishes_with
from core.plan.plan_rest import plan_rest
from core.plan.replan import Away, replan
from core.plan.validate import find_week_errors
from core.quantity import Measured
from core.store.codec_block import block_text
from tests.core.plan.block_examples import HOUSE, PEOPLE, REQUEST, block_of, shipped
from tests.dipper import CABIN, INES, TOWPATH, tins, without

TUESDAY, WEDNESDAY, THURSDAY, SATURDAY, SUNDAY = 1, 2, 3, 5, 6


def after(*happened: Happening, block: TrainingBlock | None = None, away: Away | None = None) -> TrainingBlock:
    found = block or block_of("ines")
    for one in happened:
        found = replan(found, one, REQUEST, HOUSE, INES, shipped(), away=away if one.what is What.AWAY else None)
    return found


def what(kind: What, week: int, weekday: int = TUESDAY, **more: object) -> Happening:
    return Happening(what=kind, week=week, weekday=weekday, **more)  # type: ignore[arg-type]  # named as they are


def movement(block: TrainingBlock, week: int, weekday: int = TUESDAY, at: int = 3) -> Block:
    return block.weeks[week].week.days[weekday].blocks[at]


def dose_of(block: TrainingBlock, week: int, weekday: int = TUESDAY, at: int = 3) -> tuple[float, object]:
    one = movement(block, week, weekday, at)
    return one.binding.load_kg, one.dose.reps or one.dose.seconds or one.dose.distance_m


CASES = [
    what(What.DONE, 2),
    what(What.PARTLY, 2, share=0.6),
    what(What.MISSED, 2),
    what(What.MOVED, 2, SATURDAY, to_weekday=4),
    what(What.ILL, 2, days=7),
    what(What.AWAY, 2, days=3),
    what(What.HARDER, 2),
    what(What.EASIER, 2),
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.what.value)
def test_the_past_is_never_touched(case: Happening) -> None:
    before, found = block_of("ines"), after(case)
    for number in range(case.week):
        assert found.weeks[number] is before.weeks[number]
    settled = case.last_day - 7 * case.week
    if case.what is not What.MOVED:
        for weekday in range(min(settled + 1, 7)):
            assert found.weeks[case.week].week.days[weekday] == before.weeks[case.week].week.days[weekday]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.what.value)
def test_every_week_that_is_left_obeys_every_hard_rule(case: Happening) -> None:
    for week in after(case).weeks:
        request = replace(REQUEST, wishes=wishes_with(week.week.days, REQUEST.wishes))
        assert list(find_week_errors(week.week, request, HOUSE, INES)) == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.what.value)
def test_the_same_case_gives_the_same_plan(case: Happening) -> None:
    assert block_text(after(case), shipped()) == block_text(after(case), shipped())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.what.value)
def test_what_was_predicted_and_what_happened_are_both_kept(case: Happening) -> None:
    before, found = block_of("ines"), after(case)
    assert [(one.what, one.week, one.weekday) for one in found.happened] == [(case.what, case.week, case.weekday)]
    for old, new in zip(before.weeks, found.weeks, strict=True):
        assert (new.predicted or new.week).days == old.week.days


def test_what_was_predicted_first_stays_through_several_changes() -> None:
    found = after(what(What.MISSED, 1), what(What.MISSED, 2), what(What.MISSED, 3))
    for old, new in zip(block_of("ines").weeks, found.weeks, strict=True):
        assert (new.predicted or new.week).days == old.week.days


def test_what_went_as_planned_changes_nothing() -> None:
    assert after(what(What.DONE, 2)).weeks == block_of("ines").weeks


@pytest.mark.parametrize("case", [what(What.MISSED, 2), what(What.PARTLY, 2, share=0.3), what(What.HARDER, 2)])
def test_a_day_that_did_not_work_out_holds_its_movements_for_a_week(case: Happening) -> None:
    before, found = block_of("ines"), after(case)
    assert dose_of(found, 3) == dose_of(before, 2)
    assert dose_of(found, 5) == dose_of(before, 3)
    assert dose_of(found, 7) == dose_of(before, 6)


def test_movements_of_other_days_go_on_as_planned() -> None:
    before, found = block_of("ines"), after(what(What.MISSED, 2, SATURDAY))
    assert found.weeks[3].week.days[TUESDAY] == before.weeks[3].week.days[TUESDAY]
    assert found.weeks[3].week.days[SATURDAY] != before.weeks[3].week.days[SATURDAY]


def test_a_whole_week_missed_steps_back_by_one() -> None:
    missed = [what(What.MISSED, 2, weekday) for weekday in (TUESDAY, THURSDAY, SATURDAY, SUNDAY)]
    before, found = block_of("ines"), after(*missed)
    assert dose_of(found, 3) == dose_of(before, 1), "one step below the week that was missed"
    assert dose_of(found, 5) == dose_of(before, 2)


def test_two_weeks_missed_step_back_by_two() -> None:
    days = (TUESDAY, THURSDAY, SATURDAY, SUNDAY)
    missed = [what(What.MISSED, week, weekday) for week in (5, 6) for weekday in days]
    before, found = block_of("ines"), after(*missed)
    assert dose_of(found, 7) == dose_of(before, 2)


def test_the_order_in_which_things_are_written_down_does_not_matter() -> None:
    one, other = what(What.MISSED, 2), what(What.HARDER, 3, SATURDAY)
    forth = after(one, other)
    assert [week.week for week in forth.weeks[4:]] == [week.week for week in after(other, one).weeks[4:]]


def test_after_an_illness_the_first_week_is_light_in_place_of_the_next_light_one() -> None:
    found = after(what(What.ILL, 2, days=7))
    assert [week.kind for week in found.weeks] == [
        *("test", "build", "build", "easy", "build", "build", "build", "build", "retest"),
    ]


def test_a_short_illness_leaves_the_rest_of_its_week_light() -> None:
    before, found = block_of("ines"), after(what(What.ILL, 2, days=2))
    assert found.weeks[2].kind == "easy"
    assert found.weeks[2].week.days[TUESDAY] == before.weeks[2].week.days[TUESDAY]
    assert found.weeks[2].week.days[SUNDAY].seconds < before.weeks[2].week.days[SUNDAY].seconds


def test_harder_on_two_sessions_running_eases_off_a_step_more() -> None:
    once, twice = after(what(What.HARDER, 2)), after(what(What.HARDER, 2), what(What.HARDER, 3))
    before = block_of("ines")
    assert dose_of(once, 5) == dose_of(before, 3)
    assert dose_of(twice, 5) == dose_of(before, 1)


def test_easier_counts_only_on_two_sessions_running() -> None:
    before = block_of("ines")
    assert dose_of(after(what(What.EASIER, 1)), 2) == dose_of(before, 2)
    twice = after(what(What.EASIER, 1), what(What.EASIER, 2))
    assert dose_of(twice, 3) == dose_of(before, 5)
    broken = after(what(What.EASIER, 1), what(What.DONE, 2), what(What.EASIER, 3))
    assert dose_of(broken, 5) == dose_of(before, 5)


def test_a_loaded_walk_never_hurries() -> None:
    easy = after(*(what(What.EASIER, week, SUNDAY) for week in (1, 2, 3)))
    before = block_of("ines")
    for number in range(4, 9):
        assert easy.weeks[number].week.days[SUNDAY] == before.weeks[number].week.days[SUNDAY]


def test_loaded_walks_change_in_one_thing_at_a_time_whatever_happens() -> None:
    found = after(what(What.MISSED, 2, SUNDAY), what(What.HARDER, 3, SUNDAY), what(What.MISSED, 6, SUNDAY))
    walks = [week.week.days[SUNDAY].blocks[0] for week in found.weeks]
    for one, other in pairwise(walks):
        grown = [other.binding.load_kg > one.binding.load_kg, other.seconds > one.seconds]
        assert sum(grown) <= 1


# --- moved ----------------------------------------------------------------------------------------------------------


def test_a_moved_day_keeps_its_session_and_leaves_a_day_of_rest() -> None:
    before, found = block_of("ines"), after(what(What.MOVED, 2, SATURDAY, to_weekday=4))
    days = found.weeks[2].week.days
    assert days[SATURDAY].kind is DayKind.REST
    assert [one.exercise.id for one in days[4].blocks] == [
        one.exercise.id for one in before.weeks[2].week.days[SATURDAY].blocks
    ]
    assert found.weeks[3:] == before.weeks[3:]


def test_a_moved_day_stays_where_it_was_put_when_something_else_happens() -> None:
    found = after(what(What.MOVED, 3, SATURDAY, to_weekday=4), what(What.MISSED, 2))
    assert found.weeks[3].week.days[4].kind is not DayKind.REST
    assert found.weeks[3].week.days[SATURDAY].kind is DayKind.REST


def test_a_test_moves_with_its_day() -> None:
    before = block_of("ines")
    moved = next(test for test in before.weeks[0].tests if test.weekday == SATURDAY)
    found = after(what(What.MOVED, 0, SATURDAY, to_weekday=4))
    later = after(what(What.MISSED, 0), block=found)
    for one in (found, later):
        assert {test.protocol_id: test.weekday for test in one.weeks[0].tests}[moved.protocol_id] == 4


@pytest.mark.parametrize(
    ("weekday", "to_weekday", "words"),
    [
        (TUESDAY, SATURDAY, "“Saturday” is planned already"),
        (TUESDAY, TUESDAY, "is no other day"),
        (TUESDAY, WEDNESDAY, "less than 48 hours from Thursday"),
    ],
)
def test_a_move_that_cannot_be_says_why(weekday: int, to_weekday: int, words: str) -> None:
    with pytest.raises(InputError, match=words):
        after(what(What.MOVED, 2, weekday, to_weekday=to_weekday))


def test_a_day_kept_for_rest_takes_no_session() -> None:
    rest = replace(REQUEST.wishes, pins=(Pin(weekday=4, kind="rest"),))
    moving = what(What.MOVED, 2, SATURDAY, to_weekday=4)
    with pytest.raises(InputError, match="“Friday” is kept as a day of rest"):
        replan(block_of("ines"), moving, replace(REQUEST, wishes=rest), HOUSE, INES, shipped())


def test_a_pin_goes_with_the_day_that_was_moved() -> None:
    pinned = replace(REQUEST.wishes, pins=(Pin(weekday=SATURDAY, kind="easy"),))
    days = after(what(What.MOVED, 2, SATURDAY, to_weekday=4)).weeks[2].week.days
    assert wishes_with(days, pinned).pins == ()
    assert wishes_with(block_of("ines").weeks[2].week.days, pinned).pins == pinned.pins


def test_a_day_without_the_minutes_takes_no_session() -> None:
    short = replace(REQUEST.wishes, days=(*REQUEST.wishes.days, DayWish(weekday=4, minutes=15)))
    with pytest.raises(InputError, match="“Friday” has 15 minutes, the session takes"):
        replan(
            block_of("ines"),
            what(What.MOVED, 2, SATURDAY, to_weekday=4),
            replace(REQUEST, wishes=short),
            HOUSE,
            INES,
            shipped(),
        )


# --- away -----------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def elsewhere() -> Away:
    """A cabin by the sea with six tins."""
    house = House(name="By the sea", places=(CABIN, TOWPATH), things=(tins(),), people=(INES,))
    days = tuple(DayWish(weekday=day, minutes=30, place_id="cabin") for day in (TUESDAY, THURSDAY))
    return Away(house=house, request=WeekRequest(wishes=WeekWishes(days=days)))


def test_days_away_are_planned_with_what_is_there(elsewhere: Away) -> None:
    found = after(what(What.AWAY, 3, days=3), away=elsewhere)
    days = found.weeks[3].week.days
    assert days[TUESDAY].limit_s == 1800
    used = {thing for day in (days[TUESDAY], days[THURSDAY]) for one in day.blocks for thing in one.binding.thing_ids}
    assert used <= {"tins"}
    assert days[SATURDAY] == block_of("ines").weeks[3].week.days[SATURDAY]


def test_days_away_stay_planned_when_something_happens_before_them(elsewhere: Away) -> None:
    away = after(what(What.AWAY, 3, days=3), away=elsewhere)
    found = after(what(What.MISSED, 2), block=away)
    assert found.weeks[3].week.days[TUESDAY] == away.weeks[3].week.days[TUESDAY]
    assert found.weeks[3].week.days[THURSDAY] == away.weeks[3].week.days[THURSDAY]


def test_trained_days_away_hold_the_course_and_untrained_ones_lose_it(elsewhere: Away) -> None:
    before = block_of("ines")
    trained = after(what(What.AWAY, 2, 0, days=7), away=elsewhere)
    assert dose_of(trained, 3) == dose_of(before, 2)
    assert dose_of(after(what(What.AWAY, 2, 0, days=7)), 3) == dose_of(before, 1)


# --- late entries, other things and other wishes --------------------------------------------------------------------


def test_what_is_entered_late_leaves_every_day_before_today_alone() -> None:
    before = block_of("ines")
    today = datetime.date(2026, 5, 4) + datetime.timedelta(weeks=4, days=5)
    found = replan(before, what(What.MISSED, 1), REQUEST, HOUSE, INES, shipped(), today=today)
    for number in range(4):
        assert found.weeks[number] is before.weeks[number]
    assert found.weeks[4].week.days[TUESDAY] == before.weeks[4].week.days[TUESDAY]
    assert dose_of(found, 5) == dose_of(before, 3)


def test_a_thing_that_is_gone_asks_for_the_rest_to_be_planned_again() -> None:
    gone = without(HOUSE, "daypack")
    with pytest.raises(InputError, match=r"no longer has \(daypack\); plan the rest of the block again"):
        replan(block_of("ines"), what(What.MISSED, 2), REQUEST, gone, INES, shipped())


def test_the_rest_is_planned_with_what_is_left_and_the_past_stays() -> None:
    before, gone = block_of("ines"), without(HOUSE, "daypack")
    found = plan_rest(before, 3, REQUEST, gone, INES, shipped())
    assert found.weeks[:3] == before.weeks[:3]
    used = {
        thing_id
        for week in found.weeks[3:]
        for day in week.week.days
        for one in day.blocks
        for thing_id in one.binding.thing_ids
    }
    assert "daypack" not in used
    for week in found.weeks[3:]:
        assert list(find_week_errors(week.week, REQUEST, gone, INES)) == []
    for old, new in zip(before.weeks, found.weeks, strict=True):
        assert (new.predicted or new.week).days == old.week.days


def test_measured_strength_begins_anew_with_the_rest_and_a_guess_goes_on() -> None:
    """A dose from a test is what the person can do in that week; one from a guess is that of the first week."""
    strong = Capacity(
        pattern=Pattern.PUSH_LEVEL, one_rep_kg=Measured(40.0, 2.0), exercise_id="push_up", told_by="your test"
    )
    tested, before = replace(INES, capacities=(strong,)), block_of("ines")
    found = plan_rest(before, 5, REQUEST, HOUSE, tested, shipped())
    assert found.pattern is not None
    planned = {one.exercise.id: one.dose.reps for one in found.pattern.days[TUESDAY].blocks if one.dose.reps}
    in_week = {one.exercise.id: one.dose.reps for one in found.weeks[5].week.days[TUESDAY].blocks}
    measured = {name for name in planned if ceiling(shipped().exercise_by_id[name], tested).measured}
    assert "push_up" in measured
    assert all(in_week[name] == planned[name] for name in measured)
    assert any(in_week[name] != planned[name] for name in planned.keys() - measured)


def test_the_rest_with_other_days_goes_on() -> None:
    fewer = replace(REQUEST, wishes=replace(REQUEST.wishes, days=REQUEST.wishes.days[:3]))
    found = plan_rest(block_of("ines"), 5, fewer, HOUSE, INES, shipped())
    assert found.pattern_week == 5
    assert found.weeks[5].week.days[SUNDAY].kind is DayKind.REST
    later = replan(found, what(What.MISSED, 6), fewer, HOUSE, INES, shipped())
    assert dose_of(later, 7) == dose_of(found, 6)


def test_the_rest_counts_from_a_week_of_the_block_and_needs_wishes_that_hold_together() -> None:
    with pytest.raises(InputError, match="“9” is no week of this block"):
        plan_rest(block_of("ines"), 9, REQUEST, HOUSE, INES, shipped())
    wishes = WeekWishes(days=(DayWish(weekday=1, minutes=5),), pins=(Pin(weekday=1, kind="strength"),))
    with pytest.raises(InputError, match="can't hold together"):
        plan_rest(block_of("ines"), 5, replace(REQUEST, wishes=wishes), HOUSE, INES, shipped())


# --- what can't have happened ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("case", "words"),
    [
        (what(What.MISSED, 9), r"“9” is no week of this block \(0 to 8\)"),
        (what(What.MISSED, 2, 0), "“Monday of week 2” is a day of rest"),
    ],
)
def test_what_cannot_have_happened_is_refused(case: Happening, words: str) -> None:
    with pytest.raises(InputError, match=words):
        after(case)


def test_the_same_thing_is_written_down_once() -> None:
    with pytest.raises(InputError, match="Week 2, Tuesday: missed” is already written down"):
        after(what(What.MISSED, 2), what(What.MISSED, 2))


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"weekday": 7}, "no weekday"),
        ({"share": 1.5}, "no part of a session"),
        ({"days": 0}, "no time away"),
        ({"to_weekday": 3}, "only when moved"),
    ],
)
def test_a_happening_out_of_range_is_refused(more: dict[str, object], words: str) -> None:
    usual: dict[str, object] = {"what": What.MISSED, "week": 2, "weekday": TUESDAY}
    with pytest.raises(InputError, match=words):
        Happening(**(usual | more))  # type: ignore[arg-type]  # wrong on purpose


def test_a_block_that_could_not_be_planned_cannot_be_planned_again() -> None:
    empty = replace(block_of("ines"), pattern=None)
    with pytest.raises(InputError, match="has no plan to go on from"):
        replan(empty, what(What.MISSED, 2), REQUEST, HOUSE, PEOPLE["ines"], shipped())
