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
NEVER = 2**63 - 1
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
    """Sets of choices: masses kg, room L, set-up s. Each is another set (`base`) and one choice more (`row`, -1: none).

    The first is the empty set, its own base. `sorts` is how many choices the largest sets have.
    """

    mass_kg: Numbers
    room_l: Numbers
    set_up_s: Numbers
    base: Whole
    row: Whole
    sorts: int

    def picks(self, sets: Whole) -> Whole:
        """The rows of `Choices` in each of `sets`, in order, -1 where there are fewer than `sorts`."""
        found = np.full((len(sets), self.sorts), -1, dtype=np.int64)
        for column in range(self.sorts - 1, -1, -1):
            found[:, column] = self.row[sets]
            sets = self.base[sets]
        return found


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
    sorts, none = sorts_allowed(len(choices)), np.zeros(1, dtype=np.int64)
    layer = Combinations(np.zeros(1), np.zeros(1), np.zeros(1), none, none - 1, sorts)
    layers, before = [layer], 0
    for _ in range(sorts if len(choices) else 0):
        following = _with_one_more(layer, before, hold, choices)
        before += len(layer.mass_kg)
        layers.append(following)
        layer = following
    return Combinations(
        np.concatenate([one.mass_kg for one in layers]),
        np.concatenate([one.room_l for one in layers]),
        np.concatenate([one.set_up_s for one in layers]),
        np.concatenate([one.base for one in layers]),
        np.concatenate([one.row for one in layers]),
        sorts,
    )


def _with_one_more(layer: Combinations, before: int, hold: Hold, choices: Choices) -> Combinations:
    """Every combination of `layer` with one more sort that comes later in order, where it still fits.

    `before` is how many combinations come before the layer's.
    """
    ends = np.array(choices.first[1:], dtype=np.int64)
    # Each set goes on with the rows after those of its last thing.
    start = np.where(layer.row < 0, 0, ends[choices.owner[layer.row]])
    many = len(choices) - start
    base = np.repeat(np.arange(len(start)), many)
    row = np.repeat(start - np.cumsum(many) + many, many)
    row += np.arange(len(row))
    mass, room = layer.mass_kg[base], layer.room_l[base]
    mass += choices.mass_kg[row]
    room += choices.room_l[row]
    fits = mass <= hold.limit_kg + SLACK
    fits &= room <= hold.volume_l + SLACK
    kept = np.flatnonzero(fits)
    # Of two sets alike in mass and time the one whose things come earlier is kept, so those lead.
    kept = kept[np.argsort(choices.owner[row[kept]].astype(np.int16), kind="stable")]
    base, row = base[kept], row[kept]
    time = layer.set_up_s[base] + choices.set_up_s[row]
    return Combinations(mass[kept], room[kept], time, base + before, row, layer.sorts)


def pack(hold: Hold, choices: Choices, tare_kg: float, combinations: Combinations | None = None) -> Packed:
    """The quickest packing for each mass that bag and contents can have, the empty bag first.

    Worked in place where it can be: fresh memory costs more here than the sums.

    `combinations` may be those of a larger hold: what does not fit this one is left out.
    """
    every = combine(hold, choices) if combinations is None else combinations
    does_fit = every.mass_kg <= hold.limit_kg + SLACK
    does_fit &= every.room_l <= hold.volume_l + SLACK
    fits = np.flatnonzero(does_fit)
    mass = every.mass_kg[fits]
    mass += tare_kg
    mass /= GRAIN_KG
    grains = np.rint(mass, out=mass).astype(np.int64)
    kept = quickest(grains, every.set_up_s[fits])
    return Packed(grains[kept], every.set_up_s[fits[kept]], every.picks(fits[kept]), choices)


def quickest(grains: Whole, times: Numbers) -> Whole:
    """Index of the quickest entry for each distinct mass, by rising mass; the earlier entry wins a tie."""
    if not len(grains):
        return np.zeros(0, dtype=np.int64)
    tenths = times * 10
    keys = np.rint(tenths, out=tenths).astype(np.int64)
    keys <<= 32
    keys |= np.arange(len(grains), dtype=np.int64)
    best = np.full(int(grains.max()) + 1, NEVER, dtype=np.int64)
    np.minimum.at(best, grains, keys)
    chosen: Whole = best[best != NEVER] & 0xFFFFFFFF
    return chosen
