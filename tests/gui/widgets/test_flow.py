"""The wrapping layout: no overlaps, inside its width, as tall as it must be."""

from __future__ import annotations

from itertools import combinations

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from gui.widgets import Card, Chip, FlowLayout, Page, SectionHeader
from tests.gui.looking import settle, show_at

WORDS = (
    "squat",
    "hinge",
    "lunge",
    "push",
    "pull",
    "carry",
    "trunk",
    "walk",
    "run",
    "climb",
    "jump",
    "mobility",
    "warm-up",
)


def host(column_width: int = 0) -> tuple[QWidget, FlowLayout]:
    widget = QWidget()
    flow = FlowLayout(column_width=column_width)
    for word in WORDS:
        flow.addWidget(Chip(word))
    widget.setLayout(flow)
    return widget, flow


@pytest.mark.parametrize("width", [90, 150, 333, 1200])
@pytest.mark.parametrize("column_width", [0, 80])
def test_items_stay_inside_and_apart(width: int, column_width: int, qtbot: QtBot) -> None:
    widget, flow = host(column_width)
    qtbot.addWidget(widget)
    show_at(widget, width, flow.heightForWidth(width))
    chips = widget.findChildren(Chip)
    assert all(widget.rect().contains(chip.geometry()) for chip in chips)
    assert not any(one.geometry().intersects(other.geometry()) for one, other in combinations(chips, 2))


def test_narrower_is_taller(qtbot: QtBot) -> None:
    widget, flow = host()
    qtbot.addWidget(widget)
    heights = [flow.heightForWidth(width) for width in (100, 200, 400, 800)]
    assert heights == sorted(heights, reverse=True)
    assert heights[0] > heights[-1]


def test_columns_are_equal_and_fill_the_line(qtbot: QtBot) -> None:
    widget = QWidget()
    flow = FlowLayout(column_width=80, parent=widget)
    for _ in range(7):
        flow.addWidget(Card())
    qtbot.addWidget(widget)
    show_at(widget, 500, flow.heightForWidth(500))
    cards = widget.findChildren(Card)
    assert len({card.width() for card in cards}) == 1
    assert max(card.geometry().right() for card in cards) > 490


def test_hidden_items_leave_no_hole(qtbot: QtBot) -> None:
    widget, _ = host()
    qtbot.addWidget(widget)
    show_at(widget, 1200, 60)
    chips = widget.findChildren(Chip)
    chips[0].hide()
    show_at(widget, 1200, 60)
    assert chips[1].x() == 0


def test_an_item_taken_out_is_gone(qtbot: QtBot) -> None:
    widget, flow = host()
    qtbot.addWidget(widget)
    item = flow.takeAt(0)
    assert item is not None
    assert flow.count() == len(WORDS) - 1
    assert flow.takeAt(99) is None
    assert flow.itemAt(-1) is None


def test_a_cleared_layout_lets_its_widgets_go(qtbot: QtBot) -> None:
    widget, flow = host()
    qtbot.addWidget(widget)
    widget.show()
    flow.clear()
    settle()
    assert (flow.count(), widget.findChildren(Chip)) == (0, [])


def test_in_a_scrolling_page_everything_below_keeps_its_place(qtbot: QtBot) -> None:
    page = Page("Things")
    card = Card()
    flow = FlowLayout(column_width=200)
    for word in WORDS * 3:
        flow.addWidget(Chip(word))
    card.body.addLayout(flow)
    below = SectionHeader("below")
    page.body.addWidget(card)
    page.body.addWidget(below)
    qtbot.addWidget(page)
    for width in (500, 1100, 640):
        show_at(page, width, 300)
        assert card.height() >= card.body.totalHeightForWidth(card.width())
        assert below.y() >= card.geometry().bottom()
