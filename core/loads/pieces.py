"""The masses one piece of a thing can have: fixed, or filled in steps the person can pour.

A filled piece is tare + density x volume, with the mid density of the mass engine, so every rung agrees with it.
Pouring and packing times are assumed (no source): they only rank recipes of equal mass.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.mass.density import density_in
from core.mass.model import Container, CupsLevel, Level, Material, Packing, ScaleReading, VolumeLevel
from core.mass.predict import predict
from core.mass.weigh import estimate, learn
from core.mass.weighings import SAME_L, teaching, weighings_of
from core.quantity import Measured
from core.things.model import Fill, Thing
from core.things.weighed import known_mass

Numbers = NDArray[np.float64]
Whole = NDArray[np.int64]
Columns = tuple[Numbers, Numbers, Numbers, Numbers]
"""Masses kg, fills L, times s and places of the material, of one length."""

FETCH_S = 5.0
POUR_S_PER_L = 6.0
PACK_S = 6.0
GRAIN_KG = 0.01
"""Two loads closer than this are one rung."""
HEAVIEST_KG = 150.0
FILL_TEMPERATURE_C = 15.0


@dataclass(frozen=True, slots=True, eq=False)
class States:
    """Every state one piece can be in, as arrays of one length: masses kg, fills L, times s to bring it about.

    `material` is the place in `material_ids` of what is inside; a piece that takes no fill has no `material_ids`.
    """

    mass_kg: Numbers
    fill_l: Numbers
    set_up_s: Numbers
    material: Whole
    material_ids: tuple[str, ...] = ()

    def __len__(self) -> int:
        return len(self.mass_kg)

    def material_id(self, index: int) -> str | None:
        """What is inside in the state at `index`; None for a piece that takes no fill."""
        return self.material_ids[int(self.material[index])] if self.material_ids else None

    def index_of(self, material_id: str, volume_l: float) -> int | None:
        """The state with this fill, if it is one of the steps."""
        if material_id not in self.material_ids:
            return None
        alike = (self.material == self.material_ids.index(material_id)) & (np.abs(self.fill_l - volume_l) < 1e-6)
        found = np.flatnonzero(alike)
        return int(found[0]) if len(found) else None


NOTHING = np.zeros(0)
NO_STATES = States(NOTHING, NOTHING, NOTHING, np.zeros(0, dtype=np.int64))


def learnt_container(thing: Thing, material: Material) -> Container | None:
    """The thing's container as the scale readings that tell something about this material have improved it."""
    container = thing.facts.container
    if container is None or not thing.readings:
        return container
    return _learnt(container, material, thing.readings)


@lru_cache(maxsize=512)
def _learnt(container: Container, material: Material, readings: tuple[ScaleReading, ...]) -> Container:
    try:
        return learn(container, material, teaching(container, material, Packing.LOOSE, readings))
    except InputError:
        return container  # a reading that can't be one teaches nothing; where it is kept the window says why


def states_of(thing: Thing, materials: Mapping[str, Material], fills: tuple[str, ...], cup_l: float) -> States:
    """Every state of one piece of `thing`, material by material in the order of `fills`, each by rising fill.

    What stands in a container now is a state too, whether or not it is a whole number of cups or one of the `fills`.
    None when its mass is not known, or when it is a container that nothing may go into.
    """
    if thing.facts.container is None:
        mass = known_mass(thing)
        return NO_STATES if mass is None else _fixed(mass.value)
    allowed = [materials[name] for name in fills if name in thing.fills and name in materials]
    usable = [material for material in allowed if material.as_fill]
    parts = [_filled(thing, material, cup_l, place, empty=place == 0) for place, material in enumerate(usable)]
    standing = _standing_alone(thing, materials, usable)
    if standing is not None:
        usable.append(standing)
        parts.append(_standing(thing, standing, len(parts)))
    if not parts:
        return NO_STATES
    mass_kg, fill, time, place = (np.concatenate(columns) for columns in zip(*parts, strict=True))
    return States(mass_kg, fill, time, place.astype(np.int64), tuple(material.id for material in usable))


def _standing_alone(thing: Thing, materials: Mapping[str, Material], usable: list[Material]) -> Material | None:
    """What stands in it now where that is none of the fills at hand."""
    material = materials.get(thing.fill.material_id) if thing.fill is not None else None
    return None if material is None or material in usable or not material.as_fill else material


def _fixed(mass_kg: float) -> States:
    return States(np.array([mass_kg]), np.zeros(1), np.array([FETCH_S]), np.zeros(1, dtype=np.int64))


def _filled(thing: Thing, material: Material, cup_l: float, place: int, *, empty: bool) -> Columns:
    """Columns for whole cups up to the nominal volume, for that volume itself, and for what stands in it now.

    What already stands in the container is topped up or poured off; another material starts from empty.
    """
    container = learnt_container(thing, material)
    if container is None:
        raise ValueError(f"{thing.id} is no container")
    full_l = min(container.nominal_l.value, container.brimful_l.value)
    cups = math.floor(full_l / cup_l + 1e-9)
    steps = [count * cup_l for count in range(0 if empty else 1, cups + 1)]
    if not steps or full_l - steps[-1] > SAME_L:
        steps.append(full_l)
    fill = np.array(steps, dtype=np.float64)
    per_l = density_in(container, material, FILL_TEMPERATURE_C, Packing.LOOSE).kg_l
    mass = container.tare_kg.value + per_l * fill
    now = standing_fill(thing, material.id)
    stands_l = 0.0 if now is None else now.volume_l
    if now is not None:
        others = np.abs(fill - stands_l) > SAME_L
        at = int(np.searchsorted(fill[others], stands_l))
        fill = np.insert(fill[others], at, stands_l)
        mass = np.insert(mass[others], at, standing_mass(thing, material).value)
    fill, mass = fill[mass <= HEAVIEST_KG], mass[mass <= HEAVIEST_KG]
    time = FETCH_S + POUR_S_PER_L * np.abs(fill - stands_l)
    return mass, fill, time, np.full(len(fill), float(place))


def _standing(thing: Thing, material: Material, place: int) -> Columns:
    """Columns of the one state it is in now."""
    now = standing_fill(thing, material.id)
    litres = np.array([0.0 if now is None else now.volume_l])
    mass = np.array([standing_mass(thing, material).value])
    return mass, litres, np.array([FETCH_S]), np.array([float(place)])


def standing_fill(thing: Thing, material_id: str) -> Fill | None:
    """What stands in the thing now, if it is this material."""
    fill = thing.fill
    return fill if fill is not None and fill.material_id == material_id and fill.volume_l > SAME_L else None


def standing_mass(thing: Thing, material: Material) -> Measured:
    """What the thing weighs as it stands now, with its readings of this very fill taken in."""
    container, fill = thing.facts.container, standing_fill(thing, material.id)
    if container is None or fill is None:
        raise ValueError(f"nothing stands in {thing.id}")
    return _standing_mass(container, material, fill, thing.readings)


@lru_cache(maxsize=512)
def _standing_mass(
    container: Container, material: Material, fill: Fill, readings: tuple[ScaleReading, ...]
) -> Measured:
    level = VolumeLevel(volume_l=fill.volume_l)
    known = weighings_of(container, material, fill.packing, level, readings)
    try:
        found = estimate(container, material, known.level, packing=fill.packing, readings=known.readings)
    except InputError:
        found = estimate(container, material, level, packing=fill.packing)  # as if it had not been weighed
    return found.mass


def piece_mass(
    thing: Thing, material_id: str | None, fill_l: float, materials: Mapping[str, Material], cup_l: float
) -> Measured:
    """The mass of a piece in one state with its uncertainty, from the mass engine."""
    if thing.facts.container is None or material_id is None:
        mass = known_mass(thing)
        if mass is None:
            raise ValueError(f"{thing.id} has no mass")
        return mass
    material = materials[material_id]
    now = standing_fill(thing, material_id)
    if now is not None and abs(now.volume_l - fill_l) <= SAME_L:
        return standing_mass(thing, material)
    container = learnt_container(thing, material) or thing.facts.container
    then = predict(container, material, _level(fill_l, cup_l), FILL_TEMPERATURE_C, Packing.LOOSE)
    return Measured(then.mass_kg, then.u_kg)


def _level(fill_l: float, cup_l: float) -> Level:
    cups = fill_l / cup_l
    if abs(cups - round(cups)) < 1e-6:
        return CupsLevel(count=round(cups), cup_l=cup_l)
    return VolumeLevel(volume_l=fill_l)
