"""Every screen in every state: named for a screen reader, no word cut, walked by Tab both ways, no key twice."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from gui.gallery.pictured import SCREENS, PicturedScreen
from gui.household.possible import Possible
from gui.states import ShownState
from gui.week.ribbon import Ribbon
from tests.gui.looking import clipped_labels, keys_twice, nameless, reachable, show_at, stops, unspoken

LARGER = 1.4
LARGE = ("household", "fill", "swap", "week", "settings", "dialog-keys", "dialog-damaged")
OWN_LOOKS = ("fill", "build", "strip", "swap", "week", "own")
"""What begins so is looked at in every state by its own tests; here it is enough to walk over it once."""
CASES = [
    (screen, state)
    for screen in SCREENS
    for state in (screen.states[-1:] if screen.name.startswith(OWN_LOOKS) else screen.states)
]
NAMES = [f"{screen.name}-{state.value}" for screen, state in CASES]


@pytest.fixture(autouse=True)
def _still(monkeypatch: pytest.MonkeyPatch) -> None:
    """No plans and counts in the background: they change no widget that is not there already."""
    monkeypatch.setattr(Possible, "refresh", lambda _possible: None)
    monkeypatch.setattr(Ribbon, "refresh", lambda _ribbon: None)


@pytest.fixture(params=CASES, ids=NAMES)
def shown(request: pytest.FixtureRequest, qtbot: QtBot) -> QWidget:
    """The screen in a state."""
    screen: PicturedScreen
    screen, state = request.param
    widget = screen.build(state)
    qtbot.addWidget(widget)
    show_at(widget, 1096, 760)
    widget.activateWindow()
    return widget


def test_a_screen_can_be_read_reached_and_heard(shown: QWidget) -> None:
    for width, height in ((840, 640), (1736, 1160)):
        show_at(shown, width, height)
        assert clipped_labels(shown) == [], f"at {width} x {height}"
    assert nameless(shown) == []
    assert unspoken(shown) == []
    assert keys_twice(shown) == []
    assert stops(shown, Qt.Key.Key_Tab) >= reachable(shown)
    assert stops(shown, Qt.Key.Key_Backtab) >= reachable(shown)


@pytest.fixture
def large_type(qapp: QApplication) -> Iterator[None]:
    """The system's type nearly half as large again."""
    usual = qapp.font()
    larger = QFont(usual)
    larger.setPointSizeF(usual.pointSizeF() * LARGER)
    qapp.setFont(larger)
    yield
    qapp.setFont(usual)


@pytest.mark.usefixtures("large_type")
@pytest.mark.parametrize("name", LARGE)
def test_no_word_is_cut_in_large_type(name: str, qtbot: QtBot) -> None:
    screen = next(one for one in SCREENS if one.name == name)
    widget = screen.build(ShownState.DEMO)
    qtbot.addWidget(widget)
    for width, height in ((1096, 760), (1736, 1160)):
        show_at(widget, width, height)
        assert clipped_labels(widget) == [], f"at {width} x {height}"
