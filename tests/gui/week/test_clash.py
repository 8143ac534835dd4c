"""Wishes that can't hold together are named, and every way out that a button can do has one."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from core.house.wishes import Pin
from core.store.commands import SetPins
from gui.desk.desk import Desk
from gui.week import WeekScreen
from gui.widgets import SecondaryButton
from tests.dipper import INES
from tests.gui import hand
from tests.gui.week.eyes import await_plan

TUESDAY = Pin(weekday=1, kind="strength")
"""A day without minutes."""


@pytest.fixture
def clashing(screen: WeekScreen, week_desk: Desk, qtbot: QtBot) -> WeekScreen:
    assert week_desk.do(SetPins(INES.id, (TUESDAY,)))
    hand.click(screen.rebuild)
    await_plan(screen, qtbot)
    return screen


def test_a_clash_is_said_in_words_and_the_week_stays(clashing: WeekScreen, week_desk: Desk) -> None:
    assert clashing.clash.isVisible()
    assert "strength pinned to Tuesday (Tuesday has no minutes)" in clashing.clash.text()
    assert "Nothing was changed" in clashing.clash.text()
    assert week_desk.week() is not None
    assert [button.label() for button in _buttons(clashing)] == [
        "Take the pin off strength on Tuesday",
        "Change days and minutes",
        "Back to my week",
    ]


def test_its_first_button_takes_the_pin_off_and_plans(clashing: WeekScreen, week_desk: Desk, qtbot: QtBot) -> None:
    hand.click(_buttons(clashing)[0])
    assert week_desk.wishes().pins == ()
    await_plan(clashing, qtbot)
    assert clashing.page.isVisible()


def test_its_other_buttons_lead_to_the_days_and_back(clashing: WeekScreen, week_desk: Desk) -> None:
    hand.click(_buttons(clashing)[2])
    assert clashing.page.isVisible()
    hand.click(clashing.days_button)
    assert clashing.set_up.days.isVisible()
    assert week_desk.wishes().pins == (TUESDAY,)


def test_the_days_are_one_press_away(clashing: WeekScreen) -> None:
    hand.click(_buttons(clashing)[1])
    assert clashing.set_up.days.isVisible()


def _buttons(screen: WeekScreen) -> list[SecondaryButton]:
    return [button for button in screen.clash.buttons.findChildren(SecondaryButton) if button.isVisible()]
