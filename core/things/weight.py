"""What one piece of a thing weighs: as it is, or from empty to full where it can be filled or packed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from core.mass.model import Container, FullLevel, Material
from core.mass.weigh import estimate, learn
from core.quantity import Measured
from core.things.model import Thing
from core.things.weighed import known_mass


@dataclass(frozen=True, slots=True, kw_only=True)
class MassRange:
    """The lightest and the heaviest one piece can be, kg; `material_id` is what it is full of then."""

    low: Measured
    high: Measured
    material_id: str | None = None


def learnt_container(thing: Thing, material: Material) -> Container | None:
    """The thing's container as weighings of it with this material have improved it."""
    container = thing.facts.container
    filled_with = thing.fill.material_id if thing.fill is not None else "water"
    if container is None or not thing.readings or filled_with != material.id:
        return container
    return learn(container, material, thing.readings)


def mass_range(thing: Thing, materials: Iterable[Material]) -> MassRange | None:
    """From empty to full of the densest of these materials that may go in; None while the mass is not known.

    A bag goes up to the most it should carry. Without a material that fits, a container stays empty.
    """
    facts = thing.facts
    if facts.container is not None:
        return _filled_range(thing, facts.container, materials)
    mass = known_mass(thing)
    if mass is None:
        return None
    if facts.hold is None:
        return MassRange(low=mass, high=mass)
    return MassRange(low=mass, high=Measured(mass.value + facts.hold.limit_kg, mass.u, mass.origin))


def _filled_range(thing: Thing, container: Container, materials: Iterable[Material]) -> MassRange:
    allowed = [material for material in materials if material.id in thing.fills and material.as_fill]
    if not allowed:
        return MassRange(low=container.tare_kg, high=container.tare_kg)
    densest = max(allowed, key=lambda material: (material.typical_kg_m3, material.id))
    known = learnt_container(thing, densest) or container
    full = estimate(known, densest, FullLevel())
    return MassRange(low=known.tare_kg, high=full.mass, material_id=densest.id)
