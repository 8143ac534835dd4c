"""The household screen over the small household of the Dipper, or over nothing, shown."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from gui.desk.desk import Desk
from gui.household import HouseholdScreen
from gui.household.possible import Possible
from tests.gui.looking import show_at


@pytest.fixture
def still_strip(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the things let one do is not worked out: most tests have no use for it."""
    monkeypatch.setattr(Possible, "refresh", lambda _possible: None)


@pytest.fixture
def screen(desk: Desk, qtbot: QtBot, still_strip: None) -> HouseholdScreen:
    """Over the Dipper."""
    return _shown(desk, qtbot)


@pytest.fixture
def first(empty_desk: Desk, qtbot: QtBot, still_strip: None) -> HouseholdScreen:
    """Over nothing: the first run."""
    return _shown(empty_desk, qtbot)


def _shown(desk: Desk, qtbot: QtBot) -> HouseholdScreen:
    made = HouseholdScreen(desk)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    made.activateWindow()
    return made
