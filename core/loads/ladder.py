"""The ladder: every load a house can make for one use, by rising mass, built lazily rung by rung.

The set of masses is exact: single pieces in every state, two alike for a pair, and bags with every packing that fits.
Of two ways to the same mass the one sooner ready wins, a worse grip counting as some seconds more; then the earlier
thing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from core.exercise.model import Use
from core.loads.model import Gap, Part, Recipe, Rung
from core.loads.packing import Packed, quickest
from core.loads.pieces import GRAIN_KG, HEAVIEST_KG, NOTHING, Numbers, States, Whole, piece_mass
from core.mass.model import Material
from core.quantity import Measured, Origin, combined
from core.things.model import Thing
from core.things.weighed import known_mass

WORTH_IT_S = 10.0
"""So much sooner ready is worth a load as good; assumed."""
WIDE_STEP_PCT = 10.0
"""A step past the 2 to 10 % by which loads are usually raised (ACSM 2009) is shown as a gap."""


@dataclass(frozen=True, slots=True, eq=False)
class Source:
    """One thing as a source of loads for a use: its states, or its packings when it is a bag, `pieces` at a time.

    `penalty_s` is how much longer a set-up with a good grip may take before this grip is taken.
    """

    thing: Thing
    pieces: int
    penalty_s: float
    states: States
    packed: Packed | None = None


class Ladder:
    """Loads for one use, by rising mass. Masses are known at once; a `Rung` with its recipe is made when asked for."""

    def __init__(self, use: Use, sources: tuple[Source, ...], materials: Mapping[str, Material], cup_l: float) -> None:
        self.use = use
        self._sources = sources
        self._materials = materials
        self._cup_l = cup_l
        self._masses_kg, self._times_s, self._owners, self._locals = _assembled(sources)
        self._made_rungs: dict[tuple[int, int], Rung] = {}

    @cached_property
    def masses_kg(self) -> tuple[float, ...]:
        """Every mass, rising."""
        return tuple(self._masses_kg.tolist())

    def mass_kg(self, index: int) -> float:
        """The mass at `index`."""
        return float(self._masses_kg[index])

    def __len__(self) -> int:
        return len(self._masses_kg)

    def __iter__(self) -> Iterator[Rung]:
        return (self.rung(index) for index in range(len(self)))

    def rung(self, index: int) -> Rung:
        """The rung at `index`, with its recipe and uncertainty."""
        return self._rung_of(int(self._owners[index]), int(self._locals[index]))

    @property
    def sources(self) -> tuple[Source, ...]:
        """The things the loads come from, by id."""
        return self._sources

    def rung_of(self, place: int, state: int) -> Rung:
        """The load of one source in one of its states, whether or not another is sooner ready at that mass."""
        return self._rung_of(place, state)

    def nearest(self, target_kg: float, low_kg: float, high_kg: float) -> Rung | None:
        """The rung nearest to `target_kg` within the limits (the lighter of two equally near), or None."""
        index = self.nearest_index(target_kg, low_kg, high_kg)
        return None if index is None else self.rung(index)

    def nearest_index(
        self, target_kg: float, low_kg: float, high_kg: float, *, bearable_kg: float = math.inf
    ) -> int | None:
        """Where the nearest rung is. `bearable_kg` is what mass and its u95 together may not pass."""
        first, last = self._between(low_kg, high_kg)
        for index in self._outwards(target_kg, first, last):
            if bearable_kg == math.inf or most_kg(self.rung(index)) <= bearable_kg:
                return index
        return None

    def handiest_index(
        self, index: int, low_kg: float, high_kg: float, *, within: float, bearable_kg: float = math.inf
    ) -> int:
        """Of the rungs `within` this share of the mass at `index` the one soonest ready, then the nearest."""
        if self._times_s[index] <= WORTH_IT_S:
            return index
        mass_kg = self.mass_kg(index)
        first, last = self._between(max(low_kg, mass_kg * (1 - within)), min(high_kg, mass_kg * (1 + within)))
        times = self._times_s[first:last]
        sooner = np.flatnonzero(times < self._times_s[index] - WORTH_IT_S)
        off = np.abs(self._masses_kg[first:last][sooner] - mass_kg)
        order = (sooner[np.lexsort((off, times[sooner]))] + first).tolist()
        return next((at for at in order if bearable_kg == math.inf or most_kg(self.rung(at)) <= bearable_kg), index)

    def _between(self, low_kg: float, high_kg: float) -> tuple[int, int]:
        """The first index from `low_kg` up and the one past `high_kg`."""
        first = np.searchsorted(self._masses_kg, low_kg - 1e-9, side="left")
        return int(first), int(np.searchsorted(self._masses_kg, high_kg + 1e-9, side="right"))

    def _outwards(self, target_kg: float, first: int, last: int) -> Iterator[int]:
        """Indices from `first` up to `last`, the nearest mass to the target first, the lighter of two equally near."""
        above = min(max(int(np.searchsorted(self._masses_kg, target_kg)), first), last)
        below = above - 1
        while below >= first or above < last:
            down = target_kg - self._masses_kg[below] if below >= first else math.inf
            up = self._masses_kg[above] - target_kg if above < last else math.inf
            if down <= up:
                yield below
                below -= 1
            else:
                yield above
                above += 1

    def next_above(self, mass_kg: float) -> Rung | None:
        """The first rung heavier than `mass_kg`, or None at the top."""
        index = int(np.searchsorted(self._masses_kg, mass_kg + GRAIN_KG / 2, side="right"))
        return self.rung(index) if index < len(self) else None

    def at_fill(self, thing_id: str, material_id: str, volume_l: float) -> Rung | None:
        """The load this one thing makes at this fill, or None where it is no step of its; quicker ways don't matter."""
        for place, source in enumerate(self._sources):
            if source.thing.id == thing_id and source.packed is None:
                local = source.states.index_of(material_id, volume_l)
                return None if local is None else self._rung_of(place, local)
        return None

    def gaps(self, *, wider_than_pct: float = WIDE_STEP_PCT, from_kg: float = 1.0) -> tuple[Gap, ...]:
        """Steps wider than `wider_than_pct` of the lower rung, from `from_kg` up (below it steps are always wide)."""
        found = []
        for low, high in zip(self.masses_kg, self.masses_kg[1:], strict=False):
            step_pct = 100 * (high - low) / low if low > 0 else 0.0
            if low >= from_kg and step_pct > wider_than_pct:
                found.append(Gap(from_kg=low, to_kg=high, step_pct=step_pct))
        return tuple(found)

    def _rung_of(self, place: int, local: int) -> Rung:
        key = (place, local)
        if key not in self._made_rungs:
            self._made_rungs[key] = self._make_rung(self._sources[place], local)
        return self._made_rungs[key]

    def _make_rung(self, source: Source, local: int) -> Rung:
        packed = source.packed
        parts: tuple[Part, ...]
        if packed is None:
            parts = (self._part(source.thing, source.states, local, source.pieces),)
            time_s = source.pieces * float(source.states.set_up_s[local])
        else:
            parts = (_bag(source.thing), *self._contents(packed, local))
            time_s = float(packed.set_up_s[local])
        recipe = Recipe(parts=parts, packed=packed is not None)
        return Rung(use=self.use, mass=_mass_of(parts), recipe=recipe, set_up_s=time_s)

    def _contents(self, packed: Packed, local: int) -> Iterator[Part]:
        choices = packed.choices
        for row in packed.picks[local].tolist():
            if row >= 0:
                owner = int(choices.owner[row])
                count, state = int(choices.count[row]), int(choices.state[row])
                yield self._part(choices.things[owner], choices.states[owner], state, count)

    def _part(self, thing: Thing, states: States, state: int, count: int) -> Part:
        material_id, fill_l = states.material_id(state), float(states.fill_l[state])
        return Part(
            thing_id=thing.id,
            name=thing.name,
            count=count,
            each=piece_mass(thing, material_id, fill_l, self._materials, self._cup_l),
            material_id=material_id,
            material_name="" if material_id is None else self._materials[material_id].name,
            fill_l=fill_l,
            cups=fill_l / self._cup_l,
        )


def most_kg(rung: Rung) -> float:
    """What a rung may weigh at most: its mass and u95."""
    return rung.mass.value + rung.mass.u95


def _bag(thing: Thing) -> Part:
    mass = known_mass(thing)
    if mass is None:
        raise ValueError(f"{thing.id} is a bag of unknown mass")
    return Part(thing_id=thing.id, name=thing.name, count=1, each=mass)


def _mass_of(parts: tuple[Part, ...]) -> Measured:
    """Mass of all parts. Alike pieces share their errors (one cup, one label): within a part they add up straight."""
    if len(parts) == 1 and parts[0].count == 1:
        return parts[0].each
    return combined(Measured(part.count * part.each.value, part.count * part.each.u, Origin.COMBINED) for part in parts)


def _assembled(sources: tuple[Source, ...]) -> tuple[Numbers, Numbers, Whole, Whole]:
    """Masses by rising, and for each its time and the source and local state that make it soonest."""
    if not sources:
        return NOTHING, NOTHING, NOTHING.astype(np.int64), NOTHING.astype(np.int64)
    columns = [columns_of(source) for source in sources]
    grains = np.concatenate([own for own, _ in columns])
    times = np.concatenate([own + source.penalty_s for source, (_, own) in zip(sources, columns, strict=True)])
    kept = quickest(grains, times)
    kept = kept[(grains[kept] > 0) & (grains[kept] <= HEAVIEST_KG / GRAIN_KG)]
    ends = np.cumsum([len(own) for own, _ in columns])
    owners = np.searchsorted(ends, kept, side="right")
    locals_ = kept - (ends - [len(own) for own, _ in columns])[owners]
    return (grains[kept] * GRAIN_KG).round(2), times[kept], owners, locals_


def columns_of(source: Source) -> tuple[Whole, Numbers]:
    """Masses in grains and set-up times of everything one source can be."""
    if source.packed is not None:
        return source.packed.grains, source.packed.set_up_s
    masses, times = source.states.mass_kg * source.pieces, source.states.set_up_s * source.pieces
    return np.rint(masses / GRAIN_KG).astype(np.int64), times
