"""A session goes to another day by a drag, by keys or from a menu; minutes, place and start go along."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from core.house.wishes import DayWish, Pin
from core.plan.model import DayKind, DayPlan
from core.store.commands import SetPins
from gui.desk.desk import Desk
from gui.week import WeekScreen
from tests.dipper import INES
from tests.gui import hand
from tests.gui.looking import settle
from tests.gui.week.eyes import await_plan

MONDAY, TUESDAY, THURSDAY, SATURDAY, SUNDAY = 0, 1, 3, 5, 6


def test_a_session_is_dragged_to_a_free_day(screen: WeekScreen, week_desk: Desk) -> None:
    before = _exercises(screen, SATURDAY)
    _drag(screen, SATURDAY, SUNDAY)
    assert _exercises(screen, SUNDAY) == before
    assert _week_kind(screen, SATURDAY) is DayKind.REST
    assert week_desk.wishes().days[2] == DayWish(weekday=SUNDAY, minutes=30)
    assert screen.toast.sentence() == "Moved easy run or walk from Saturday to Sunday, in every week"


def test_the_day_below_a_drag_is_marked_until_it_ends(screen: WeekScreen) -> None:
    head = screen.page.columns[MONDAY].head()
    hand.press(head, head.rect().center())
    hand.move(head, _to(screen, head, THURSDAY))
    assert [column.is_target() for column in screen.page.columns] == [at == THURSDAY for at in range(7)]
    hand.key(head, Qt.Key.Key_Escape)
    assert not any(column.is_target() for column in screen.page.columns)
    hand.release(head, head.rect().center())
    assert _week_kind(screen, MONDAY) is not DayKind.REST


def test_let_go_beside_the_days_nothing_moves(screen: WeekScreen, week_desk: Desk) -> None:
    before = week_desk.wishes()
    head = screen.page.columns[MONDAY].head()
    hand.press(head, head.rect().center())
    hand.move(head, QPoint(10, -200))
    hand.release(head, QPoint(10, -200))
    assert week_desk.wishes() == before
    assert not screen.page.detail.isVisible()


def test_keys_do_what_a_drag_does(screen: WeekScreen) -> None:
    before, alt = _exercises(screen, SATURDAY), Qt.KeyboardModifier.AltModifier
    saturday, sunday = (screen.page.columns[day].head() for day in (SATURDAY, SUNDAY))
    assert "Alt" in saturday.accessibleDescription()
    saturday.setFocus()
    hand.key(saturday, Qt.Key.Key_Right, alt)
    _await(screen)
    assert _exercises(screen, SUNDAY) == before
    assert sunday.hasFocus()
    hand.key(sunday, Qt.Key.Key_Right, alt)
    _await(screen)
    assert _exercises(screen, SUNDAY) == before
    hand.key(sunday, Qt.Key.Key_Left, alt)
    _await(screen)
    assert _exercises(screen, SATURDAY) == before


def test_the_menu_of_an_opened_day_names_the_other_days(screen: WeekScreen) -> None:
    before = _exercises(screen, SATURDAY)
    hand.click(screen.page.columns[SATURDAY].head())
    hand.click(screen.page.detail.move_button)
    menu = screen.flow.menu()
    assert menu is not None
    assert [action.text() for action in menu.actions()][-2:] == ["To Friday", "To Sunday"]
    menu.actions()[-1].trigger()
    menu.close()
    _await(screen)
    assert _exercises(screen, SUNDAY) == before
    assert screen.page.detail.title().startswith("Sunday")


def test_one_undo_takes_the_move_back(screen: WeekScreen, week_desk: Desk) -> None:
    wishes, before = week_desk.wishes(), _exercises(screen, SATURDAY)
    _drag(screen, SATURDAY, THURSDAY)
    assert week_desk.wishes() != wishes
    screen.toast.undo_wanted.emit()
    assert week_desk.wishes() == wishes
    assert _exercises(screen, SATURDAY) == before


def test_a_moved_week_needs_no_new_plan(screen: WeekScreen) -> None:
    _drag(screen, SATURDAY, SUNDAY)
    assert screen.again.isVisible()
    assert not screen.rebuild.isVisible()


def test_pins_move_with_their_day(screen: WeekScreen, week_desk: Desk) -> None:
    kind = _week_kind(screen, SATURDAY).value
    assert week_desk.do(SetPins(INES.id, (Pin(weekday=SATURDAY, kind=kind),)))
    _drag(screen, SATURDAY, SUNDAY)
    assert week_desk.wishes().pins == (Pin(weekday=SUNDAY, kind=kind),)


def test_two_days_of_training_change_places(screen: WeekScreen, week_desk: Desk) -> None:
    monday, wednesday = _exercises(screen, 0), _exercises(screen, 2)
    _drag(screen, 0, 2)
    assert (_exercises(screen, 0), _exercises(screen, 2)) == (wednesday, monday)
    assert [day.minutes for day in week_desk.wishes().days] == [20, 30, 30]


def test_a_move_against_the_rules_says_why_and_can_be_planned_around(
    screen: WeekScreen, week_desk: Desk, qtbot: QtBot
) -> None:
    strength = [day.weekday for day in _days(screen) if day.kind is DayKind.STRENGTH]
    assert len(strength) == 2, "two days of strength can come too near each other"
    source, other = strength[0], strength[1]
    target = (other + 1) % 7
    before = week_desk.wishes()
    _drag(screen, source, target)
    assert week_desk.wishes() == before
    assert "again within 48 hours" in screen.toast.sentence()
    assert "_" not in screen.toast.sentence()
    screen.toast.action_wanted.emit()
    assert Pin(weekday=target, kind="strength") in week_desk.wishes().pins
    await_plan(screen, qtbot)
    if screen.page.isVisible():
        assert _week_kind(screen, target) is DayKind.STRENGTH
    else:
        assert screen.clash.isVisible()


def test_a_day_of_rest_has_nothing_to_drag(screen: WeekScreen, week_desk: Desk) -> None:
    before = week_desk.wishes()
    _drag(screen, TUESDAY, SATURDAY)
    assert week_desk.wishes() == before


def _days(screen: WeekScreen) -> tuple[DayPlan, ...]:
    week = screen.week()
    assert week is not None
    return week.days


def _week_kind(screen: WeekScreen, weekday: int) -> DayKind:
    return _days(screen)[weekday].kind


def _exercises(screen: WeekScreen, weekday: int) -> list[str]:
    return [block.exercise.id for block in _days(screen)[weekday].blocks]


def _to(screen: WeekScreen, head: QAbstractButton, weekday: int) -> QPoint:
    column = screen.page.columns[weekday]
    return head.mapFromGlobal(column.mapToGlobal(column.rect().center()))


def _drag(screen: WeekScreen, source: int, target: int) -> None:
    head = screen.page.columns[source].head()
    hand.press(head, head.rect().center())
    hand.move(head, head.rect().center() + QPoint(30, 0))
    hand.move(head, _to(screen, head, target))
    hand.release(head, _to(screen, head, target))
    _await(screen)


def _await(screen: WeekScreen) -> None:
    """Until what was moved is kept, or refused."""
    settle()
    while screen.moves.solving.is_busy():
        settle()
