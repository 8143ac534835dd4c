"""The form of tests and published norms in the data files."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from core.assess.model import Beside, Counted, NormRow, NormTable, Protocol, RealChange, Standing
from core.house.model import Sex

Id = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{1,59}$")]
Name = Annotated[str, Field(min_length=2, max_length=80)]
Sentence = Annotated[str, Field(min_length=5, max_length=300, pattern=r"\.$")]
Words = Annotated[str, Field(min_length=3, max_length=120)]
Number = Annotated[float, Field(ge=0, le=1_000_000, allow_inf_nan=False)]
Age = Annotated[int, Field(ge=5, le=120)]


class Form(BaseModel):
    """No field that is not known."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class BesideForm(Form):
    """A number written down beside the result."""

    key: Id
    name: Name
    unit: Annotated[str, Field(min_length=1, max_length=8)]
    low: Number
    high: Number
    needed: bool = True

    @model_validator(mode="after")
    def rises(self) -> Self:
        """A range goes up."""
        if self.low >= self.high:
            raise ValueError("low must be below high")
        return self

    def beside(self) -> Beside:
        """The value."""
        return Beside(**self.model_dump())


class ChangeForm(Form):
    """A published smallest detectable change of one person."""

    amount: Annotated[float, Field(gt=0, le=10_000)]
    told_by: Words
    sources: Annotated[tuple[Id, ...], Field(min_length=1)]

    def change(self) -> RealChange:
        """The value."""
        return RealChange(amount=self.amount, told_by=self.told_by, source_ids=self.sources)


class ProtocolEntry(Form):
    """One `[[protocol]]` table."""

    id: Id
    name: Name
    counted: Counted
    more_is_better: bool = True
    low: Number
    high: Number
    exercise: Id
    minutes: Annotated[float, Field(gt=0, le=120)]
    steps: Annotated[tuple[Sentence, ...], Field(min_length=2, max_length=8)]
    things: tuple[Words, ...] = ()
    stop: Annotated[tuple[Sentence, ...], Field(min_length=1, max_length=8)]
    beside: tuple[BesideForm, ...] = ()
    same: tuple[Id, ...] = ()
    ages: tuple[Age, Age] | None = None
    sets_capacity: bool = False
    reps_left: Annotated[float, Field(ge=0, le=5)] = 0.0
    change: ChangeForm | None = None
    practice: Annotated[str, Field(max_length=300)] = ""
    sources: Annotated[tuple[Id, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def agrees_with_itself(self) -> Self:
        """Ranges go up, each number beside the result has its own key, and what must be alike is written down."""
        keys = [one.key for one in self.beside]
        if self.low >= self.high or (self.ages is not None and self.ages[0] > self.ages[1]):
            raise ValueError("a range must go up")
        if len(set(keys)) != len(keys):
            raise ValueError("two numbers beside the result have one key")
        if not set(self.same) <= set(keys):
            raise ValueError("what must be alike is not written down")
        return self

    def protocol(self) -> Protocol:
        """The value."""
        return Protocol(
            id=self.id,
            name=self.name,
            counted=self.counted,
            more_is_better=self.more_is_better,
            low=self.low,
            high=self.high,
            exercise_id=self.exercise,
            minutes=self.minutes,
            steps=self.steps,
            things=self.things,
            stop_rules=self.stop,
            beside=tuple(one.beside() for one in self.beside),
            same_beside=self.same,
            ages=self.ages,
            sets_capacity=self.sets_capacity,
            reps_left=self.reps_left,
            change=None if self.change is None else self.change.change(),
            practice=self.practice,
            source_ids=self.sources,
        )


class NormRowForm(Form):
    """One row of a published table."""

    sex: Sex
    ages: tuple[Age, Age]
    starts: Annotated[tuple[Number, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def rises(self) -> Self:
        """Cut-offs and ages go up."""
        if list(self.starts) != sorted(set(self.starts)) or self.ages[0] > self.ages[1]:
            raise ValueError("cut-offs and ages must go up")
        return self

    def row(self) -> NormRow:
        """The value."""
        return NormRow(sex=self.sex, ages=self.ages, starts=self.starts)


class NormEntry(Form):
    """One `[[norm]]` table."""

    id: Id
    protocol: Id
    name: Name
    bands: Annotated[tuple[Words, ...], Field(min_length=2)]
    standing: Standing
    note: Annotated[str, Field(min_length=10, max_length=500)]
    sources: Annotated[tuple[Id, ...], Field(min_length=1)]
    rows: Annotated[tuple[NormRowForm, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def agrees_with_itself(self) -> Self:
        """One more band than cut-offs in each row, and no age of one sex in two rows."""
        if any(len(row.starts) + 1 != len(self.bands) for row in self.rows):
            raise ValueError("each row needs one cut-off less than there are bands")
        covered = [(row.sex, age) for row in self.rows for age in range(row.ages[0], row.ages[1] + 1)]
        if len(set(covered)) != len(covered):
            raise ValueError("an age is in two rows")
        return self

    def table(self) -> NormTable:
        """The value."""
        return NormTable(
            id=self.id,
            protocol_id=self.protocol,
            name=self.name,
            bands=self.bands,
            rows=tuple(row.row() for row in self.rows),
            standing=self.standing,
            note=self.note,
            source_ids=self.sources,
        )
