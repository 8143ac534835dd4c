"""An independent look at a finished week: does it obey every hard rule? It knows nothing of the solver.

It recomputes times from doses, counts pours from the blocks, looks rules up in the wishes and the house, and yields one
sentence per breach. It runs before any plan is shown.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from core.house.model import House, Person, Place
from core.house.wishes import WEEKDAYS, DayWish, WeekWishes
from core.plan.model import DayKind, DayPlan, Status, Week, WeekRequest
from core.plan.validate_blocks import block_errors, pinned_dose_errors
from core.plan.validate_pours import pour_errors
from core.plan.validate_times import is_in_quiet_hours, near_sessions

MOST_NOISE = 3
NEAR_NEIGHBOURS_NOISE = 1
QUIET_IMPACT = 1


def find_week_errors(week: Week, request: WeekRequest, house: House, person: Person) -> Iterator[str]:
    """One sentence for every hard rule the week breaks; nothing for a sound week."""
    if week.status is Status.IMPOSSIBLE:
        if week.clash is None or not week.clash.wishes:
            yield "The week is called impossible, but no clash is named."
        return
    if week.status is Status.STOPPED and not week.days:
        return
    if [day.weekday for day in week.days] != list(range(7)):
        yield "The week does not have seven days in order."
        return
    wishes = {wish.weekday: wish for wish in request.wishes.days}
    for day in week.days:
        yield from _day_errors(day, wishes.get(day.weekday), house, person)
    yield from _recovery_errors(week, request.wishes)
    yield from _wish_errors(week, request)
    yield from pour_errors(week, house)


def _day_errors(day: DayPlan, wish: DayWish | None, house: House, person: Person) -> Iterator[str]:
    name = WEEKDAYS[day.weekday]
    if day.kind is DayKind.REST:
        if day.blocks or day.warm_up or day.cool_down:
            yield f"{name} is a rest day with work in it."
        return
    if wish is None:
        yield f"{name} has work, but no minutes were given for it."
        return
    if not day.blocks:
        yield f"{name} is no rest day and has no work in it."
    every = (*day.warm_up, *day.blocks, *day.cool_down)
    total_s = sum(block.seconds for block in every) + day.pour_s
    if total_s != day.seconds:
        yield f"{name} says {day.seconds} s, its parts add up to {total_s} s."
    if total_s > wish.minutes * 60 + 1e-6:
        yield f"{name} takes {total_s / 60:.1f} min, there are {wish.minutes:g}."
    twice = [key for key, count in Counter(block.exercise.id for block in day.blocks).items() if count > 1]
    if twice:
        yield f"{name} plans {twice[0]} twice."
    for block in every:
        yield from block_errors(block, day, house, person)
    yield from _place_errors(day, wish, house)


def _place_errors(day: DayPlan, wish: DayWish, house: House) -> Iterator[str]:
    """Where the day is, and what may be heard there."""
    name = WEEKDAYS[day.weekday]
    place = next((place for place in house.places if place.id == day.place_id), None)
    wished = {known.id for known in house.places} & {wish.place_id}
    if wished and day.place_id not in wished:
        yield f"{name} is planned at {day.place_id}, not at {wish.place_id}."
    if place is not None:
        yield from _noise_errors(day, wish, place)


def _noise_errors(day: DayPlan, wish: DayWish, place: Place) -> Iterator[str]:
    quiet = is_in_quiet_hours(wish, place)
    most = NEAR_NEIGHBOURS_NOISE if quiet or place.neighbours else MOST_NOISE
    for block in (*day.warm_up, *day.blocks, *day.cool_down):
        exercise = block.exercise
        if exercise.noise > most or (quiet and exercise.impact > QUIET_IMPACT):
            when = "in quiet hours" if quiet else f"for the neighbours of {place.name}"
            yield f"{exercise.name} on {WEEKDAYS[day.weekday]} is too loud {when}."


def _recovery_errors(week: Week, wishes: WeekWishes) -> Iterator[str]:
    for before, after in near_sessions(wishes.days):
        first, second = week.days[before], week.days[after]
        for family in sorted(_hard_families(first) & _hard_families(second)):
            yield f"{family} is trained hard on {WEEKDAYS[before]} and again within 48 hours on {WEEKDAYS[after]}."


def _hard_families(day: DayPlan) -> set[str]:
    if day.kind is not DayKind.STRENGTH:
        return set()
    return {block.exercise.family.value for block in day.blocks if block.hard}


def _wish_errors(week: Week, request: WeekRequest) -> Iterator[str]:
    pinned = {(pin.weekday, pin.exercise_id) for pin in request.wishes.pins}
    for day in week.days:
        for block in (*day.warm_up, *day.blocks, *day.cool_down):
            exercise = block.exercise
            if exercise.id in request.wishes.bans and (day.weekday, exercise.id) not in pinned:
                yield f"{exercise.name} is banned and planned on {WEEKDAYS[day.weekday]}."
    for pin in request.wishes.pins:
        day = week.days[pin.weekday]
        if pin.kind is not None and day.kind != pin.kind:
            yield f"{WEEKDAYS[pin.weekday]} is pinned to {pin.kind} and planned as {day.kind}."
        if pin.exercise_id is not None and pin.exercise_id not in {block.exercise.id for block in day.blocks}:
            yield f"{pin.exercise_id} is pinned to {WEEKDAYS[pin.weekday]} and not planned there."
        yield from pinned_dose_errors(pin, day, request.wishes.pins)
