"""Build a load: the best ways this house makes a wanted mass for one use, from one thing, a packed bag or a pair.

Each thing of the ladder is asked on its own, so that a slower way is not hidden by a quicker one to the same mass. A
way is the better the nearer it comes to the wanted mass, the sooner it is ready and the better it is held:
`SECONDS_A_PCT` of work more count as much as being one per cent off (a judgement, no source; it only ranks).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from core.errors import InputError
from core.exercise.model import Use
from core.loads.ladder import Ladder, Source, columns_of
from core.loads.model import Part, Recipe, Rung
from core.loads.packing import Packed
from core.loads.pieces import GRAIN_KG, HEAVIEST_KG, Numbers, Whole
from core.quantity import Measured, Origin, combined

WITHIN_PCT = 5.0
"""So near to the wanted mass is near enough: well inside the 2 to 10 % by which loads are raised (ACSM 2009)."""
MATCH_PCT = 3.0
"""Two different things in the two hands may be so far apart, in per cent of the heavier one (a judgement)."""
SECONDS_A_PCT = 20.0
WAYS = 6
PACKINGS = 3
"""Ways shown in all, and of one bag."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to the wanted mass. `off_kg` is what it makes more (or less); `apart_kg` how far two hands differ."""

    rung: Rung
    off_kg: float
    apart_kg: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """The ways within the tolerance, best first; without any, the nearest lighter and heavier loads."""

    target_kg: float
    within_pct: float
    ways: tuple[Way, ...]
    below: Way | None = None
    above: Way | None = None

    @property
    def nearest(self) -> tuple[Way, ...]:
        """What to offer: the ways, or else the neighbours."""
        return self.ways or tuple(way for way in (self.below, self.above) if way is not None)


@dataclass(frozen=True, slots=True)
class _Candidate:
    """Where a way lies: places of sources and states in their ladders, its cost, and what makes it another way."""

    cost: float
    parts: tuple[tuple[int, int], ...]
    sort: tuple[str, ...]


def build(
    ladder: Ladder,
    target_kg: float,
    *,
    one_hand: Ladder | None = None,
    within_pct: float = WITHIN_PCT,
    match_pct: float = MATCH_PCT,
) -> Built:
    """The best ways to `target_kg` (of a pair: both together) on the ladder of a use.

    `one_hand` is the ladder for one hand; with it a pair may be of two different things that match. `InputError` for
    a mass or a tolerance that can't be.
    """
    if not 0 < target_kg <= HEAVIEST_KG:
        rule = f"is not a load from 0 to {HEAVIEST_KG:.0f} kg"
        raise InputError(f"{target_kg:g} kg", rule, "write the mass you want to lift")
    if not 0 < within_pct <= 50:
        raise InputError(f"{within_pct:g} %", "is not a tolerance from 0 to 50 %", "write how far off it may be")
    found = [(one, ladder) for one in _alone(ladder, target_kg, within_pct)]
    if ladder.use is Use.PAIR and one_hand is not None:
        found += [(one, one_hand) for one in _unlike(one_hand, target_kg, within_pct, match_pct)]
    best = sorted(found, key=lambda pair: (pair[0].cost, pair[0].sort))[:WAYS]
    ways = tuple(_way(one, on, ladder.use, target_kg) for one, on in best)
    if ways:
        return Built(target_kg=target_kg, within_pct=within_pct, ways=ways)
    below, above = _neighbours(ladder, target_kg)
    return Built(target_kg=target_kg, within_pct=within_pct, ways=(), below=below, above=above)


def _alone(ladder: Ladder, target_kg: float, within_pct: float) -> Iterator[_Candidate]:
    """The best states of each thing, and the best packings of each bag, within the tolerance."""
    for place, source in enumerate(ladder.sources):
        grains, seconds = columns_of(source)
        cost, order = _ranked(grains, seconds + source.penalty_s, target_kg, within_pct)
        seen: set[tuple[str, ...]] = set()
        for state in order:
            sort = (source.thing.id, *_contents(source, state))
            if sort not in seen and not _packs_empties(source.packed, state):
                seen.add(sort)
                yield _Candidate(float(cost[state]), ((place, state),), sort)
            if len(seen) == PACKINGS:
                break


def _ranked(grains: Whole, seconds: Numbers, target_kg: float, within_pct: float) -> tuple[Numbers, list[int]]:
    """The cost of each state, and the places of those near enough, cheapest first."""
    mass_kg = grains * GRAIN_KG
    off_pct = 100 * np.abs(mass_kg - target_kg) / target_kg
    cost = off_pct + seconds / SECONDS_A_PCT
    near = np.flatnonzero((off_pct <= within_pct + 1e-9) & (mass_kg > 0))
    return cost, near[np.argsort(cost[near], kind="stable")].tolist()


def _contents(source: Source, state: int) -> tuple[str, ...]:
    """What a state holds, as far as it makes another way: its material, or the things in the bag."""
    packed = source.packed
    if packed is None:
        return (source.states.material_id(state) or "",)
    return tuple(sorted(_packed_ids(packed, state)))


def _packs_empties(packed: Packed | None, state: int) -> bool:
    """Whether something that could be filled rides empty in the bag: it makes a mass, but nobody packs so."""
    if packed is None:
        return False
    choices = packed.choices
    for row in packed.picks[state].tolist():
        if row >= 0:
            states = choices.states[int(choices.owner[row])]
            if states.material_ids and states.fill_l[int(choices.state[row])] == 0:
                return True
    return False


def _packed_ids(packed: Packed, state: int) -> set[str]:
    rows = packed.picks[state]
    return {packed.choices.things[int(packed.choices.owner[row])].id for row in rows[rows >= 0].tolist()}


def _unlike(one_hand: Ladder, target_kg: float, within_pct: float, match_pct: float) -> Iterator[_Candidate]:
    """Two different things that weigh about the same, one for each hand."""
    plain = [(place, source) for place, source in enumerate(one_hand.sources) if source.packed is None]
    for at, (left, first) in enumerate(plain):
        for right, second in plain[at + 1 :]:
            found = _matched(first, second, target_kg, (within_pct, match_pct))
            if found is not None:
                cost, a, b = found
                yield _Candidate(cost, ((left, a), (right, b)), (first.thing.id, second.thing.id))


def _matched(
    first: Source, second: Source, target_kg: float, limits_pct: tuple[float, float]
) -> tuple[float, int, int] | None:
    """The cheapest two states that together make the mass and match; None without any."""
    one, other = first.states.mass_kg, second.states.mass_kg
    both = np.add.outer(one, other)
    apart_pct = 100 * np.abs(np.subtract.outer(one, other)) / np.maximum(np.maximum.outer(one, other), GRAIN_KG)
    off_pct = 100 * np.abs(both - target_kg) / target_kg
    seconds = np.add.outer(first.states.set_up_s + first.penalty_s, second.states.set_up_s + second.penalty_s)
    cost = off_pct + apart_pct + seconds / SECONDS_A_PCT
    within_pct, match_pct = limits_pct
    cost[(off_pct > within_pct + 1e-9) | (apart_pct > match_pct + 1e-9)] = np.inf
    best = int(np.argmin(cost))
    a, b = divmod(best, len(other))
    return (float(cost[a, b]), a, b) if np.isfinite(cost[a, b]) else None


def _way(found: _Candidate, ladder: Ladder, use: Use, target_kg: float) -> Way:
    left, *others = (ladder.rung_of(place, state) for place, state in found.parts)
    if not others:
        return Way(rung=left, off_kg=left.mass.value - target_kg, apart_kg=0.0 if use is Use.PAIR else None)
    right, mass = others[0], _both(left, others[0])
    rung = Rung(
        use=use,
        mass=mass,
        recipe=Recipe(parts=(*left.recipe.parts, *right.recipe.parts)),
        set_up_s=left.set_up_s + right.set_up_s,
    )
    return Way(rung=rung, off_kg=mass.value - target_kg, apart_kg=abs(left.mass.value - right.mass.value))


def _both(left: Rung, right: Rung) -> Measured:
    """Two different things together; what is poured with one cup is wrong alike, so those doubts add up straight."""
    if _is_poured(left.recipe.parts[0]) and _is_poured(right.recipe.parts[0]):
        return Measured(left.mass.value + right.mass.value, left.mass.u + right.mass.u, Origin.COMBINED)
    return combined((left.mass, right.mass))


def _is_poured(part: Part) -> bool:
    return part.material_id is not None and part.fill_l > 0


def _neighbours(ladder: Ladder, target_kg: float) -> tuple[Way | None, Way | None]:
    """The nearest lighter and the nearest heavier load."""
    above = bisect_right(ladder.masses_kg, target_kg)
    lighter = ladder.rung(above - 1) if above else None
    heavier = ladder.rung(above) if above < len(ladder) else None
    return _as_it_is(lighter, target_kg), _as_it_is(heavier, target_kg)


def _as_it_is(rung: Rung | None, target_kg: float) -> Way | None:
    """A rung of the ladder as a way; a pair on it is of two alike."""
    if rung is None:
        return None
    return Way(rung=rung, off_kg=rung.mass.value - target_kg, apart_kg=0.0 if rung.use is Use.PAIR else None)
