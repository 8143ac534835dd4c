"""The window: screens made at their first visit, keys that work, nothing left when it closes."""

from __future__ import annotations

import gc
import threading
from collections import Counter
from collections.abc import Callable

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from gui.shell import ENTRIES, Deeds, MainWindow, PersonView, ScreenName
from gui.shell.keys import KeyHelp, all_keys
from gui.shell.window import NARROW_BELOW
from tests.gui import hand
from tests.gui.looking import settle, show_at

PEOPLE = (
    PersonView(person_id="ines", name="Ines", detail="68 kg"),
    PersonView(person_id="tomas", name="Tomas & co", detail="81 kg"),
)


class House:
    """Makes screens and remembers which, and what was undone."""

    def __init__(self) -> None:
        self.made: list[ScreenName] = []
        self.deeds: list[str] = []

    def furnish(self, window: MainWindow) -> None:
        window.furnish(
            {name: self._maker(name) for name in ScreenName},
            Deeds(undo=lambda: self.deeds.append("undo"), redo=lambda: self.deeds.append("redo")),
        )

    def _maker(self, name: ScreenName) -> Callable[[], QWidget]:
        def make() -> QWidget:
            self.made.append(name)
            return QLineEdit(name.value)

        return make


@pytest.fixture
def house() -> House:
    return House()


@pytest.fixture
def window(qtbot: QtBot) -> MainWindow:
    made = MainWindow()
    qtbot.addWidget(made)
    show_at(made, 1280, 800)
    made.activateWindow()
    return made


def test_the_first_paint_is_told_once(qtbot: QtBot) -> None:
    window = MainWindow()
    qtbot.addWidget(window)
    told: list[bool] = []
    window.painted.connect(lambda: told.append(True))
    show_at(window, 1280, 800)
    window.repaint()
    settle()
    assert told == [True]


def test_before_the_data_is_there_no_screen_is_made_but_the_wish_is_kept(
    window: MainWindow, house: House, qtbot: QtBot
) -> None:
    hand.key(window, Qt.Key.Key_3, Qt.KeyboardModifier.AltModifier)
    assert window.current_screen() is ScreenName.SWAP
    assert house.made == []
    house.furnish(window)
    assert house.made == [ScreenName.SWAP]


def test_a_screen_is_made_at_its_first_visit_only(window: MainWindow, house: House, qtbot: QtBot) -> None:
    house.furnish(window)
    assert house.made == [ScreenName.HOUSEHOLD]
    buttons = window.sidebar().buttons()
    for at in (1, 0, 1):
        hand.click(buttons[at])
    assert house.made == [ScreenName.HOUSEHOLD, ScreenName.FILL]
    shown = window.page(ScreenName.FILL)
    assert shown is not None
    assert shown.isVisible()


def test_every_screen_has_its_key(window: MainWindow, house: House, qtbot: QtBot) -> None:
    house.furnish(window)
    keys = (Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_3, Qt.Key.Key_4)
    for key, entry in zip(keys, ENTRIES, strict=True):
        with qtbot.waitSignal(window.screen_shown) as told:
            hand.key(window, key, Qt.KeyboardModifier.AltModifier)
        assert told.args == [entry.name]
    with qtbot.waitSignal(window.screen_shown) as told:
        hand.key(window, Qt.Key.Key_Comma, Qt.KeyboardModifier.ControlModifier)
    assert told.args == [ScreenName.SETTINGS]


def test_undo_and_redo_keys_call_the_deeds(window: MainWindow, house: House, qtbot: QtBot) -> None:
    hand.key(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    house.furnish(window)
    hand.key(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    both = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    hand.key(window, Qt.Key.Key_Z, both)
    assert house.deeds == ["undo", "redo"]


def test_no_key_is_used_twice(window: MainWindow) -> None:
    keys = Counter(
        action.shortcut().toString() for action in window.findChildren(QAction) if action.shortcut().toString()
    )
    assert [key for key, many in keys.items() if many > 1] == []


def test_every_key_of_the_window_is_explained(window: MainWindow) -> None:
    used = {action.shortcut().toString() for action in window.actions()}
    explained = {key for line in all_keys() for key in line.keys}
    assert used <= explained
    assert all(action.text() for action in window.actions())


def test_f1_explains_the_keys_and_escape_closes_it(window: MainWindow, qtbot: QtBot) -> None:
    hand.key(window, Qt.Key.Key_F1)
    settle()
    help_ = window.findChild(KeyHelp)
    assert isinstance(help_, KeyHelp)
    assert help_.isVisible()
    hand.key(help_, Qt.Key.Key_Escape)
    settle()
    assert window.findChild(KeyHelp) is None


def test_ctrl_q_closes(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.closed):
        hand.key(window, Qt.Key.Key_Q, Qt.KeyboardModifier.ControlModifier)
    assert not window.isVisible()


def test_the_sidebar_marks_the_screen_shown(window: MainWindow, house: House) -> None:
    house.furnish(window)
    window.show_screen(ScreenName.WEEK)
    marked = [button.entry().name for button in window.sidebar().buttons() if button.isChecked()]
    assert marked == [ScreenName.WEEK]


def test_only_screens_that_exist_are_offered(window: MainWindow) -> None:
    offered = [button.entry().label for button in window.sidebar().buttons()]
    assert offered == ["Household", "Fill & weigh", "Swap", "Week", "Settings"]


def test_a_narrow_window_has_a_narrow_side(window: MainWindow) -> None:
    wide = window.sidebar().width()
    show_at(window, NARROW_BELOW - 1, 700)
    assert window.sidebar().width() < wide / 2
    assert all(button.toolTip() for button in window.sidebar().buttons())
    show_at(window, NARROW_BELOW, 700)
    assert window.sidebar().width() == wide


def test_somebody_else_can_train(window: MainWindow, qtbot: QtBot) -> None:
    window.show_people(PEOPLE, "ines")
    box = window.sidebar().person_box()
    hand.click(box)
    menu = QApplication.activePopupWidget()
    assert menu is not None
    hand.key(menu, Qt.Key.Key_Down)
    hand.key(menu, Qt.Key.Key_Down)
    with qtbot.waitSignal(window.person_chosen) as told:
        hand.key(menu, Qt.Key.Key_Return)
    assert told.args == ["tomas"]


def test_the_person_is_spoken(window: MainWindow) -> None:
    window.show_people(PEOPLE, "tomas")
    assert window.sidebar().person_box().accessibleName() == "Training as Tomas & co, change"


def test_without_people_there_is_no_box(window: MainWindow) -> None:
    window.show_people((), "")
    assert not window.sidebar().person_box().isVisible()


def test_trouble_is_one_sentence_in_place_of_the_screens(window: MainWindow) -> None:
    window.show_trouble("The data folder is in use by another window; close that one first.")
    sentences = [child.sentence() for child in window.findChildren(QWidget) if hasattr(child, "sentence")]
    assert "The data folder is in use by another window; close that one first." in sentences


def test_the_place_of_the_window_is_remembered(window: MainWindow, qtbot: QtBot) -> None:
    show_at(window, 760, 560)
    other = MainWindow()
    qtbot.addWidget(other)
    other.restore_place(window.place())
    assert (other.width(), other.height()) == (760, 560)


def test_fifty_windows_leave_nothing_behind(qapp: QApplication, house: House) -> None:
    def once() -> None:
        window = MainWindow()
        house.furnish(window)
        window.show()
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    once()
    gc.collect()
    widgets, threads = len(qapp.allWidgets()), threading.active_count()
    for _ in range(50):
        once()
    settle()
    gc.collect()
    assert len(qapp.allWidgets()) <= widgets
    assert threading.active_count() == threads
