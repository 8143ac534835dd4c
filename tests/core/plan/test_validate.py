"""The checker sees each breach: a sound week is broken by hand in one place, and just that is told."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace

import pytest

from core.exercise.model import Demand, Exercise
from core.house.model import House, QuietHours
from core.house.wishes import DayWish, Pin, WeekWishes
from core.knowledge import Catalog
from core.plan.model import Block, Clash, DayKind, DayPlan, FillState, Status, Week, WeekRequest
from core.plan.validate import find_week_errors
from core.plan.week import plan_week
from tests.core.plan.examples import held
from tests.dipper import INES, dipper

Breaking = Callable[[Week], Week]
QUIET = QuietHours(start=datetime.time(20), end=datetime.time(7))


def errors(week: Week, request: WeekRequest, house: House | None = None) -> list[str]:
    return list(find_week_errors(week, request, house or dipper(), INES))


def with_day(week: Week, day: DayPlan) -> Week:
    return replace(week, days=tuple(day if one.weekday == day.weekday else one for one in week.days))


def first_day(week: Week, kind: DayKind = DayKind.STRENGTH) -> DayPlan:
    return next(day for day in week.days if day.kind is kind)


def with_block(week: Week, block: Block, kind: DayKind = DayKind.STRENGTH) -> Week:
    """The week with another first block on its first day of a kind; seconds stay those of the old one."""
    day = first_day(week, kind)
    return with_day(week, replace(day, blocks=(block, *day.blocks[1:])))


def with_exercise(week: Week, **changes: object) -> Week:
    block = first_day(week).blocks[0]
    exercise: Exercise = replace(block.exercise, **changes)  # type: ignore[arg-type]  # any fields, as the test names them
    return with_block(week, replace(block, exercise=exercise))


def with_wishes(request: WeekRequest, **changes: object) -> WeekRequest:
    wishes: WeekWishes = replace(request.wishes, **changes)  # type: ignore[arg-type]  # as above
    return replace(request, wishes=wishes)


def test_a_planned_week_is_sound(week: Week, asked: WeekRequest) -> None:
    assert errors(week, asked) == []


def test_impossible_needs_a_clash(asked: WeekRequest) -> None:
    assert errors(Week(status=Status.IMPOSSIBLE), asked) == ["The week is called impossible, but no clash is named."]
    named = Week(status=Status.IMPOSSIBLE, clash=Clash(wishes=("a",), ways_out=("b",)))
    assert errors(named, asked) == []


def test_a_week_stopped_before_the_first_answer_breaks_nothing(asked: WeekRequest) -> None:
    assert errors(Week(status=Status.STOPPED), asked) == []
    assert errors(Week(status=Status.CUT_SHORT), asked) == ["The week does not have seven days in order."]


def test_seven_days_in_order(week: Week, asked: WeekRequest) -> None:
    turned = replace(week, days=(*week.days[1:], week.days[0]))
    assert errors(turned, asked) == ["The week does not have seven days in order."]


def test_rest_is_rest(week: Week, asked: WeekRequest) -> None:
    day = replace(week.days[3], blocks=first_day(week).blocks)
    assert "Thursday is a rest day with work in it." in errors(with_day(week, day), asked)


def test_a_day_with_work_has_minutes_and_blocks(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    fewer = with_wishes(asked, days=tuple(one for one in asked.wishes.days if one.weekday != day.weekday))
    assert any("no minutes were given" in line for line in errors(week, fewer))
    assert any("has no work in it" in line for line in errors(with_day(week, replace(day, blocks=())), asked))


def test_seconds_add_up(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    off = with_day(week, replace(day, seconds=day.seconds + 1))
    assert any("its parts add up to" in line for line in errors(off, asked))


def test_minutes_are_kept_to_the_second(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    days = tuple(
        replace(wish, minutes=(day.seconds - 1) / 60) if wish.weekday == day.weekday else wish
        for wish in asked.wishes.days
    )
    assert any("there are" in line for line in errors(week, with_wishes(asked, days=days)))
    exact = tuple(
        replace(wish, minutes=day.seconds / 60) if wish.weekday == day.weekday else wish for wish in asked.wishes.days
    )
    assert errors(week, with_wishes(asked, days=exact)) == []


def test_nothing_is_planned_twice_a_day(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    twice = with_day(week, replace(day, blocks=(day.blocks[0], day.blocks[0], *day.blocks[2:])))
    assert any(line.endswith("twice.") for line in errors(twice, asked))


@pytest.mark.parametrize("kind", [DayKind.STRENGTH, DayKind.INTERVALS, DayKind.LOADED_WALK, DayKind.MOBILITY])
def test_each_block_takes_the_time_of_its_sets(week: Week, asked: WeekRequest, kind: DayKind) -> None:
    block = first_day(week, kind).blocks[0]
    longer = with_block(week, replace(block, seconds=block.seconds + 5), kind)
    assert any("its sets and rests take" in line for line in errors(longer, asked))


def test_what_is_spared_stays_out_of_warm_ups_too(week: Week, asked: WeekRequest) -> None:
    assert any("which is spared" in line for line in errors_for_spares(week, asked))
    day = first_day(week)
    kneeling = replace(day.warm_up[0].exercise, demands=frozenset({Demand.KNEELING}))
    warm_up = (replace(day.warm_up[0], exercise=kneeling), *day.warm_up[1:])
    person = replace(INES, spares=frozenset({Demand.KNEELING}))
    found = find_week_errors(with_day(week, replace(day, warm_up=warm_up)), asked, dipper(), person)
    assert any(kneeling.name in line for line in found)


def errors_for_spares(week: Week, asked: WeekRequest) -> list[str]:
    demands = {demand for block in first_day(week).blocks for demand in block.exercise.demands}
    person = replace(INES, spares=frozenset(demands))
    return list(find_week_errors(week, asked, dipper(), person))


def test_no_gym_gear(week: Week, asked: WeekRequest, catalog: Catalog) -> None:
    gym = next(exercise for exercise in catalog.exercises if exercise.needs_gym)
    assert any("gym gear" in line for line in errors(with_exercise(week, needs=gym.needs), asked))


def test_things_are_owned_and_there(week: Week, asked: WeekRequest) -> None:
    used = {thing_id for day in week.days for block in day.blocks for thing_id in block.binding.thing_ids}
    assert used
    house = dipper()
    none = replace(house, things=())
    assert any("does not have" in line for line in errors(week, asked, none))
    elsewhere = replace(house, things=tuple(replace(thing, place_ids=("elsewhere",)) for thing in house.things))
    assert any("not at that place" in line for line in errors(week, asked, elsewhere))


def test_no_more_pieces_than_there_are(week: Week, asked: WeekRequest) -> None:
    block = first_day(week).blocks[0]
    loaded = replace(block, binding=replace(block.binding, load=held((FillState("carrier", "water", 5.0), 3))))
    assert any("takes 3 of" in line for line in errors(with_block(week, loaded), asked))


def test_nothing_bears_more_than_its_rating(catalog: Catalog) -> None:
    days = (DayWish(weekday=0, minutes=40, place_id="towpath"),)
    wishes = WeekWishes(days=days, pins=(Pin(weekday=0, exercise_id="inverted_row_bent_knees"),))
    request, house = WeekRequest(wishes=wishes), dipper()
    week = plan_week(request, house, INES, catalog)
    assert errors(week, request) == []
    weak = tuple(
        replace(thing, facts=replace(thing.facts, rating_kg=20.0)) if thing.id == "beam" else thing
        for thing in house.things
    )
    assert any("which may bear 20 kg" in line for line in errors(week, request, replace(house, things=weak)))


def test_the_wished_place_is_kept(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    assert any("not at" in line for line in errors(with_day(week, replace(day, place_id="cabin")), asked))


def test_noise_and_landing_in_quiet_hours(week: Week, asked: WeekRequest) -> None:
    late = with_wishes(asked, days=tuple(replace(one, start=datetime.time(20, 30)) for one in asked.wishes.days))
    assert any("too loud in quiet hours" in line for line in errors(with_exercise(week, noise=2), late))
    assert any("too loud in quiet hours" in line for line in errors(with_exercise(week, impact=2), late))
    assert not any("too loud" in line for line in errors(with_exercise(week, noise=2), asked))


def test_neighbours_hear_at_any_time(week: Week, asked: WeekRequest) -> None:
    house = dipper()
    heard = replace(house, places=tuple(replace(place, neighbours=True) for place in house.places))
    assert any("for the neighbours" in line for line in errors(with_exercise(week, noise=2), asked, heard))


def test_warm_ups_are_quiet_too(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    loud = replace(day.warm_up[0], exercise=replace(day.warm_up[0].exercise, noise=3))
    late = with_wishes(asked, days=tuple(replace(one, start=datetime.time(21)) for one in asked.wishes.days))
    assert any("too loud" in line for line in errors(with_day(week, replace(day, warm_up=(loud,))), late))


def test_48_hours_between_hard_work(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    after = replace(day, weekday=(day.weekday + 1) % 7)
    assert any("within 48 hours" in line for line in errors(with_day(week, after), asked))


def test_48_hours_count_from_the_time_of_day(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    two_on = (day.weekday + 2) % 7
    both = with_day(week, replace(day, weekday=two_on))
    starts = {day.weekday: datetime.time(18), two_on: datetime.time(7)}
    days = (DayWish(weekday=one, minutes=60, place_id="towpath", start=starts.get(one)) for one in range(7))
    early = with_wishes(asked, days=tuple(days))
    assert any("within 48 hours" in line for line in errors(both, early))
    later = with_wishes(asked, days=tuple(replace(one, start=None) for one in early.wishes.days))
    assert not any("within 48 hours" in line for line in errors(both, later))


def test_a_ban_is_lifted_only_where_it_is_pinned(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    banned = day.blocks[0].exercise.id
    assert any("is banned" in line for line in errors(week, with_wishes(asked, bans=(banned,))))
    here = (Pin(weekday=day.weekday, exercise_id=banned),)
    days_with_it = [one for one in week.days if banned in {block.exercise.id for block in one.blocks}]
    still = errors(week, with_wishes(asked, bans=(banned,), pins=here))
    assert len([line for line in still if "is banned" in line]) == len(days_with_it) - 1


def test_pins_are_kept(week: Week, asked: WeekRequest) -> None:
    pins = (Pin(weekday=0, kind="rest"), Pin(weekday=1, exercise_id="pull_up"))
    told = errors(week, with_wishes(asked, pins=pins))
    assert any("Monday is pinned to rest" in line for line in told)
    assert any("pull_up is pinned to Tuesday and not planned there" in line for line in told)


def test_fills_go_into_containers_below_the_brim(week: Week, asked: WeekRequest) -> None:
    assert week.fills
    step = week.fills[0]
    assert any("no container" in line for line in errors(replace(week, fills=(replace(step, thing_id="coal"),)), asked))
    over = replace(step, volume_l=1000.0)
    assert any("more than its brim" in line for line in errors(replace(week, fills=(over, *week.fills[1:])), asked))


def test_pours_on_the_way_are_counted_and_charged(week: Week, asked: WeekRequest) -> None:
    day = first_day(week)
    one, two = FillState("bucket", "water", 3.0), FillState("bucket", "water", 5.0)
    blocks = tuple(
        replace(block, binding=replace(block.binding, load=held((state, 1))), states=(state,))
        for block, state in zip(day.blocks[:3], (one, two, one), strict=True)
    )
    broken = with_day(week, replace(day, blocks=(*blocks, *day.blocks[3:])))
    assert any("needs 2 pours of bucket on the way and lists 0" in line for line in errors(broken, asked))
    charged = with_day(week, replace(day, pour_s=60, seconds=day.seconds + 60))
    assert any("60 s of pouring for 0 pours" in line for line in errors(charged, asked))
