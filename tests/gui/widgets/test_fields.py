"""Fields: typed into, corrected, chosen from."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from gui.theme import LIGHT
from gui.widgets import ChoiceField, LineField, SearchField
from tests.gui import hand
from tests.gui.looking import shows


def test_typing_is_told_letter_by_letter_and_enter_submits(qtbot: QtBot) -> None:
    field = LineField("Fill it to a weight", "12 kg")
    qtbot.addWidget(field)
    field.show()
    typed: list[str] = []
    field.edited.connect(typed.append)
    hand.type_in(field.edit, "12 lb")
    assert typed[-1] == "12 lb"
    assert len(typed) == 5
    with qtbot.waitSignal(field.submitted) as told:
        hand.key(field.edit, Qt.Key.Key_Return)
    assert told.args == ["12 lb"]


def test_showing_text_tells_nobody(qtbot: QtBot) -> None:
    field = LineField("Mass")
    qtbot.addWidget(field)
    with qtbot.assertNotEmitted(field.edited):
        field.show_text("14.7 kg")
    assert field.text() == "14.7 kg"


def test_a_fault_is_shown_spoken_and_gone_with_the_next_letter(qtbot: QtBot) -> None:
    field = LineField("Mass")
    qtbot.addWidget(field)
    field.show()
    field.show_fault("“12 stone” is not a mass Fillmark reads; write kg or lb.")
    assert field.edit.accessibleDescription() == field.fault()
    assert shows(field, LIGHT.bad_ink)
    hand.type_in(field.edit, "1")
    assert field.fault() == ""
    assert not shows(field, LIGHT.bad_ink)


def test_a_field_is_named_by_its_caption(qtbot: QtBot) -> None:
    fields = LineField("Prescribed", "4 × 5"), LineField("", "Add a thing"), SearchField("Find a movement")
    for field in fields:
        qtbot.addWidget(field)
    assert [field.edit.accessibleName() for field in fields] == ["Prescribed", "Add a thing", "Find a movement"]


def test_focus_on_a_field_goes_to_its_line(qtbot: QtBot) -> None:
    field = LineField("Mass")
    qtbot.addWidget(field)
    field.show()
    field.setFocus()
    qtbot.waitUntil(field.edit.hasFocus)


def test_a_choice_of_the_person_is_told_one_of_the_program_is_not(qtbot: QtBot) -> None:
    field = ChoiceField("Where", ("Towpath", "Cabin", "Anywhere"))
    qtbot.addWidget(field)
    field.show()
    with qtbot.assertNotEmitted(field.chosen):
        field.show_index(2)
        field.show_options(("Towpath", "Cabin"), 1)
    assert field.index() == 1
    field.box.setFocus()
    with qtbot.waitSignal(field.chosen) as told:
        hand.key(field.box, Qt.Key.Key_Up)
    assert told.args == [0]
