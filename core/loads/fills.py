"""What a container may be filled with here, and why not with the rest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from core.mass.model import Material, MaterialKind, Packing
from core.things.model import Closure, Hazard, Thing

NOT_AT_HAND = "you have not said that you have it"
NOT_FOR_IT = "not for this container: it would not go in, not come out, or leak"
HELD_CHEMICALS = "nothing may be filled into what held chemicals"


@dataclass(frozen=True, slots=True, kw_only=True)
class FillChoice:
    """A material for a container: usable when `why_not` is empty; `at_hand` false if only having it is missing."""

    material: Material
    why_not: str = ""
    at_hand: bool = True


def fill_choices(thing: Thing, at_hand: Sequence[str], materials: Sequence[Material]) -> tuple[FillChoice, ...]:
    """Every material: the usable in the order the thing names them, then those to get, then the others by name."""
    rank = {material_id: place for place, material_id in enumerate(thing.fills)}
    found = [_choice(thing, at_hand, material) for material in materials]
    last = len(rank)
    return tuple(
        sorted(
            found,
            key=lambda one: (
                bool(one.why_not),
                one.at_hand,
                rank.get(one.material.id, last),
                one.material.name,
            ),
        )
    )


def packings(thing: Thing, material: Material) -> tuple[Packing, ...]:
    """How `material` may lie in `thing`, as far as a figure is known; only loose for liquids.

    Topping up needs a container that may hold water and known grains.
    """
    if material.kind is MaterialKind.LIQUID:
        return (Packing.LOOSE,)
    known = {
        Packing.LOOSE: True,
        Packing.SETTLED: material.settled is not None,
        Packing.DAMP: material.damp is not None,
        Packing.TOPPED_UP: material.solid_kg_m3 is not None and _holds_water(thing),
    }
    return tuple(packing for packing in Packing if known[packing])


def _holds_water(thing: Thing) -> bool:
    return "water" in thing.fills and thing.facts.closure is not Closure.TIED


def _choice(thing: Thing, at_hand: Sequence[str], material: Material) -> FillChoice:
    if not material.as_fill:
        return FillChoice(material=material, why_not=material.why_not)
    if Hazard.HELD_CHEMICALS in thing.facts.hazards:
        return FillChoice(material=material, why_not=HELD_CHEMICALS)
    if material.id not in thing.fills:
        return FillChoice(material=material, why_not=NOT_FOR_IT)
    if material.id not in at_hand:
        return FillChoice(material=material, why_not=NOT_AT_HAND, at_hand=False)
    return FillChoice(material=material)
