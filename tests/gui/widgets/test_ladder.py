"""The ladder: rungs where their loads lie, walked by key and pointer."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from pytestqt.qtbot import QtBot

from gui.gallery.loads import rungs
from gui.theme import LIGHT
from gui.widgets import LadderView, RungMark
from gui.widgets.ladder.rung import offsets, shares, spoken
from tests.gui import hand
from tests.gui.looking import colours_in

BOTH = pytest.mark.parametrize("ladder", [Qt.Orientation.Vertical, Qt.Orientation.Horizontal], indirect=True)
LOADS = st.lists(st.floats(0.1, 200), min_size=1, max_size=40, unique=True).map(sorted)


def marks(loads: list[float]) -> tuple[RungMark, ...]:
    return tuple(RungMark(load_kg=load, load_text=f"{load:.1f} kg") for load in loads)


@pytest.fixture
def ladder(request: pytest.FixtureRequest, qtbot: QtBot) -> LadderView:
    view = LadderView(getattr(request, "param", Qt.Orientation.Vertical))
    view.show_rungs(rungs(), 5)
    qtbot.addWidget(view)
    view.resize(600, max(120, view.sizeHint().height()))
    view.show()
    qtbot.waitExposed(view)
    return view


@given(LOADS)
def test_equal_per_cents_are_equally_far_apart(loads: list[float]) -> None:
    places = shares(marks(loads))
    assert list(places) == sorted(places)
    if len(loads) > 2:
        whole = math.log(loads[-1] / loads[0])
        for place, load in zip(places, loads, strict=True):
            assert place == pytest.approx(math.log(load / loads[0]) / whole, abs=1e-6)


@given(LOADS)
def test_rungs_never_touch_and_never_part_too_far(loads: list[float]) -> None:
    places = offsets(marks(loads), 24.0, 80.0, 150.0)
    steps = [upper - lower for lower, upper in pairwise(places)]
    assert all(step + 1e-9 >= 24.0 and step <= 80.0 + 1e-9 for step in steps)


@BOTH
def test_keys_walk_the_rungs(ladder: LadderView, qtbot: QtBot) -> None:
    walked: list[int] = []
    ladder.rung_chosen.connect(walked.append)
    for key in (Qt.Key.Key_Up, Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Home, Qt.Key.Key_PageUp, Qt.Key.Key_End):
        hand.key(ladder, key)
    assert walked == [6, 7, 6, 0, 5, 14]


@BOTH
def test_nothing_is_told_at_the_ends(ladder: LadderView, qtbot: QtBot) -> None:
    ladder.show_current(14)
    with qtbot.assertNotEmitted(ladder.rung_chosen):
        hand.key(ladder, Qt.Key.Key_Up)


@BOTH
def test_a_press_takes_the_nearest_rung(ladder: LadderView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(ladder.rung_chosen) as told:
        hand.click(ladder, ladder.rung_point(9).toPoint())
    assert told.args == [9]
    assert ladder.current() == 9


@BOTH
def test_enter_takes_the_rung(ladder: LadderView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(ladder.rung_taken) as told:
        hand.key(ladder, Qt.Key.Key_Return)
    assert told.args == [5]


def test_a_double_click_takes_the_rung(ladder: LadderView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(ladder.rung_taken) as told:
        hand.double_click(ladder, ladder.rung_point(5).toPoint())
    assert told.args == [5]


def test_showing_only_paints(ladder: LadderView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(ladder.rung_chosen):
        ladder.show_rungs(rungs()[:4], 2)
        ladder.show_current(1)
    assert ladder.current() == 1


def test_a_rung_that_is_not_there_is_none(ladder: LadderView) -> None:
    ladder.show_rungs(rungs()[:4], 9)
    assert ladder.current() == -1


@BOTH
def test_wide_steps_are_amber(ladder: LadderView) -> None:
    assert LIGHT.fair in colours_in(ladder)
    even = tuple(RungMark(load_kg=mark.load_kg, load_text=mark.load_text) for mark in rungs())
    ladder.show_rungs(even, 5)
    assert LIGHT.fair not in colours_in(ladder)


@BOTH
def test_the_rung_in_use_is_in_accent(ladder: LadderView) -> None:
    assert LIGHT.accent in colours_in(ladder)
    ladder.show_current(-1)
    assert LIGHT.accent not in colours_in(ladder)


def test_a_screen_reader_hears_load_recipe_step_and_place(ladder: LadderView) -> None:
    heard = QAccessible.queryAccessibleInterface(ladder)
    assert heard.role() is QAccessible.Role.Slider
    assert heard.text(QAccessible.Text.Description) == "4.7 kg, carrier A, 4.0 L, step +27 %, 6 of 15"
    assert heard.valueInterface().currentValue() == 5


def test_nothing_chosen_is_said_so() -> None:
    assert spoken((), -1) == "no load"


@BOTH
def test_an_empty_ladder_says_so_and_ignores_the_hand(ladder: LadderView, qtbot: QtBot) -> None:
    ladder.show_rungs(())
    with qtbot.assertNotEmitted(ladder.rung_chosen), qtbot.assertNotEmitted(ladder.rung_taken):
        hand.key(ladder, Qt.Key.Key_Up)
        hand.key(ladder, Qt.Key.Key_Return)
        hand.click(ladder)
    assert LIGHT.ink_soft in colours_in(ladder)


def test_the_twin_holds_every_rung_heaviest_first(ladder: LadderView) -> None:
    rows = ladder.twin().rows
    assert len(rows) == 15
    assert rows[0] == ("25.4 kg", "+11 %", "carrier A, 24.7 L")
