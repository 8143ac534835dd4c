"""Wishes that can't hold together are named, and every way out that a button can do has one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from core.house.wishes import Pin
from core.store.commands import SetPins, SetWishes
from gui.desk.desk import Desk
from gui.week import WeekScreen
from gui.widgets import PrimaryButton, SecondaryButton
from tests.dipper import INES
from tests.gui import hand
from tests.gui.week.conftest import WISHES
from tests.gui.week.eyes import await_plan, strength_day

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
    assert "Strength pinned to Tuesday (Tuesday has no minutes)" in clashing.clash.text()
    assert "Nothing was changed" in clashing.clash.text()
    assert week_desk.week() is not None
    assert [button.label() for button in _buttons(clashing)] == [
        "Take the pin off strength on Tuesday",
        "Back to my week",
    ]


def test_its_first_button_takes_the_pin_off_and_plans(clashing: WeekScreen, week_desk: Desk, qtbot: QtBot) -> None:
    hand.click(_buttons(clashing)[0])
    assert week_desk.wishes().pins == ()
    await_plan(clashing, qtbot)
    assert clashing.page.isVisible()


def test_its_last_button_leads_back(clashing: WeekScreen, week_desk: Desk) -> None:
    hand.click(_buttons(clashing)[1])
    assert clashing.page.isVisible()
    assert week_desk.wishes().pins == (TUESDAY,)


def test_minutes_that_are_too_few_lead_to_the_days(screen: WeekScreen, week_desk: Desk, qtbot: QtBot) -> None:
    day = strength_day(screen)
    pins = tuple(Pin(weekday=day.weekday, exercise_id=block.exercise.id) for block in day.blocks)
    assert len(pins) > 3
    few = tuple(replace(wish, minutes=10) if wish.weekday == day.weekday else wish for wish in WISHES.days)
    assert week_desk.do(SetWishes(INES.id, replace(WISHES, days=few, pins=pins)))
    hand.click(screen.rebuild)
    await_plan(screen, qtbot)
    button = next(button for button in _buttons(screen) if button.label() == "Give Monday more minutes")
    hand.click(button)
    assert screen.set_up.days.isVisible()


def _buttons(screen: WeekScreen) -> list[PrimaryButton | SecondaryButton]:
    every = screen.clash.buttons.findChildren(QPushButton)
    return [one for one in every if isinstance(one, (PrimaryButton, SecondaryButton)) and one.isVisible()]
