"""Every screen there is a picture of, and the states it is pictured in. A new screen adds its line to `SCREENS`."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from gui.gallery.controls import controls_page
from gui.gallery.dialogs import damaged, in_use, keys
from gui.gallery.fill import build_page, fill_page, strip_page
from gui.gallery.house import house_page
from gui.gallery.household import household_page
from gui.gallery.loads import ladder_page, vessel_page
from gui.gallery.own import own_page
from gui.gallery.pictures_page import pictures_page
from gui.gallery.swap import swap_page
from gui.gallery.week import week_page
from gui.gallery.week_screen import details_page, preview_page, set_up_page, week_screen_page
from gui.gallery.window import settings_page, window_around
from gui.shell import ScreenName
from gui.states import ShownState

Build = Callable[[ShownState], QWidget]
ALL, ONE = tuple(ShownState), (ShownState.DEMO,)
PREVIEWS = (ShownState.DEMO, ShownState.REFUSED)
SHOWN = (ShownState.DEMO, ShownState.LONG, ShownState.REFUSED)


@dataclass(frozen=True, slots=True, kw_only=True)
class PicturedScreen:
    """A screen by name, how to build it in a state, and the states in which it looks different."""

    name: str
    build: Build
    states: tuple[ShownState, ...] = ALL


SCREENS: tuple[PicturedScreen, ...] = (
    PicturedScreen(name="household", build=household_page),
    PicturedScreen(name="fill", build=fill_page),
    PicturedScreen(name="build", build=build_page),
    PicturedScreen(name="strip", build=strip_page, states=ONE),
    PicturedScreen(name="swap", build=swap_page),
    PicturedScreen(name="week", build=week_screen_page),
    PicturedScreen(name="week-details", build=details_page, states=SHOWN),
    PicturedScreen(name="week-preview", build=preview_page, states=PREVIEWS),
    PicturedScreen(name="week-set-up", build=set_up_page),
    PicturedScreen(name="own", build=own_page),
    PicturedScreen(name="settings", build=settings_page, states=ONE),
    PicturedScreen(name="dialog-keys", build=keys, states=ONE),
    PicturedScreen(name="dialog-in-use", build=in_use, states=ONE),
    PicturedScreen(name="dialog-damaged", build=damaged, states=ONE),
)
"""The screens as they stand in the window, and what stands in their place when they can't."""

WINDOWS: tuple[PicturedScreen, ...] = (
    PicturedScreen(name="window-household", build=window_around(ScreenName.HOUSEHOLD, household_page)),
    PicturedScreen(name="window-fill", build=window_around(ScreenName.FILL, fill_page)),
    PicturedScreen(name="window-swap", build=window_around(ScreenName.SWAP, swap_page)),
    PicturedScreen(name="window-week", build=window_around(ScreenName.WEEK, week_screen_page)),
    PicturedScreen(name="window-own", build=window_around(ScreenName.OWN, own_page)),
    PicturedScreen(name="window-settings", build=window_around(ScreenName.SETTINGS, settings_page), states=ONE),
)
"""The whole window around each of them."""

WIDGETS: tuple[PicturedScreen, ...] = (
    PicturedScreen(name="gallery-controls", build=controls_page),
    PicturedScreen(name="gallery-house", build=house_page),
    PicturedScreen(name="gallery-vessel", build=vessel_page),
    PicturedScreen(name="gallery-ladder", build=ladder_page),
    PicturedScreen(name="gallery-week", build=week_page),
    PicturedScreen(name="gallery-pictures", build=pictures_page, states=ONE),
)
"""Pages of widgets with invented values, each widget in its kinds."""


def pictured_screens() -> tuple[PicturedScreen, ...]:
    """All of them."""
    return (*SCREENS, *WINDOWS, *WIDGETS)
