"""The swap screen over the small household of the Dipper, shown; its background work is ended after each test."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from core.house.wishes import DayWish, WeekWishes
from core.store.commands import SetWishes
from gui.desk.desk import Desk
from gui.swap import SwapScreen
from tests.dipper import INES
from tests.gui.looking import show_at

WISHES = WeekWishes(days=(DayWish(weekday=0, minutes=40), DayWish(weekday=3, minutes=40)))


@pytest.fixture
def days_desk(desk: Desk) -> Desk:
    """Ines trains on Mondays and Thursdays; no week is planned yet."""
    assert desk.do(SetWishes(INES.id, WISHES))
    return desk


@pytest.fixture
def screen(days_desk: Desk, qtbot: QtBot) -> Iterator[SwapScreen]:
    """The screen with those days, nothing asked yet."""
    made = SwapScreen(days_desk)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    made.activateWindow()
    yield made
    made.close_work()


@pytest.fixture
def empty_screen(empty_desk: Desk, qtbot: QtBot) -> Iterator[SwapScreen]:
    """The screen over an empty record."""
    made = SwapScreen(empty_desk)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    yield made
    made.close_work()
