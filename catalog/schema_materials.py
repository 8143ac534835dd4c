"""The form of one `[[material]]` table: bounded, nothing extra, no infinities."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from core.mass.model import Material, MaterialKind, Standing
from core.quantity.measured import Measured, Origin

Identifier = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{1,39}$")]
Sentence = Annotated[str, Field(max_length=300)]
Density = Annotated[float, Field(gt=0, le=12_000)]
Factor = Annotated[float, Field(gt=0.3, lt=3)]
Flag = Annotated[bool, Field(strict=True)]


class MaterialEntry(BaseModel):
    """One material as written in the data file."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    id: Identifier
    name: Annotated[str, Field(min_length=2, max_length=60)]
    kind: MaterialKind
    density: tuple[Density, Density, Density]
    standing: Standing
    sources: Annotated[tuple[Identifier, ...], Field(min_length=1, max_length=8)]
    note: Sentence = ""
    as_fill: Flag = True
    why_not: Sentence = ""
    cautions: Annotated[tuple[Sentence, ...], Field(max_length=5)] = ()
    by_temperature: Flag = False
    settles: Flag = False
    sloshes: Flag = False
    dusty: Flag = False
    settled: tuple[Factor, Factor] | None = None
    damp: tuple[Factor, Factor] | None = None
    solid_kg_m3: Density | None = None

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        low, typical, high = self.density
        if not low <= typical <= high:
            raise ValueError("density must rise: low, typical, high")
        if any(pair is not None and pair[0] > pair[1] for pair in (self.settled, self.damp)):
            raise ValueError("settled and damp must be low, high")
        if self.solid_kg_m3 is not None and self.solid_kg_m3 <= high:
            raise ValueError("the grains must be denser than they lie")
        if self.as_fill == bool(self.why_not):
            raise ValueError("a material that is no fill needs why_not, and only then")
        if self.kind is MaterialKind.LIQUID and (self.settles or self.settled or self.damp):
            raise ValueError("a liquid does not settle")
        return self

    def material(self) -> Material:
        """The entry as the mass engine takes it."""
        low, typical, high = self.density
        return Material(
            id=self.id,
            name=self.name,
            kind=self.kind,
            low_kg_m3=low,
            typical_kg_m3=typical,
            high_kg_m3=high,
            standing=self.standing,
            source_ids=self.sources,
            note=self.note,
            as_fill=self.as_fill,
            why_not=self.why_not,
            cautions=self.cautions,
            by_temperature=self.by_temperature,
            settles=self.settles,
            sloshes=self.sloshes,
            dusty=self.dusty,
            settled=_between(self.settled),
            damp=_between(self.damp),
            solid_kg_m3=self.solid_kg_m3,
        )


def _between(ends: tuple[float, float] | None) -> Measured | None:
    """A factor anywhere between two ends, every point alike."""
    if ends is None:
        return None
    low, high = ends
    return Measured.rectangular((low + high) / 2, (high - low) / 2, Origin.ESTIMATE)
