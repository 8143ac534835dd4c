"""The fill screen over the small household of the Dipper, shown, and eyes for what it says."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from gui.desk.desk import Desk
from gui.fill import FillScreen
from tests.gui.looking import show_at


@pytest.fixture
def screen(desk: Desk, qtbot: QtBot) -> FillScreen:
    made = FillScreen(desk)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    made.activateWindow()
    return made
