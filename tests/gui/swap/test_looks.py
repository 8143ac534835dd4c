"""The swap screen looks right: no word cut at any size, every place named, both themes, long names whole."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import cast

import pytest
from pytestqt.qtbot import QtBot

from gui.gallery.swap import swap_page
from gui.states import ShownState
from gui.swap import SwapScreen
from gui.swap.answer_card import VERY_WIDE, WIDE
from gui.swap.start_page import EXAMPLES
from gui.theme import Theme, ThemeMode
from tests.gui import hand
from tests.gui.looking import clipped_labels, nameless, settle, show_at

SIZES = ((640, 420), (840, 700), (1736, 1200))
LAYOUT_MS, SETTLED_MS = 60, 10_000


@pytest.fixture(params=list(ShownState))
def page(request: pytest.FixtureRequest, qtbot: QtBot) -> Iterator[SwapScreen]:
    """The screen in every state."""
    made = cast("SwapScreen", swap_page(request.param))
    qtbot.addWidget(made)
    yield made
    made.close_work()


def whole(page: SwapScreen) -> None:
    """Every word can be read; layouts that depend on one another may need a moment."""
    assert clipped_labels(page) == []


def test_no_word_is_cut_at_any_size_and_every_place_has_a_name(page: SwapScreen, qtbot: QtBot) -> None:
    for width, height in SIZES:
        show_at(page, width, height)
        qtbot.waitUntil(partial(whole, page), timeout=SETTLED_MS)
    assert nameless(page) == []


def test_opened_and_side_by_side_no_word_is_cut(qtbot: QtBot) -> None:
    page = cast("SwapScreen", swap_page(ShownState.LONG))
    qtbot.addWidget(page)
    for width, height in ((640, 420), (1096, 800)):
        show_at(page, width, height)
        card = page.cards()[0]
        card.toggle()
        for chip in page.answers.left_out.chips:
            chip.click()
        qtbot.waitUntil(partial(whole, page), timeout=SETTLED_MS)
        hand.click(card.compare)
        hand.click(page.cards()[1].compare)
        assert page.is_comparing()
        qtbot.waitUntil(partial(whole, page), timeout=SETTLED_MS)
        hand.click(page.compare.back)
        card.toggle()
        for chip in page.answers.left_out.chips:
            chip.click()
    page.close_work()


def test_a_narrow_card_stacks_and_a_wide_one_shows_reasons(qtbot: QtBot) -> None:
    page = cast("SwapScreen", swap_page(ShownState.DEMO))
    qtbot.addWidget(page)
    heights = []
    for width in (760, 1096, 1736):
        show_at(page, width, 800)
        settle(LAYOUT_MS)
        card = page.cards()[0]
        heights.append(card.height())
        assert (card.width() >= WIDE) is (width > 1000)
        assert card.shows_glance() is (card.width() >= VERY_WIDE)
    assert heights[0] > heights[1]
    page.close_work()


def test_both_themes_paint_it_in_their_own_colours(qtbot: QtBot, theme: Theme) -> None:
    page = cast("SwapScreen", swap_page(ShownState.DEMO))
    qtbot.addWidget(page)
    show_at(page, 1096, 800)
    light = page.grab().toImage()
    theme.set_mode(ThemeMode.DARK)
    settle(LAYOUT_MS)
    dark = page.grab().toImage()
    assert light.pixelColor(5, 5).lightness() > 200
    assert dark.pixelColor(5, 5).lightness() < 60
    page.close_work()


def test_each_example_is_in_the_catalog(qtbot: QtBot) -> None:
    page = cast("SwapScreen", swap_page(ShownState.EMPTY))
    qtbot.addWidget(page)
    assert len(page.start.example_chips) == len(EXAMPLES)
    page.close_work()
