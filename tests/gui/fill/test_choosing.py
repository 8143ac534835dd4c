"""Choosing things, fills and how they lie; fixed things and tins; using a load; units; nothing to fill."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.mass.model import Packing, ScaleKind, VolumeLevel
from core.quantity import Origin
from core.store.commands import ChangeSettings, ChangeThing, RemoveThing, SetFill
from core.store.values import Units
from core.things.model import Fill
from gui.desk.desk import Desk, Jump
from gui.fill import FillScreen
from gui.shell.entry import ScreenName
from gui.widgets import ActionChip, PrimaryButton
from tests.gui import hand
from tests.gui.fill.eyes import kg, mass, plain
from tests.gui.looking import settle, show_at


def options(screen: FillScreen) -> list[str]:
    box = screen.left.controls.thing.box
    return [box.itemText(at) for at in range(box.count())]


def fills(screen: FillScreen) -> list[str]:
    box = screen.left.controls.fill.box
    return [box.itemText(at) for at in range(box.count())]


def take(screen: FillScreen, name: str) -> None:
    """Choose a thing in the list, by key as a hand would."""
    box = screen.left.controls.thing.box
    box.setCurrentIndex(options(screen).index(name))
    box.activated.emit(box.currentIndex())


@pytest.fixture
def sandy(screen: FillScreen, desk: Desk) -> FillScreen:
    """The bucket in hand, which may also take sand, though none is at hand."""
    desk.do(ChangeThing(replace(desk.house().thing("bucket"), fills=("water", "sand_dry"))))
    screen.show_thing("bucket")
    return screen


def test_containers_come_first_then_loads_with_a_mass(screen: FillScreen) -> None:
    assert options(screen) == ["Water carrier", "Mop bucket", "Bean tin", "Coal bag", "Daypack"]


def test_another_thing_is_shown_whole_and_the_first_keeps_its_line(screen: FillScreen) -> None:
    screen.flow.set_level(VolumeLevel(volume_l=20.0))
    take(screen, "Mop bucket")
    assert "Mop bucket · 9 L, wider at the top" in plain(screen.bar.subtitle())
    assert kg(screen) < 6
    assert "drown" in screen.side.cautions.sentence()
    take(screen, "Water carrier")
    assert mass(screen).startswith("21.1 kg")


def test_only_fills_at_hand_are_offered(sandy: FillScreen) -> None:
    assert fills(sandy) == ["Water"]


def test_the_others_are_told_with_why_not(sandy: FillScreen) -> None:
    hand.click(sandy.left.controls.reasons)
    assert "Lead shot: lead is poisonous" in sandy.side.reasons.text()
    assert "Steel shot or grit: not for this container" in sandy.side.reasons.text()
    assert [chip.label() for chip in sandy.side.reasons.chips()] == ["+ dry sand"]


def test_saying_one_has_it_fills_it_in_and_undo_takes_it_away(sandy: FillScreen, desk: Desk) -> None:
    water = kg(sandy)
    hand.click(sandy.left.controls.reasons)
    chip = sandy.side.reasons.findChild(ActionChip)
    assert chip is not None
    hand.click(chip)
    assert desk.house().fills == ("water", "sand_dry")
    assert fills(sandy) == ["Water", "Dry sand"]
    assert sandy.left.controls.fill.index() == 1
    assert kg(sandy) > water
    desk.undo()
    assert fills(sandy) == ["Water"]
    assert kg(sandy) == pytest.approx(water)


def test_grains_lie_loose_settled_damp_or_topped_up(sandy: FillScreen) -> None:
    sandy.side.reasons.had.emit("sand_dry")
    packing = sandy.left.controls.packing
    assert packing.isVisible()
    assert not sandy.left.controls.warmth.isVisible()
    loose = kg(sandy)
    packing.box.setCurrentIndex(1)
    packing.box.activated.emit(1)
    assert kg(sandy) > loose
    packing.box.setCurrentIndex(3)
    packing.box.activated.emit(3)
    assert kg(sandy) > 1.15 * loose
    assert "how much air stays" in sandy.side.cautions.sentence()
    assert "topped up with water" in plain(sandy.left.vessel.accessibleDescription())


def test_using_a_load_keeps_its_fill_and_says_where_it_serves(screen: FillScreen, desk: Desk) -> None:
    screen.flow.set_level(VolumeLevel(volume_l=14.0))
    hand.click(screen.use)
    assert desk.house().thing("carrier").fill == Fill(material_id="water", volume_l=14.0)
    assert screen.side.uses.isVisible()
    assert "can serve" in screen.side.uses.text()
    desk.undo()
    assert desk.house().thing("carrier").fill is None


def test_the_fill_of_the_packing_is_kept_too(sandy: FillScreen, desk: Desk) -> None:
    sandy.side.reasons.had.emit("sand_dry")
    sandy.left.controls.packing.box.activated.emit(3)
    sandy.flow.set_level(VolumeLevel(volume_l=4.0))
    hand.click(sandy.use)
    assert desk.house().thing("bucket").fill == Fill(material_id="sand_dry", volume_l=4.0, packing=Packing.TOPPED_UP)


def test_from_a_load_the_way_leads_to_its_movements(screen: FillScreen, desk: Desk, qtbot: QtBot) -> None:
    hand.click(screen.use)
    with qtbot.waitSignal(desk.jump) as told:
        screen.side.uses.movement_wanted.emit()
    assert told.args == [Jump(screen=ScreenName.SWAP, thing_id="carrier")]


def test_the_line_follows_what_the_record_says_is_inside(screen: FillScreen, desk: Desk) -> None:
    desk.do(SetFill("carrier", Fill(material_id="water", volume_l=20.0)))
    assert mass(screen).startswith("21.1 kg")
    desk.undo()
    assert mass(screen).startswith("13.6 kg")


def test_a_jump_shows_its_thing(screen: FillScreen) -> None:
    screen.show_jump(Jump(screen=ScreenName.FILL, thing_id="bucket"))
    assert screen.left.controls.thing.box.currentText() == "Mop bucket"
    screen.show_jump(Jump(screen=ScreenName.FILL, thing_id="nowhere"))
    assert screen.left.controls.thing.box.currentText() == "Mop bucket"


def test_a_fixed_thing_shows_its_mass_and_where_it_comes_from(screen: FillScreen) -> None:
    take(screen, "Coal bag")
    assert mass(screen) == "10.20 kg ± 0.10"
    assert screen.side.mass.split() == "from a scale"
    assert not screen.side.goal.isVisible()
    assert not screen.left.vessel.isVisible()
    assert not screen.print.isVisible()


def test_a_fixed_thing_can_be_weighed_and_the_scale_trusted(screen: FillScreen, desk: Desk) -> None:
    take(screen, "Coal bag")
    hand.click(screen.weigh)
    form = screen.side.weigh.form
    form.choose_scale(ScaleKind.LUGGAGE)
    hand.type_in(form.reading.edit, "11.0")
    assert "too far apart" in form.verdict()
    assert "it is damp" in form.verdict()
    hand.click(form.trust_scale)
    assert kg(screen) == pytest.approx(11.0, abs=0.15)
    assert len(desk.house().thing("coal").readings) == 1
    desk.undo()
    assert mass(screen) == "10.20 kg ± 0.10"


def test_a_tins_label_makes_its_mass(screen: FillScreen, desk: Desk) -> None:
    take(screen, "Bean tin")
    tin = screen.side.tin
    assert tin.isVisible()
    hand.type_in(tin.net.edit, "410 g")
    assert plain(tin.answer()).startswith("Whole it weighs 0.47 kg ±")
    hand.click(tin.take)
    facts = desk.house().thing("tins").facts
    assert facts.label_kg == pytest.approx(0.41)
    assert facts.mass is not None
    assert facts.mass.origin is Origin.LABEL
    assert "the empty tin" in [bar.accessibleName() for bar in screen.side.budget.bars._lines[0][1:2]]


def test_a_tins_size_does_when_there_is_no_label(screen: FillScreen) -> None:
    take(screen, "Bean tin")
    hand.type_in(screen.side.tin.measure.edit, "No. 10")
    assert plain(screen.side.tin.answer()).startswith("Whole it weighs 3.")
    screen.side.tin.measure.edit.selectAll()
    hand.type_in(screen.side.tin.measure.edit, "gigantic")
    assert "is not a tin size known here" in screen.side.tin.answer()
    assert not screen.side.tin.take.isVisible()


def test_us_units_repaint_everything(screen: FillScreen, desk: Desk) -> None:
    desk.do(ChangeSettings(replace(desk.settings(), units=Units.US)))
    assert mass(screen).startswith("30.0 lb")
    assert "13.6 kg" in plain(screen.side.mass.other())
    assert "gal water, 59 °F" in plain(screen.left.vessel.accessibleDescription())
    assert "6.60 gal" in plain(screen.bar.subtitle())
    assert "lb" in screen.left.ladder.twin().rows[0][0]
    assert screen.side.goal.field.edit.placeholderText() == "26 lb"
    desk.undo()
    assert mass(screen).startswith("13.6 kg")


def test_without_anything_to_weigh_one_button_leads_home(empty_desk: Desk, qtbot: QtBot) -> None:
    screen = FillScreen(empty_desk)
    qtbot.addWidget(screen)
    show_at(screen, 1024, 700)
    shown = [button for button in screen.findChildren(PrimaryButton) if button.isVisible()]
    assert [button.label() for button in shown] == ["Go to your household"]
    with qtbot.waitSignal(empty_desk.jump) as told:
        hand.click(shown[0])
    assert told.args == [Jump(screen=ScreenName.HOUSEHOLD)]


def test_a_thing_that_goes_leaves_the_next_in_hand(screen: FillScreen, desk: Desk) -> None:
    desk.do(RemoveThing("carrier"))
    assert screen.left.controls.thing.box.currentText() == "Mop bucket"
    for thing in desk.house().things:
        desk.do(RemoveThing(thing.id))
    assert screen.thing() is None
    assert not screen.use.isVisible()
    desk.undo()
    settle()


def test_the_whole_task_can_be_done_by_keys(screen: FillScreen, desk: Desk) -> None:
    vessel = screen.left.vessel
    vessel.setFocus()
    hand.key(vessel, Qt.Key.Key_PageUp)
    screen.use.setFocus()
    hand.key(screen.use, Qt.Key.Key_Space)
    fill = desk.house().thing("carrier").fill
    assert fill is not None
    assert fill.volume_l > 12.5
