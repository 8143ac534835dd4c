"""Bars draw the share they are given, keep inside it, and speak it."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from gui.gallery.house import pattern_marks
from gui.theme import LIGHT, Family, family_colour
from gui.widgets import BarRow, BudgetBars, ClosenessBars, LoadBar, MeterBar, PatternBar, SteadyText, Text
from tests.gui.looking import settle, show_at, shows


def filled(bar: QWidget, colour: str) -> float:
    """Share of the bar's middle line painted in `colour`."""
    image = bar.grab().toImage()
    middle = image.height() // 2
    return sum(image.pixelColor(x, middle).name() == colour for x in range(image.width())) / image.width()


@pytest.mark.parametrize("share", [0.0, 0.25, 0.5, 1.0])
def test_a_meter_is_filled_as_far_as_its_share(share: float, qtbot: QtBot) -> None:
    bar = MeterBar(family=Family.PULL)
    qtbot.addWidget(bar)
    bar.setFixedWidth(200)
    bar.show_share(share)
    assert filled(bar, LIGHT.pull) == pytest.approx(share, abs=0.02)


@pytest.mark.parametrize(("given", "held"), [(-1.0, 0.0), (7.0, 1.0)])
def test_a_share_is_held_inside_the_bar(given: float, held: float, qtbot: QtBot) -> None:
    bar = MeterBar()
    qtbot.addWidget(bar)
    bar.show_share(given)
    assert bar.share() == held


def test_a_meter_is_a_progress_bar_to_a_screen_reader(qtbot: QtBot) -> None:
    bar = MeterBar()
    qtbot.addWidget(bar)
    bar.show_share(0.5, name="Squat", value_text="8 sets")
    heard = QAccessible.queryAccessibleInterface(bar)
    assert heard.role() is QAccessible.Role.ProgressBar
    assert (heard.text(QAccessible.Text.Name), heard.text(QAccessible.Text.Description)) == ("Squat", "8 sets")
    assert heard.valueInterface().currentValue() == 500


@pytest.mark.parametrize("family", list(Family))
def test_each_family_has_its_colour(family: Family, qtbot: QtBot) -> None:
    bar = MeterBar(family=family)
    qtbot.addWidget(bar)
    bar.show_share(1.0)
    assert shows(bar, family_colour(family, LIGHT))


def test_rows_come_and_go_without_new_widgets(qtbot: QtBot) -> None:
    rows = tuple(BarRow(label=f"part {n}", share=n / 4, value_text=f"0.{n} kg") for n in range(1, 5))
    bars = BudgetBars(rows)
    qtbot.addWidget(bars)
    show_at(bars, 400, 160)
    before = len(bars.findChildren(QWidget))
    bars.show_rows(rows[:2])
    settle()
    assert len(bars.findChildren(QWidget)) == before
    assert [bar.isVisible() for bar in bars.findChildren(MeterBar)] == [True, True, False, False]
    bars.show_rows(rows[::-1])
    settle()
    assert [text.text() for text in bars.findChildren(SteadyText)][:2] == ["part 4", "0.4 kg"]


def test_a_load_is_split_where_contents_end(qtbot: QtBot) -> None:
    bar = LoadBar()
    qtbot.addWidget(bar)
    bar.setFixedWidth(300)
    bar.show_split(0.75, "contents 9 kg, empty carrier 3 kg")
    assert filled(bar, LIGHT.accent) == pytest.approx(0.75, abs=0.02)
    assert filled(bar, LIGHT.outline) == pytest.approx(0.25, abs=0.02)
    assert bar.accessibleDescription() == "contents 9 kg, empty carrier 3 kg"


def test_closeness_shows_its_total_and_parts(qtbot: QtBot) -> None:
    bars = ClosenessBars("89", (BarRow(label="pattern", share=0.8, value_text="80"),))
    qtbot.addWidget(bars)
    bars.show_closeness("91", (BarRow(label="pattern", share=1.0, value_text="100"),))
    texts = {
        *(text.text() for text in bars.findChildren(Text)),
        *(text.text() for text in bars.findChildren(SteadyText)),
    }
    assert {"91", "pattern", "100"} <= texts
    assert "89" not in texts


def test_a_pattern_without_movements_keeps_its_place(qtbot: QtBot) -> None:
    strip = PatternBar(pattern_marks())
    qtbot.addWidget(strip)
    show_at(strip, 1000, 90)
    bars = strip.findChildren(MeterBar)
    assert len(bars) == 10
    assert [bar.share() for bar in bars].count(0.0) == 1
    assert bars[6].accessibleDescription() == "none yet"
    assert len({bar.width() for bar in bars}) <= 2
