"""The weeks of the block on the screen: which one it is by the date, the others to look into, and how a day went."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QAbstractButton, QMenu
from pytestqt.qtbot import QtBot

from core.knowledge import Catalog
from core.plan.block_model import TrainingBlock, What
from core.plan.model import DayKind, Week, WeekRequest
from core.store.codec_block import block_from_text
from core.store.commands import SavePlan
from gui.desk.desk import Desk
from gui.week import WeekScreen
from gui.week.planning import Kept, PlanOrder, keep
from gui.week.results_flow import read_number
from gui.week.solving import Brake
from tests.dipper import INES, dipper
from tests.gui import hand
from tests.gui.looking import clipped_labels, nameless, settle, show_at
from tests.gui.week.conftest import TODAY, WISHES, shown
from tests.gui.week.eyes import await_plan, open_first, plain

SECOND_WEEK = TODAY - datetime.timedelta(weeks=2)
LONG_AGO = TODAY - datetime.timedelta(weeks=20)
NEXT_WEEK = TODAY + datetime.timedelta(weeks=1)


@pytest.fixture(scope="module")
def kept_from(catalog: Catalog, planned: Week) -> dict[datetime.date, Kept]:
    """Her block, begun on several Mondays."""
    return {
        starts: keep(
            PlanOrder(
                request=WeekRequest(wishes=WISHES),
                house=dipper(),
                person=INES,
                catalog=catalog,
                today=TODAY,
                starts=starts,
            ),
            planned,
            Brake(),
        )
        for starts in (TODAY, SECOND_WEEK, LONG_AGO, NEXT_WEEK)
    }


@pytest.fixture
def begun(request: pytest.FixtureRequest) -> datetime.date:
    """When the block began: two weeks ago, unless a test says otherwise."""
    found = getattr(request, "param", SECOND_WEEK)
    assert isinstance(found, datetime.date)
    return found


@pytest.fixture
def block_screen(
    ready_desk: Desk, kept_from: dict[datetime.date, Kept], begun: datetime.date, qtbot: QtBot
) -> Iterator[WeekScreen]:
    kept = kept_from[begun]
    assert ready_desk.do(SavePlan(INES.id, kept.saved_week, kept.saved_block))
    made = shown(ready_desk, qtbot)
    qtbot.waitUntil(lambda: made.page.ribbon.block() is not None, timeout=10_000)
    settle()
    yield made
    made.close_work()


@pytest.mark.parametrize("begun", [TODAY], indirect=True)
def test_the_first_week_is_the_one_of_the_tests(block_screen: WeekScreen) -> None:
    assert block_screen.bar.title() == "Test week"
    assert plain(block_screen.bar.subtitle()) == "4 to 10 May · Ines"
    assert "these tests" in block_screen.page.preview.text()
    assert not block_screen.page.preview.back.isVisible()
    notes = [note for column in block_screen.page.columns for note in column.view().notes]
    assert any(plain(note).partition(" ")[2] in {"test", "tests"} for note in notes)


def test_which_week_it_is_follows_from_the_date(block_screen: WeekScreen) -> None:
    assert block_screen.bar.title() == "Week 2 of 8"
    names = [
        bar.accessibleName() for bar in block_screen.page.ribbon.bars.findChildren(QAbstractButton) if bar.isVisible()
    ]
    assert [name.endswith("this week") for name in names].index(True) == 2
    assert [column.view().today for column in block_screen.page.columns].index(True) == TODAY.weekday()


@pytest.mark.parametrize(
    ("number", "title", "words"),
    [
        (4, "Week 4 of 8, preview", "An easy week"),
        (8, "Week 8 of 8, preview", "the same tests again"),
        (1, "Week 1 of 8, past", "This week is over"),
    ],
)
def test_another_week_is_looked_into_and_left_again(
    block_screen: WeekScreen, number: int, title: str, words: str
) -> None:
    block_screen.page.ribbon.show_week(number)
    assert block_screen.bar.title() == title
    assert words in block_screen.page.preview.text()
    hand.click(next(card for column in block_screen.page.columns for card in column.cards()))
    assert not block_screen.page.detail.pin.isVisible()
    show_at(block_screen, 840, 700)
    assert clipped_labels(block_screen) == []
    hand.click(block_screen.page.preview.back)
    assert block_screen.bar.title() == "Week 2 of 8"


@pytest.mark.parametrize(
    ("begun", "words"),
    [(LONG_AGO, "this block is over"), (NEXT_WEEK, "begins on 11 May 2026")],
    indirect=["begun"],
)
def test_before_and_after_the_block_it_says_so(block_screen: WeekScreen, words: str) -> None:
    assert words in plain(block_screen.bar.subtitle())
    assert not any(column.view().today for column in block_screen.page.columns)


def test_a_missed_day_is_noted_and_what_lies_ahead_follows(block_screen: WeekScreen, ready_desk: Desk) -> None:
    before = _block(ready_desk)
    _say(block_screen, 0, "Missed")
    after = _block(ready_desk)
    assert [(one.what, one.week, one.weekday) for one in after.happened] == [(What.MISSED, 2, 0)]
    assert after.weeks[:2] == before.weeks[:2]
    assert "missed" in block_screen.page.columns[0].view().notes
    assert block_screen.toast.sentence() == "Monday, missed; the days ahead follow from it"
    block_screen.toast.undo_wanted.emit()
    assert _block(ready_desk) == before
    assert "missed" not in block_screen.page.columns[0].view().notes


def test_a_day_still_to_come_can_only_move_or_be_lost(block_screen: WeekScreen) -> None:
    labels = [action.text() for action in _menu(block_screen, 5).actions()]
    assert labels == ["Moved, this week only", "Ill from this day", "Away from this day, without training"]


def test_a_session_moves_in_this_week_only(block_screen: WeekScreen, ready_desk: Desk) -> None:
    before = _block(ready_desk)
    _say(block_screen, 5, "Moved, this week only", "To Sunday")
    after = _block(ready_desk)
    assert after.weeks[2].week.days[6].kind is DayKind.EASY
    assert after.weeks[2].week.days[5].kind is DayKind.REST
    assert after.weeks[3] == before.weeks[3]
    assert ready_desk.wishes() == WISHES
    assert "moved from Saturday" in block_screen.page.columns[6].view().notes


def test_what_was_said_already_is_not_said_twice(block_screen: WeekScreen, ready_desk: Desk) -> None:
    _say(block_screen, 0, "Missed")
    before = _block(ready_desk)
    _say(block_screen, 0, "Missed")
    assert "already" in block_screen.toast.sentence()
    assert _block(ready_desk) == before


def test_planning_again_leaves_the_past_alone(block_screen: WeekScreen, ready_desk: Desk, qtbot: QtBot) -> None:
    _say(block_screen, 0, "Missed")
    before = _block(ready_desk)
    open_first(block_screen)
    hand.click(block_screen.page.detail.ban)
    banned = ready_desk.wishes().bans[0]
    hand.click(block_screen.rebuild)
    await_plan(block_screen, qtbot)
    after = _block(ready_desk)
    assert after.weeks[:2] == before.weeks[:2]
    assert after.happened == before.happened
    assert after.starts == before.starts
    ahead = {one.exercise.id for week in after.weeks[3:] for day in week.week.days for one in day.blocks}
    assert banned not in ahead
    assert block_screen.bar.title() == "Week 2 of 8"


@pytest.mark.parametrize("begun", [NEXT_WEEK], indirect=True)
def test_a_block_that_begins_next_week_still_does_after_planning_again(
    block_screen: WeekScreen, ready_desk: Desk, qtbot: QtBot
) -> None:
    hand.click(block_screen.again)
    await_plan(block_screen, qtbot)
    assert _block(ready_desk).starts == NEXT_WEEK


def test_another_length_and_start_make_a_new_block(block_screen: WeekScreen, ready_desk: Desk, qtbot: QtBot) -> None:
    hand.click(block_screen.days_button)
    panel = block_screen.set_up.block
    assert [panel.start.box.itemText(at).partition(",")[0] for at in range(3)] == ["going on", "this week", "next week"]
    panel.start.show_index(2)
    panel.length.show_index(0)
    hand.click(block_screen.set_up.days.button)
    await_plan(block_screen, qtbot)
    block = _block(ready_desk)
    assert (block.starts, len(block.weeks)) == (NEXT_WEEK, 5)
    assert "begins on 11 May 2026" in plain(block_screen.bar.subtitle())


@pytest.mark.parametrize("begun", [TODAY], indirect=True)
def test_results_are_written_down_in_the_test_week(block_screen: WeekScreen, ready_desk: Desk) -> None:
    panel, wanted = block_screen.page.results, block_screen.page.preview.results
    assert not panel.isVisible()
    hand.click(wanted)
    assert panel.isVisible()
    test = next(one for one in _block(ready_desk).tests if one.id == "push_up")
    field = panel.field(test.id)
    hand.type_in(field.edit, "24")
    hand.click(panel.button(test.id))
    kept = ready_desk.record.tests(INES.id)
    assert [(one.test_id, one.result, one.date) for one in kept] == [(test.id, 24, TODAY)]
    assert "(24 reps)" in plain(block_screen.page.preview.text())
    show_at(block_screen, 840, 700)
    settle(120)
    assert clipped_labels(block_screen) == []
    assert nameless(block_screen) == []
    block_screen.toast.undo_wanted.emit()
    assert ready_desk.record.tests(INES.id) == ()


@pytest.mark.parametrize("begun", [TODAY], indirect=True)
@pytest.mark.parametrize("typed", ["many", "24.5", "-3", ""])
def test_a_result_that_can_not_be_is_said_below_it(block_screen: WeekScreen, ready_desk: Desk, typed: str) -> None:
    hand.click(block_screen.page.preview.results)
    field = block_screen.page.results.field("push_up")
    hand.type_in(field.edit, typed)
    hand.click(block_screen.page.results.button("push_up"))
    assert field.fault()
    assert field.text() == typed
    assert ready_desk.record.tests(INES.id) == ()


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("12,5 kg", "kg", 12.5),
        ("1:30", "s", 90.0),
        ("90 s", "s", 90.0),
        ("1.6 km", "m", 1600.0),
        ("24 reps", "reps", 24.0),
    ],
)
def test_a_number_may_carry_its_unit(text: str, unit: str, value: float) -> None:
    assert read_number(text, unit) == pytest.approx(value)


def test_a_usual_week_asks_for_no_results(block_screen: WeekScreen) -> None:
    assert not block_screen.page.preview.results.isVisible()
    block_screen.page.ribbon.show_week(8)
    assert not block_screen.page.preview.results.isVisible()


def _block(desk: Desk) -> TrainingBlock:
    saved = desk.record.block(INES.id)
    assert saved is not None
    return block_from_text(saved.plan, desk.catalog)


def _menu(screen: WeekScreen, weekday: int) -> QMenu:
    hand.click(screen.page.columns[weekday].head())
    assert screen.page.detail.went.isVisible()
    hand.click(screen.page.detail.went)
    menu = screen.flow.menu()
    assert menu is not None
    return menu


def _say(screen: WeekScreen, weekday: int, *words: str) -> None:
    """Choose from the menu of how a day went."""
    menu: QMenu | None = _menu(screen, weekday)
    top = menu
    for word in words:
        assert menu is not None
        action = next(action for action in menu.actions() if action.text() == word)
        if isinstance(action.menu(), QMenu):
            menu = action.menu()  # type: ignore[assignment]  # a QMenu, as the line before says
        else:
            action.trigger()
    assert top is not None
    top.close()
    while screen.flow.marks.solving.is_busy():
        settle()
    settle()
