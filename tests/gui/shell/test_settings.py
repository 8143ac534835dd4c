"""Settings: a click holds at once, and what is set is shown."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from gui.shell.settings_page import SettingsPage, SettingsView, UnitChoice
from gui.theme import ThemeMode
from gui.widgets import ChoiceChip, SecondaryButton, Text
from tests.gui import hand
from tests.gui.looking import clipped_labels, show_at

VIEW = SettingsView(units=UnitChoice.METRIC, theme=ThemeMode.AUTO, data_folder="/home/ines/.local/share/fillmark")


@pytest.fixture
def page(qtbot: QtBot) -> SettingsPage:
    made = SettingsPage(VIEW)
    qtbot.addWidget(made)
    show_at(made, 840, 600)
    return made


def chip(page: SettingsPage, name: str) -> ChoiceChip:
    return next(chip for chip in page.findChildren(ChoiceChip) if chip.accessibleName() == name)


def test_what_is_set_is_shown(page: SettingsPage) -> None:
    chosen = {chip.accessibleName() for chip in page.findChildren(ChoiceChip) if chip.isChecked()}
    assert chosen == {"Units: kg, litres, cm", "Theme: as the system"}
    assert VIEW.data_folder in {text.text() for text in page.findChildren(Text)}
    assert clipped_labels(page) == []


def test_units_are_chosen_by_a_click(page: SettingsPage, qtbot: QtBot) -> None:
    with qtbot.waitSignal(page.units_chosen) as told:
        hand.click(chip(page, "Units: lb, gallons, inches"))
    assert told.args == [UnitChoice.US]


def test_the_theme_is_chosen_by_key(page: SettingsPage, qtbot: QtBot) -> None:
    dark = chip(page, "Theme: dark")
    dark.setFocus()
    with qtbot.waitSignal(page.theme_chosen) as told:
        hand.key(dark, Qt.Key.Key_Space)
    assert told.args == [ThemeMode.DARK]


def test_the_folder_can_be_asked_for(page: SettingsPage, qtbot: QtBot) -> None:
    button = page.findChild(SecondaryButton)
    assert isinstance(button, SecondaryButton)
    with qtbot.waitSignal(page.folder_wanted):
        hand.click(button)


def test_showing_tells_nobody(page: SettingsPage, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(page.units_chosen), qtbot.assertNotEmitted(page.theme_chosen):
        page.show_settings(SettingsView(units=UnitChoice.US, theme=ThemeMode.DARK, data_folder="/x"))
    assert chip(page, "Theme: dark").isChecked()
