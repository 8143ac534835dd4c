"""Adding things by typing: what is clear is saved at once, what is not is asked, and nothing typed is ever lost."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.errors import InputError
from core.store.commands import Command
from core.store.values import ChangeSet
from gui.desk.desk import Desk
from gui.household import HouseholdScreen
from gui.household.thing_typed import ThingLine
from tests.gui import hand
from tests.gui.looking import settle


def add(screen: HouseholdScreen, text: str) -> None:
    """Type into the field and press Enter."""
    edit = screen.add.field.edit
    edit.clear()
    hand.type_in(edit, text)
    hand.key(edit, Qt.Key.Key_Return)


def owned(desk: Desk) -> dict[str, int]:
    return {thing.name: thing.count for thing in desk.house().things}


def asked(screen: HouseholdScreen) -> list[str]:
    return [ask.sentence for ask in screen.page.asks.asks()]


def test_what_is_typed_is_owned_and_in_hand(screen: HouseholdScreen, desk: Desk) -> None:
    add(screen, "2 one-gallon milk jugs")
    thing = desk.house().thing(screen.chosen())
    assert (thing.kind_id, thing.count) == ("milk_jug_gallon", 2)
    assert screen.add.field.text() == ""
    assert screen.page.things.card.title() == f"{thing.name} × 2"
    assert screen.page.cards.card(screen.chosen()).isChecked()


def test_several_things_are_one_step(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    add(screen, "2 five-litre bottles, broom")
    assert set(owned(desk)) - set(before) == {"Bottle 5 L", "Broom"}
    desk.undo()
    assert owned(desk) == before
    desk.redo()
    assert owned(desk)["Bottle 5 L"] == 2


def test_the_button_adds_too(screen: HouseholdScreen, desk: Desk) -> None:
    hand.type_in(screen.add.field.edit, "towel")
    hand.click(screen.add.button)
    assert owned(desk)["Towel"] == 1


def test_a_slip_is_asked_about_and_added_when_confirmed(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    add(screen, "3 buckts")
    assert owned(desk) == before
    assert len(asked(screen)) == 1
    row = screen.page.asks.rows()[0]
    hand.click(row.answers[0])
    assert sum(owned(desk).values()) == sum(before.values()) + 3
    assert screen.page.asks.isHidden()


def test_an_unknown_thing_comes_back_into_the_field_for_other_words(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    add(screen, "3 frobs")
    hand.click(screen.page.asks.rows()[0].other)
    assert screen.add.field.text() == "3 frobs"
    assert owned(desk) == before


def test_a_question_can_be_dropped(screen: HouseholdScreen) -> None:
    add(screen, "3 frobs")
    hand.click(screen.page.asks.rows()[0].drop)
    assert screen.page.asks.isHidden()


def test_an_impossible_amount_is_one_sentence_and_stays_in_the_field(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    add(screen, "2 bottles of 900 L, broom")
    assert screen.page.asks.fault().count(". ") == 0
    assert "900 L" in screen.page.asks.fault()
    assert screen.add.field.text() == "2 bottles of 900 L, broom"
    assert owned(desk) == before
    hand.type_in(screen.add.field.edit, "s")
    assert screen.page.asks.fault() == ""


def test_an_empty_line_adds_nothing_and_says_nothing(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    add(screen, "   ")
    assert owned(desk) == before
    assert screen.page.asks.isHidden()


def test_ten_thousand_letters_are_refused_in_one_short_sentence(screen: HouseholdScreen, desk: Desk) -> None:
    before = owned(desk)
    screen.add.field.show_text("x" * 10_000)
    hand.click(screen.add.button)
    told = screen.page.asks.fault() or asked(screen)[0]
    assert len(told) < 300
    assert owned(desk) == before


def test_markup_in_a_name_is_shown_as_typed(screen: HouseholdScreen, desk: Desk) -> None:
    add(screen, "broom")
    screen.page.things.open_form()
    edit = screen.page.things.form.form.field(ThingLine.NAME).edit
    edit.selectAll()
    hand.type_in(edit, "<b>&broom</b>")
    hand.key(edit, Qt.Key.Key_Return)
    assert "<b>&broom</b>" in owned(desk)
    assert screen.page.things.form.title() == "Edit <b>&broom</b>"
    assert screen.page.cards.card(screen.chosen()).view().title == "<b>&broom</b>"


def test_typing_offers_names_that_begin_so(screen: HouseholdScreen) -> None:
    hand.type_in(screen.add.field.edit, "2 tow")
    completer = screen.add.field.edit.completer()
    names = [completer.model().index(at, 0).data() for at in range(completer.model().rowCount())]
    assert "2 towels" in names


@pytest.fixture
def refuse(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> Callable[[], None]:
    """From now on nothing can be saved, as on a full disk."""

    def full(_command: Command) -> ChangeSet:
        raise InputError("the record", "cannot be written (the disk is full)", "make room, then try again")

    return lambda: monkeypatch.setattr(desk.record, "do", full)


def test_what_cannot_be_saved_stays_as_typed_and_says_so_once(
    screen: HouseholdScreen, desk: Desk, refuse: Callable[[], None], qtbot: QtBot
) -> None:
    told: list[str] = []
    desk.refused.connect(told.append)
    before = owned(desk)
    refuse()
    add(screen, "2 brooms")
    assert screen.add.field.text() == "2 brooms"
    assert owned(desk) == before
    assert len(told) == 1


def test_an_answer_that_cannot_be_saved_is_asked_again(
    screen: HouseholdScreen, desk: Desk, refuse: Callable[[], None]
) -> None:
    add(screen, "3 buckts")
    sentences = asked(screen)
    refuse()
    hand.click(screen.page.asks.rows()[0].answers[0])
    settle()
    assert asked(screen) == sentences
