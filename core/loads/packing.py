"""What a bag can carry: every mass its contents can make within its room and its limit, exactly.

A packing takes a few sorts of things, each sort in any count and all its pieces at one fill. How many sorts depends on
how much there is to choose from (`sorts_allowed`): in a small house as many as fit, in a full one three or two, because
nobody packs a bag with five sorts to gain a hundred grams. For every mass (in steps of `GRAIN_KG`) the packing quickest
to set up is kept; ties go to fewer sorts, then to the earlier things. Worked on whole arrays, once for all bags.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from core.loads.pieces import GRAIN_KG, PACK_S, Numbers, States, Whole
from core.things.model import Closure, Form, Hazard, Hold, Rigidity, Thing

PACKABLE_FORMS = frozenset({Form.VESSEL, Form.TIN, Form.SACK, Form.BLOCK, Form.BOOK, Form.FREE_WEIGHT})
UNPACKABLE_HAZARDS = frozenset({Hazard.GLASS, Hazard.HELD_CHEMICALS, Hazard.SHARP})
SORTS_LIMITS = ((14, 6), (20, 5), (36, 4), (90, 3), (1600, 2))
"""(most choices, sorts in one bag): beyond the last, one sort. Each row keeps to some 100,000 combinations."""
SLACK = 1e-9
PILLOW = 0.65
"""A filled soft sack is a pillow, thin at every edge: its share of its outer box, assumed."""


@dataclass(frozen=True, slots=True, eq=False)
class Choices:
    """What may go into a bag: `count` pieces of the thing at `owner`, all in the state at `state`, one row each.

    Rows are grouped by thing in the order of `things`; `first` is where each thing's rows begin (and where all end).
    """

    things: tuple[Thing, ...]
    states: tuple[States, ...]
    owner: Whole
    state: Whole
    count: Whole
    mass_kg: Numbers
    room_l: Numbers
    set_up_s: Numbers
    first: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.owner)


@dataclass(frozen=True, slots=True, eq=False)
class Combinations:
    """Sets of choices: masses kg, room L, set-up s and the rows of `Choices` in each (-1: none)."""

    mass_kg: Numbers
    room_l: Numbers
    set_up_s: Numbers
    picks: Whole


@dataclass(frozen=True, slots=True, eq=False)
class Packed:
    """The kept packings of one bag: masses with the bag in grains (rising), set-up times, rows of choices (-1)."""

    grains: Whole
    set_up_s: Numbers
    picks: Whole
    choices: Choices


def pack_volume_l(thing: Thing) -> float:
    """Room one piece takes in a bag: its own figure, else its outer box (less for a soft sack), L."""
    facts = thing.facts
    if facts.pack_l is not None:
        return facts.pack_l
    soft_sack = facts.form is Form.SACK and facts.rigidity is Rigidity.SOFT
    return facts.length_cm * facts.width_cm * facts.height_cm / 1000 * (PILLOW if soft_sack else 1.0)


def can_be_packed(thing: Thing) -> bool:
    """Whether a thing may ride in a bag: loose, closed, not glass, nothing that held chemicals or cuts."""
    facts = thing.facts
    if facts.fixed or facts.form not in PACKABLE_FORMS or pack_volume_l(thing) <= 0:
        return False
    return facts.closure is not Closure.OPEN and not UNPACKABLE_HAZARDS & facts.hazards


def choices_for(hold: Hold, stock: tuple[tuple[Thing, States], ...]) -> Choices:
    """Every sort, count and state that alone fits into `hold`."""
    kept = [(thing, states) for thing, states in stock if len(states) and can_be_packed(thing)]
    columns: list[tuple[Whole, Whole, Whole, Numbers, Numbers, Numbers]] = []
    first = [0]
    for owner, (thing, states) in enumerate(kept):
        rows = list(_rows(owner, thing, states, hold))
        columns.extend(rows)
        first.append(first[-1] + sum(len(row[0]) for row in rows))
    things, all_states = tuple(thing for thing, _ in kept), tuple(states for _, states in kept)
    if not columns:
        none, nothing = np.zeros(0, dtype=np.int64), np.zeros(0)
        return Choices(things, all_states, none, none, none, nothing, nothing, nothing, tuple(first))
    owner_column, state, count, mass, room, time = (np.concatenate(column) for column in zip(*columns, strict=True))
    return Choices(things, all_states, owner_column, state, count, mass, room, time, tuple(first))


def _rows(
    owner: int, thing: Thing, states: States, hold: Hold
) -> Iterator[tuple[Whole, Whole, Whole, Numbers, Numbers, Numbers]]:
    """Columns of one thing, count by count."""
    room = pack_volume_l(thing)
    for count in range(1, min(thing.count, int(hold.volume_l / room + SLACK)) + 1):
        state = np.flatnonzero(count * states.mass_kg <= hold.limit_kg + SLACK)
        if not len(state):
            return
        same = np.full(len(state), owner, dtype=np.int64)
        time = count * (states.set_up_s[state] + PACK_S)
        mass = count * states.mass_kg[state]
        yield same, state, np.full(len(state), count, dtype=np.int64), mass, np.full(len(state), count * room), time


def sorts_allowed(choice_count: int) -> int:
    """How many sorts one packing may mix."""
    return next((sorts for most, sorts in SORTS_LIMITS if choice_count <= most), 1)


def combine(hold: Hold, choices: Choices) -> Combinations:
    """Every combination of allowed sorts that fits into `hold`, fewer sorts first, the empty one at the head."""
    sorts = sorts_allowed(len(choices))
    layer = Combinations(np.zeros(1), np.zeros(1), np.zeros(1), np.full((1, sorts), -1, dtype=np.int64))
    layers = [layer]
    for depth in range(sorts if len(choices) else 0):
        layer = _with_one_more(layer, depth, hold, choices)
        layers.append(layer)
    return Combinations(
        np.concatenate([one.mass_kg for one in layers]),
        np.concatenate([one.room_l for one in layers]),
        np.concatenate([one.set_up_s for one in layers]),
        np.concatenate([one.picks for one in layers]),
    )


def _with_one_more(layer: Combinations, depth: int, hold: Hold, choices: Choices) -> Combinations:
    """Every combination of `layer` with one more sort that comes later in order, where it still fits."""
    last = layer.picks[:, depth - 1] if depth else np.full(len(layer.mass_kg), -1, dtype=np.int64)
    bases, added = [], []
    for begin, end in zip(choices.first, choices.first[1:], strict=False):
        before = np.flatnonzero(last < begin)
        if end == begin or not len(before):
            continue
        mass, room = choices.mass_kg[begin:end], choices.room_l[begin:end]
        before = before[
            (layer.mass_kg[before] + mass.min() <= hold.limit_kg + SLACK)
            & (layer.room_l[before] + room.min() <= hold.volume_l + SLACK)
        ]
        fits = np.add.outer(layer.mass_kg[before], mass) <= hold.limit_kg + SLACK
        fits &= np.add.outer(layer.room_l[before], room) <= hold.volume_l + SLACK
        base, row = np.nonzero(fits)
        bases.append(before[base])
        added.append(row + begin)
    base, row = _joined(bases), _joined(added)
    picks = layer.picks[base]
    picks[:, depth] = row
    return Combinations(
        layer.mass_kg[base] + choices.mass_kg[row],
        layer.room_l[base] + choices.room_l[row],
        layer.set_up_s[base] + choices.set_up_s[row],
        picks,
    )


def _joined(parts: list[Whole]) -> Whole:
    return np.concatenate(parts) if parts else np.zeros(0, dtype=np.int64)


def pack(hold: Hold, choices: Choices, tare_kg: float, combinations: Combinations | None = None) -> Packed:
    """The quickest packing for each mass that bag and contents can have, the empty bag first.

    `combinations` may be those of a larger hold: what does not fit this one is left out.
    """
    every = combine(hold, choices) if combinations is None else combinations
    fits = np.flatnonzero((every.mass_kg <= hold.limit_kg + SLACK) & (every.room_l <= hold.volume_l + SLACK))
    grains = np.rint((every.mass_kg[fits] + tare_kg) / GRAIN_KG).astype(np.int64)
    kept = quickest(grains, every.set_up_s[fits])
    return Packed(grains[kept], every.set_up_s[fits[kept]], every.picks[fits[kept]], choices)


def quickest(grains: Whole, times: Numbers) -> Whole:
    """Index of the quickest entry for each distinct mass, by rising mass; the earlier entry wins a tie."""
    if not len(grains):
        return np.zeros(0, dtype=np.int64)
    tenths = np.rint(times * 10).astype(np.int64)
    keys = (tenths << 32) | np.arange(len(grains), dtype=np.int64)
    most = np.iinfo(np.int64).max
    best = np.full(int(grains.max()) + 1, most, dtype=np.int64)
    np.minimum.at(best, grains, keys)
    chosen: Whole = best[best != most] & 0xFFFFFFFF
    return chosen
