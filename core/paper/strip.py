"""A strip to tape up a container: at which height it weighs how much, for printing at true scale.

Marks stand where `core.mass` says the surface is when the whole weighs that much; the strip's 0 belongs level with the
inner base. On a vessel with evenly sloping sides the strip follows the slope, so its marks are spaced along the wall.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from core.errors import InputError, Unreachable
from core.loads.filling import Filling, filling_of
from core.mass.model import Bag, FullLevel, Material, Packing, Shape, Tapered
from core.quantity.display import UnitSystem
from core.quantity.measured import Measured
from core.quantity.table import POUND_KG
from core.things.model import Thing

STEPS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
"""Steps between marks, in the person's own unit of mass."""
LEAST_GAP_CM = 0.45
"""Marks closer than this can't be told apart, nor labelled."""
MOST_MARKS = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One mark: the mass of the whole thing, its label ("12"), the height of the surface and what is inside then."""

    mass_kg: float
    label: str
    height_cm: float
    volume_l: float
    whole: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """What is printed for one thing with one material. `unit` is the unit of the labels.

    `along` is how much longer the wall is than it is high: 1 where it stands upright.
    """

    thing: str
    material: str
    unit: str
    marks: tuple[Mark, ...]
    full_height_cm: float
    full: Measured
    along: float = 1.0
    cautions: tuple[str, ...] = ()

    def on_paper_mm(self, height_cm: float) -> float:
        """How far above the strip's 0 the surface at `height_cm` is marked."""
        return height_cm * 10 * self.along


def strip_for(thing: Thing, material: Material, *, system: UnitSystem = UnitSystem.METRIC) -> Strip:
    """The strip of one thing filled with one material; `InputError` for what has no surface to read."""
    return strip_of(filling_of(thing, material, system=system))


def strip_of(filling: Filling) -> Strip:
    """The strip of a container as it is filled, its weighings counted in; `InputError` where there is no surface."""
    thing, container, material, system = filling.thing, filling.container, filling.material, filling.system
    if isinstance(container.shape, Bag):
        rule = "has no fixed form, so the height of its contents says little"
        raise InputError(thing.name, rule, "weigh it, or count what you pour")
    full = filling.at(FullLevel())
    marks = _marks(filling, full.mass.value)
    if not marks or full.height_cm is None:
        raise InputError(thing.name, "is too small for marks to be told apart", "weigh it instead")
    return Strip(
        thing=thing.name,
        material=_material_words(material, filling.packing),
        unit="lb" if system is UnitSystem.US else "kg",
        marks=marks,
        full_height_cm=full.height_cm,
        full=full.mass,
        along=wall_factor(container.shape),
        cautions=material.cautions,
    )


def _material_words(material: Material, packing: Packing) -> str:
    return material.name if packing is Packing.LOOSE else f"{material.name}, {packing.value.replace('_', ' ')}"


def wall_factor(shape: Shape) -> float:
    """Length of the wall over its height, for evenly sloping sides; 1 for every other shape."""
    if not isinstance(shape, Tapered):
        return 1.0
    return math.hypot(1.0, (shape.top_cm - shape.bottom_cm) / 2 / shape.full_height_cm)


def _marks(filling: Filling, full_kg: float) -> tuple[Mark, ...]:
    """Marks at the finest step that keeps them apart everywhere."""
    unit_kg = POUND_KG if filling.system is UnitSystem.US else 1.0
    empty_kg = filling.container.tare_kg.value
    for step in STEPS:
        first, last = int(empty_kg / unit_kg / step) + 1, int(full_kg / unit_kg / step + 1e-9)
        if last - first > MOST_MARKS:
            continue
        made = (_mark(filling, count, (step, unit_kg)) for count in range(first, last + 1))
        marks = tuple(mark for mark in made if mark is not None)
        if all(above.height_cm - below.height_cm >= LEAST_GAP_CM for below, above in pairwise(marks)):
            return marks
    return ()


def _mark(filling: Filling, count: int, step: tuple[float, float]) -> Mark | None:
    """The mark at `count` steps (their size in the person's unit, and that unit in kg); None too near the base."""
    size, unit_kg = step
    mass_kg = count * size * unit_kg
    try:
        fill = filling.to(mass_kg)
    except Unreachable:
        return None
    if fill.height_cm is None or fill.height_cm < LEAST_GAP_CM:
        return None
    return Mark(
        mass_kg=mass_kg,
        label=f"{count * size:.10g}",
        height_cm=fill.height_cm,
        volume_l=fill.volume_l,
        whole=count % 5 == 0,
    )
