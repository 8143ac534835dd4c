"""The masses one piece of a thing can have: fixed, or filled in steps the person can pour.

A filled piece is tare + density x cups x cup, with the mid density of the mass engine, so every rung agrees with it.
Pouring and packing times are assumed (no source): they only rank recipes of equal mass.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from core.mass.density import density_in
from core.mass.model import Container, CupsLevel, Material, Packing, ScaleReading, VolumeLevel
from core.mass.weigh import estimate, learn
from core.quantity import Measured
from core.things.model import Thing

FETCH_S = 5.0
POUR_S_PER_L = 6.0
PACK_S = 6.0
GRAIN_KG = 0.01
"""Two loads closer than this are one rung."""
HEAVIEST_KG = 150.0
FILL_TEMPERATURE_C = 15.0


@dataclass(frozen=True, slots=True)
class Piece:
    """One possible state of one piece: mass, fill and the time to bring it about."""

    mass_kg: float
    material_id: str | None
    cups: float
    fill_l: float
    set_up_s: float


def learnt_container(thing: Thing, materials: Mapping[str, Material]) -> Container | None:
    """The thing's container as its own scale readings have improved it."""
    container = thing.facts.container
    if container is None or not thing.readings:
        return container
    material = materials.get(_material_id(thing))
    return container if material is None else _learnt(container, material, thing.readings)


@lru_cache(maxsize=512)
def _learnt(container: Container, material: Material, readings: tuple[ScaleReading, ...]) -> Container:
    return learn(container, material, readings)


def _material_id(thing: Thing) -> str:
    return thing.fill.material_id if thing.fill is not None else "water"


def pieces(thing: Thing, materials: Mapping[str, Material], fills: tuple[str, ...], cup_l: float) -> tuple[Piece, ...]:
    """Every state of one piece of `thing`, by rising mass; empty when its mass is not known."""
    facts = thing.facts
    container = learnt_container(thing, materials)
    if container is None:
        if facts.mass is None:
            return ()
        return (Piece(facts.mass.value, None, 0.0, 0.0, FETCH_S),)
    allowed = [materials[name] for name in fills if name in thing.fills and name in materials]
    found: list[Piece] = []
    for material in allowed:
        found.extend(_filled(thing, container, material, cup_l, empty=not found))
    return tuple(sorted(found, key=lambda piece: (piece.mass_kg, piece.material_id or "")))


def _filled(thing: Thing, container: Container, material: Material, cup_l: float, *, empty: bool) -> list[Piece]:
    per_l = density_in(container, material, FILL_TEMPERATURE_C, Packing.LOOSE).kg_l
    tare_kg = container.tare_kg.value
    full_l = container.nominal_l.value
    steps = [count * cup_l for count in range(0 if empty else 1, math.floor(full_l / cup_l + 1e-9) + 1)]
    if not steps or full_l - steps[-1] > 1e-6:
        steps.append(full_l)
    now = thing.fill
    found = []
    for volume_l in steps:
        mass_kg = tare_kg + per_l * volume_l
        if mass_kg > HEAVIEST_KG:
            break
        standing = now is not None and now.material_id == material.id and abs(now.volume_l - volume_l) < 1e-6
        set_up_s = FETCH_S + (0.0 if standing else POUR_S_PER_L * volume_l)
        found.append(Piece(mass_kg, material.id, volume_l / cup_l, volume_l, set_up_s))
    return found


def piece_mass(thing: Thing, piece: Piece, materials: Mapping[str, Material], cup_l: float) -> Measured:
    """The mass of a piece in this state with its uncertainty, from the mass engine."""
    if piece.material_id is None:
        if thing.facts.mass is None:
            raise ValueError(f"{thing.id} has no mass")
        return thing.facts.mass
    container = learnt_container(thing, materials)
    if container is None:
        raise ValueError(f"{thing.id} is no container")
    whole_cups = abs(piece.cups - round(piece.cups)) < 1e-6
    level = CupsLevel(count=round(piece.cups), cup_l=cup_l) if whole_cups else VolumeLevel(volume_l=piece.fill_l)
    return estimate(container, materials[piece.material_id], level).mass
