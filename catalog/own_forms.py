"""The forms of own entries: those of the catalog, with what a person need not say filled in."""

from __future__ import annotations

from collections.abc import Container
from typing import Annotated, Any

from pydantic import Field, model_validator

from catalog.schema_exercises import ExerciseEntry
from catalog.schema_things import SOURCED, ThingEntry
from core.house.own import OWN_PREFIX
from core.knowledge import Source
from core.store.commands.base import free_id

OWN_SOURCE = Source(id="own_entry", citation="Your own entry, taken as you wrote it", kind="assumed")
OwnId = Annotated[str, Field(pattern=r"^own_[a-z0-9][a-z0-9_]{0,55}$")]


def own_id(name: str, taken: Container[str] = ()) -> str:
    """A free id for an own entry of this name."""
    made = free_id(f"{OWN_PREFIX}{name[:50]}", taken)
    return made if made.startswith(OWN_PREFIX) else free_id(f"{OWN_PREFIX}entry", taken)


def _named(table: Any) -> Any:
    """The table with an id, made from its name where it has none."""
    if not isinstance(table, dict) or table.get("id"):
        return table
    name = table.get("name")
    return {**table, "id": own_id(name if isinstance(name, str) else "")}


class OwnExerciseEntry(ExerciseEntry):
    """A movement of the person's own; its id may be left out."""

    id: OwnId = ""

    @model_validator(mode="before")
    @classmethod
    def _filled_in(cls, table: Any) -> Any:
        return _named(table)


class OwnThingEntry(ThingEntry):
    """A kind of thing of the person's own; id, picture and ranks may be left out, and every number is their word."""

    id: OwnId = ""
    icon: Annotated[str, Field(pattern=r"^[a-z-]{3,20}$")] = "other"
    common: Annotated[int, Field(ge=0, le=2, strict=True)] = 0
    cost: Annotated[int, Field(ge=0, le=3, strict=True)] = 0

    @model_validator(mode="before")
    @classmethod
    def _filled_in(cls, table: Any) -> Any:
        if not isinstance(table, dict):
            return table
        if "sources" in table:
            raise ValueError("an own entry names no sources: it is your word")
        given = (group for group, fields in SOURCED.items() if any(table.get(field) is not None for field in fields))
        return {**_named(table), "sources": dict.fromkeys(given, OWN_SOURCE.id)}
