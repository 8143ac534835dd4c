"""Moving the line: by hand, key, wheel, ladder and typed level; everything else follows."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from core.mass.model import CupsLevel, HeightLevel
from gui.desk.desk import Desk
from gui.fill import FillScreen
from gui.fill.vessel_flow import BUDGET_MS
from gui.widgets import SteadyText
from tests.gui import hand
from tests.gui.fill.eyes import kg, mass, plain
from tests.gui.looking import settle


def drag_to(screen: FillScreen, height_cm: float) -> None:
    vessel = screen.left.vessel
    start = vessel.line_point().toPoint()
    hand.press(vessel, start)
    hand.move(vessel, QPoint(start.x(), round(vessel.y_of_height(height_cm))))


def type_level(screen: FillScreen, text: str) -> None:
    edit = screen.left.controls.level.edit
    edit.setFocus()
    edit.selectAll()
    hand.type_in(edit, text)


def test_it_begins_half_full_of_water(screen: FillScreen) -> None:
    assert plain(screen.bar.subtitle()) == "Water carrier × 2 · 25 L, straight sides"
    assert mass(screen).startswith("13.6 kg ±")
    assert plain(screen.side.mass.split()) == "contents 12.5 kg · empty carrier 1.10 kg"
    assert "30.0 lb" in plain(screen.side.mass.other())


def test_everything_follows_a_drag(screen: FillScreen) -> None:
    before = kg(screen)
    rung = screen.left.ladder.current()
    drag_to(screen, 30.0)
    assert kg(screen) > before
    assert screen.left.ladder.current() > rung
    assert screen.left.vessel.height_cm() == pytest.approx(30.0, abs=0.2)
    assert plain(screen.left.controls.level.text()).endswith("cm")
    settle(BUDGET_MS + 20)
    assert "reading the line" in [label.text() for label in screen.side.budget.findChildren(SteadyText)]
    hand.release(screen.left.vessel)


def test_nothing_is_saved_while_the_line_moves(screen: FillScreen, desk: Desk) -> None:
    drag_to(screen, 30.0)
    hand.release(screen.left.vessel)
    assert desk.house().thing("carrier").fill is None


@pytest.mark.parametrize(("key", "more"), [(Qt.Key.Key_Up, True), (Qt.Key.Key_PageDown, False), (Qt.Key.Key_End, True)])
def test_keys_move_the_line(screen: FillScreen, key: Qt.Key, more: bool) -> None:
    before = screen.left.vessel.height_cm()
    hand.key(screen.left.vessel, key)
    assert (screen.left.vessel.height_cm() > before) is more
    asked = screen.flow.level()
    assert isinstance(asked, HeightLevel)
    assert asked.height_cm == pytest.approx(screen.left.vessel.height_cm())


def test_the_end_key_fills_to_the_mark_and_home_empties(screen: FillScreen) -> None:
    hand.key(screen.left.vessel, Qt.Key.Key_End)
    assert mass(screen).startswith("26.1 kg")
    hand.key(screen.left.vessel, Qt.Key.Key_Home)
    assert mass(screen).startswith("1.1 kg")
    assert "empty" in screen.left.vessel.accessibleDescription()


def test_the_wheel_moves_the_line(screen: FillScreen) -> None:
    before = screen.left.vessel.height_cm()
    at = QPointF(screen.left.vessel.rect().center())
    turn = QWheelEvent(
        at, at, QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(screen.left.vessel, turn)
    assert screen.left.vessel.height_cm() > before


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("80 %", "21.1 kg"),
        ("14 L", "15.1 kg"),
        ("18 cm", "13.0 kg"),
        ("12 x 250 mL", "4.1 kg"),
        ("8 cups", "3.1 kg"),
        ("full", "26.1 kg"),
        ("empty", "1.1 kg"),
    ],
)
def test_a_level_can_be_typed(screen: FillScreen, typed: str, shown: str) -> None:
    type_level(screen, typed)
    assert mass(screen).startswith(shown)
    hand.key(screen.left.controls.level.edit, Qt.Key.Key_Return)
    assert screen.left.controls.level.fault() == ""


def test_a_level_that_can_not_be_is_said_once_the_field_is_left(screen: FillScreen) -> None:
    before = mass(screen)
    type_level(screen, "40 L")
    assert screen.left.controls.level.fault() == ""
    hand.key(screen.left.controls.level.edit, Qt.Key.Key_Return)
    assert "26.00 L to the brim" in screen.left.controls.level.fault()
    assert mass(screen) == before
    type_level(screen, "soup")
    hand.key(screen.left.controls.level.edit, Qt.Key.Key_Return)
    assert "is no fill level" in screen.left.controls.level.fault()
    type_level(screen, "10 L")
    assert screen.left.controls.level.fault() == ""


def test_a_rung_of_the_ladder_is_a_pour(screen: FillScreen) -> None:
    ladder = screen.left.ladder
    hand.click(ladder, ladder.rung_point(3).toPoint())
    assert screen.flow.level() == CupsLevel(count=3, cup_l=0.25)
    assert mass(screen).startswith("1.8")
    ladder.setFocus()
    hand.key(ladder, Qt.Key.Key_End)
    assert mass(screen).startswith("26.1 kg")


def test_the_ladder_has_a_table_twin(screen: FillScreen) -> None:
    twin = screen.left.ladder.twin()
    assert twin.rows[-1][2] == "empty"
    assert twin.rows[0][2].startswith("full")


def test_water_has_a_temperature(screen: FillScreen) -> None:
    edit = screen.left.controls.warmth.edit
    edit.selectAll()
    hand.type_in(edit, "4")
    hand.key(edit, Qt.Key.Key_Return)
    assert "4 °C" in plain(screen.left.vessel.accessibleDescription())
    edit.selectAll()
    hand.type_in(edit, "60")
    hand.key(edit, Qt.Key.Key_Return)
    assert "outside 0 to 40 °C" in screen.left.controls.warmth.fault()
    assert "4 °C" in plain(screen.left.vessel.accessibleDescription())


def test_the_screen_reader_hears_mass_contents_and_height(screen: FillScreen) -> None:
    spoken = plain(screen.left.vessel.accessibleDescription())
    assert spoken.startswith("13.6 kg ±")
    assert "12.5 L water" in spoken
    assert "from the base" in spoken
    assert "Water carrier" in screen.left.vessel.accessibleName()
    assert "13.6 kg" in plain(screen.side.mass.accessibleName())
