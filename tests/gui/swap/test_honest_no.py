"""An honest no: reasons by kind, and the ways out: a cheap thing, another place, sparing less, another reason."""

from __future__ import annotations

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from core.exercise.model import Demand
from core.store.commands import LoadHouse
from core.swap.model import Cause
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.swap import SwapScreen
from gui.swap.ways_words import Deed, WayRow
from tests.dipper import dipper
from tests.gui import hand
from tests.gui.looking import settle
from tests.gui.swap.eyes import answered, ask, because, words


def press(screen: SwapScreen, deed: Deed) -> WayRow:
    """Press the first button that does this; its row."""
    card = screen.answers.ways
    at = next(number for number, row in enumerate(card.rows()) if row.deed is deed)
    row = card.rows()[at]
    hand.click(card.buttons[at])
    return row


@pytest.fixture
def refused(screen: SwapScreen, qtbot: QtBot) -> SwapScreen:
    """A pull-up that is too easy, without anything overhead: nothing fits."""
    screen.panel.show_spare((Demand.OVERHEAD_REACH,))
    ask(screen, "pull-up", qtbot)
    because(screen, Cause.TOO_EASY, qtbot)
    return screen


def test_a_no_says_so_and_opens_its_reasons(refused: SwapScreen) -> None:
    assert not refused.cards()
    assert refused.answers.head()[1].startswith("Nothing here can stand in for it")
    assert "which you spare" in refused.answers.head()[2]
    assert refused.answers.ways.title() == "The nearest ways out"
    assert any(chip.isChecked() for chip in refused.answers.left_out.chips)
    assert refused.answers.left_out.text()


def test_asking_for_another_reason_is_a_way_out(refused: SwapScreen, qtbot: QtBot) -> None:
    row = press(refused, Deed.DROP)
    answered(refused, qtbot)
    assert row.detail.startswith(
        str(len(refused._found.swap.answers if refused._found and refused._found.swap else ()))
    )
    assert refused.cards()


def test_a_thing_the_person_has_after_all_joins_the_house_and_opens_answers(
    screen: SwapScreen, days_desk: Desk, qtbot: QtBot
) -> None:
    ask(screen, "pull-up", qtbot)
    before = {thing.kind_id for thing in days_desk.house().things}
    row = press(screen, Deed.HAVE)
    answered(screen, qtbot)
    assert {thing.kind_id for thing in days_desk.house().things} - before == {row.target}
    assert row.target not in [other.target for other in screen.answers.ways.rows()]


def test_each_thing_offered_opens_something_the_others_do_not(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "pull-up", qtbot)
    rows = [row for row in screen.answers.ways.rows() if row.deed is Deed.HAVE]
    assert 1 <= len(rows) <= 3
    assert all(row.detail.startswith("opens ") for row in rows)


def test_another_place_is_a_way_out(screen: SwapScreen, qtbot: QtBot) -> None:
    ask(screen, "easy run", qtbot)
    row = press(screen, Deed.LOOK)
    answered(screen, qtbot)
    assert screen.panel.place.box.currentText() == row.title == "Towpath"
    assert screen.answers.head()[1].startswith("6 of ")


def test_sparing_less_is_a_way_out(screen: SwapScreen, qtbot: QtBot) -> None:
    screen.panel.show_spare((Demand.DEEP_KNEE_BEND, Demand.OVERHEAD_REACH))
    ask(screen, "barbell back squat", qtbot)
    row = press(screen, Deed.UNSPARE)
    answered(screen, qtbot)
    assert row.title == "Without sparing deep knee bend"
    assert screen.panel.asked_now().spare == {Demand.OVERHEAD_REACH}


def test_without_things_the_answers_need_the_body_alone_and_say_where_to_add_some(
    screen: SwapScreen, days_desk: Desk, qtbot: QtBot
) -> None:
    made: list[Jump] = []
    days_desk.jump.connect(made.append)
    ask(screen, "push-up", qtbot)
    assert not screen.answers.bare.isVisible()
    assert days_desk.do(LoadHouse(replace(dipper(), things=()), replace_all=True))
    answered(screen, qtbot)
    assert screen.answers.bare.isVisible()
    assert screen.answers.bare.plain_text().startswith("You list no things yet")
    assert all(card.view().things == "Your body alone" for card in screen.cards())
    screen.answers.bare.link_followed.emit("household")
    assert made == [Jump(screen=ScreenName.HOUSEHOLD)]


def test_a_no_leaves_no_words_that_promise_answers(refused: SwapScreen) -> None:
    settle()
    text = words(refused.answers)
    assert "that fit" not in text
    assert "Use this" not in text
