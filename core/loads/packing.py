"""What a bag can carry: every mass its contents can make within its room and its limit, exactly.

A packing takes at most three sorts of things (two, then one, where the house offers very many), each sort in any count
and all its pieces at one fill. For every mass (in steps of `GRAIN_KG`) the packing quickest to set up is kept; ties go
to the earlier things. Worked on whole arrays, so that a house of forty things takes well under a millisecond or two.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.loads.pieces import GRAIN_KG, PACK_S, Piece
from core.things.model import Closure, Form, Hazard, Hold, Thing

PACKABLE_FORMS = frozenset({Form.VESSEL, Form.TIN, Form.SACK, Form.BLOCK, Form.BOOK, Form.FREE_WEIGHT})
SORTS_LIMITS = ((160, 3), (1600, 2))
"""(most choices, sorts in one bag): beyond the last, one sort."""


@dataclass(frozen=True, slots=True)
class Choice:
    """`count` pieces of one thing, all in one state."""

    thing: Thing
    piece: Piece
    count: int
    order: int


@dataclass(frozen=True, slots=True)
class Packed:
    """All kept packings of one bag: masses in grains (rising), set-up times, and the choices of each (-1: none)."""

    grains: NDArray[np.int64]
    set_up_s: NDArray[np.float64]
    picks: NDArray[np.int64]
    choices: tuple[Choice, ...]


def pack_volume_l(thing: Thing) -> float:
    """Room one piece takes in a bag: its own figure, else its outer box, L."""
    facts = thing.facts
    if facts.pack_l is not None:
        return facts.pack_l
    return facts.length_cm * facts.width_cm * facts.height_cm / 1000


def can_be_packed(thing: Thing) -> bool:
    """Whether a thing may ride in a bag: loose, closed, not glass, nothing that held chemicals or cuts."""
    facts = thing.facts
    if facts.fixed or facts.form not in PACKABLE_FORMS or pack_volume_l(thing) <= 0:
        return False
    bad = {Hazard.GLASS, Hazard.HELD_CHEMICALS, Hazard.SHARP}
    return facts.closure is not Closure.OPEN and not bad & facts.hazards


def choices_for(bag: Thing, hold: Hold, things: tuple[tuple[Thing, tuple[Piece, ...]], ...]) -> tuple[Choice, ...]:
    """Every sort, state and count that alone fits the bag."""
    found = []
    for order, (thing, states) in enumerate(things):
        if thing.id == bag.id or not can_be_packed(thing):
            continue
        room = pack_volume_l(thing)
        most = min(thing.count, int(hold.volume_l / room + 1e-9))
        for piece in states:
            for count in range(1, most + 1):
                if count * piece.mass_kg > hold.limit_kg:
                    break
                found.append(Choice(thing, piece, count, order))
    return tuple(found)


def sorts_allowed(choice_count: int) -> int:
    """How many sorts one packing may mix."""
    return next((sorts for most, sorts in SORTS_LIMITS if choice_count <= most), 1)


def pack(hold: Hold, choices: tuple[Choice, ...]) -> Packed:
    """The quickest packing for each mass the contents can have, the empty bag (mass 0) first."""
    mass = np.array([choice.count * choice.piece.mass_kg for choice in choices], dtype=np.float64)
    room = np.array([choice.count * pack_volume_l(choice.thing) for choice in choices], dtype=np.float64)
    time = np.array([choice.count * (choice.piece.set_up_s + PACK_S) for choice in choices], dtype=np.float64)
    order = np.array([choice.order for choice in choices], dtype=np.int64)
    picks = np.full((1, 3), -1, dtype=np.int64)
    masses, rooms, times = np.zeros(1), np.zeros(1), np.zeros(1)
    layer = (picks, masses, rooms, times, np.full(1, -1, dtype=np.int64))
    layers = [layer]
    for depth in range(sorts_allowed(len(choices)) if choices else 0):
        layer = _add_sort(layer, depth, (mass, room, time, order), hold)
        layers.append(layer)
    return _keep_quickest(layers, choices)


_Layer = tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.float64], NDArray[np.float64], NDArray[np.int64]]
_Columns = tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64], NDArray[np.int64]]


def _add_sort(layer: _Layer, depth: int, columns: _Columns, hold: Hold) -> _Layer:
    """Every packing of `layer` with one more sort that comes later in order, where it still fits."""
    picks, masses, rooms, times, last = layer
    mass, room, time, order = columns
    fits = order[None, :] > last[:, None]
    fits &= masses[:, None] + mass[None, :] <= hold.limit_kg + 1e-9
    fits &= rooms[:, None] + room[None, :] <= hold.volume_l + 1e-9
    base, added = np.nonzero(fits)
    new_picks = picks[base].copy()
    new_picks[:, depth] = added
    return new_picks, masses[base] + mass[added], rooms[base] + room[added], times[base] + time[added], order[added]


def _keep_quickest(layers: list[_Layer], choices: tuple[Choice, ...]) -> Packed:
    picks = np.concatenate([layer[0] for layer in layers])
    masses = np.concatenate([layer[1] for layer in layers])
    times = np.concatenate([layer[3] for layer in layers])
    grains = np.rint(masses / GRAIN_KG).astype(np.int64)
    kept = quickest(grains, times)
    return Packed(grains[kept], times[kept], picks[kept], choices)


def quickest(grains: NDArray[np.int64], times: NDArray[np.float64]) -> NDArray[np.int64]:
    """Index of the quickest entry for each distinct mass, by rising mass; the earlier entry wins a tie."""
    if not len(grains):
        return np.zeros(0, dtype=np.int64)
    tenths = np.rint(times * 10).astype(np.int64)
    keys = (tenths << 32) | np.arange(len(grains), dtype=np.int64)
    best = np.full(int(grains.max()) + 1, np.iinfo(np.int64).max, dtype=np.int64)
    np.minimum.at(best, grains, keys)
    chosen: NDArray[np.int64] = best[best != np.iinfo(np.int64).max] & 0xFFFFFFFF
    return chosen
