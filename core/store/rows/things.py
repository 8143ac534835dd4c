"""Rows of things with what belongs to each: the places it stays at, its fill, scale readings and own check."""

from __future__ import annotations

from typing import Any

from sqlalchemy.orm import Mapped, mapped_column, relationship

from core.mass.model import ScaleReading
from core.store.changes import Part
from core.store.codec import FACTS, LEVEL
from core.store.encoding import DATE
from core.store.encoding_groups import maybe
from core.store.rows.base import (
    CHILDREN,
    STRICT,
    Base,
    Entry,
    check,
    date_check,
    json_of,
    list_check,
    name_check,
    object_check,
    other,
    owner,
    position_check,
    tagged,
    text_of,
)
from core.things.model import Fill, OwnCheck, Thing

FACTS_VERSION = 1
"""The form of the facts column; an older one is brought up to date by a migration."""


class ThingPlaceRow(Base):
    """A place a thing stays at."""

    __tablename__ = "thing_place"
    __table_args__ = (position_check(), STRICT)

    thing_id: Mapped[str] = owner("thing.id")
    position: Mapped[int] = mapped_column(primary_key=True)
    place_id: Mapped[str] = other("place.id")


class FillRow(Base):
    """What is in a container now."""

    __tablename__ = "fill"
    __table_args__ = (check("volume_l", "volume_l >= 0"), STRICT)

    thing_id: Mapped[str] = owner("thing.id")
    material_id: Mapped[str]
    volume_l: Mapped[float]
    packing: Mapped[str]

    def fields(self) -> dict[str, object]:
        """The JSON of the fill."""
        return tagged("fill", material_id=self.material_id, volume_l=self.volume_l, packing=self.packing)

    @classmethod
    def to_row(cls, fill: Fill) -> FillRow:
        """The row for this fill."""
        return cls(material_id=fill.material_id, volume_l=fill.volume_l, packing=fill.packing.value)


class ReadingRow(Base):
    """A scale reading of a thing."""

    __tablename__ = "scale_reading"
    __table_args__ = (position_check(), object_check("at_level"), date_check("date"), STRICT)

    thing_id: Mapped[str] = owner("thing.id")
    position: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    reading_kg: Mapped[float]
    without_kg: Mapped[float | None]
    resolution_kg: Mapped[float]
    repeatability_kg: Mapped[float]
    offset_doubt_kg: Mapped[float]
    at_level: Mapped[str | None]
    date: Mapped[str | None]
    material_id: Mapped[str | None]
    packing: Mapped[str]

    def fields(self) -> dict[str, object]:
        """The JSON of the reading."""
        return tagged(
            "reading",
            kind=self.kind,
            reading_kg=self.reading_kg,
            without_kg=self.without_kg,
            resolution_kg=self.resolution_kg,
            repeatability_kg=self.repeatability_kg,
            offset_doubt_kg=self.offset_doubt_kg,
            at_level=json_of(self.at_level, f"reading of thing “{self.thing_id}”"),
            date=self.date,
            material_id=self.material_id,
            packing=self.packing,
        )

    @classmethod
    def to_row(cls, reading: ScaleReading, position: int) -> ReadingRow:
        """The row for this reading."""
        return cls(
            position=position,
            kind=reading.kind.value,
            reading_kg=reading.reading_kg,
            without_kg=reading.without_kg,
            resolution_kg=reading.resolution_kg,
            repeatability_kg=reading.repeatability_kg,
            offset_doubt_kg=reading.offset_doubt_kg,
            at_level=None if reading.at_level is None else text_of(LEVEL.write(reading.at_level)),
            date=maybe(DATE).write(reading.date),
            material_id=reading.material_id,
            packing=reading.packing.value,
        )


class OwnCheckRow(Base):
    """The person's own check of what a thing bears."""

    __tablename__ = "own_check"
    __table_args__ = (date_check("date"), check("took_kg", "took_kg >= 0"), STRICT)

    thing_id: Mapped[str] = owner("thing.id")
    date: Mapped[str]
    took_kg: Mapped[float]

    def fields(self) -> dict[str, object]:
        """The JSON of the check."""
        return tagged("own_check", date=self.date, took_kg=self.took_kg)

    @classmethod
    def to_row(cls, own_check: OwnCheck) -> OwnCheckRow:
        """The row for this check."""
        return cls(date=own_check.date.isoformat(), took_kg=own_check.took_kg)


class ThingRow(Entry):
    """A thing; its facts are kept whole, so a later catalog does not change what the owner measured."""

    part = Part.THING
    __tablename__ = "thing"
    __table_args__ = (
        name_check(),
        position_check(),
        check("count", "count BETWEEN 1 AND 999"),
        object_check("facts"),
        list_check("fills"),
        list_check("cautions"),
        STRICT,
    )

    id: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    kind_id: Mapped[str]
    name: Mapped[str]
    count: Mapped[int]
    icon: Mapped[str]
    facts: Mapped[str]
    fills: Mapped[str]
    cautions: Mapped[str]
    places: Mapped[list[ThingPlaceRow]] = relationship(
        cascade=CHILDREN, lazy="selectin", order_by=ThingPlaceRow.position
    )
    readings: Mapped[list[ReadingRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=ReadingRow.position)
    fill: Mapped[FillRow | None] = relationship(cascade=CHILDREN, lazy="selectin")
    own_check: Mapped[OwnCheckRow | None] = relationship(cascade=CHILDREN, lazy="selectin")

    def key(self) -> str:
        """The thing's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        where = f"thing “{self.id}”"
        return {
            "id": self.id,
            "kind_id": self.kind_id,
            "name": self.name,
            "count": self.count,
            "facts": _facts(json_of(self.facts, where)),
            "icon": self.icon,
            "place_ids": [row.place_id for row in self.places],
            "fills": json_of(self.fills, where),
            "fill": self.fill and self.fill.fields(),
            "readings": [row.fields() for row in self.readings],
            "own_check": self.own_check and self.own_check.fields(),
            "cautions": json_of(self.cautions, where),
        }

    @classmethod
    def to_row(cls, thing: Thing, position: int) -> ThingRow:
        """The row for this thing, with its children."""
        return cls(
            id=thing.id,
            position=position,
            kind_id=thing.kind_id,
            name=thing.name,
            count=thing.count,
            icon=thing.icon,
            facts=text_of({"version": FACTS_VERSION, "facts": FACTS.write(thing.facts)}),
            fills=text_of(list(thing.fills)),
            cautions=text_of(list(thing.cautions)),
            places=[ThingPlaceRow(position=i, place_id=place_id) for i, place_id in enumerate(thing.place_ids)],
            readings=[ReadingRow.to_row(reading, i) for i, reading in enumerate(thing.readings)],
            fill=None if thing.fill is None else FillRow.to_row(thing.fill),
            own_check=None if thing.own_check is None else OwnCheckRow.to_row(thing.own_check),
        )


def _facts(written: Any) -> object:
    """The facts inside their versioned wrapping; anything unexpected is handed on for the codec to refuse."""
    if isinstance(written, dict) and written.keys() == {"version", "facts"} and written["version"] == FACTS_VERSION:
        return written["facts"]
    return written
