"""What the record keeps besides the house: settings, the saved week and the change a command made. No database here."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError


class Units(StrEnum):
    """The units a person reads and types."""

    METRIC = "metric"
    US = "us"


class Theme(StrEnum):
    """Light, dark, or what the desktop says."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Choices of the whole household. `ready_on` is the day the readiness questions were answered."""

    units: Units = Units.METRIC
    theme: Theme = Theme.SYSTEM
    person_id: str | None = None
    first_run_done: bool = False
    ready_on: datetime.date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SavedWeek:
    """A planned week as its planner wrote it: `plan` is JSON text of version `version`, `starts` its Monday."""

    starts: datetime.date
    version: int
    plan: str

    def __post_init__(self) -> None:
        if self.starts.weekday() != 0:
            raise InputError(self.starts.isoformat(), "is not a Monday, on which a week starts", "give the Monday")


@dataclass(frozen=True, slots=True, kw_only=True)
class SavedBlock:
    """A block of weeks as its planner wrote it: `plan` is JSON text of version `version`, `starts` its first Monday."""

    starts: datetime.date
    version: int
    plan: str

    def __post_init__(self) -> None:
        if self.starts.weekday() != 0:
            raise InputError(self.starts.isoformat(), "is not a Monday, on which a block starts", "give the Monday")


class Kind(StrEnum):
    """What a change touched, so that a screen repaints only for its own kind."""

    THINGS = "things"
    PEOPLE = "people"
    PLACES = "places"
    HOUSE = "house"
    WEEK = "week"
    LOG = "log"
    SETTINGS = "settings"
    CATALOG = "catalog"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeSet:
    """What a command, an undo or a redo changed, and the sentence for the undo line ("Removed Coal bag")."""

    kinds: frozenset[Kind]
    sentence: str
