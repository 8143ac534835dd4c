"""Rows of the house itself, its places and the settings."""

from __future__ import annotations

from sqlalchemy.orm import Mapped, mapped_column

from core.house.model import Place
from core.store.changes import ONLY, HouseFacts, Part
from core.store.encoding import DATE, TIME
from core.store.encoding_groups import maybe
from core.store.rows.base import (
    STRICT,
    Entry,
    check,
    date_check,
    flag,
    flag_check,
    json_of,
    list_check,
    name_check,
    other,
    position_check,
    tagged,
    text_of,
)
from core.store.values import Settings


class HouseRow(Entry):
    """The one row of the house."""

    part = Part.HOUSE
    __tablename__ = "house"
    __table_args__ = (check("only", "id = 1"), list_check("fills"), check("cup_l", "cup_l > 0"), STRICT)

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    fills: Mapped[str]
    cup_l: Mapped[float]

    def key(self) -> str:
        """There is one house."""
        return ONLY

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {"name": self.name, "fills": json_of(self.fills, "house.fills"), "cup_l": self.cup_l}

    @classmethod
    def to_row(cls, facts: HouseFacts) -> HouseRow:
        """The row for these facts."""
        return cls(id=1, name=facts.name, fills=text_of(list(facts.fills)), cup_l=facts.cup_l)


class PlaceRow(Entry):
    """A place to train."""

    part = Part.PLACE
    __tablename__ = "place"
    __table_args__ = (
        name_check(),
        position_check(),
        *(flag_check(column) for column in ("outdoors", "neighbours", "wet")),
        check("quiet", "(quiet_start IS NULL) = (quiet_end IS NULL)"),
        STRICT,
    )

    id: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    name: Mapped[str]
    ceiling_cm: Mapped[float | None]
    floor_m2: Mapped[float]
    walk_m: Mapped[float]
    outdoors: Mapped[int]
    neighbours: Mapped[int]
    wet: Mapped[int]
    quiet_start: Mapped[str | None]
    quiet_end: Mapped[str | None]

    def key(self) -> str:
        """The place's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        quiet = None
        if self.quiet_start is not None or self.quiet_end is not None:
            quiet = tagged("quiet_hours", start=self.quiet_start, end=self.quiet_end)
        return {
            "id": self.id,
            "name": self.name,
            "ceiling_cm": self.ceiling_cm,
            "floor_m2": self.floor_m2,
            "walk_m": self.walk_m,
            "outdoors": flag(self.outdoors),
            "neighbours": flag(self.neighbours),
            "wet": flag(self.wet),
            "quiet": quiet,
        }

    @classmethod
    def to_row(cls, place: Place, position: int) -> PlaceRow:
        """The row for this place."""
        return cls(
            id=place.id,
            position=position,
            name=place.name,
            ceiling_cm=place.ceiling_cm,
            floor_m2=place.floor_m2,
            walk_m=place.walk_m,
            outdoors=int(place.outdoors),
            neighbours=int(place.neighbours),
            wet=int(place.wet),
            quiet_start=None if place.quiet is None else TIME.write(place.quiet.start),
            quiet_end=None if place.quiet is None else TIME.write(place.quiet.end),
        )


class SettingsRow(Entry):
    """The one row of settings."""

    part = Part.SETTINGS
    __tablename__ = "settings"
    __table_args__ = (check("only", "id = 1"), flag_check("first_run_done"), date_check("ready_on"), STRICT)

    id: Mapped[int] = mapped_column(primary_key=True)
    units: Mapped[str]
    theme: Mapped[str]
    person_id: Mapped[str | None] = other("person.id", nullable=True)
    first_run_done: Mapped[int]
    ready_on: Mapped[str | None]

    def key(self) -> str:
        """There is one set of settings."""
        return ONLY

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {
            "units": self.units,
            "theme": self.theme,
            "person_id": self.person_id,
            "first_run_done": flag(self.first_run_done),
            "ready_on": self.ready_on,
        }

    @classmethod
    def to_row(cls, settings: Settings) -> SettingsRow:
        """The row for these settings."""
        return cls(
            id=1,
            units=settings.units.value,
            theme=settings.theme.value,
            person_id=settings.person_id,
            first_run_done=int(settings.first_run_done),
            ready_on=maybe(DATE).write(settings.ready_on),
        )
