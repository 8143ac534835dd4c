"""The checker's look at one block: may the person do it there, do its things hold it, does its clock add up?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from core.exercise.model import DoseKind, Exercise, Option, Sides
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS, Pin
from core.plan.model import Block, DayKind, DayPlan
from core.things.model import Thing

PAUSE_BETWEEN_MOVES_S = 30
CARRY_M_PER_S = 1.0
SLOWER_S = {Option.SLOW_LOWERING: 2, Option.PAUSE: 2}


def block_errors(block: Block, day: DayPlan, house: House, person: Person) -> Iterator[str]:
    """One sentence for each rule the block breaks."""
    where = f"{block.exercise.name} on {WEEKDAYS[day.weekday]}"
    spared = [demand.value for demand in block.exercise.demands if demand in person.spares]
    if spared:
        yield f"{where} asks for {min(spared)}, which is spared."
    if block.exercise.needs_gym:
        yield f"{where} needs gym gear."
    yield from _thing_errors(block, day, house, where)
    yield from _bearing_errors(block, house, person, where)
    if block in day.blocks:
        yield from _clock_errors(block, day, where)


def _thing_errors(block: Block, day: DayPlan, house: House, where: str) -> Iterator[str]:
    owned = {thing.id: thing for thing in house.things}
    for thing_id in block.binding.thing_ids:
        thing = owned.get(thing_id)
        if thing is None:
            yield f"{where} uses {thing_id}, which the house does not have."
        elif thing.place_ids and day.place_id not in thing.place_ids:
            yield f"{where} uses {thing.name}, which is not at that place."
    load = block.binding.load
    for part in load.recipe.parts if load is not None else ():
        thing = owned.get(part.thing_id)
        if thing is not None and part.count > thing.count:
            yield f"{where} takes {part.count} of {thing.name}, the house has {thing.count}."


def _bearing_errors(block: Block, house: House, person: Person, where: str) -> Iterator[str]:
    """The share of the body on a fixture, and the load with its ±, within its rating or what a check of it took."""
    owned = {thing.id: thing for thing in house.things}
    load = block.binding.load
    load_kg = 0.0 if load is None else load.mass.value + load.mass.u95
    for share, thing_id in _borne(block.exercise, block):
        thing = owned.get(thing_id)
        limit_kg = None if thing is None else _limit_kg(thing)
        on_it_kg = share * person.body_mass_kg + load_kg
        if thing is not None and limit_kg is not None and on_it_kg > limit_kg + 1e-6:
            yield f"{where} puts {on_it_kg:.0f} kg on {thing.name}, which may bear {limit_kg:.0f} kg."


def _borne(exercise: Exercise, block: Block) -> Iterator[tuple[float, str]]:
    for held in block.binding.fixtures:
        need = next((need for need in exercise.needs if held.use in need.uses and need.bears), None)
        if need is not None and held.thing_id:
            yield need.bears, held.thing_id


def _limit_kg(thing: Thing) -> float | None:
    if thing.facts.rating_kg is not None:
        return thing.facts.rating_kg
    return None if thing.own_check is None else thing.own_check.took_kg


def _clock_errors(block: Block, day: DayPlan, where: str) -> Iterator[str]:
    """Sets, rests and a change; on interval days every round of work and rest; a long way is all of its time."""
    dose = block.dose
    sides = 2 if block.exercise.sides is Sides.EACH else 1
    if dose.seconds is not None:
        work_s = sum(dose.seconds) / 2
    elif dose.distance_m is not None:
        work_s = sum(dose.distance_m) / 2 / CARRY_M_PER_S
    else:
        rep_s = block.exercise.rep_s + sum(SLOWER_S.get(option, 0) for option in dose.options)
        work_s = sum(dose.reps or (0, 0)) / 2 * rep_s
    if day.kind in (DayKind.STRENGTH, DayKind.MOBILITY):
        expected = round(dose.sets * work_s * sides + (dose.sets - 1) * block.rest_s) + PAUSE_BETWEEN_MOVES_S
    elif day.kind is DayKind.INTERVALS:
        expected = round(dose.sets * (work_s + block.rest_s))
    else:
        expected = round(dose.sets * work_s)
    if expected != block.seconds:
        yield f"{where} says {block.seconds} s, its sets and rests take {expected} s."


def pinned_dose_errors(pin: Pin, day: DayPlan, pins: Sequence[Pin]) -> Iterator[str]:
    """One sentence for each block that is not done at the dose pinned for it, or for its whole day."""
    dose = pin.dose
    if dose is None or (pin.kind is not None and day.kind != pin.kind):
        return
    low_s, high_s = dose.rest_s or (0, 600)
    others = {other.exercise_id for other in pins if other.dose is not None and other.weekday == pin.weekday}
    for block in day.blocks:
        name = block.exercise.id
        fits = dose.reps is None or block.exercise.dose is DoseKind.REPS
        if name != pin.exercise_id and (pin.exercise_id is not None or name in others or not fits):
            continue
        work = None if dose.work_s is None else (dose.work_s, dose.work_s)
        exact = (block.dose.sets, block.dose.reps, block.dose.seconds) == (dose.sets, dose.reps, work)
        rests = block.dose.sets > 1 or day.kind is DayKind.INTERVALS
        if not exact or (rests and not low_s <= block.rest_s <= high_s):
            yield f"{block.exercise.name} on {WEEKDAYS[day.weekday]} is not done at the dose pinned for it."
