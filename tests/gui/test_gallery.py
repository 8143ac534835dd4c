"""Every widget in every state, theme and size: no word cut, every place named, the keyboard gets everywhere."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from gui.gallery.pictured import WIDGETS
from gui.states import ShownState
from gui.theme import Theme, ThemeMode
from tests.gui import hand
from tests.gui.looking import clipped_labels, nameless, show_at

PAGES: dict[str, Callable[[ShownState], QWidget]] = {screen.name: screen.build for screen in WIDGETS}
EVERY_PAGE = pytest.mark.parametrize("build", PAGES.values(), ids=PAGES.keys())
EVERY_STATE = pytest.mark.parametrize("state", list(ShownState))


@EVERY_PAGE
@EVERY_STATE
def test_no_word_is_cut(build: Callable[[ShownState], QWidget], state: ShownState, qtbot: QtBot) -> None:
    page = build(state)
    qtbot.addWidget(page)
    for width, height in ((1024, 700), (1280, 800), (1920, 1200)):
        show_at(page, width, height)
        assert clipped_labels(page) == [], f"at {width} x {height}"


@EVERY_PAGE
def test_no_word_is_cut_in_the_dark(build: Callable[[ShownState], QWidget], theme: Theme, qtbot: QtBot) -> None:
    page = build(ShownState.LONG)
    qtbot.addWidget(page)
    show_at(page, 1024, 700)
    theme.set_mode(ThemeMode.DARK)
    show_at(page, 1024, 700)
    assert clipped_labels(page) == []


@EVERY_PAGE
@EVERY_STATE
def test_every_place_the_keyboard_reaches_has_a_name(
    build: Callable[[ShownState], QWidget], state: ShownState, qtbot: QtBot
) -> None:
    page = build(state)
    qtbot.addWidget(page)
    show_at(page, 1280, 800)
    assert nameless(page) == []


@EVERY_PAGE
def test_tab_goes_everywhere(build: Callable[[ShownState], QWidget], qtbot: QtBot) -> None:
    page = build(ShownState.DEMO)
    qtbot.addWidget(page)
    show_at(page, 1280, 800)
    page.activateWindow()
    wanted = {
        id(child.focusProxy() or child)
        for child in page.findChildren(QWidget)
        if child.isVisible() and child.isEnabled() and child.focusPolicy() & Qt.FocusPolicy.TabFocus
    }
    reached: set[int] = set()
    for _ in range(len(wanted) * 2 + 4):
        at = QApplication.focusWidget()
        reached.add(id(at))
        hand.key(at or page, Qt.Key.Key_Tab)
    assert wanted <= reached
