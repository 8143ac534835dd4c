"""Asking for a movement: any alias, half a word, with slips; the answers follow what is typed, ticked and chosen."""

from __future__ import annotations

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from catalog.own import own_exercise
from catalog.own_copy import copied
from core.house.own import OwnKind
from core.store.commands import AddOwn
from core.swap.model import Cause
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.swap import SwapScreen
from gui.swap.asking import Found, Kept, Question, find_answers
from gui.widgets import RemovableChip
from gui.worker import Report
from tests.gui import hand
from tests.gui.swap.eyes import answered, ask, because, names, plain, type_movement, words


@pytest.mark.parametrize("typed", ["barbell back squat", "back squat", "bck sqaut", "barbell back sq"])
def test_an_alias_half_a_word_and_slips_find_the_movement(screen: SwapScreen, qtbot: QtBot, typed: str) -> None:
    type_movement(screen, typed, qtbot)
    assert screen.answers.head()[0] == "Instead of Barbell back squat"
    assert len(screen.cards()) == 6


def test_what_was_understood_is_said_where_it_differs(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "back squat", qtbot)
    assert screen.panel.read_as.text() == "Read as Barbell back squat."
    ask(screen, "barbell back squat", qtbot)
    assert not screen.panel.read_as.isVisible()


def test_names_that_come_near_are_offered_with_the_alias_that_answered(screen: SwapScreen, qtbot: QtBot) -> None:
    type_movement(screen, "pull", qtbot)
    offered = screen.panel.movement.offered()
    assert len(offered) == 8
    assert any(line.startswith("Pull-up") for line in offered)
    assert screen.panel.movement.popup().isVisible()


def test_a_name_picked_from_the_list_is_asked_for(screen: SwapScreen, qtbot: QtBot) -> None:
    type_movement(screen, "pull", qtbot)
    popup = screen.panel.movement.popup()
    second = screen.panel.movement.offered()[1].split(" · ")[0]
    hand.key(popup, Qt.Key.Key_Down)
    hand.key(popup, Qt.Key.Key_Down)
    hand.key(popup, Qt.Key.Key_Return)
    answered(screen, qtbot)
    assert screen.panel.movement.text() == second
    assert screen.answers.head()[0] == f"Instead of {second}"
    assert not popup.isVisible()


def test_the_newest_question_wins(screen: SwapScreen, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    gate, begun = threading.Event(), threading.Event()

    def slow(question: Question, kept: Kept, report: Report) -> Found:
        begun.set()
        assert gate.wait(10)
        return find_answers(question, kept, report)

    monkeypatch.setattr("gui.swap.asking.find_answers", slow)
    screen.panel.show_movement("Pull-up")
    assert begun.wait(10)
    screen.panel.show_movement("Push-up")
    gate.set()
    answered(screen, qtbot)
    assert screen.answers.head()[0] == "Instead of Push-up"


def test_the_window_answers_while_a_swap_is_worked_out(
    screen: SwapScreen, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    ran_in: list[str] = []

    def noting(question: Question, kept: Kept, report: Report) -> Found:
        ran_in.append(threading.current_thread().name)
        return find_answers(question, kept, report)

    monkeypatch.setattr("gui.swap.asking.find_answers", noting)
    ask(screen, "push-up", qtbot)
    assert ran_in
    assert all(name.startswith("errand") for name in ran_in)


def test_what_is_in_the_way_changes_the_answers(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    assert "Push-up" in names(screen)
    because(screen, Cause.HURTS, qtbot)
    assert "Push-up" not in names(screen)
    assert "Push-up itself is out: it is the movement that hurts." in screen.answers.head()[2]


def test_what_is_spared_leaves_the_answers(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "barbell back squat", qtbot)
    assert any("deep knee bend" in card.view().demands for card in screen.cards())
    hand.click(screen.panel.add_spare)
    menu = screen.panel.findChildren(QMenu)[-1]
    next(action for action in menu.actions() if action.text() == "deep knee bend").trigger()
    menu.close()
    answered(screen, qtbot)
    assert not any("deep knee bend" in card.view().demands for card in screen.cards())
    hand.click(screen.panel.findChildren(RemovableChip)[0])
    answered(screen, qtbot)
    assert any("deep knee bend" in card.view().demands for card in screen.cards())


def test_an_own_dose_is_held(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "barbell back squat", qtbot)
    hand.type_in(screen.panel.dose.edit, "5 x 6 at 30 kg, effort 8")
    answered(screen, qtbot)
    assert all(card.view().dose.startswith("5") for card in screen.cards() if "s" not in card.view().dose)
    assert plain(screen.panel.note.text()).startswith("30 kg")


def test_a_dose_nobody_can_read_is_said_below_the_field(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    hand.type_in(screen.panel.dose.edit, "lots")
    assert "write it like" in screen.panel.dose.fault()
    answered(screen, qtbot)
    assert screen.cards()


def test_the_usual_dose_stands_in_the_empty_field(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    assert screen.panel.dose.edit.placeholderText().startswith("usual: 3 x ")


def test_another_place_has_other_answers(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "pull-up", qtbot)
    indoors = names(screen)
    screen.panel.place.box.setCurrentIndex(1)
    screen.panel.place.box.activated.emit(1)
    answered(screen, qtbot)
    assert names(screen) != indoors


def test_another_person_is_asked_for(screen: SwapScreen, desk: Desk, qtbot: QtBot) -> None:
    ask(screen, "barbell back squat", qtbot)
    for_ines = [card.view().dose for card in screen.cards()]
    screen.panel.who.box.activated.emit(1)
    answered(screen, qtbot)
    person = desk.person()
    assert person is not None
    assert person.name == "Tomas"
    assert [card.view().dose for card in screen.cards()] != for_ines


def test_an_unknown_movement_is_said_and_ways_on_are_shown(screen: SwapScreen, qtbot: QtBot) -> None:
    type_movement(screen, "zzqqxx", qtbot)
    assert screen.is_starting()
    assert screen.start.title() == "No movement here answers to that"
    assert len(screen.start.example_chips) > 8


def test_an_example_is_asked_for(screen: SwapScreen, qtbot: QtBot) -> None:
    assert screen.is_starting()
    hand.click(screen.start.example_chips[0])
    answered(screen, qtbot)
    assert screen.answers.head()[0] == "Instead of Barbell back squat"


def test_a_jump_asks_for_its_movement(screen: SwapScreen, qtbot: QtBot) -> None:
    screen.show_jump(Jump(screen=ScreenName.SWAP, exercise_id="pull_up", weekday=3))
    answered(screen, qtbot)
    assert screen.answers.head()[0] == "Instead of Pull-up"


def test_before_anyone_trains_the_screen_leads_to_the_household(empty_screen: SwapScreen, qtbot: QtBot) -> None:
    assert "Who trains?" in words(empty_screen)


def test_an_unknown_movement_can_be_added_as_ones_own(screen: SwapScreen, desk: Desk, qtbot: QtBot) -> None:
    jumps: list[Jump] = []
    desk.jump.connect(jumps.append)
    assert not screen.start.own.isVisible()
    type_movement(screen, "zzqqxx", qtbot)
    hand.click(screen.start.own)
    assert jumps == [Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, name="zzqqxx")]


def test_a_version_of_ones_own_is_made_from_the_movement_asked_for(
    screen: SwapScreen, desk: Desk, qtbot: QtBot
) -> None:
    jumps: list[Jump] = []
    desk.jump.connect(jumps.append)
    ask(screen, "push-up", qtbot)
    hand.click(screen.answers.own)
    assert jumps == [Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, exercise_id="push_up")]


def test_an_own_movement_is_swapped_like_any_other(screen: SwapScreen, desk: Desk, qtbot: QtBot) -> None:
    assert desk.do(AddOwn(own_exercise({**copied(OwnKind.EXERCISE, "push_up", ()), "name": "Gate push"}, desk.catalog)))
    ask(screen, "gate pu", qtbot)
    assert screen.answers.head()[0] == "Instead of Gate push"
    assert "Gate push" in names(screen)


def test_answers_can_be_held_to_one_thing(screen: SwapScreen, desk: Desk, qtbot: QtBot) -> None:
    screen.show_jump(Jump(screen=ScreenName.SWAP, thing_id="bucket"))
    ask(screen, "barbell deadlift", qtbot)
    assert screen.panel.thing.box.currentText() == "Mop bucket"
    assert screen.cards()
    assert all("Mop bucket" in card.view().things for card in screen.cards())
    screen.panel.thing.box.setCurrentIndex(0)
    screen.panel.thing.box.activated.emit(0)
    answered(screen, qtbot)
    assert not all("Mop bucket" in card.view().things for card in screen.cards())


def test_a_thing_that_is_not_in_another_place_is_given_up_there(screen: SwapScreen, qtbot: QtBot) -> None:
    screen.show_jump(Jump(screen=ScreenName.SWAP, thing_id="bench"))
    ask(screen, "push-up", qtbot)
    assert screen.panel.thing.box.currentText() == "Cabin bench"
    screen.panel.place.box.setCurrentIndex(1)
    screen.panel.place.box.activated.emit(1)
    answered(screen, qtbot)
    assert screen.panel.thing.box.currentText() == "anything you own"
    assert screen.cards()
