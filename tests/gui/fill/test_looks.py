"""The fill screen in every state and size: no word cut, every place named, the keyboard gets everywhere."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget
from pytestqt.qtbot import QtBot

from gui.fill.vessel_flow import BUDGET_MS
from gui.gallery.fill import fill_page
from gui.states import ShownState
from gui.theme import Theme, ThemeMode
from gui.widgets import ChoiceChip
from tests.gui import hand
from tests.gui.looking import clipped_labels, nameless, settle, show_at

SIZES = ((840, 700), (1096, 800), (1736, 1200))
"""The windows of 1024 to 1920 less the sidebar."""


@pytest.mark.parametrize("state", list(ShownState))
def test_no_word_is_cut_and_every_place_has_a_name(state: ShownState, theme: Theme, qtbot: QtBot) -> None:
    page = fill_page(state)
    qtbot.addWidget(page)
    for width, height in SIZES:
        show_at(page, width, height)
        settle(BUDGET_MS + 40)
        assert clipped_labels(page) == [], f"at {width} x {height}"
        assert nameless(page) == []
        assert (page.width(), page.height()) == (width, height)
    theme.set_mode(ThemeMode.DARK)
    show_at(page, *SIZES[0])
    assert clipped_labels(page) == []


def test_tab_goes_everywhere(qtbot: QtBot) -> None:
    page = fill_page(ShownState.REFUSED)
    qtbot.addWidget(page)
    show_at(page, 1096, 800)
    page.activateWindow()
    wanted = {
        id(child.focusProxy() or child)
        for child in page.findChildren(QWidget)
        if child.isVisible() and child.isEnabled() and child.focusPolicy() & Qt.FocusPolicy.TabFocus
        if not _reached_by_arrows(child)
    }
    reached: set[int] = set()
    for _ in range(len(wanted) * 2 + 4):
        at = QApplication.focusWidget()
        reached.add(id(at))
        hand.key(at or page, Qt.Key.Key_Tab)
    assert wanted <= reached


def _reached_by_arrows(widget: QWidget) -> bool:
    """Of chips of which one must be chosen, Tab stops at the chosen one; the arrow keys go on from there."""
    group = widget.group() if isinstance(widget, QAbstractButton) else None
    return group is not None and group.exclusive() and group.checkedButton() is not widget


def test_arrow_keys_choose_the_scale(qtbot: QtBot) -> None:
    page = fill_page(ShownState.REFUSED)
    qtbot.addWidget(page)
    show_at(page, 1096, 800)
    page.activateWindow()
    chips = [chip for chip in page.findChildren(ChoiceChip) if chip.isVisible()]
    first = next(chip for chip in chips if "you alone" in chip.label())
    first.setFocus()
    hand.key(first, Qt.Key.Key_Down)
    chosen = [chip for chip in chips if chip.hasFocus()]
    assert chosen != [first]
    assert [chip.isChecked() for chip in chosen] == [True]
    assert not first.isChecked()
