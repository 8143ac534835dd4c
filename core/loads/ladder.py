"""The ladder: every load a house can make for one use, by rising mass, built lazily rung by rung.

The set of masses is exact: single pieces in every state, two alike for a pair, and bags with every packing that fits.
Of two ways to the same mass the better grip wins, then the quicker one, then the earlier thing.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from core.exercise.model import Use
from core.loads.model import Gap, Part, Recipe, Rung
from core.loads.packing import Choice, Packed, quickest
from core.loads.pieces import GRAIN_KG, HEAVIEST_KG, Piece, piece_mass
from core.mass.model import Material
from core.quantity import Measured, Origin, combined
from core.things.model import Thing

WIDE_STEP_PCT = 10.0
"""A step past the 2 to 10 % by which loads are usually raised (ACSM 2009) is shown as a gap."""


@dataclass(frozen=True, slots=True)
class Source:
    """One thing as a source of loads for a use: its states, or its packings when it is a bag, `pieces` at a time."""

    thing: Thing
    pieces: int
    penalty_s: float
    states: tuple[Piece, ...]
    packed: Packed | None = None
    tare_kg: float = 0.0


class Ladder:
    """Loads for one use, by rising mass. Masses are known at once; a `Rung` with its recipe is made when asked for."""

    def __init__(self, use: Use, sources: tuple[Source, ...], materials: Mapping[str, Material], cup_l: float) -> None:
        self.use = use
        self._sources = sources
        self._materials = materials
        self._cup_l = cup_l
        self.masses_kg, self._entries = _assembled(sources)
        self._made_rungs: dict[int, Rung] = {}
        self._index_of: dict[tuple[str, str, float], int] | None = None

    def __len__(self) -> int:
        return len(self.masses_kg)

    def __iter__(self) -> Iterator[Rung]:
        return (self.rung(index) for index in range(len(self)))

    def rung(self, index: int) -> Rung:
        """The rung at `index`, with its recipe and uncertainty."""
        if index not in self._made_rungs:
            self._made_rungs[index] = self._make_rung(index)
        return self._made_rungs[index]

    def _make_rung(self, index: int) -> Rung:
        source_index, local, set_up_s = self._entries[index]
        source = self._sources[source_index]
        parts = self._packed_parts(source, local) if source.packed is not None else (self._part(source, local),)
        each = [part.each for part in parts for _ in range(part.count)]
        mass = combined(each) if len(each) > 1 else each[0]
        doubt = Measured(mass.value, _joint_u(parts), Origin.COMBINED) if len(each) > 1 else mass
        return Rung(
            use=self.use, mass=doubt, recipe=Recipe(parts=parts, packed=source.packed is not None), set_up_s=set_up_s
        )

    def nearest(
        self, target_kg: float, low_kg: float, high_kg: float, *, without: frozenset[str] = frozenset()
    ) -> Rung | None:
        """The rung nearest to `target_kg` within the limits (the lighter of two equally near), or None."""
        first, last = bisect_left(self.masses_kg, low_kg - 1e-9), bisect_right(self.masses_kg, high_kg + 1e-9)
        for index in self._outwards(target_kg, first, last):
            if not without or not without & self._used(index):
                return self.rung(index)
        return None

    def _outwards(self, target_kg: float, first: int, last: int) -> Iterator[int]:
        """Indices from `first` up to `last`, the nearest mass to the target first, the lighter of two equally near."""
        above = min(max(bisect_left(self.masses_kg, target_kg), first), last)
        below = above - 1
        while below >= first or above < last:
            down = target_kg - self.masses_kg[below] if below >= first else math.inf
            up = self.masses_kg[above] - target_kg if above < last else math.inf
            if down <= up:
                yield below
                below -= 1
            else:
                yield above
                above += 1

    def next_above(self, mass_kg: float) -> Rung | None:
        """The first rung heavier than `mass_kg`, or None at the top."""
        index = bisect_right(self.masses_kg, mass_kg + GRAIN_KG / 2)
        return self.rung(index) if index < len(self) else None

    def at_state(self, thing_id: str, material_id: str, volume_l: float) -> Rung | None:
        """The rung made of this one thing at this fill alone, or None where it is not the rung kept for its mass."""
        if self._index_of is None:
            self._index_of = dict(self._states())
        index = self._index_of.get((thing_id, material_id, volume_l))
        return None if index is None else self.rung(index)

    def _states(self) -> Iterator[tuple[tuple[str, str, float], int]]:
        for index, (source_index, local, _) in enumerate(self._entries):
            source = self._sources[source_index]
            if source.packed is None and (material_id := source.states[local].material_id) is not None:
                yield (source.thing.id, material_id, source.states[local].fill_l), index

    def gaps(self, *, wider_than_pct: float = WIDE_STEP_PCT, from_kg: float = 1.0) -> tuple[Gap, ...]:
        """Steps wider than `wider_than_pct` of the lower rung, from `from_kg` up (below it steps are always wide)."""
        found = []
        for low, high in zip(self.masses_kg, self.masses_kg[1:], strict=False):
            step_pct = 100 * (high - low) / low if low > 0 else 0.0
            if low >= from_kg and step_pct > wider_than_pct:
                found.append(Gap(from_kg=low, to_kg=high, step_pct=step_pct))
        return tuple(found)

    def _used(self, index: int) -> frozenset[str]:
        source_index, local, _ = self._entries[index]
        source = self._sources[source_index]
        if source.packed is None:
            return frozenset({source.thing.id})
        inside = (source.packed.choices[pick].thing.id for pick in source.packed.picks[local] if pick >= 0)
        return frozenset({source.thing.id, *inside})

    def _part(self, source: Source, local: int) -> Part:
        return self._made(Choice(source.thing, source.states[local], source.pieces, 0))

    def _packed_parts(self, source: Source, local: int) -> tuple[Part, ...]:
        packed = source.packed
        if packed is None or source.thing.facts.mass is None:
            raise ValueError(f"{source.thing.id} is no bag with a known mass")
        bag = Part(thing_id=source.thing.id, name=source.thing.name, count=1, each=source.thing.facts.mass)
        inside = tuple(self._made(packed.choices[pick]) for pick in packed.picks[local] if pick >= 0)
        return (bag, *inside)

    def _made(self, choice: Choice) -> Part:
        piece = choice.piece
        return Part(
            thing_id=choice.thing.id,
            name=choice.thing.name,
            count=choice.count,
            each=piece_mass(choice.thing, piece, self._materials, self._cup_l),
            material_id=piece.material_id,
            material_name="" if piece.material_id is None else self._materials[piece.material_id].name,
            fill_l=piece.fill_l,
            cups=piece.cups,
        )


def _joint_u(parts: tuple[Part, ...]) -> float:
    """Alike pieces share their errors (one cup, one label), so within a part uncertainties add up straight."""
    return float(sum((part.count * part.each.u) ** 2 for part in parts) ** 0.5)


def _assembled(sources: tuple[Source, ...]) -> tuple[tuple[float, ...], tuple[tuple[int, int, float], ...]]:
    if not sources:
        return (), ()
    grains, times, owner, local = [], [], [], []
    for index, source in enumerate(sources):
        source_grains, source_times = _columns(source)
        grains.append(source_grains)
        times.append(source_times + source.penalty_s)
        owner.append(np.full(len(source_grains), index, dtype=np.int64))
        local.append(np.arange(len(source_grains), dtype=np.int64))
    all_grains, all_times = np.concatenate(grains), np.concatenate(times)
    kept = quickest(all_grains, all_times)
    kept = kept[(all_grains[kept] > 0) & (all_grains[kept] <= HEAVIEST_KG / GRAIN_KG)]
    masses = tuple((all_grains[kept] * GRAIN_KG).round(2).tolist())
    owners, locals_ = np.concatenate(owner)[kept].tolist(), np.concatenate(local)[kept].tolist()
    return masses, tuple(zip(owners, locals_, all_times[kept].tolist(), strict=True))


def _columns(
    source: Source,
) -> tuple[np.ndarray[tuple[int], np.dtype[np.int64]], np.ndarray[tuple[int], np.dtype[np.float64]]]:
    if source.packed is not None:
        tare = round(source.tare_kg / GRAIN_KG)
        return source.packed.grains + tare, source.packed.set_up_s
    masses = np.array([piece.mass_kg * source.pieces for piece in source.states], dtype=np.float64)
    times = np.array([piece.set_up_s * source.pieces for piece in source.states], dtype=np.float64)
    return np.rint(masses / GRAIN_KG).astype(np.int64), times
