"""“I weighed it…”: agreement, disagreement and the choice, the list of weighings, what they taught, undo."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from core.mass.model import HeightLevel, ScaleKind, VolumeLevel
from core.mass.weigh import reading_on, weighed
from core.quantity import Measured
from core.store.commands import AddReading, ChangeThing
from core.things.model import Thing
from gui.desk.desk import Desk
from gui.fill import FillScreen
from gui.fill.weigh_form import EMPTY
from gui.widgets import PictureButton
from tests.gui import hand
from tests.gui.fill.eyes import kg, mass, plain, readings, verdict
from tests.gui.looking import settle


def weigh(screen: FillScreen, said: str, alone: str = "", kind: ScaleKind | None = None) -> None:
    """Press the button and type what the scale said."""
    if not screen.side.weigh.is_open():
        hand.click(screen.weigh)
    form = screen.side.weigh.form
    if kind is not None:
        form.choose_scale(kind)
    form.reading.edit.selectAll()
    hand.type_in(form.reading.edit, said)
    if alone:
        form.without().edit.selectAll()
        hand.type_in(form.without().edit, alone)


def carrier(desk: Desk) -> Thing:
    return desk.house().thing("carrier")


@pytest.fixture
def doubt(screen: FillScreen) -> Callable[[], float]:
    return lambda: float(mass(screen).split("± ")[1])


def test_the_panel_opens_in_place_and_closes_without_saving(screen: FillScreen, desk: Desk) -> None:
    assert screen.side.weigh.isHidden()
    hand.click(screen.weigh)
    assert screen.side.weigh.isVisible()
    assert screen.side.weigh.form.reading.edit.hasFocus()
    assert not screen.side.weigh.form.save.isEnabled()
    hand.click(screen.side.weigh.close_button)
    assert screen.side.weigh.isHidden()
    assert carrier(desk).readings == ()


def test_an_agreeing_reading_is_said_saved_and_makes_it_surer(
    screen: FillScreen, desk: Desk, doubt: Callable[[], float]
) -> None:
    before = doubt()
    weigh(screen, "82.0", "68.0")
    assert verdict(screen).startswith("The scale says 14.0 kg ± 0.3, the estimate 13.6 kg")
    assert "Together: 13." in verdict(screen)
    hand.click(screen.side.weigh.form.save)
    assert screen.side.weigh.isHidden()
    assert doubt() < before
    saved = carrier(desk).readings
    assert len(saved) == 1
    assert (saved[0].reading_kg, saved[0].without_kg, saved[0].material_id) == (82.0, 68.0, "water")
    assert isinstance(saved[0].at_level, HeightLevel)
    assert saved[0].date == datetime.date(2026, 5, 4)
    fill = carrier(desk).fill
    assert fill is not None
    assert fill.volume_l == pytest.approx(12.5, abs=0.01)


def test_the_line_stays_where_it_was_weighed(screen: FillScreen) -> None:
    before = screen.left.vessel.height_cm()
    weigh(screen, "82.0", "68.0")
    hand.key(screen.side.weigh.form.reading.edit, Qt.Key.Key_Return)
    assert screen.left.vessel.height_cm() == pytest.approx(before)
    assert "Together" in plain(screen.side.mass.note())


def test_undo_takes_the_weighing_back_whole(screen: FillScreen, desk: Desk) -> None:
    before = mass(screen)
    weigh(screen, "82.0", "68.0")
    hand.click(screen.side.weigh.form.save)
    desk.undo()
    assert carrier(desk).readings == ()
    assert carrier(desk).fill is None
    assert mass(screen) == before
    assert readings(screen) == ()


def test_a_disagreeing_reading_is_a_choice(screen: FillScreen, desk: Desk) -> None:
    weigh(screen, "85.0", "68.0")
    assert "too far apart to average" in verdict(screen)
    assert "the container holds more than it says" in verdict(screen)
    form = screen.side.weigh.form
    assert not form.save.isVisible()
    hand.click(form.keep_estimate)
    assert screen.side.weigh.isHidden()
    assert carrier(desk).readings == ()


def test_trusting_the_scale_moves_the_mass_there(screen: FillScreen, desk: Desk) -> None:
    weigh(screen, "85.0", "68.0")
    hand.click(screen.side.weigh.form.trust_scale)
    assert kg(screen) == pytest.approx(16.9, abs=0.3)
    assert len(carrier(desk).readings) == 1
    desk.undo()
    assert kg(screen) == pytest.approx(13.6)
    container = carrier(desk).facts.container
    assert container is not None
    assert container.tare_kg.u95 == pytest.approx(0.23, abs=0.01)


def test_a_reading_no_such_container_can_have_is_not_trusted(screen: FillScreen, desk: Desk) -> None:
    weigh(screen, "60", kind=ScaleKind.LUGGAGE)
    hand.click(screen.side.weigh.form.trust_scale)
    assert "far more than it could weigh full to the brim" in verdict(screen)
    assert carrier(desk).readings == ()


def test_weighed_empty_teaches_the_empty_mass(screen: FillScreen, desk: Desk) -> None:
    hand.click(screen.weigh)
    chip = screen.side.weigh.form._states.button(EMPTY)
    hand.click(chip)
    weigh(screen, "1.05 kg", kind=ScaleKind.KITCHEN)
    hand.click(screen.side.weigh.form.save)
    assert "Empty it weighs 1.050 kg ± 0.0" in plain(screen.side.readings.lessons())
    assert carrier(desk).fill is None
    assert "empty" in readings(screen)[0]


def test_only_a_difference_needs_you_alone(screen: FillScreen) -> None:
    hand.click(screen.weigh)
    form = screen.side.weigh.form
    assert form.alone.isVisible()
    weigh(screen, "13.6", kind=ScaleKind.LUGGAGE)
    assert not form.alone.isVisible()
    assert form.nothing.isVisible()
    assert form.save.isEnabled()


@pytest.mark.parametrize(
    ("said", "nothing", "reading_kg", "without_kg"), [("14.0", "0.3", 14.0, 0.3), ("13.4", "-0.3", 13.7, 0.0)]
)
def test_a_scale_that_is_off_by_a_constant_is_set_right(
    screen: FillScreen, desk: Desk, said: str, nothing: str, reading_kg: float, without_kg: float
) -> None:
    weigh(screen, said, nothing, kind=ScaleKind.LUGGAGE)
    assert verdict(screen).startswith("The scale says 13.70 kg ± 0.19")
    hand.click(screen.side.weigh.form.save)
    (saved,) = carrier(desk).readings
    assert saved.reading_kg == pytest.approx(reading_kg)
    assert saved.without_kg == pytest.approx(without_kg)
    assert readings(screen)[0].startswith("13.7 kg · 4 May 2026 · luggage scale")


def test_a_coarse_scale_says_less(screen: FillScreen, desk: Desk) -> None:
    weigh(screen, "14.0", kind=ScaleKind.LUGGAGE)
    form = screen.side.weigh.form
    assert form.step.edit.placeholderText() == "50 g"
    fine = verdict(screen)
    hand.type_in(form.step.edit, "1 kg")
    assert verdict(screen) != fine
    assert verdict(screen).startswith("The scale says 14.0 kg ± 0.6")
    hand.click(form.save)
    assert carrier(desk).readings[0].resolution_kg == 1.0


def test_a_step_no_scale_has_is_said(screen: FillScreen) -> None:
    weigh(screen, "14.0", kind=ScaleKind.LUGGAGE)
    form = screen.side.weigh.form
    hand.type_in(form.step.edit, "9 kg")
    assert "is not a step a scale shows" in verdict(screen)
    form.step.edit.selectAll()
    hand.type_in(form.step.edit, "9 cm")
    assert "is a length, not a mass" in form.step.fault()
    assert not form.save.isEnabled()


def test_repeated_readings_make_it_surer_but_never_surer_than_the_scale(
    screen: FillScreen, desk: Desk, doubt: Callable[[], float]
) -> None:
    found = [doubt()]
    for said in ("14.0", "13.9", "14.1", "14.0", "13.9", "14.1"):
        weigh(screen, said, kind=ScaleKind.LUGGAGE)
        hand.click(screen.side.weigh.form.save)
        found.append(doubt())
    assert found[1] < found[0]
    assert found[-1] <= found[1]
    (first, *_rest) = carrier(desk).readings
    assert found[-1] >= round(2 * weighed(first).u_lasting_kg, 2)
    assert kg(screen) == pytest.approx(14.0, abs=0.1)


@pytest.mark.parametrize(
    ("said", "alone", "sentence"),
    [
        ("60", "68", "is less than you weigh without it"),
        ("68.2", "68", "is less than the empty container weighs"),
    ],
)
def test_a_reading_that_can_not_be_is_said(screen: FillScreen, said: str, alone: str, sentence: str) -> None:
    weigh(screen, said, alone)
    assert sentence in verdict(screen)
    assert not screen.side.weigh.form.save.isEnabled()


def test_what_is_no_mass_is_said_below_its_field(screen: FillScreen) -> None:
    weigh(screen, "82 L", "68")
    assert "is a volume, not a mass" in screen.side.weigh.form.reading.fault()


def test_moving_the_line_judges_the_reading_anew(screen: FillScreen) -> None:
    weigh(screen, "82.0", "68.0")
    assert "Together" in verdict(screen)
    screen.flow.set_level(VolumeLevel(volume_l=20.0))
    assert "too far apart" in verdict(screen)


def test_weighings_are_listed_and_removed(screen: FillScreen, desk: Desk) -> None:
    weigh(screen, "82.0", "68.0")
    hand.click(screen.side.weigh.form.save)
    assert readings(screen)[0].startswith("14.0 kg · 4 May 2026 · bathroom scale, you with it and you alone · water,")
    remove = [button for button in screen.side.readings.findChildren(PictureButton) if button.isVisible()]
    hand.click(remove[0])
    settle()
    assert carrier(desk).readings == ()
    assert screen.side.readings.isHidden()
    desk.undo()
    assert len(readings(screen)) == 1


def test_a_weighing_brings_its_fill_back(screen: FillScreen) -> None:
    weigh(screen, "82.0", "68.0")
    hand.click(screen.side.weigh.form.save)
    weighed = mass(screen)
    screen.flow.set_level(VolumeLevel(volume_l=5.0))
    assert mass(screen) != weighed
    screen.side.readings.fill_wanted.emit(0)
    assert mass(screen) == weighed


def test_what_was_weighed_helps_at_other_fills(screen: FillScreen, doubt: Callable[[], float]) -> None:
    screen.flow.set_level(HeightLevel(height_cm=30.0))
    before = doubt()
    screen.flow.set_level(HeightLevel(height_cm=20.0))
    weigh(screen, "83.0", "68.0")
    hand.click(screen.side.weigh.form.save)
    screen.flow.set_level(HeightLevel(height_cm=30.0))
    assert doubt() < before
    assert "counted in" in screen.side.mass.note()


def test_a_weighing_of_what_is_no_longer_at_hand_is_not_shown(screen: FillScreen, desk: Desk) -> None:
    sand = replace(reading_on(ScaleKind.LUGGAGE, 20.0, at_level=VolumeLevel(volume_l=11.0)), material_id="sand_dry")
    desk.do(AddReading("carrier", sand))
    before = mass(screen)
    screen.side.readings.fill_wanted.emit(0)
    assert mass(screen) == before
    assert "not at hand any more" in screen.toast.sentence()


def test_what_sand_weighed_does_not_count_for_water(screen: FillScreen, desk: Desk) -> None:
    before = mass(screen)
    sand = replace(reading_on(ScaleKind.LUGGAGE, 20.0, at_level=VolumeLevel(volume_l=12.0)), material_id="sand_dry")
    desk.do(AddReading("carrier", sand))
    assert mass(screen) == before


def test_weighings_a_changed_container_can_not_have_are_told_and_left_out(screen: FillScreen, desk: Desk) -> None:
    desk.do(AddReading("carrier", reading_on(ScaleKind.LUGGAGE, 2.0, at_level=VolumeLevel(volume_l=0.5))))
    thing = carrier(desk)
    container = thing.facts.container
    assert container is not None
    heavier = replace(container, tare_kg=Measured(4.0, 0.05))
    desk.do(ChangeThing(replace(thing, facts=replace(thing.facts, container=heavier))))
    assert "Your weighings are left out" in plain(screen.side.mass.note())
    assert kg(screen) == pytest.approx(16.5, abs=0.1)
