"""The inner proportions of a vessel as written in a data file; one table per form. Lengths in cm.

Only proportions count: the vessel is scaled to its brimful capacity.
"""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from core.errors import InputError
from core.mass.model import Bag, Base, BoxBase, RoundBase, Shape, Shouldered, StraightBox, StraightRound, Tapered

Length = Annotated[float, Field(gt=0, le=200, strict=True)]


class _Proportions(BaseModel):
    """What all forms share: nothing extra, and sizes the mass engine accepts."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    height_cm: Length

    @model_validator(mode="after")
    def _makes_a_vessel(self) -> Self:
        try:
            self.proportions(1.0)
        except InputError as error:
            raise ValueError(f"shape makes no vessel: {error.sentence()}") from error
        return self

    def proportions(self, brimful_l: float) -> Shape:
        """The shape, at the size written; `brimful_l` is for forms that have no size of their own."""
        raise NotImplementedError


class StraightRoundEntry(_Proportions):
    """An upright cylinder."""

    form: Literal["straight_round"]
    diameter_cm: Length

    def proportions(self, brimful_l: float) -> Shape:
        """The cylinder."""
        del brimful_l
        return StraightRound(diameter_cm=self.diameter_cm, full_height_cm=self.height_cm)


class StraightBoxEntry(_Proportions):
    """An upright box."""

    form: Literal["straight_box"]
    length_cm: Length
    width_cm: Length
    corner_cm: Annotated[float, Field(ge=0, le=100, strict=True)] = 0.0

    def proportions(self, brimful_l: float) -> Shape:
        """The box."""
        del brimful_l
        return StraightBox(
            length_cm=self.length_cm,
            width_cm=self.width_cm,
            corner_radius_cm=self.corner_cm,
            full_height_cm=self.height_cm,
        )


class TaperedEntry(_Proportions):
    """A bucket."""

    form: Literal["tapered"]
    bottom_cm: Length
    top_cm: Length

    def proportions(self, brimful_l: float) -> Shape:
        """The frustum."""
        del brimful_l
        return Tapered(bottom_cm=self.bottom_cm, top_cm=self.top_cm, full_height_cm=self.height_cm)


class BagEntry(_Proportions):
    """A sack or soft bag: only its height is given."""

    form: Literal["bag"]

    def proportions(self, brimful_l: float) -> Shape:
        """The bag, of this volume."""
        return Bag(full_volume_l=brimful_l, full_height_cm=self.height_cm)


class ShoulderedEntry(_Proportions):
    """A jug or bottle, on a round base (`diameter_cm`) or a box (`length_cm`, `width_cm`, `corner_cm`)."""

    form: Literal["shouldered"]
    diameter_cm: Length | None = None
    length_cm: Length | None = None
    width_cm: Length | None = None
    corner_cm: Annotated[float, Field(ge=0, le=100, strict=True)] = 0.0
    straight_cm: Annotated[float, Field(ge=0, le=200, strict=True)]
    neck_cm: Length
    neck_height_cm: Annotated[float, Field(ge=0, le=100, strict=True)] = 0.0

    def proportions(self, brimful_l: float) -> Shape:
        """The vessel."""
        del brimful_l
        return Shouldered(
            base=self._base(),
            straight_to_cm=self.straight_cm,
            neck_diameter_cm=self.neck_cm,
            neck_height_cm=self.neck_height_cm,
            full_height_cm=self.height_cm,
        )

    def _base(self) -> Base:
        if self.diameter_cm is not None and self.length_cm is None and self.width_cm is None:
            return RoundBase(diameter_cm=self.diameter_cm)
        if self.diameter_cm is None and self.length_cm is not None and self.width_cm is not None:
            return BoxBase(length_cm=self.length_cm, width_cm=self.width_cm, corner_radius_cm=self.corner_cm)
        raise ValueError("a shouldered shape has diameter_cm, or length_cm and width_cm")


ShapeEntry = Annotated[
    StraightRoundEntry | StraightBoxEntry | TaperedEntry | BagEntry | ShoulderedEntry, Field(discriminator="form")
]
