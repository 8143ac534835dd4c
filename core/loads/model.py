"""Recipes, rungs and gaps of a ladder of loads. Masses kg, volumes L, times s."""

from __future__ import annotations

from dataclasses import dataclass

from core.exercise.model import Use
from core.quantity import Measured
from core.quantity.display import UnitSystem, format_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """`count` alike pieces of one thing in a recipe, each at `fill_l` litres of a material (None: nothing to fill)."""

    thing_id: str
    name: str
    count: int
    each: Measured
    material_id: str | None = None
    material_name: str = ""
    fill_l: float = 0.0
    cups: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe:
    """What to take: the parts, and the bag that holds them when there is one (then the first part)."""

    parts: tuple[Part, ...]
    packed: bool = False

    @property
    def thing_ids(self) -> tuple[str, ...]:
        """Ids of the things used, in order."""
        return tuple(part.thing_id for part in self.parts)

    @property
    def name(self) -> str:
        """The recipe in words: “Daypack with 3 bean tins, water bottle (1.0 L)”."""
        return recipe_name(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rung:
    """One load this house can make for a use: its mass (of a pair: both together), recipe and time to set up."""

    use: Use
    mass: Measured
    recipe: Recipe
    set_up_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """Two neighbouring rungs too far apart; `step_pct` is the step as a percentage of the lower one."""

    from_kg: float
    to_kg: float
    step_pct: float


def recipe_name(recipe: Recipe, system: UnitSystem = UnitSystem.METRIC) -> str:
    """A recipe in words, volumes in the person's units."""
    if not recipe.packed:
        return " and ".join(part_name(part, system) for part in recipe.parts)
    inside = ", ".join(part_name(part, system) for part in recipe.parts[1:])
    return f"{recipe.parts[0].name} with {inside}" if inside else f"{recipe.parts[0].name}, empty"


def part_name(part: Part, system: UnitSystem = UnitSystem.METRIC) -> str:
    """A part in words, with its fill when it has one."""
    head = part.name if part.count == 1 else f"{part.count} × {part.name}"
    if part.material_id is None:
        return head
    if part.fill_l == 0:
        return f"{head}, empty"
    each = " each" if part.count > 1 else ""
    volume = f"{part.fill_l:.4g} L" if system is UnitSystem.METRIC else format_volume(part.fill_l, system)
    return f"{head} ({volume} {part.material_name.lower()}{each})"
