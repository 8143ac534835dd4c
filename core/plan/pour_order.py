"""The order of a session and its pours: how many there are in a given order, and the order that needs the fewest.

A thing has `count` pieces, each at one fill. What is needed first is made ready before the session; a fill beyond the
pieces there are is poured on the way, into the piece that was made ready first. Blocks at the same fill belong
together: done in the order A, B, A they would cost one pour more.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import permutations
from typing import Protocol, TypeVar

from core.exercise.model import Exercise, Family
from core.fit.model import Binding
from core.plan.frame import STRENGTH_FAMILIES
from core.plan.model import FillState

MOST_GROUPS = 6
"""Up to so many groups of equal fills every order is tried (720 of them); a session has hardly ever more than three."""


class Filled(Protocol):
    """A block or a candidate: a movement with its binding and fills."""

    @property
    def exercise(self) -> Exercise:
        """The movement."""

    @property
    def binding(self) -> Binding:
        """What it is done with."""

    @property
    def states(self) -> tuple[FillState, ...]:
        """The fills it needs."""


F = TypeVar("F", bound=Filled)


def pieces_at(binding: Binding, state: FillState) -> int:
    """How many pieces of the thing a binding needs at this fill."""
    load = binding.load
    return 1 if load is None else sum(part.count for part in load.recipe.parts if part.thing_id == state.thing_id)


def pours_during(blocks: Iterable[F], counts: Mapping[str, int]) -> Iterator[tuple[F, FillState]]:
    """The pours a session needs between its blocks, in the order they come up."""
    have: dict[str, list[FillState]] = {}
    for block in blocks:
        for state in block.states:
            held = have.setdefault(state.thing_id, [])
            for _ in range(pieces_at(block.binding, state) - held.count(state)):
                if len(held) >= counts.get(state.thing_id, 1):
                    held.pop(0)
                    yield block, state
                held.append(state)


def least_pours(blocks: Iterable[Filled], counts: Mapping[str, int]) -> int:
    """A bound no order goes below: for each thing the pieces wanted at all its fills, less the pieces there are."""
    wanted: dict[FillState, int] = {}
    for block in blocks:
        for state in block.states:
            wanted[state] = max(wanted.get(state, 0), pieces_at(block.binding, state))
    by_thing: dict[str, int] = {}
    for state, pieces in wanted.items():
        by_thing[state.thing_id] = by_thing.get(state.thing_id, 0) + pieces
    return sum(max(0, pieces - counts.get(thing_id, 1)) for thing_id, pieces in by_thing.items())


def usual_place(item: Filled) -> tuple[int, str]:
    """Big lifts first, the trunk last; ties by id."""
    family: Family = item.exercise.family
    place = STRENGTH_FAMILIES.index(family) if family in STRENGTH_FAMILIES else len(STRENGTH_FAMILIES)
    return place, item.exercise.id


def in_order(blocks: Iterable[F], counts: Mapping[str, int]) -> tuple[F, ...]:
    """The usual order, changed only as far as that saves a pour."""
    usual = tuple(sorted(blocks, key=usual_place))
    least = least_pours(usual, counts)
    best, fewest = usual, _count(usual, counts)
    if fewest > least:
        for order in _orders(usual):
            pours = _count(order, counts)
            if pours < fewest:
                best, fewest = order, pours
            if fewest == least:
                break
    return best


def _count(blocks: Iterable[Filled], counts: Mapping[str, int]) -> int:
    return sum(1 for _ in pours_during(blocks, counts))


def _orders(usual: Sequence[F]) -> Iterator[tuple[F, ...]]:
    """Blocks at the same fills together, in every order of these groups; blocks without a fill keep their place."""
    groups: dict[tuple[FillState, ...], list[F]] = {}
    for block in usual:
        if block.states:
            groups.setdefault(block.states, []).append(block)
    kept = list(groups.values())
    orders = permutations(kept) if len(kept) <= MOST_GROUPS else iter([tuple(kept)])
    firsts = {group[0].exercise.id for group in kept}
    for order in orders:
        coming = iter(order)
        placed: list[F] = []
        for block in usual:
            if not block.states:
                placed.append(block)
            elif block.exercise.id in firsts:
                placed.extend(next(coming))
        yield tuple(placed)
