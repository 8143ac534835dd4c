"""Answers as cards: what there is to know of each, closeness in numbers and words, side by side, what is left out."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from core.store.commands import ChangeSettings
from core.store.values import Settings, Units
from core.swap.model import Cause
from core.swap.ranking import SPREAD
from gui.desk.desk import Desk
from gui.swap import SwapScreen
from tests.gui import hand
from tests.gui.looking import settle
from tests.gui.swap.eyes import answered, ask, because, names, opened, plain, words


@pytest.fixture
def squat(screen: SwapScreen, qtbot: QtBot) -> SwapScreen:
    """The screen with the answers for a squat with a bar."""
    ask(screen, "barbell back squat", qtbot)
    return screen


def test_a_card_says_thing_fill_mass_and_dose(squat: SwapScreen) -> None:
    view = squat.cards()[0].view()
    assert "kg ±" in plain(view.dose)
    assert "–" in view.dose
    assert view.things
    assert view.badges


def test_the_parts_of_closeness_are_shown_with_their_numbers(squat: SwapScreen) -> None:
    for card in squat.cards():
        assert [row.label for row in card.view().parts] == ["pattern", "muscles", "effort", "set-up"]
        assert all(row.value_text == f"{100 * row.share:.0f}" for row in card.view().parts)


def test_after_the_first_few_answers_stand_closest_first(squat: SwapScreen) -> None:
    hand.click(squat.answers.more)
    rest = [card.view() for card in squat.cards()[SPREAD:]]
    totals = [int(view.total) for view in rest if view.relation != "the same movement with another thing"]
    assert len(totals) > 5
    assert totals == sorted(totals, reverse=True)


def test_the_same_movement_with_another_thing_comes_first(squat: SwapScreen) -> None:
    assert squat.cards()[0].view().relation == "the same movement with another thing"
    assert "Being the same movement" in opened(squat.cards()[0])


def test_the_same_movement_with_what_is_there_comes_first(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    first = screen.cards()[0].view()
    assert first.name == "Push-up"
    assert first.relation == "the same movement, with what you have"


def test_an_opened_card_says_why_how_and_what_its_numbers_mean(squat: SwapScreen) -> None:
    card = squat.cards()[0]
    text = opened(card)
    assert card.view().reasons[0] in text
    for part in ("Pattern ", "Muscles ", "Effort ", "Set-up ", "In all "):
        assert part in text
    for sentence in (*card.view().cues, *card.view().cautions, *card.view().not_carried):
        assert plain(sentence) in text
    hand.click(card.more)
    assert not card.is_open()


def test_more_answers_are_shown_on_demand(squat: SwapScreen) -> None:
    before = names(squat)
    hand.click(squat.answers.more)
    settle()
    assert names(squat)[: len(before)] == before
    assert len(names(squat)) == len(before) + 12


def test_a_closed_card_stays_closed_when_other_answers_come(squat: SwapScreen, qtbot: QtBot) -> None:
    opened(squat.cards()[0])
    ask(squat, "pull-up", qtbot)
    assert not any(card.is_open() for card in squat.cards())


def test_two_answers_stand_side_by_side(squat: SwapScreen) -> None:
    first, third = squat.cards()[0].view(), squat.cards()[2].view()
    hand.click(squat.cards()[0].compare)
    assert not squat.is_comparing()
    hand.click(squat.cards()[2].compare)
    assert squat.is_comparing()
    shown = squat.compare.texts()
    for view in (first, third):
        assert {view.name, view.dose, view.things, view.total} <= set(shown)
    hand.click(squat.compare.back)
    assert not squat.is_comparing()
    assert not any(card.compare.isChecked() for card in squat.cards())


def test_comparing_is_left_by_escape_and_given_up_by_a_second_press(squat: SwapScreen) -> None:
    hand.click(squat.cards()[0].compare)
    hand.click(squat.cards()[0].compare)
    hand.click(squat.cards()[1].compare)
    assert not squat.is_comparing()
    hand.click(squat.cards()[0].compare)
    assert squat.is_comparing()
    hand.key(squat.compare.back, Qt.Key.Key_Escape)
    assert not squat.is_comparing()


def test_everything_left_out_is_listed_by_reason(squat: SwapScreen) -> None:
    card = squat.answers.left_out
    for chip in card.chips:
        hand.click(chip)
    settle()
    found = squat._found
    assert found is not None
    assert found.swap is not None
    text = plain(card.text())
    for left in found.swap.left_out:
        assert left.name in text
        assert plain(left.why)[1:] in text
    assert sum(int(chip.label().rpartition(" · ")[2]) for chip in card.chips) == len(found.swap.left_out)


def test_a_list_left_out_closes_again(squat: SwapScreen) -> None:
    card = squat.answers.left_out
    hand.click(card.chips[0])
    assert card.text()
    hand.click(card.chips[0])
    assert not card.text()


def test_the_way_up_is_shown_and_its_steps_can_be_asked_for(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    because(screen, Cause.TOO_HARD, qtbot)
    chain = screen.answers.chain
    assert chain.isVisible()
    assert chain.words().startswith("Until you can do push-up: ")
    assert chain.chips[0].label().endswith(" · now")
    step = chain.chips[0].label().removesuffix(" · now")
    hand.click(chain.chips[0])
    answered(screen, qtbot)
    assert screen.answers.head()[0] == f"Instead of {step}"


def test_every_card_is_reached_used_and_opened_by_keys(squat: SwapScreen, qapp: QApplication) -> None:
    edit = squat.panel.movement.edit
    edit.setFocus()
    hand.key(edit, Qt.Key.Key_Return)
    cards = squat.cards()
    assert cards[0].hasFocus()
    hand.key(cards[0], Qt.Key.Key_Down)
    assert cards[1].hasFocus()
    assert cards[1].is_chosen()
    hand.key(cards[1], Qt.Key.Key_Space)
    assert cards[1].is_open()
    hand.key(cards[1], Qt.Key.Key_C)
    assert cards[1].compare.isChecked()
    hand.key(cards[1], Qt.Key.Key_Up)
    hand.key(cards[0], Qt.Key.Key_Up)
    assert edit.hasFocus()
    hand.key(edit, Qt.Key.Key_Return)
    hand.key(cards[0], Qt.Key.Key_Escape)
    assert edit.hasFocus()


def test_other_units_are_shown_at_once(squat: SwapScreen, days_desk: Desk, qtbot: QtBot) -> None:
    assert days_desk.do(ChangeSettings(Settings(units=Units.US, person_id="ines")))
    answered(squat, qtbot)
    assert "lb ±" in plain(squat.cards()[0].view().dose)
    assert " kg" not in opened(squat.cards()[0])
    assert " kg" not in words(squat.answers)
