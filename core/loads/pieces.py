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

from core.mass.density import density_in
from core.mass.model import Container, CupsLevel, Level, Material, Packing, ScaleReading, VolumeLevel
from core.mass.predict import predict
from core.mass.weigh import learn
from core.quantity import Measured
from core.things.model import Thing

Numbers = NDArray[np.float64]
Whole = NDArray[np.int64]

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


def learnt_container(thing: Thing, materials: Mapping[str, Material]) -> Container | None:
    """The thing's container as its own scale readings have improved it."""
    container = thing.facts.container
    if container is None or not thing.readings:
        return container
    material = materials.get(thing.fill.material_id if thing.fill is not None else "water")
    return container if material is None else _learnt(container, material, thing.readings)


@lru_cache(maxsize=512)
def _learnt(container: Container, material: Material, readings: tuple[ScaleReading, ...]) -> Container:
    return learn(container, material, readings)


def states_of(thing: Thing, materials: Mapping[str, Material], fills: tuple[str, ...], cup_l: float) -> States:
    """Every state of one piece of `thing`, material by material in the order of `fills`, each by rising fill.

    None when its mass is not known, or when it is a container that none of the `fills` may go into.
    """
    container = learnt_container(thing, materials)
    if container is None:
        return NO_STATES if thing.facts.mass is None else _fixed(thing.facts.mass.value)
    allowed = [materials[name] for name in fills if name in thing.fills and name in materials]
    usable = [material for material in allowed if material.as_fill]
    if not usable:
        return NO_STATES
    parts = [
        _filled(thing, container, material, cup_l, place, empty=place == 0) for place, material in enumerate(usable)
    ]
    mass, fill, time, place = (np.concatenate(columns) for columns in zip(*parts, strict=True))
    return States(mass, fill, time, place.astype(np.int64), tuple(material.id for material in usable))


def _fixed(mass_kg: float) -> States:
    return States(np.array([mass_kg]), np.zeros(1), np.array([FETCH_S]), np.zeros(1, dtype=np.int64))


def _filled(
    thing: Thing, container: Container, material: Material, cup_l: float, place: int, *, empty: bool
) -> tuple[Numbers, Numbers, Numbers, Numbers]:
    """Columns of mass, fill, time and material for whole cups up to the nominal volume, and for that volume itself.

    What already stands in the container is topped up or poured off; another material starts from empty.
    """
    full_l = min(container.nominal_l.value, container.brimful_l.value)
    cups = math.floor(full_l / cup_l + 1e-9)
    steps = [count * cup_l for count in range(0 if empty else 1, cups + 1)]
    if not steps or full_l - steps[-1] > 1e-6:
        steps.append(full_l)
    fill = np.array(steps, dtype=np.float64)
    per_l = density_in(container, material, FILL_TEMPERATURE_C, Packing.LOOSE).kg_l
    mass = container.tare_kg.value + per_l * fill
    fill, mass = fill[mass <= HEAVIEST_KG], mass[mass <= HEAVIEST_KG]
    now = thing.fill
    stands_l = now.volume_l if now is not None and now.material_id == material.id else 0.0
    time = FETCH_S + POUR_S_PER_L * np.abs(fill - stands_l)
    return mass, fill, time, np.full(len(fill), float(place))


def piece_mass(
    thing: Thing, material_id: str | None, fill_l: float, materials: Mapping[str, Material], cup_l: float
) -> Measured:
    """The mass of a piece in one state with its uncertainty, from the mass engine."""
    container = learnt_container(thing, materials) if material_id is not None else None
    if container is None or material_id is None:
        if thing.facts.mass is None:
            raise ValueError(f"{thing.id} has no mass")
        return thing.facts.mass
    now = predict(container, materials[material_id], _level(fill_l, cup_l), FILL_TEMPERATURE_C, Packing.LOOSE)
    return Measured(now.mass_kg, now.u_kg)


def _level(fill_l: float, cup_l: float) -> Level:
    cups = fill_l / cup_l
    if abs(cups - round(cups)) < 1e-6:
        return CupsLevel(count=round(cups), cup_l=cup_l)
    return VolumeLevel(volume_l=fill_l)
