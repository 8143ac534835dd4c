"""The whole catalog as one frozen value, handed to every use case."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from core.assess.model import NormTable, Protocol
from core.exercise.model import Exercise, Family
from core.mass.model import Material
from core.things.model import ThingKind


@dataclass(frozen=True, kw_only=True)
class Source:
    """Where a number comes from. `kind` is exact, measured, published, common practice, assumed or memory."""

    id: str
    citation: str
    kind: str
    url: str = ""


@dataclass(frozen=True, kw_only=True)
class Catalog:
    """Exercises, kinds of things, materials, sources, tests and published norms, each sorted by id."""

    exercises: tuple[Exercise, ...]
    kinds: tuple[ThingKind, ...]
    materials: tuple[Material, ...]
    sources: tuple[Source, ...] = field(default=())
    protocols: tuple[Protocol, ...] = field(default=())
    norms: tuple[NormTable, ...] = field(default=())

    @cached_property
    def exercise_by_id(self) -> dict[str, Exercise]:
        """Exercises by id."""
        return {exercise.id: exercise for exercise in self.exercises}

    @cached_property
    def exercises_by_family(self) -> dict[Family, tuple[Exercise, ...]]:
        """Exercises by the family of their main pattern, each by id."""
        return {family: tuple(e for e in self.exercises if e.family is family) for family in Family}

    @cached_property
    def kind_by_id(self) -> dict[str, ThingKind]:
        """Kinds of things by id."""
        return {kind.id: kind for kind in self.kinds}

    @cached_property
    def material_by_id(self) -> dict[str, Material]:
        """Fill materials by id."""
        return {material.id: material for material in self.materials}

    @cached_property
    def protocol_by_id(self) -> dict[str, Protocol]:
        """Tests by id."""
        return {protocol.id: protocol for protocol in self.protocols}
