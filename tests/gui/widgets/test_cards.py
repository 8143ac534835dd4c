"""Cards: things, days, blocks, weeks, cautions, empty states, undo lines, twins."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible, QHelpEvent
from PySide6.QtWidgets import QApplication, QTableWidget
from pytestqt.qtbot import QtBot

from gui.gallery.week import days
from gui.theme import LIGHT, Family, MovePicture, ThingPicture
from gui.widgets import (
    BlockCard,
    BlockView,
    Card,
    DayColumn,
    DayView,
    EffortBars,
    EmptyState,
    LadderView,
    LinkButton,
    Notice,
    Page,
    TableTwin,
    ThingCard,
    ThingView,
    ToastLine,
    Tone,
    Twin,
    WeekMark,
)
from gui.widgets.toast import SHOWN_MS
from tests.gui import hand
from tests.gui.looking import settle, show_at, shows

COAL = ThingView(
    thing_id="coal",
    title="Coal bag",
    line="10.2 kg ± 0.1",
    detail="fixed",
    chip="weighed 3 Nov",
    chip_tone=Tone.GOOD,
    picture=ThingPicture.SACK,
)


def test_a_click_chooses_a_thing_and_shows_it_chosen(qtbot: QtBot) -> None:
    card = ThingCard(COAL)
    qtbot.addWidget(card)
    card.show()
    with qtbot.waitSignal(card.chosen) as told:
        hand.click(card)
    assert told.args == ["coal"]
    assert card.isChecked()
    assert shows(card, LIGHT.accent)


def test_a_double_click_or_enter_opens_a_thing(qtbot: QtBot) -> None:
    card = ThingCard(COAL)
    qtbot.addWidget(card)
    card.show()
    with qtbot.waitSignal(card.opened) as told:
        hand.double_click(card)
    assert told.args == ["coal"]
    with qtbot.waitSignals([card.chosen, card.opened]):
        hand.key(card, Qt.Key.Key_Return)


def test_a_thing_is_spoken_whole(qtbot: QtBot) -> None:
    card = ThingCard(COAL)
    qtbot.addWidget(card)
    heard = QAccessible.queryAccessibleInterface(card)
    assert heard.text(QAccessible.Text.Name) == "Coal bag, 10.2 kg ± 0.1, fixed, weighed 3 Nov"


def test_only_what_was_shortened_is_told_as_a_tip(qtbot: QtBot) -> None:
    long = "The <second-best> enamelled water carrier that stood under the foredeck"
    card = ThingCard(ThingView(thing_id="x", title=long, line="12 kg", detail="fixed"))
    qtbot.addWidget(card)
    show_at(card, 220, 110)
    QApplication.sendEvent(card, QHelpEvent(QHelpEvent.Type.ToolTip, QPoint(90, 20), card.mapToGlobal(QPoint(90, 20))))
    assert card.toolTip() == long.replace("<", "&lt;").replace(">", "&gt;")


def test_a_block_grows_with_its_words(qtbot: QtBot) -> None:
    short = BlockCard(BlockView(block_id="1", title="Bent row", detail="4 × 10", family=Family.PULL))
    long = BlockCard(BlockView(block_id="2", title="Bent row " * 8, detail="4 × 10", family=Family.PULL))
    for card in (short, long):
        qtbot.addWidget(card)
    assert long.heightForWidth(120) > short.heightForWidth(120) > 20
    assert long.heightForWidth(400) < long.heightForWidth(120)


def test_every_block_of_a_day_gets_the_height_it_needs(qtbot: QtBot) -> None:
    column = DayColumn(days(long=True)[1])
    qtbot.addWidget(column)
    for width in (100, 130, 180):
        show_at(column, width, 700)
        cards = column.findChildren(BlockCard)
        assert len(cards) == 4
        assert all(card.height() >= card.heightForWidth(card.width()) for card in cards)


def test_a_block_pressed_in_a_day_is_told_by_its_id(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    with qtbot.waitSignal(column.block_chosen) as told:
        hand.click(column.findChildren(BlockCard)[2])
    assert told.args == ["3"]


def test_a_block_offers_its_menu_where_the_pointer_is(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    card = column.findChildren(BlockCard)[0]
    with qtbot.waitSignal(column.block_menu_wanted) as told:
        card.customContextMenuRequested.emit(QPoint(3, 4))
    assert told.args == ["1", card.mapToGlobal(QPoint(3, 4))]


def test_another_day_takes_the_place_of_the_old_blocks(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    column.show_day(DayView(name="Thu", minutes_text="", kind="Rest", rest=True))
    settle()
    assert column.findChildren(BlockCard) == []
    assert not shows(column, LIGHT.surface)


def test_a_week_pressed_is_told_by_its_place(qtbot: QtBot) -> None:
    bars = EffortBars(tuple(WeekMark(label=str(n), share=n / 4, spoken=f"{n} of 4") for n in range(1, 5)))
    qtbot.addWidget(bars)
    show_at(bars, 400, 80)
    week = bars.childAt(250, 40)
    assert week is not None
    with qtbot.waitSignal(bars.week_chosen) as told:
        hand.click(week)
    assert told.args == [2]


def test_the_present_week_is_in_accent(qtbot: QtBot) -> None:
    bars = EffortBars((WeekMark(label="1", share=0.5, spoken="half"), WeekMark(label="2", share=1.0, spoken="all")))
    qtbot.addWidget(bars)
    show_at(bars, 300, 80)
    assert not shows(bars, LIGHT.accent)
    bars.show_weeks((WeekMark(label="2", share=1.0, spoken="all", current=True),))
    settle()
    assert shows(bars, LIGHT.accent)


def test_a_notice_without_a_sentence_is_not_there(qtbot: QtBot) -> None:
    card = Card()
    notice = Notice("", parent=card)
    card.body.addWidget(notice)
    qtbot.addWidget(card)
    card.show()
    assert not notice.isVisible()
    notice.show_sentence("Dusty and can split.")
    assert notice.isVisible()
    assert notice.accessibleName() == "Caution: Dusty and can split."
    assert shows(notice, LIGHT.fair)


def test_an_empty_state_has_one_button_that_acts(qtbot: QtBot) -> None:
    empty = EmptyState(MovePicture.SQUAT, "No week yet", "Say which days you train and how long.", "Plan a week")
    qtbot.addWidget(empty)
    empty.show()
    with qtbot.waitSignal(empty.acted):
        hand.click(empty.button)


def test_an_undo_line_says_offers_and_goes(qtbot: QtBot) -> None:
    toast = ToastLine()
    qtbot.addWidget(toast)
    assert not toast.isVisible()
    toast.say("Coal bag taken off the list.", undo=True)
    toast.resize(500, 40)
    assert (toast.isVisible(), toast.sentence()) == (True, "Coal bag taken off the list.")
    undo = toast.findChild(LinkButton)
    assert isinstance(undo, LinkButton)
    with qtbot.waitSignal(toast.undo_wanted):
        hand.click(undo)
    assert not toast.isVisible()


def test_without_something_to_undo_there_is_no_button(qtbot: QtBot) -> None:
    toast = ToastLine()
    qtbot.addWidget(toast)
    toast.say("Nothing to take back.")
    undo = toast.findChild(LinkButton)
    assert isinstance(undo, LinkButton)
    assert not undo.isVisible()


def test_an_undo_line_goes_by_itself_and_leaves_no_timer(qtbot: QtBot) -> None:
    page = Page("Things")
    qtbot.addWidget(page)
    show_at(page, 600, 400)
    toast = page.toast
    toast.say("Saved.")
    assert toast._timer.interval() == SHOWN_MS
    toast._timer.setInterval(20)
    toast._timer.start()
    qtbot.waitUntil(lambda: not toast.isVisible())
    assert not toast._timer.isActive()


def test_a_twin_says_the_same_as_a_table(qtbot: QtBot) -> None:
    chart = LadderView(Qt.Orientation.Horizontal)
    twin = Twin(caption="Loads", columns=("load", "how"), rows=(("12.7 kg", "carrier A"), ("10.2 kg", "coal bag")))
    both = TableTwin(chart, twin)
    qtbot.addWidget(both)
    show_at(both, 500, 300)
    assert chart.isVisible()
    assert chart.accessibleDescription() == "12.7 kg, carrier A; 10.2 kg, coal bag"
    switch = both.findChild(LinkButton)
    assert isinstance(switch, LinkButton)
    hand.click(switch)
    assert both.shows_table()
    table = both.findChild(QTableWidget)
    assert isinstance(table, QTableWidget)
    cell = table.item(1, 1)
    assert cell is not None
    assert cell.text() == "coal bag"
    assert switch.label() == "Show as picture"
    hand.click(switch)
    assert chart.isVisible()


def test_a_line_may_bring_a_next_step_and_then_goes(qtbot: QtBot) -> None:
    toast = ToastLine()
    qtbot.addWidget(toast)
    toast.say("Split squat is pinned to Monday.", undo=True, action="Rebuild now")
    toast.resize(500, 40)
    button = next(one for one in toast.findChildren(LinkButton) if one.label() == "Rebuild now")
    with qtbot.waitSignal(toast.action_wanted):
        hand.click(button)
    assert not toast.isVisible()
    toast.say("Saved.")
    assert not button.isVisible()


def test_the_head_of_a_day_is_pressed_and_a_rest_day_has_nothing_to_press(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    with qtbot.waitSignal(column.head_chosen):
        hand.click(column.head())
    with qtbot.waitSignal(column.head_chosen):
        hand.key(column.head(), Qt.Key.Key_Return)
    column.show_day(DayView(name="Thu", minutes_text="", kind="Rest", rest=True))
    assert not column.head().isEnabled()


def test_arrows_walk_the_blocks_of_a_day_and_tab_stops_in_them_once(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    column.activateWindow()
    column.take_focus(0)
    cards = column.cards()
    qtbot.waitUntil(cards[0].hasFocus)
    hand.key(cards[0], Qt.Key.Key_Down)
    assert cards[1].hasFocus()
    assert [bool(card.focusPolicy() & Qt.FocusPolicy.TabFocus) for card in cards] == [False, True, False, False]
    with qtbot.waitSignal(column.beside_wanted) as told:
        hand.key(cards[1], Qt.Key.Key_Right)
    assert told.args == [1, 1]
    hand.key(cards[1], Qt.Key.Key_Up)
    hand.key(cards[0], Qt.Key.Key_Up)
    assert column.head().hasFocus()
    hand.key(column.head(), Qt.Key.Key_Down)
    assert cards[0].hasFocus()


def test_the_block_whose_details_are_shown_is_marked(qtbot: QtBot) -> None:
    column = DayColumn(days(long=False)[1])
    qtbot.addWidget(column)
    show_at(column, 160, 500)
    column.show_open("3")
    assert [card.is_open() for card in column.cards()] == [False, False, True, False]
    assert shows(column.cards()[2], LIGHT.accent)
    column.show_open("")
    assert not any(card.is_open() for card in column.cards())


def test_return_presses_a_week_and_a_week_looked_at_says_so(qtbot: QtBot) -> None:
    marks = (
        WeekMark(label="1", share=0.5, spoken="week 1", current=True),
        WeekMark(label="2", share=1.0, spoken="week 2", looked_at=True),
    )
    bars = EffortBars(marks)
    qtbot.addWidget(bars)
    show_at(bars, 300, 80)
    week = bars.childAt(250, 40)
    assert week is not None
    assert week.accessibleName() == "2, week 2, looked at"
    with qtbot.waitSignal(bars.week_chosen) as told:
        hand.key(week, Qt.Key.Key_Return)
    assert told.args == [1]
