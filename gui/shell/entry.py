"""The screens the window leads to: their names, their pictures, and how each one is made."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtWidgets import QWidget

from gui.theme import Icon


class ScreenName(StrEnum):
    """Every screen of the window, in the order of the sidebar; `OWN` has no line there, other screens lead to it."""

    HOUSEHOLD = "household"
    FILL = "fill"
    SWAP = "swap"
    WEEK = "week"
    SETTINGS = "settings"
    OWN = "own"


Makers = Mapping[ScreenName, Callable[[], QWidget]]
"""How to make each screen; called once, at its first visit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ScreenEntry:
    """One line of the sidebar."""

    name: ScreenName
    label: str
    picture: Icon


ENTRIES = (
    ScreenEntry(name=ScreenName.HOUSEHOLD, label="Household", picture=Icon.HOUSE),
    ScreenEntry(name=ScreenName.FILL, label="Fill & weigh", picture=Icon.VESSEL),
    ScreenEntry(name=ScreenName.SWAP, label="Swap", picture=Icon.SWAP),
    ScreenEntry(name=ScreenName.WEEK, label="Week", picture=Icon.CALENDAR),
)

SETTINGS = ScreenEntry(name=ScreenName.SETTINGS, label="Settings", picture=Icon.GEAR)
