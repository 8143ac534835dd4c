"""The screen of own entries looks right: no word cut at any size, every place named."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import cast

import pytest
from pytestqt.qtbot import QtBot

from gui.gallery.own import own_page
from gui.own import OwnScreen
from gui.states import ShownState
from tests.gui.looking import clipped_labels, nameless, show_at
from tests.gui.own.hands import checked, faults

SIZES = ((640, 420), (840, 700), (1736, 1200))
SETTLED_MS = 10_000


@pytest.fixture(params=list(ShownState))
def page(request: pytest.FixtureRequest, qtbot: QtBot) -> Iterator[OwnScreen]:
    """The screen in every state."""
    made = cast("OwnScreen", own_page(request.param))
    qtbot.addWidget(made)
    checked(made, qtbot)
    yield made
    made.close_work()


def whole(page: OwnScreen) -> None:
    """Every word can be read; layouts that depend on one another may need a moment."""
    assert clipped_labels(page) == []


def test_no_word_is_cut_and_every_place_has_a_name(page: OwnScreen, qtbot: QtBot) -> None:
    for width, height in SIZES:
        show_at(page, width, height)
        qtbot.waitUntil(partial(whole, page), timeout=SETTLED_MS)
    assert nameless(page) == []


def test_faults_stand_beside_their_fields(qtbot: QtBot) -> None:
    page = cast("OwnScreen", own_page(ShownState.REFUSED))
    qtbot.addWidget(page)
    checked(page, qtbot)
    assert set(faults(page)) == {"name", "typical"}
    assert not page.editor.save.isEnabled()
    page.close_work()
