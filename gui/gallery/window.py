"""The whole window around gallery pages, as the screens will stand in it."""

from __future__ import annotations

from gui.gallery.house import house_page
from gui.gallery.loads import ladder_page, vessel_page
from gui.gallery.week import week_page
from gui.shell import Deeds, MainWindow, PersonView, ScreenName
from gui.shell.settings_page import SettingsPage, SettingsView, UnitChoice
from gui.states import ShownState
from gui.theme import ThemeMode

_PEOPLE = (
    PersonView(person_id="ines", name="Ines", detail="68 kg"),
    PersonView(person_id="tomas", name="Tomas", detail="81 kg"),
)
_LONG = PersonView(person_id="ines", name="Ines-Maximiliane of the Dipper", detail="68 kg")
_START = {
    ShownState.EMPTY: ScreenName.SETTINGS,
    ShownState.DEMO: ScreenName.HOUSEHOLD,
    ShownState.LONG: ScreenName.WEEK,
    ShownState.REFUSED: ScreenName.FILL,
}


def window(state: ShownState) -> MainWindow:
    """The window, on another screen in each state; refused: the data can't be opened."""
    made = MainWindow()
    made.show_people((_LONG,) if state is ShownState.LONG else _PEOPLE, "ines")
    made.show_screen(_START[state])
    if state is ShownState.REFUSED:
        made.show_trouble("The data folder is used by another Fillmark window; close that one first.")
        return made
    made.furnish(
        {
            ScreenName.HOUSEHOLD: lambda: house_page(state),
            ScreenName.FILL: lambda: vessel_page(state),
            ScreenName.SWAP: lambda: ladder_page(state),
            ScreenName.WEEK: lambda: week_page(state),
            ScreenName.SETTINGS: _settings,
        },
        Deeds(undo=_nothing, redo=_nothing),
    )
    return made


def _settings() -> SettingsPage:
    folder = "/home/ines/.local/share/fillmark"
    return SettingsPage(SettingsView(units=UnitChoice.METRIC, theme=ThemeMode.AUTO, data_folder=folder))


def _nothing() -> None:
    """A gallery has nothing to take back."""
