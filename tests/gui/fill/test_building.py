"""Building a load: use and mass in, the best ways out, the ladder with its gaps, and containers filled by one press."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from core.exercise.model import Use
from core.store.commands import ChangeSettings, RemovePerson, RemoveThing
from core.store.values import Units
from core.things.model import Fill
from gui.desk.desk import Desk
from gui.desk.names import USE_NAMES
from gui.fill import FillScreen
from gui.gallery.fill import build_page
from gui.states import ShownState
from gui.theme import LIGHT, Theme, ThemeMode
from tests.gui import hand
from tests.gui.fill.eyes import plain
from tests.gui.looking import clipped_labels, colours_in, nameless, settle, show_at


@pytest.fixture
def building(screen: FillScreen) -> FillScreen:
    hand.click(screen.build)
    return screen


def want(screen: FillScreen, text: str) -> None:
    edit = screen.fronts.builder.mass.edit
    edit.setFocus()
    edit.selectAll()
    hand.type_in(edit, text)


def hold(screen: FillScreen, use: Use) -> None:
    """Choose how to hold it, by the name in the list."""
    box = screen.fronts.builder.use.box
    name = USE_NAMES[use]
    at = next(at for at in range(box.count()) if box.itemText(at).lower() == name)
    box.setCurrentIndex(at)
    box.activated.emit(at)


def ways(screen: FillScreen) -> list[str]:
    return [f"{plain(card.view().title)}: {card.view().line}" for card in screen.fronts.builder.cards()]


def inside(desk: Desk, thing_id: str) -> Fill | None:
    return desk.house().thing(thing_id).fill


def test_the_button_opens_the_builder_ready_to_type(building: FillScreen) -> None:
    assert building.bar.title() == "Build a load"
    assert building.bar.subtitle().startswith("hug to the chest · ")
    assert building.fronts.builder.mass.edit.hasFocus()
    assert not building.weigh.isVisible()
    hand.click(building.one)
    assert building.bar.title() == "Fill & weigh"
    assert building.left.vessel.isVisible()
    assert building.weigh.isVisible()


def test_a_mass_gives_ways_with_their_doubt_effort_and_steps(building: FillScreen) -> None:
    want(building, "12 kg")
    assert plain(building.fronts.builder.answer()).endswith("to 12.0 kg, the best first")
    assert "12.1 kg ± 0.4: Water carrier (11 L water)" in ways(building)
    best = building.fronts.builder.cards()[0]
    assert best.isChecked()
    assert "to set up" in best.view().detail
    assert "± " in plain(building.fronts.builder.side().mass.text())


def test_choosing_a_way_shows_its_parts_and_what_to_do(building: FillScreen) -> None:
    hold(building, Use.PAIR)
    want(building, "10 kg")
    cards = building.fronts.builder.cards()
    unlike = next(card for card in cards if "Mop bucket" in card.view().line)
    hand.click(unlike)
    side = building.fronts.builder.side()
    assert [line.split(":")[0] for line in plain(side.steps()).split("\n")] == ["Mop bucket", "Water carrier"]
    assert plain(side.parts()).count("±") == 2
    assert "apart" in unlike.view().detail
    assert "Both together weigh" in side.mass.accessibleName()


def test_use_this_fill_fills_every_container_and_one_undo_empties_them(building: FillScreen, desk: Desk) -> None:
    hold(building, Use.PAIR)
    want(building, "10 kg")
    hand.click(next(card for card in building.fronts.builder.cards() if "Mop bucket" in card.view().line))
    hand.click(building.fronts.builder.side().take)
    assert inside(desk, "bucket") == Fill(material_id="water", volume_l=4.5)
    assert inside(desk, "carrier") == Fill(material_id="water", volume_l=4.0)
    steps = plain(building.fronts.builder.side().steps()).split("\n")
    assert steps == ["Mop bucket: it stays as it is.", "Water carrier: it stays as it is."]
    desk.undo()
    assert (inside(desk, "bucket"), inside(desk, "carrier")) == (None, None)
    assert "pour in" in building.fronts.builder.side().steps()


def test_what_needs_no_pouring_offers_no_fill(building: FillScreen) -> None:
    hold(building, Use.BACK)
    want(building, "3 kg")
    assert "put in" in building.fronts.builder.side().steps()
    assert not building.fronts.builder.side().take.isVisible()


def test_without_a_way_the_nearest_are_marked_as_outside(building: FillScreen) -> None:
    hold(building, Use.BACK)
    want(building, "7 kg")
    assert plain(building.fronts.builder.answer()) == "Nothing here makes 7.00 kg within 5 %. The nearest:"
    assert [card.view().chip for card in building.fronts.builder.cards()] == ["outside your limit"] * 2


def test_a_wider_limit_finds_more(building: FillScreen) -> None:
    hold(building, Use.BACK)
    want(building, "4.2 kg")
    assert "Nothing here makes" in building.fronts.builder.answer()
    building.fronts.builder.limit.box.setCurrentIndex(2)
    building.fronts.builder.limit.box.activated.emit(2)
    assert "One way to 4.20" in plain(building.fronts.builder.answer())


def test_the_whole_ladder_is_drawn_with_its_gaps(building: FillScreen) -> None:
    hold(building, Use.BACK)
    ladder = building.fronts.builder.ladder
    assert LIGHT.fair in colours_in(ladder)
    assert building.bar.subtitle() == "on the back · 15 loads, 8 wide steps"
    hand.key(ladder, Qt.Key.Key_Home)
    heard = QAccessible.queryAccessibleInterface(ladder)
    assert plain(heard.text(QAccessible.Text.Description)) == "1.10 kg, 1 of 15"
    hand.key(ladder, Qt.Key.Key_Right)
    assert plain(heard.text(QAccessible.Text.Description)) == "1.57 kg, step +43 %, 2 of 15"


def test_the_wanted_loads_are_marked_on_the_ladder(building: FillScreen) -> None:
    before = colours_in(building.fronts.builder.ladder)
    want(building, "12 kg")
    assert LIGHT.accent_soft not in before
    assert LIGHT.accent_soft in colours_in(building.fronts.builder.ladder)


def test_the_arrow_keys_walk_the_ladder_and_enter_takes_the_fill(building: FillScreen, desk: Desk) -> None:
    want(building, "12 kg")
    ladder = building.fronts.builder.ladder
    before = ladder.current()
    ladder.setFocus()
    hand.key(ladder, Qt.Key.Key_Right)
    assert ladder.current() == before + 1
    assert not any(card.isChecked() for card in building.fronts.builder.cards())
    assert plain(building.fronts.builder.side().off()) == "0.16 kg under the 12.0 kg you want."
    hand.key(ladder, Qt.Key.Key_End)
    hand.key(ladder, Qt.Key.Key_Return)
    assert inside(desk, "carrier") == Fill(material_id="water", volume_l=25.0)


def test_lighter_and_heavier_steps_stand_below(building: FillScreen) -> None:
    want(building, "12 kg")
    near = building.fronts.builder.near
    rows = near.twin().rows
    assert len(rows) == 7
    held = building.fronts.building.way()
    assert held is not None
    hand.click(near, near.rung_point(near.current() + 1).toPoint())
    higher = building.fronts.building.way()
    assert higher is not None
    assert higher.rung.mass.value > held.rung.mass.value * 1.019


def test_the_builder_works_by_keys_alone(screen: FillScreen, desk: Desk) -> None:
    screen.build.setFocus()
    hand.key(screen.build, Qt.Key.Key_Space)
    hand.type_in(QApplication.focusWidget() or screen, "20 kg")
    for _ in range(12):
        if screen.fronts.builder.side().take.hasFocus():
            break
        hand.key(QApplication.focusWidget() or screen, Qt.Key.Key_Tab)
    hand.key(screen.fronts.builder.side().take, Qt.Key.Key_Space)
    fill = inside(desk, "carrier")
    assert fill is not None
    assert fill.volume_l == pytest.approx(19.0, abs=0.3)


@pytest.mark.parametrize(
    ("typed", "fault"),
    [("12 L", "is a volume, not a mass"), ("500 kg", "is not a load from 0 to 150 kg"), ("soup", "soup")],
)
def test_what_is_no_load_is_said_below_the_field(building: FillScreen, typed: str, fault: str) -> None:
    want(building, typed)
    assert fault in building.fronts.builder.mass.fault()
    assert building.fronts.builder.cards() == ()
    want(building, "12")
    assert building.fronts.builder.mass.fault() == ""
    assert building.fronts.builder.cards()


def test_us_units_are_spoken_throughout(building: FillScreen, desk: Desk) -> None:
    desk.do(ChangeSettings(replace(desk.settings(), units=Units.US)))
    want(building, "26")
    assert "26.0 lb" in plain(building.fronts.builder.answer())
    assert any("gal" in way for way in ways(building))
    assert "kg" not in plain(building.fronts.builder.side().steps() + building.fronts.builder.side().parts())


def test_a_thing_that_goes_is_no_longer_built_with(building: FillScreen, desk: Desk) -> None:
    want(building, "12 kg")
    assert any("Water carrier" in way for way in ways(building))
    desk.do(RemoveThing("carrier"))
    assert not any("Water carrier" in way for way in ways(building))


def test_it_works_before_anybody_is_entered(screen: FillScreen, desk: Desk) -> None:
    for person in desk.house().people:
        desk.do(RemovePerson(person.id))
    hand.click(screen.build)
    want(screen, "12 kg")
    assert ways(screen)


def test_without_anything_there_is_no_builder(screen: FillScreen, desk: Desk) -> None:
    hand.click(screen.build)
    for thing in desk.house().things:
        desk.do(RemoveThing(thing.id))
    assert screen.bar.title() == "Fill & weigh"
    assert not screen.fronts.builder.isVisible()
    assert not screen.build.isVisible()


@pytest.mark.parametrize("state", list(ShownState))
def test_no_word_is_cut_and_every_place_has_a_name(state: ShownState, theme: Theme, qtbot: QtBot) -> None:
    page = build_page(state)
    qtbot.addWidget(page)
    for width, height in ((840, 700), (1096, 800), (1736, 1200)):
        show_at(page, width, height)
        settle()
        assert clipped_labels(page) == [], f"at {width} x {height}"
        assert nameless(page) == []
    theme.set_mode(ThemeMode.DARK)
    show_at(page, 840, 700)
    assert clipped_labels(page) == []
