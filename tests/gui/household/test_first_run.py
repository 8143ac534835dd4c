"""From nothing to a first week: few clicks and keys, by hand and by keyboard alone; the demo; what is missing."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from gui.desk.desk import Desk, Jump
from gui.household import HouseholdScreen
from gui.household.beginning import BeginLine
from gui.household.first_run import FirstRun
from gui.household.kind_tile import KindTile
from gui.shell.entry import ScreenName
from gui.widgets import ChoiceChip
from tests.gui import hand
from tests.gui.looking import settle

MOST_DEEDS = 40


def focused() -> QWidget:
    """What has the keyboard."""
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


class Counted:
    """A hand that counts its clicks and key presses."""

    def __init__(self) -> None:
        self.deeds = 0

    def click(self, widget: QWidget) -> None:
        self.deeds += 1
        hand.click(widget)

    def key(self, pressed: Qt.Key) -> None:
        self.deeds += 1
        hand.key(focused(), pressed)

    def type_in(self, text: str) -> None:
        self.deeds += len(text)
        hand.type_in(focused(), text)


def tile(first: FirstRun, kind_id: str) -> KindTile:
    return next(tile for tile in first.findChildren(KindTile) if tile.kind_id == kind_id)


def begun(desk: Desk) -> tuple[str, float, float, int, int]:
    """Name, kg, cm, how many kinds of things, how many days."""
    person = desk.house().people[0]
    days = desk.wishes().days
    return person.name, person.body_mass_kg, person.height_cm, len(desk.house().things), len(days)


def test_a_first_week_is_a_few_clicks_and_keys_away(first: HouseholdScreen, empty_desk: Desk, qtbot: QtBot) -> None:
    counted, page = Counted(), first.first
    for key, text in ((BeginLine.NAME, "Ines"), (BeginLine.BODY_MASS, "68"), (BeginLine.HEIGHT, "171")):
        counted.click(page.who.field(key).edit)
        page.who.field(key).edit.setFocus()
        counted.type_in(text)
    for kind_id in ("bottle_five_litre", "bottle_five_litre", "backpack", "dining_chair", "stairs", "towel"):
        counted.click(tile(page, kind_id))
    with qtbot.waitSignal(empty_desk.jump) as told:
        counted.click(page.button)
    assert told.args == [Jump(screen=ScreenName.WEEK)]
    assert counted.deeds <= MOST_DEEDS
    assert begun(empty_desk) == ("Ines", 68.0, 171.0, 5, 3)
    assert not first.is_first_run()
    bottles = next(thing for thing in empty_desk.house().things if thing.kind_id == "bottle_five_litre")
    assert bottles.count == 2


def test_the_keyboard_alone_gets_to_a_first_week(first: HouseholdScreen, empty_desk: Desk, qtbot: QtBot) -> None:
    counted, page = Counted(), first.first
    page.who.field(BeginLine.NAME).edit.setFocus()
    for text in ("Ines", "68", "171"):
        counted.type_in(text)
        counted.key(Qt.Key.Key_Tab)
    for _ in range(20):
        if isinstance(QApplication.focusWidget(), KindTile):
            break
        counted.key(Qt.Key.Key_Tab)
    assert isinstance(QApplication.focusWidget(), KindTile)
    counted.key(Qt.Key.Key_Right)
    counted.key(Qt.Key.Key_2)
    for _ in range(40):
        if QApplication.focusWidget() is page.days.minutes.edit:
            break
        hand.key(focused(), Qt.Key.Key_Backtab)
    assert page.days.minutes.edit.hasFocus()
    with qtbot.waitSignal(empty_desk.jump):
        counted.key(Qt.Key.Key_Return)
    assert begun(empty_desk) == ("Ines", 68.0, 171.0, 1, 3)


def test_what_is_missing_is_said_below_its_line_and_nothing_ticked_is_lost(
    first: HouseholdScreen, empty_desk: Desk
) -> None:
    page = first.first
    hand.click(tile(page, "towel"))
    page.who.field(BeginLine.BODY_MASS).edit.setText("900 kg")
    for chip in page.days.findChildren(ChoiceChip):
        if chip.isChecked():
            hand.click(chip)
    hand.click(page.button)
    assert first.is_first_run()
    assert empty_desk.house().people == ()
    faults = [page.who.field(key).fault() for key in (BeginLine.NAME, BeginLine.BODY_MASS, BeginLine.HEIGHT)]
    assert all(faults)
    assert not any("“”" in fault for fault in faults)
    assert "900 kg" in faults[1]
    assert page.days.fault() == "Choose at least one day."
    assert page.who.field(BeginLine.NAME).edit.hasFocus()
    assert tile(page, "towel").count() == 1


def test_what_is_typed_beside_the_pictures_comes_too(first: HouseholdScreen, empty_desk: Desk) -> None:
    page = first.first
    for key, text in ((BeginLine.NAME, "Tomas"), (BeginLine.BODY_MASS, "84 kg"), (BeginLine.HEIGHT, "183")):
        hand.type_in(page.who.field(key).edit, text)
    hand.type_in(page.things.add.field.edit, "coal bag 10 kg, broom")
    hand.key(page.things.add.field.edit, Qt.Key.Key_Return)
    hand.type_in(page.things.add.field.edit, "towel")
    hand.click(page.button)
    assert {thing.kind_id for thing in empty_desk.house().things} == {"coal_bag", "broom", "towel"}


def test_the_whole_beginning_is_one_step(first: HouseholdScreen, empty_desk: Desk) -> None:
    page = first.first
    for key, text in ((BeginLine.NAME, "Ines"), (BeginLine.BODY_MASS, "68"), (BeginLine.HEIGHT, "1.71")):
        hand.type_in(page.who.field(key).edit, text)
    hand.click(page.button)
    assert empty_desk.house().people
    empty_desk.undo()
    assert empty_desk.house().people == ()
    assert empty_desk.house().things == ()
    settle()
    assert first.is_first_run()


def test_the_demo_comes_with_one_click_and_goes_with_one_undo(first: HouseholdScreen, empty_desk: Desk) -> None:
    before = empty_desk.record.contents()
    first.first.demo.link_followed.emit("demo")
    assert empty_desk.house().things
    assert not first.is_first_run()
    empty_desk.undo()
    assert empty_desk.record.contents() == before
    assert first.is_first_run()


def test_a_tile_counts_up_and_down_by_key(first: HouseholdScreen) -> None:
    one = tile(first.first, "towel")
    one.setFocus()
    for pressed, count in ((Qt.Key.Key_Space, 1), (Qt.Key.Key_Plus, 2), (Qt.Key.Key_Minus, 1), (Qt.Key.Key_9, 9)):
        hand.key(one, pressed)
        assert one.count() == count
        assert one.accessibleName() == f"Towel, {count}"
    hand.click(one.less)
    assert one.count() == 8
