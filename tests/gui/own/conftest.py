"""The screen of own entries over the small household of the Dipper, shown; its background work ends with each test."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from gui.desk.desk import Desk
from gui.own import OwnScreen
from tests.gui.looking import show_at


@pytest.fixture
def screen(desk: Desk, qtbot: QtBot) -> Iterator[OwnScreen]:
    """Nothing of their own yet."""
    made = OwnScreen(desk)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    made.activateWindow()
    yield made
    made.close_work()
