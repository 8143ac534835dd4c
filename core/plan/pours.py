"""Pours of a planned week: what to fill before a session, what to refill during it, and which blocks share a pour."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from core.house.model import House
from core.house.wishes import WEEKDAYS
from core.plan.model import Block, DayPlan, FillState, FillStep
from core.plan.pour_order import pieces_at, pours_during

SHARED_WORDS = "One pour serves it and"


def without_shared(day: DayPlan) -> DayPlan:
    """The day with what is said of shared pours taken out of the reasons again."""
    blocks = (
        replace(block, why=tuple(line for line in block.why if not line.startswith(SHARED_WORDS)))
        for block in day.blocks
    )
    return replace(day, blocks=tuple(blocks))


def with_shared_pours(days: tuple[DayPlan, ...]) -> tuple[DayPlan, ...]:
    """Add to each block's reasons the other blocks that use the same fill."""
    users: dict[FillState, list[str]] = {}
    for other in days:
        for block in other.blocks:
            for state in block.states:
                users.setdefault(state, []).append(f"{block.exercise.name.lower()} on {WEEKDAYS[other.weekday]}")
    return tuple(replace(day, blocks=tuple(_sharing_block(block, day, users) for block in day.blocks)) for day in days)


def _sharing_block(block: Block, day: DayPlan, users: dict[FillState, list[str]]) -> Block:
    mine = f"{block.exercise.name.lower()} on {WEEKDAYS[day.weekday]}"
    others = [name for state in block.states for name in users[state] if name != mine]
    if not others:
        return block
    return replace(block, why=(*block.why, f"{SHARED_WORDS} {', '.join(dict.fromkeys(others))}."))


def fill_steps(days: tuple[DayPlan, ...], house: House) -> Iterator[FillStep]:
    """What to pour before each day, given what is full already, and what to pour during it."""
    counts = {thing.id: thing.count for thing in house.things}
    standing: dict[str, list[FillState]] = {}
    for thing in house.things:
        if thing.fill is not None:
            standing[thing.id] = [FillState(thing.id, thing.fill.material_id, thing.fill.volume_l)] * thing.count
    for day in days:
        during = list(pours_during(day.blocks, counts))
        first = _first_states(day.blocks, counts)
        for block, state in first:
            held = standing.setdefault(state.thing_id, [])
            if state in held:
                held.remove(state)
                continue
            yield _step(day, block, state, house, during=False)
        _set_standing(standing, first, counts)
        for block, state in during:
            yield _step(day, block, state, house, during=True)
            standing[state.thing_id] = [*standing.get(state.thing_id, [])[1:], state]


def _first_states(blocks: tuple[Block, ...], counts: dict[str, int]) -> list[tuple[Block, FillState]]:
    """The fills to have ready when the session starts: the first uses, as many as there are pieces."""
    taken: dict[str, list[FillState]] = {}
    found = []
    for block in blocks:
        for state in block.states:
            held = taken.setdefault(state.thing_id, [])
            for _ in range(pieces_at(block.binding, state) - held.count(state)):
                if len(held) < counts.get(state.thing_id, 1):
                    held.append(state)
                    found.append((block, state))
    return found


def _set_standing(
    standing: dict[str, list[FillState]], first: list[tuple[Block, FillState]], counts: dict[str, int]
) -> None:
    ready: dict[str, list[FillState]] = {}
    for _, state in first:
        ready.setdefault(state.thing_id, []).append(state)
    for thing_id, states in ready.items():
        left = standing.get(thing_id, [])
        standing[thing_id] = [*states, *left][: counts.get(thing_id, 1)]


def _step(day: DayPlan, block: Block, state: FillState, house: House, *, during: bool) -> FillStep:
    load = block.binding.load
    part = next(p for p in load.recipe.parts if p.thing_id == state.thing_id) if load is not None else None
    if part is None:
        raise ValueError(f"{block.exercise.id} has no part for {state.thing_id}")
    return FillStep(
        weekday=day.weekday,
        thing_id=state.thing_id,
        name=house.thing(state.thing_id).name,
        material_id=state.material_id,
        volume_l=state.volume_l,
        mass=part.each,
        during=during,
        for_exercise=block.exercise.name,
    )
