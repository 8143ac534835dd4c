"""The form of one `[[exercise]]` table: bounded, nothing extra, no infinities; optional fields may be left out.

Shares are fractions of body mass (0 to 1), heights cm, times s, routes m. See `core.exercise.model` for meanings.
"""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, field_validator, model_validator

from core.exercise.model import (
    GYM_USES,
    LOAD_USES,
    Basis,
    BodyShare,
    Demand,
    DoseKind,
    Exercise,
    Muscle,
    Need,
    Option,
    Pattern,
    Posture,
    Sides,
    Use,
)

Identifier = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{2,59}$")]
Label = Annotated[str, Field(min_length=2, max_length=60, pattern=r"^\S(.*\S)?$")]
Sentence = Annotated[str, Field(min_length=4, max_length=200, pattern=r"^\S.*\S$")]
Identifiers = Annotated[tuple[Identifier, ...], Field(max_length=16)]
Weight = Annotated[float, Field(gt=0, le=1, strict=True)]
Share = Annotated[float, Field(ge=0, le=1, strict=True)]
MassShare = Annotated[float, Field(ge=0, le=4, strict=True)]
Dose = Annotated[float, Field(gt=0, le=20_000, strict=True)]
Height = Annotated[float, Field(ge=0, le=300, strict=True)]
Flag = Annotated[bool, Field(strict=True)]
Grade = Annotated[int, Field(ge=0, le=3, strict=True)]


class Entry(BaseModel):
    """What all tables share: no unknown fields, no NaN, no infinity."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class NeedEntry(Entry):
    """One need: a load (with its range as a share of body mass) or a fixture."""

    uses: Annotated[tuple[Use, ...], Field(min_length=1, max_length=6)]
    count: Annotated[int, Field(ge=1, le=2, strict=True)] = 1
    mass_share: tuple[MassShare, MassShare] | None = None
    height_cm: tuple[Height, Height] | None = None
    bears: Annotated[float, Field(ge=0, le=2, strict=True)] = 0.0
    space_m: Annotated[float, Field(ge=0, le=2000, strict=True)] = 0.0
    optional: Flag = False

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        kinds = {use in LOAD_USES for use in self.uses}
        if len(set(self.uses)) != len(self.uses):
            raise ValueError("uses must not list one twice")
        if len(kinds) > 1:
            raise ValueError("uses must be all loads or all fixtures, or be two needs")
        if len({use in GYM_USES for use in self.uses}) > 1:
            raise ValueError("a gym use stands alone, in a need without home uses")
        if kinds == {True}:
            _check_load(self)
        elif self.mass_share is not None:
            raise ValueError("mass_share belongs to a load, not to a fixture")
        _check_rises("height_cm", self.height_cm)
        if self.space_m and self.uses != (Use.ROUTE,):
            raise ValueError("space_m belongs to a route")
        return self

    def need(self) -> Need:
        """The need as the core takes it."""
        return Need(
            uses=self.uses,
            count=self.count,
            mass_share=self.mass_share,
            height_cm=self.height_cm,
            bears=self.bears,
            space_m=self.space_m,
            optional=self.optional,
        )


def _check_load(need: NeedEntry) -> None:
    if need.mass_share is None and need.uses[0] not in GYM_USES:
        raise ValueError("a load needs mass_share, its lightest and heaviest as shares of body mass")
    if need.height_cm is not None or need.bears:
        raise ValueError("height_cm and bears belong to a fixture, not to a load")
    _check_rises("mass_share", need.mass_share)


def _check_rises(name: str, pair: tuple[float, float] | None) -> None:
    if pair is not None and pair[0] > pair[1]:
        raise ValueError(f"{name} must be low, high")


class BodyEntry(Entry):
    """The share of body mass that moves, with its basis and sources."""

    share: Share
    by_height: tuple[tuple[Height, Share], ...] = ()
    feet_raised: Flag = False
    basis: Basis
    source_ids: Identifiers = ()

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        heights = [height for height, _ in self.by_height]
        if heights != sorted(set(heights)):
            raise ValueError("by_height must rise in height")
        if len(heights) == 1:
            raise ValueError("by_height needs two heights or none")
        if self.basis is not Basis.ORDINAL and not self.source_ids:
            raise ValueError(f"a {self.basis} share needs source_ids")
        return self

    def body_share(self) -> BodyShare:
        """The share as the core takes it."""
        return BodyShare(
            share=self.share,
            by_height=self.by_height,
            feet_raised=self.feet_raised,
            basis=self.basis,
            source_ids=self.source_ids,
        )


class ExerciseEntry(Entry):
    """One exercise as written in a data file."""

    id: Identifier
    name: Label
    aliases: Annotated[tuple[Label, ...], Field(max_length=8)] = ()
    patterns: Annotated[dict[Pattern, Weight], Field(min_length=1, max_length=3)]
    muscles: Annotated[dict[Muscle, Weight], Field(min_length=1, max_length=6)]
    dose: DoseKind
    sides: Sides = Sides.BOTH
    posture: Posture
    needs: Annotated[tuple[NeedEntry, ...], Field(max_length=5)] = ()
    body: BodyEntry
    load_share: Weight = 1.0
    side_share: Weight = 0.5
    demands: Annotated[tuple[Demand, ...], Field(max_length=len(Demand))] = ()
    level: Annotated[int, Field(ge=1, le=5, strict=True)]
    staple: Flag = False
    impact: Grade = 0
    noise: Grade = 0
    floor_m2: Annotated[float, Field(gt=0, le=100, strict=True)] = 2.0
    reach_over_head: Flag = False
    outdoors_only: Flag = False
    skip_when_wet: Flag = False
    rep_s: Annotated[float, Field(gt=0, le=120, strict=True)] = 4.0
    typical: tuple[Dose, Dose]
    options: Annotated[tuple[Option, ...], Field(max_length=len(Option))] = ()
    easier: Identifiers = ()
    harder: Identifiers = ()
    cues: Annotated[tuple[Sentence, ...], Field(max_length=6)] = ()
    faults: Annotated[tuple[Sentence, ...], Field(max_length=4)] = ()
    cautions: Annotated[tuple[Sentence, ...], Field(max_length=4)] = ()
    source_ids: Identifiers = ()

    @field_validator("patterns")
    @classmethod
    def _one_main_pattern(cls, patterns: dict[Pattern, float]) -> dict[Pattern, float]:
        weights = sorted(patterns.values(), reverse=True)
        if weights[1:2] == weights[:1]:
            raise ValueError("one pattern must weigh more than the others: it is the main one")
        return patterns

    @field_validator("demands", "options", "easier", "harder", "source_ids", "aliases")
    @classmethod
    def _nothing_twice(cls, values: tuple[str, ...]) -> tuple[str, ...]:
        if len(set(values)) != len(values):
            raise ValueError("must not list one twice")
        return values

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        _check_rises("typical", self.typical)
        if sum(need.uses[0] in LOAD_USES for need in self.needs) > 1:
            raise ValueError("only one need can be a load: put the alternatives in its uses")
        if self.id in (*self.easier, *self.harder):
            raise ValueError("an exercise is not its own neighbour")
        return self

    def exercise(self) -> Exercise:
        """The entry as the core takes it; `patterns` and `muscles` keep their order."""
        values = {name: getattr(self, name) for name in _SAME_IN_CORE}
        return Exercise(
            **values,
            patterns=tuple(self.patterns.items()),
            muscles=tuple(self.muscles.items()),
            needs=tuple(need.need() for need in self.needs),
            body=self.body.body_share(),
            demands=frozenset(self.demands),
        )


_SAME_IN_CORE = tuple(
    name for name in ExerciseEntry.model_fields if name not in {"patterns", "muscles", "needs", "body", "demands"}
)
