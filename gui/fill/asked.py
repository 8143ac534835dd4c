"""What the fill screen asks of core: the things to choose from, and how the one in hand is filled."""

from __future__ import annotations

from dataclasses import dataclass

from core.house.model import House
from core.knowledge import Catalog
from core.loads.filling import Filling, filling_of
from core.loads.fills import FillChoice, fill_choices, packings
from core.mass.model import Level, Material, Packing, VolumeLevel
from core.quantity.display import UnitSystem
from core.things.affordance import LOADS
from core.things.model import Form, Thing

USUAL_C = 15.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """How the thing in hand is filled on this screen; without a level the line stands half way up."""

    material_id: str
    packing: Packing = Packing.LOOSE
    temperature_c: float = USUAL_C
    level: Level | None = None


def weighable(house: House) -> tuple[Thing, ...]:
    """Containers first, then loads with a known mass of their own, each as the house lists them."""
    containers = tuple(thing for thing in house.things if thing.facts.container is not None)
    fixed = tuple(
        thing
        for thing in house.things
        if thing.facts.container is None and thing.facts.mass is not None and thing.facts.form in LOADS | {Form.WHEELED}
    )
    return (*containers, *fixed)


def choices_for(thing: Thing, house: House, catalog: Catalog) -> tuple[FillChoice, ...]:
    """Every fill for the thing, the usable ones first."""
    return fill_choices(thing, house.fills, catalog.materials)


def usable(choices: tuple[FillChoice, ...]) -> tuple[FillChoice, ...]:
    """The fills that may be chosen: what is at hand, or else what could be had."""
    at_hand = tuple(choice for choice in choices if not choice.why_not)
    return at_hand or tuple(choice for choice in choices if not choice.at_hand)


def offered(thing: Thing, choices: tuple[FillChoice, ...]) -> tuple[Material, ...]:
    """The fills to choose from; what is in the thing now is among them, even if none is left beside it."""
    materials = [choice.material for choice in usable(choices)]
    inside = thing.fill.material_id if thing.fill is not None else ""
    now = (one.material for one in choices if one.material.id == inside and one.material.as_fill)
    return tuple(dict.fromkeys((*materials, *now)))


def first_asked(thing: Thing, choices: tuple[FillChoice, ...]) -> Asked | None:
    """How the record says it is filled, else the first usable fill; None when nothing may go in."""
    ids = [material.id for material in offered(thing, choices)]
    fill = thing.fill
    if fill is not None and fill.material_id in ids:
        return Asked(material_id=fill.material_id, packing=fill.packing, level=VolumeLevel(volume_l=fill.volume_l))
    return Asked(material_id=ids[0]) if ids else None


def filling_for(thing: Thing, asked: Asked, house: House, catalog: Catalog, system: UnitSystem) -> Filling:
    """The thing so filled; `InputError` when it can't be."""
    return filling_of(
        thing,
        catalog.material_by_id[asked.material_id],
        temperature_c=asked.temperature_c,
        packing=asked.packing,
        cup_l=house.cup_l,
        system=system,
    )


def lies(thing: Thing, asked: Asked, catalog: Catalog) -> tuple[Packing, ...]:
    """The ways its fill may lie."""
    return packings(thing, catalog.material_by_id[asked.material_id])
