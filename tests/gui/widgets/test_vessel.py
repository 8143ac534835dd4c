"""The vessel: filled by hand, by key and by wheel; it paints what it is shown and computes nothing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QAccessible, QImage, QPainter, QWheelEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.gallery.loads import BIN, BUCKET, CARRIER, JAR, ticks
from gui.theme import DARK, LIGHT, Theme, ThemeMode
from gui.widgets import Contents, Silhouette, VesselFill, VesselView
from gui.widgets.vessel import VesselFrame, paint_vessel
from tests.gui import hand
from tests.gui.looking import colours_in, colours_of

SHAPES = {"carrier": CARRIER, "bucket": BUCKET, "bin": BIN, "jar": JAR}
AREA = QRectF(0, 0, 400, 500)


@pytest.fixture
def vessel(qtbot: QtBot) -> VesselView:
    view = VesselView()
    view.show_vessel(CARRIER, limit_cm=31.0, name="water carrier A")
    view.show_scale(ticks(25, 31.0))
    view.show_fill(
        VesselFill(height_cm=10.0, band_cm=0.5, contents_text="7.6 L water", height_text="10.0 cm", mass_text="8.2 kg")
    )
    view.resize(640, 600)
    qtbot.addWidget(view)
    view.show()
    qtbot.waitExposed(view)
    return view


def at(point: QPointF) -> QPoint:
    return point.toPoint()


def press(qtbot: QtBot, view: VesselView, key: Qt.Key) -> None:
    hand.key(view, key)


# --- proportion ---


@pytest.mark.parametrize("shape", SHAPES.values(), ids=SHAPES.keys())
def test_width_and_height_have_one_scale(shape: Silhouette) -> None:
    frame = VesselFrame.inside(shape, AREA)
    body = frame.body().boundingRect()
    assert body.width() / body.height() == pytest.approx(2 * shape.widest_cm / shape.rim_cm, rel=0.01)


@pytest.mark.parametrize("shape", SHAPES.values(), ids=SHAPES.keys())
def test_a_vessel_with_its_handle_fits_its_area(shape: Silhouette) -> None:
    frame = VesselFrame.inside(shape, AREA)
    drawn = frame.body().boundingRect().united(frame.handle().boundingRect())
    assert AREA.adjusted(-1, -1, 1, 1).contains(drawn)


@given(height=st.floats(0, 41), wide=st.floats(60, 2000), tall=st.floats(60, 2000))
def test_height_and_y_are_inverse(height: float, wide: float, tall: float) -> None:
    frame = VesselFrame.inside(CARRIER, QRectF(0, 0, wide, tall))
    assert frame.height_of(frame.y_of(height)) == pytest.approx(height, abs=1e-9)


def test_the_width_between_two_points_is_straight() -> None:
    assert BUCKET.half_width_at(13.5) == pytest.approx(12.0)
    assert BUCKET.half_width_at(0.0) == pytest.approx(9.5)
    assert BUCKET.half_width_at(99.0) == pytest.approx(14.5)


def test_the_shoulder_is_where_it_begins_to_narrow() -> None:
    assert CARRIER.shoulder_cm() == 31.0


# --- the hand ---


def test_dragging_the_line_tells_each_height_and_commits_once(vessel: VesselView, qtbot: QtBot) -> None:
    told: list[float] = []
    committed: list[float] = []
    vessel.height_changed.connect(told.append)
    vessel.height_committed.connect(committed.append)
    start = at(vessel.line_point())
    hand.press(vessel, start)
    assert vessel.is_dragging()
    for step in (10, 20, 30):
        hand.move(vessel, start - QPoint(0, step))
    assert committed == []
    hand.release(vessel, start - QPoint(0, 30))
    assert len(told) >= 3
    assert told == sorted(told)
    assert committed == [told[-1]]
    assert vessel.height_cm() > 10.0


def test_the_line_does_not_jump_when_it_is_grabbed_off_its_middle(vessel: VesselView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(vessel.height_changed):
        hand.press(vessel, at(vessel.line_point()) + QPoint(0, 6))
    hand.release(vessel)


def test_a_press_inside_the_vessel_brings_the_line_there(vessel: VesselView, qtbot: QtBot) -> None:
    place = QPoint(round(vessel.line_point().x()) - 60, round(vessel.y_of_height(20.0)))
    with qtbot.waitSignal(vessel.height_committed) as told:
        hand.click(vessel, place)
    assert told.args == [pytest.approx(20.0, abs=0.1)]


def test_a_press_beside_the_vessel_changes_nothing(vessel: VesselView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(vessel.height_changed):
        hand.click(vessel, QPoint(4, 300))


def test_the_line_cannot_leave_the_vessel(vessel: VesselView, qtbot: QtBot) -> None:
    start = at(vessel.line_point())
    hand.press(vessel, start)
    hand.move(vessel, QPoint(start.x(), -500))
    assert vessel.height_cm() == 31.0
    hand.move(vessel, QPoint(start.x(), 5000))
    assert vessel.height_cm() == 0.0
    hand.release(vessel)


@pytest.mark.parametrize(
    ("key", "height_cm"),
    [
        (Qt.Key.Key_Up, 10.1),
        (Qt.Key.Key_Right, 10.1),
        (Qt.Key.Key_Down, 9.9),
        (Qt.Key.Key_PageUp, 11.0),
        (Qt.Key.Key_PageDown, 9.0),
        (Qt.Key.Key_Home, 0.0),
        (Qt.Key.Key_End, 31.0),
    ],
)
def test_keys_move_the_line(vessel: VesselView, qtbot: QtBot, key: Qt.Key, height_cm: float) -> None:
    with qtbot.waitSignal(vessel.height_changed):
        press(qtbot, vessel, key)
    assert vessel.height_cm() == pytest.approx(height_cm)


def test_steps_are_as_large_as_they_were_set(vessel: VesselView, qtbot: QtBot) -> None:
    vessel.set_steps(0.5, 4.0)
    press(qtbot, vessel, Qt.Key.Key_Up)
    press(qtbot, vessel, Qt.Key.Key_PageUp)
    assert vessel.height_cm() == pytest.approx(14.5)


def test_a_height_moved_by_key_is_committed_once_the_hand_rests(vessel: VesselView, qtbot: QtBot) -> None:
    committed: list[float] = []
    vessel.height_committed.connect(committed.append)
    for _ in range(3):
        press(qtbot, vessel, Qt.Key.Key_Up)
    assert committed == []
    qtbot.waitUntil(lambda: bool(committed))
    assert committed == [pytest.approx(10.3)]


def test_leaving_the_vessel_commits_at_once(vessel: VesselView, qtbot: QtBot) -> None:
    vessel.setFocus()
    press(qtbot, vessel, Qt.Key.Key_PageUp)
    with qtbot.waitSignal(vessel.height_committed, timeout=100):
        vessel.clearFocus()


def test_the_wheel_moves_the_line(vessel: VesselView, qtbot: QtBot) -> None:
    place = vessel.line_point()
    turn = QWheelEvent(
        place,
        vessel.mapToGlobal(place),
        QPoint(0, 0),
        QPoint(0, 240),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    with qtbot.waitSignal(vessel.height_committed):
        QApplication.sendEvent(vessel, turn)
    assert vessel.height_cm() == pytest.approx(10.2)


def test_other_keys_are_left_to_the_window(vessel: VesselView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(vessel.height_changed):
        press(qtbot, vessel, Qt.Key.Key_A)


# --- what it shows ---


def test_showing_only_paints(vessel: VesselView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(vessel.height_changed), qtbot.assertNotEmitted(vessel.height_committed):
        vessel.show_fill(VesselFill(height_cm=22.0))
        vessel.show_vessel(BUCKET)
        vessel.show_scale(())
    assert vessel.height_cm() == 22.0


def test_while_dragging_the_line_stays_in_the_hand(vessel: VesselView, qtbot: QtBot) -> None:
    hand.press(vessel, at(vessel.line_point()))
    vessel.show_fill(VesselFill(height_cm=25.0, mass_text="20 kg"))
    assert vessel.height_cm() == pytest.approx(10.0, abs=0.2)
    hand.release(vessel)


def test_a_screen_reader_meets_a_slider_with_a_value(vessel: VesselView) -> None:
    vessel.show_fill(VesselFill(height_cm=18.4, spoken="14.7 kg ± 0.3: 14.0 L of water"))
    spoken = QAccessible.queryAccessibleInterface(vessel)
    assert spoken.role() is QAccessible.Role.Slider
    assert spoken.text(QAccessible.Text.Name) == "Fill line of water carrier A"
    assert spoken.text(QAccessible.Text.Description) == "14.7 kg ± 0.3: 14.0 L of water"
    assert spoken.valueInterface().currentValue() == 184


def test_a_screen_reader_can_move_the_line(vessel: VesselView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(vessel.height_committed) as told:
        QAccessible.queryAccessibleInterface(vessel).valueInterface().setCurrentValue(200)
    assert told.args == [pytest.approx(20.0)]


def test_water_is_cool_and_grain_is_warm(vessel: VesselView) -> None:
    assert LIGHT.liquid in colours_in(vessel)
    vessel.show_fill(VesselFill(height_cm=18.0, contents=Contents.GRAIN))
    colours = colours_in(vessel)
    assert LIGHT.fair in colours
    assert LIGHT.liquid not in colours


def test_dark_surroundings_paint_a_dark_vessel(vessel: VesselView, theme: Theme) -> None:
    theme.set_mode(ThemeMode.DARK)
    assert {DARK.liquid, DARK.outline} <= colours_in(vessel)


def test_an_empty_vessel_shows_no_contents(vessel: VesselView) -> None:
    vessel.show_fill(VesselFill(height_cm=0.0, mass_text="0.7 kg"))
    assert LIGHT.liquid not in colours_in(vessel)


@pytest.mark.parametrize("size", [(300, 260), (460, 500), (1200, 1000)])
def test_it_paints_at_any_size(vessel: VesselView, size: tuple[int, int]) -> None:
    vessel.resize(*size)
    assert LIGHT.outline in colours_in(vessel)


def test_the_painter_needs_no_widget() -> None:
    image = QImage(200, 300, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_vessel(painter, VesselFrame.inside(JAR, QRectF(10, 10, 180, 280)), VesselFill(height_cm=9.0), DARK)
    painter.end()
    assert {DARK.liquid, DARK.liquid_line} <= colours_of(image)
