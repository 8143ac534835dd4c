"""The whole window around a screen, and the settings."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from gui.shell import Deeds, MainWindow, PersonView, ScreenName
from gui.shell.settings_page import SettingsPage, SettingsView, UnitChoice
from gui.states import ShownState
from gui.theme import ThemeMode

_PEOPLE = (
    PersonView(person_id="ines", name="Ines", detail="68 kg"),
    PersonView(person_id="tomas", name="Tomas", detail="84 kg"),
)
COPIES = ("4 May 2026, 12:05", "4 May 2026, 11:05", "3 May 2026, 19:40")
_LONG = PersonView(person_id="ines", name="Ines-Maximiliane of the Dipper", detail="68 kg")


def window_around(name: ScreenName, build: Callable[[ShownState], QWidget]) -> Callable[[ShownState], QWidget]:
    """How to build the window with this screen in it."""

    def made(state: ShownState) -> QWidget:
        window = MainWindow()
        window.show_people(_people(state), "ines")
        window.furnish({name: lambda: build(state)}, Deeds(undo=_nothing, redo=_nothing))
        window.show_screen(name)
        return window

    return made


def settings_page(_state: ShownState) -> QWidget:
    """The settings of somebody on a boat."""
    folder = "/home/ines/.local/share/fillmark"
    return SettingsPage(SettingsView(units=UnitChoice.METRIC, theme=ThemeMode.AUTO, data_folder=folder, copies=COPIES))


def _people(state: ShownState) -> tuple[PersonView, ...]:
    if state is ShownState.EMPTY:
        return ()
    return (_LONG,) if state is ShownState.LONG else _PEOPLE


def _nothing() -> None:
    """A gallery has nothing to take back."""
