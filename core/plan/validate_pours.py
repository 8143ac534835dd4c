"""The checker's own count of pours: what the blocks need in their order, against what the week lists and charges."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from core.house.model import House
from core.house.wishes import WEEKDAYS
from core.plan.model import Block, DayPlan, Week

POUR_S = 60

Level = tuple[str, float]


def pour_errors(week: Week, house: House) -> Iterator[str]:
    """One sentence for each fill that can't be, and each day whose pours are miscounted."""
    owned = {thing.id: thing for thing in house.things}
    for fill in week.fills:
        thing = owned.get(fill.thing_id)
        container = thing.facts.container if thing is not None else None
        if container is None:
            yield f"{fill.name} is to be filled, but it is no container."
        elif fill.volume_l > container.brimful_l.value + 1e-9:
            yield f"{fill.name} is to hold {fill.volume_l:g} L, more than its brim."
    counts = {thing.id: thing.count for thing in house.things}
    for day in week.days:
        name = WEEKDAYS[day.weekday]
        listed = Counter(fill.thing_id for fill in week.fills if fill.during and fill.weekday == day.weekday)
        if day.pour_s != POUR_S * listed.total():
            yield f"{name} counts {day.pour_s} s of pouring for {listed.total()} pours."
        for thing_id, wanted in _wanted(day).items():
            needed = fewest_pours(wanted, counts.get(thing_id, 1))
            if needed > listed[thing_id]:
                yield f"{name} needs {needed} pours of {thing_id} on the way and lists {listed[thing_id]}."


def _wanted(day: DayPlan) -> dict[str, list[tuple[Level, int]]]:
    """For each thing the fills the blocks want, in order, and of how many pieces."""
    found: dict[str, list[tuple[Level, int]]] = {}
    for block in day.blocks:
        for thing_id, level, pieces in _levels(block):
            found.setdefault(thing_id, []).append((level, pieces))
    return found


def _levels(block: Block) -> Iterator[tuple[str, Level, int]]:
    load = block.binding.load
    for part in load.recipe.parts if load is not None else ():
        if part.material_id is not None:
            yield part.thing_id, (part.material_id, part.fill_l), part.count


def fewest_pours(wanted: Sequence[tuple[Level, int]], count: int) -> int:
    """The fewest pours on the way: what is ready at first is free, and a pour goes into the piece used again latest."""
    ready: list[Level] = []
    pours = 0
    for place, (level, pieces) in enumerate(wanted):
        for _ in range(min(pieces, count) - ready.count(level)):
            if len(ready) >= count:
                spare = [held for held in ready if held != level]
                ready.remove(max(spare, key=lambda held: _next_use(held, wanted, place)))
                pours += 1
            ready.append(level)
    return pours


def _next_use(level: Level, wanted: Sequence[tuple[Level, int]], place: int) -> int:
    later = (at for at in range(place, len(wanted)) if wanted[at][0] == level)
    return next(later, len(wanted))
