"""Using an answer: it goes into the week on a fitting day, another day may be chosen, then one plans or goes there."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.house.wishes import Pin, WeekWishes
from core.store.commands import SetPins, SetWishes
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.swap import SwapScreen
from tests.dipper import INES
from tests.gui import hand
from tests.gui.looking import settle
from tests.gui.swap.eyes import answered, ask, plain

MONDAY, THURSDAY = 0, 3


@pytest.fixture
def push(screen: SwapScreen, qtbot: QtBot) -> SwapScreen:
    """The screen with the answers for a press on a bench."""
    ask(screen, "barbell bench press", qtbot)
    return screen


def jumps(desk: Desk) -> list[Jump]:
    """The jumps made from now on."""
    made: list[Jump] = []
    desk.jump.connect(made.append)
    return made


def test_using_an_answer_pins_it_to_a_training_day(push: SwapScreen, days_desk: Desk) -> None:
    view = push.cards()[0].view()
    hand.click(push.cards()[0].use)
    assert days_desk.wishes().pins == (Pin(weekday=MONDAY, exercise_id=view.exercise_id),)
    assert push.answers.used_card.isVisible()
    assert push.answers.used_card.text() == (
        f"{view.name} is in your week on Monday in place of barbell bench press, from the next plan on."
    )


def test_enter_on_a_card_uses_it(push: SwapScreen, days_desk: Desk) -> None:
    push.cards()[1].setFocus()
    hand.key(push.cards()[1], Qt.Key.Key_Return)
    assert [pin.exercise_id for pin in days_desk.wishes().pins] == [push.cards()[1].view().exercise_id]


def test_an_answer_swapped_from_a_day_goes_to_that_day(screen: SwapScreen, days_desk: Desk, qtbot: QtBot) -> None:
    assert days_desk.do(SetPins(INES.id, (Pin(weekday=THURSDAY, exercise_id="push_up"),)))
    screen.show_jump(Jump(screen=ScreenName.SWAP, exercise_id="push_up", weekday=THURSDAY))
    answered(screen, qtbot)
    second = screen.cards()[1]
    hand.click(second.use)
    assert days_desk.wishes().pins == (Pin(weekday=THURSDAY, exercise_id=second.view().exercise_id),)


def test_another_day_can_be_chosen(push: SwapScreen, days_desk: Desk) -> None:
    hand.click(push.cards()[0].use)
    chips = push.answers.used_card.chips
    assert [chip.label() for chip in chips] == ["Monday", "Thursday"]
    hand.click(chips[1])
    assert [pin.weekday for pin in days_desk.wishes().pins] == [THURSDAY]
    assert "on Thursday" in push.answers.used_card.text()


def test_the_week_can_be_planned_again_at_once(push: SwapScreen, days_desk: Desk) -> None:
    made = jumps(days_desk)
    hand.click(push.cards()[0].use)
    settle()
    hand.click(push.answers.used_card.plan)
    assert made == [Jump(screen=ScreenName.WEEK, plan=True)]


def test_one_can_go_to_the_week_without_planning(push: SwapScreen, days_desk: Desk) -> None:
    made = jumps(days_desk)
    hand.click(push.cards()[0].use)
    settle()
    hand.click(push.answers.used_card.week)
    assert made == [Jump(screen=ScreenName.WEEK)]


def test_the_movement_asked_for_can_stay_out_of_all_weeks(screen: SwapScreen, days_desk: Desk, qtbot: QtBot) -> None:
    ask(screen, "push-up", qtbot)
    hand.click(screen.cards()[1].use)
    settle()
    assert screen.answers.used_card.ban.label() == "Leave push-up out of my weeks"
    hand.click(screen.answers.used_card.ban)
    assert days_desk.wishes().bans == ("push_up",)
    assert not screen.answers.used_card.ban.isVisible()


def test_using_can_be_undone(push: SwapScreen, days_desk: Desk) -> None:
    hand.click(push.cards()[0].use)
    days_desk.undo()
    assert days_desk.wishes().pins == ()


def test_without_training_days_the_way_to_give_them_is_offered(
    screen: SwapScreen, days_desk: Desk, qtbot: QtBot
) -> None:
    assert days_desk.do(SetWishes(INES.id, WeekWishes()))
    made = jumps(days_desk)
    ask(screen, "push-up", qtbot)
    hand.click(screen.cards()[0].use)
    settle()
    card = screen.answers.used_card
    assert "no training days" in card.text()
    assert not card.plan.isVisible()
    assert card.week.label() == "Give your days"
    hand.click(card.week)
    assert made == [Jump(screen=ScreenName.WEEK)]


def test_an_answer_is_used_from_the_comparison(push: SwapScreen, days_desk: Desk) -> None:
    hand.click(push.cards()[0].compare)
    hand.click(push.cards()[1].compare)
    hand.click(push.compare.uses[1])
    assert not push.is_comparing()
    assert [pin.exercise_id for pin in days_desk.wishes().pins] == [push.cards()[1].view().exercise_id]
    assert plain(push.answers.used_card.text()).startswith(push.cards()[1].view().name)
