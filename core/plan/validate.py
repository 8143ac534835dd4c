"""An independent look at a finished week: does it obey every hard rule? It knows nothing of the solver.

It recomputes times from doses, looks rules up in the wishes and the house, and yields one sentence per breach. It runs
before any plan is shown.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from core.exercise.model import Sides
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS, DayWish
from core.plan.model import Block, DayKind, DayPlan, Status, Week, WeekRequest

PAUSE_BETWEEN_MOVES_S = 30
POUR_S = 60


def find_week_errors(week: Week, request: WeekRequest, house: House, person: Person) -> Iterator[str]:
    """One sentence for every hard rule the week breaks; nothing for a sound week."""
    if week.status is Status.IMPOSSIBLE:
        if week.clash is None or not week.clash.wishes:
            yield "The week is called impossible, but no clash is named."
        return
    if [day.weekday for day in week.days] != list(range(7)):
        yield "The week does not have seven days in order."
        return
    wishes = {wish.weekday: wish for wish in request.wishes.days}
    for day in week.days:
        yield from _day_errors(day, wishes.get(day.weekday), house, person)
    yield from _neighbour_errors(week)
    yield from _wish_errors(week, request)
    yield from _fill_errors(week, house)


def _day_errors(day: DayPlan, wish: DayWish | None, house: House, person: Person) -> Iterator[str]:
    name = WEEKDAYS[day.weekday]
    if day.kind is DayKind.REST:
        if day.blocks or day.warm_up or day.cool_down:
            yield f"{name} is a rest day with work in it."
        return
    if wish is None:
        yield f"{name} has work, but no minutes were given for it."
        return
    every = (*day.warm_up, *day.blocks, *day.cool_down)
    total_s = sum(block.seconds for block in every) + day.pour_s
    if total_s != day.seconds:
        yield f"{name} says {day.seconds} s, its parts add up to {total_s} s."
    if total_s > wish.minutes * 60 + 1e-6:
        yield f"{name} takes {total_s / 60:.1f} min, there are {wish.minutes:g}."
    for block in day.blocks:
        yield from _block_errors(block, day, house, person)
    twice = [key for key, count in Counter(block.exercise.id for block in day.blocks).items() if count > 1]
    if twice:
        yield f"{name} plans {twice[0]} twice."


def _block_errors(block: Block, day: DayPlan, house: House, person: Person) -> Iterator[str]:
    where = f"{block.exercise.name} on {WEEKDAYS[day.weekday]}"
    spared = [demand.value for demand in block.exercise.demands if demand in person.spares]
    if spared:
        yield f"{where} asks for {min(spared)}, which is spared."
    owned = {thing.id: thing for thing in house.things}
    for thing_id in block.binding.thing_ids:
        thing = owned.get(thing_id)
        if thing is None:
            yield f"{where} uses {thing_id}, which the house does not have."
        elif thing.place_ids and day.place_id not in thing.place_ids:
            yield f"{where} uses {thing.name}, which is not at that place."
    yield from _clock_errors(block, day, where)


def _clock_errors(block: Block, day: DayPlan, where: str) -> Iterator[str]:
    """Strength and mobility blocks are sets, rests and a change; other days are whole blocks of work and rest."""
    if day.kind not in (DayKind.STRENGTH, DayKind.MOBILITY):
        return
    dose = block.dose
    sides = 2 if block.exercise.sides is Sides.EACH else 1
    if dose.seconds is not None:
        work_s = sum(dose.seconds) / 2
    elif dose.distance_m is not None:
        work_s = sum(dose.distance_m) / 2
    else:
        work_s = sum(dose.reps or (0, 0)) / 2 * block.exercise.rep_s
    expected = round(dose.sets * work_s * sides + (dose.sets - 1) * block.rest_s) + PAUSE_BETWEEN_MOVES_S
    if expected != block.seconds:
        yield f"{where} says {block.seconds} s, its sets and rests take {expected} s."


def _neighbour_errors(week: Week) -> Iterator[str]:
    for day in week.days:
        after = week.days[(day.weekday + 1) % 7]
        shared = _hard_families(day) & _hard_families(after)
        for family in sorted(shared):
            yield f"{family} is trained hard on {WEEKDAYS[day.weekday]} and again within 48 hours."


def _hard_families(day: DayPlan) -> set[str]:
    if day.kind is not DayKind.STRENGTH:
        return set()
    return {block.exercise.family.value for block in day.blocks if block.hard}


def _wish_errors(week: Week, request: WeekRequest) -> Iterator[str]:
    pinned = {pin.exercise_id for pin in request.wishes.pins}
    for day in week.days:
        for block in day.blocks:
            if block.exercise.id in request.wishes.bans and block.exercise.id not in pinned:
                yield f"{block.exercise.name} is banned and still planned."
    for pin in request.wishes.pins:
        day = week.days[pin.weekday]
        if pin.kind is not None and day.kind != pin.kind:
            yield f"{WEEKDAYS[pin.weekday]} is pinned to {pin.kind} and planned as {day.kind}."
        if pin.exercise_id is not None and pin.exercise_id not in {block.exercise.id for block in day.blocks}:
            yield f"{pin.exercise_id} is pinned to {WEEKDAYS[pin.weekday]} and not planned there."


def _fill_errors(week: Week, house: House) -> Iterator[str]:
    owned = {thing.id: thing for thing in house.things}
    for fill in week.fills:
        thing = owned.get(fill.thing_id)
        container = thing.facts.container if thing is not None else None
        if container is None:
            yield f"{fill.name} is to be filled, but it is no container."
        elif fill.volume_l > container.brimful_l.value + 1e-9:
            yield f"{fill.name} is to hold {fill.volume_l:g} L, more than its brim."
    pours = Counter(fill.weekday for fill in week.fills if fill.during)
    for day in week.days:
        if day.pour_s != POUR_S * pours.get(day.weekday, 0):
            yield f"{WEEKDAYS[day.weekday]} counts {day.pour_s} s of pouring for {pours.get(day.weekday, 0)} pours."
