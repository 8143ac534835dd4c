"""The form of one `[[thing]]` table: bounded, nothing extra, no infinities, and a source beside every number.

Lengths cm, masses kg, volumes L, areas m², ways m; pairs are a value and its half-width. `sources` must name exactly
the groups of numbers the entry holds. See `core.things.model` for meanings.
"""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, field_validator, model_validator

from catalog.schema_shapes import ShapeEntry
from core.mass.model import Container, shape_for_capacity
from core.quantity import Measured, Origin
from core.things.model import (
    Closure,
    Facts,
    Flight,
    Form,
    Handle,
    Hazard,
    Hold,
    RatingOrigin,
    Rigidity,
    ThingKind,
)
from core.things.words import plural_of

Identifier = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{2,59}$")]
Label = Annotated[str, Field(min_length=2, max_length=60, pattern=r"^\S(.*\S)?$")]
Sentence = Annotated[str, Field(min_length=4, max_length=160, pattern=r"^\S.*\S$")]
Length = Annotated[float, Field(ge=0.1, le=1000, strict=True)]
Height = Annotated[float, Field(gt=0, le=400, strict=True)]
Litres = Annotated[float, Field(gt=0, le=300, strict=True)]
Mass = Annotated[float, Field(gt=0, le=400, strict=True)]
HalfWidth = Annotated[float, Field(ge=0, le=100, strict=True)]
Factor = Annotated[float, Field(ge=1, le=2, strict=True)]
Flag = Annotated[bool, Field(strict=True)]

PRINTED = "label_on_thing"
"""The source of a mass that such things have printed on them."""
SOURCED: dict[str, tuple[str, ...]] = {
    "mass": ("mass_kg",),
    "label": ("label_kg",),
    "capacity": ("litres",),
    "brimful": ("brimful",),
    "tare": ("tare_kg",),
    "shape": ("shape",),
    "hold": ("hold",),
    "size": ("length_cm", "width_cm", "height_cm"),
    "surface": ("surface_cm",),
    "flight": ("flight",),
    "grip": ("grip_cm",),
    "rating": ("rating_kg",),
    "pack": ("pack_l",),
    "route": ("route_m",),
    "area": ("area_m2",),
}
"""The groups of numbers an entry may hold, and the fields in each."""


class Entry(BaseModel):
    """What all tables share: no unknown fields, no NaN, no infinity."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class HoldEntry(Entry):
    """Room for other things and the most to carry in it."""

    litres: Litres
    limit_kg: Annotated[float, Field(gt=0, le=150, strict=True)]


class FlightEntry(Entry):
    """How many steps, how high each."""

    steps: Annotated[int, Field(ge=1, le=200, strict=True)]
    rise_cm: Annotated[float, Field(ge=5, le=45, strict=True)]


class ThingEntry(Entry):
    """One kind of thing as written in a data file; its group is the name of the file."""

    id: Identifier
    name: Label
    plural: Label = ""
    aliases: Annotated[tuple[Label, ...], Field(max_length=16)] = ()
    icon: Annotated[str, Field(pattern=r"^[a-z-]{3,20}$")]
    common: Annotated[int, Field(ge=0, le=2, strict=True)]
    cost: Annotated[int, Field(ge=0, le=3, strict=True)]
    form: Form
    mass_kg: tuple[Mass, HalfWidth] | None = None
    label_kg: Mass | None = None
    litres: tuple[Litres, HalfWidth] | None = None
    brimful: tuple[Factor, HalfWidth] | None = None
    tare_kg: tuple[Mass, HalfWidth] | None = None
    shape: ShapeEntry | None = None
    hold: HoldEntry | None = None
    length_cm: Length | None = None
    width_cm: Length | None = None
    height_cm: Length | None = None
    surface_cm: Height | None = None
    flight: FlightEntry | None = None
    handle: Handle = Handle.NONE
    grip_cm: tuple[Length, Length, Length] | None = None
    closure: Closure = Closure.SOLID
    rigidity: Rigidity = Rigidity.RIGID
    rating_kg: Mass | None = None
    rating_origin: RatingOrigin = RatingOrigin.NONE
    hazards: Annotated[tuple[Hazard, ...], Field(max_length=len(Hazard))] = ()
    fixed: Flag = False
    outdoors: Flag = False
    pack_l: Litres | None = None
    route_m: Annotated[float, Field(gt=0, le=100_000, strict=True)] | None = None
    area_m2: Annotated[float, Field(gt=0, le=10_000, strict=True)] | None = None
    fills: Identifier | None = None
    cautions: Annotated[tuple[Sentence, ...], Field(max_length=4)] = ()
    sources: dict[str, Identifier] = {}

    @field_validator("aliases", "hazards", "cautions")
    @classmethod
    def _nothing_twice(cls, values: tuple[str, ...]) -> tuple[str, ...]:
        if len(set(values)) != len(values):
            raise ValueError("must not list one twice")
        return values

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        _check_vessel(self)
        sizes = (self.length_cm, self.width_cm, self.height_cm)
        if any(sizes) and not all(sizes):
            raise ValueError("length_cm, width_cm and height_cm come together")
        if self.length_cm and self.width_cm and self.width_cm > self.length_cm:
            raise ValueError("length_cm is the longer side, width_cm the shorter")
        if self.handle is not Handle.NONE and self.grip_cm is None:
            raise ValueError("a handle needs grip_cm: how thick, how long, how much room for the fingers")
        if (self.rating_kg is not None) and self.rating_origin is RatingOrigin.NONE:
            raise ValueError("a rating needs rating_origin: who says it")
        if self.label_kg is not None and (self.mass_kg is None or self.label_kg > self.mass_kg[0]):
            raise ValueError("label_kg is the contents alone, so mass_kg is at least as much")
        _check_sources(self)
        return self

    def kind(self, group: str, fill_groups: dict[str, tuple[str, ...]]) -> ThingKind:
        """The entry as the core takes it."""
        return ThingKind(
            id=self.id,
            name=self.name,
            plural=self.plural or plural_of(self.name),
            aliases=self.aliases,
            group=group,
            icon=self.icon,
            facts=self.facts(),
            fills=fill_groups.get(self.fills or "", ()),
            common=self.common,
            cost=self.cost,
            cautions=self.cautions,
            standing=tuple(sorted(self.sources.items())),
        )

    def facts(self) -> Facts:
        """Typical facts of one piece."""
        thick, long, room = self.grip_cm or (3.0, 12.0, 5.0)
        return Facts(
            form=self.form,
            mass=_measured(self.mass_kg, Origin.LABEL if self._is_labelled else Origin.ESTIMATE),
            label_kg=self.label_kg,
            container=self._container(),
            hold=None if self.hold is None else Hold(volume_l=self.hold.litres, limit_kg=self.hold.limit_kg),
            length_cm=self.length_cm or 0.0,
            width_cm=self.width_cm or 0.0,
            height_cm=self.height_cm or 0.0,
            surface_cm=self.surface_cm,
            handle=self.handle,
            grip_cm=thick,
            grip_length_cm=long,
            grip_room_cm=room,
            closure=self.closure,
            rigidity=self.rigidity,
            rating_kg=self.rating_kg,
            rating_origin=self.rating_origin,
            flight=None if self.flight is None else Flight(count=self.flight.steps, rise_cm=self.flight.rise_cm),
            hazards=frozenset(self.hazards),
            fixed=self.fixed,
            outdoors=self.outdoors,
            pack_l=self.pack_l,
            route_m=self.route_m or 0.0,
            area_m2=self.area_m2 or 0.0,
        )

    @property
    def _is_labelled(self) -> bool:
        return self.label_kg is not None or self.sources.get("mass") == PRINTED

    def _container(self) -> Container | None:
        if self.litres is None or self.brimful is None or self.tare_kg is None or self.shape is None:
            return None
        nominal_l, doubt_l = self.litres
        factor, factor_doubt = self.brimful
        brimful_l = Measured.rectangular(nominal_l * factor, nominal_l * factor_doubt)
        return Container(
            shape=shape_for_capacity(self.shape.proportions(brimful_l.value), brimful_l.value),
            nominal_l=Measured.rectangular(nominal_l, doubt_l, Origin.LABEL),
            brimful_l=brimful_l,
            tare_kg=Measured.rectangular(*self.tare_kg),
        )


def _measured(pair: tuple[float, float] | None, origin: Origin) -> Measured | None:
    return None if pair is None else Measured.rectangular(*pair, origin)


def _check_sources(entry: ThingEntry) -> None:
    """Every group of numbers has its source, and no source stands alone."""
    unknown = sorted(set(entry.sources) - set(SOURCED))
    if unknown:
        raise ValueError(f"sources names {unknown[0]}, which is no group of numbers")
    for group, fields in SOURCED.items():
        held = any(getattr(entry, field) is not None for field in fields)
        if held and group not in entry.sources:
            raise ValueError(f"sources must say where {fields[0]} comes from ({group})")
        if not held and group in entry.sources:
            raise ValueError(f"sources names {group}, but {fields[0]} is not given")


def _check_vessel(entry: ThingEntry) -> None:
    """A vessel is described whole or not at all."""
    parts = (entry.litres, entry.brimful, entry.tare_kg, entry.shape)
    if any(parts) and not all(parts):
        raise ValueError("litres, brimful, tare_kg and shape come together")
    if entry.litres is not None and entry.fills is None:
        raise ValueError("what can be filled needs fills, a group of materials")
    if entry.litres is None and entry.fills is not None:
        raise ValueError("fills belongs to what can be filled")
    if entry.litres is not None and entry.mass_kg is not None:
        raise ValueError("what can be filled has tare_kg, not mass_kg")
    if entry.hold is not None and entry.mass_kg is None:
        raise ValueError("what holds other things needs mass_kg, its own mass")
