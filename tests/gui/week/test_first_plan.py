"""From nothing to the first week: who, the questions once, the days, one press."""

from __future__ import annotations

import datetime

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.house.model import QuietHours
from core.house.readiness import QUESTIONS, STOP_SIGNS, readiness
from core.store.commands import RemovePerson
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.week import WeekScreen
from gui.widgets import Notice
from tests.dipper import INES
from tests.gui import hand
from tests.gui.week.conftest import shown
from tests.gui.week.eyes import await_plan


def test_with_nobody_there_is_one_button_and_it_leads_home(empty_desk: Desk, qtbot: QtBot, still_ribbon: None) -> None:
    screen = shown(empty_desk, qtbot)
    jumps: list[Jump] = []
    empty_desk.jump.connect(jumps.append)
    assert screen.nobody.isVisible()
    assert not any(button.isVisible() for button in (screen.print_button, screen.rebuild, screen.again, screen.stop))
    hand.click(screen.nobody.button)
    assert [jump.screen for jump in jumps] == [ScreenName.HOUSEHOLD]
    screen.close_work()


def test_the_questions_come_before_the_first_plan_and_never_again(new_screen: WeekScreen, desk: Desk) -> None:
    assert new_screen.readiness.isVisible()
    assert [notice.sentence() for notice in _notices(new_screen)] == [STOP_SIGNS]
    hand.click(new_screen.readiness.go_on)
    assert desk.settings().ready_on == desk.record.clock().date()
    assert not new_screen.readiness.isVisible()
    assert new_screen.set_up.days.isVisible()
    assert _notices(new_screen) == []


@pytest.mark.parametrize("key", [key for key, _ in QUESTIONS])
def test_a_yes_says_what_to_do_first(new_screen: WeekScreen, key: str) -> None:
    card, advice = new_screen.readiness, readiness(frozenset({key}))
    hand.key(card.boxes[key], Qt.Key.Key_Space)
    assert card.advice.isVisible()
    assert card.advice.sentence() == advice.sentence
    assert card.go_on.label() == ("I have asked, and may train" if advice.ask_first else "Go on")
    hand.key(card.boxes[key], Qt.Key.Key_Space)
    assert not card.advice.isVisible()
    assert card.go_on.label() == "None of these, go on"


def test_three_presses_make_a_first_week(new_screen: WeekScreen, desk: Desk, qtbot: QtBot) -> None:
    hand.click(new_screen.readiness.go_on)
    hand.click(new_screen.set_up.days.starts[0])
    assert [day.weekday for day in desk.wishes().days] == [0, 2, 4]
    _shorten(new_screen)
    hand.click(new_screen.set_up.days.button)
    assert new_screen.stop.isVisible()
    await_plan(new_screen, qtbot)
    assert desk.week() is not None
    assert new_screen.page.isVisible()
    assert new_screen.toast.sentence().startswith("Planned ")
    assert not new_screen.stop.isVisible()
    assert new_screen.again.isVisible()


def test_somebody_new_in_the_household_is_asked_too(screen: WeekScreen, week_desk: Desk) -> None:
    week_desk.choose_person("tomas")
    assert screen.readiness.isVisible()
    hand.key(screen.readiness.boxes["inactive"], Qt.Key.Key_Space)
    hand.click(screen.readiness.go_on)
    assert not any(box.isChecked() for box in screen.readiness.boxes.values())
    assert not screen.readiness.isVisible()
    assert screen.set_up.days.isVisible()
    week_desk.choose_person(INES.id)
    assert screen.page.isVisible()
    week_desk.choose_person("tomas")
    assert not screen.readiness.isVisible()


def test_without_a_day_nothing_is_planned(new_screen: WeekScreen) -> None:
    hand.click(new_screen.readiness.go_on)
    hand.click(new_screen.set_up.days.button)
    assert new_screen.toast.sentence() == "Choose at least one day first."
    assert not new_screen.solving.is_busy()


def test_a_day_is_saved_as_soon_as_it_is_changed(screen: WeekScreen, week_desk: Desk) -> None:
    hand.click(screen.days_button)
    line = screen.set_up.days.lines[0]
    line.minutes.edit.setFocus()
    line.minutes.edit.selectAll()
    hand.type_in(line.minutes.edit, "45")
    hand.key(line.minutes.edit, Qt.Key.Key_Return)
    assert week_desk.wishes().days[0].minutes == 45
    hand.click(screen.set_up.days.lines[3].chip)
    assert [day.weekday for day in week_desk.wishes().days] == [0, 2, 3, 5]
    week_desk.undo()
    assert not screen.set_up.days.lines[3].chip.isChecked()


def test_what_makes_no_sense_is_said_below_its_field_and_kept_there(screen: WeekScreen, week_desk: Desk) -> None:
    hand.click(screen.days_button)
    before = week_desk.wishes()
    line = screen.set_up.days.lines[0]
    line.minutes.edit.selectAll()
    hand.type_in(line.minutes.edit, "2 weeks")
    hand.key(line.minutes.edit, Qt.Key.Key_Return)
    assert line.minutes.fault()
    assert line.minutes.text() == "2 weeks"
    assert week_desk.wishes() == before
    hand.click(screen.set_up.days.button)
    assert not screen.solving.is_busy()


def test_goals_are_saved_at_once_and_say_what_they_come_to(screen: WeekScreen, week_desk: Desk) -> None:
    from gui.week.goals_panel import Much

    hand.click(screen.days_button)
    goals = screen.set_up.goals
    hand.click(goals.chip("run_walk", Much.NONE))
    hand.click(goals.chip("mobility", Much.A_LOT))
    assert week_desk.wishes().goals.run_walk == 0
    assert "run" not in goals.summary()
    assert "on 3\u00a0days" in goals.summary()
    for name in ("loaded_walk", "mobility", "strength"):
        hand.click(goals.chip(name, Much.NONE))
    assert goals.fault.isVisible()
    assert week_desk.wishes().goals.strength > 0


def test_quiet_hours_are_saved_when_both_ends_are_there(screen: WeekScreen, week_desk: Desk) -> None:
    hand.click(screen.days_button)
    cabin = screen.set_up.quiet.lines[0]
    assert cabin.place.quiet is None
    hand.type_in(cabin.start.edit, "21:30")
    hand.key(cabin.start.edit, Qt.Key.Key_Return)
    assert week_desk.house().places[0].quiet is None
    hand.type_in(cabin.end.edit, "6")
    hand.key(cabin.end.edit, Qt.Key.Key_Return)
    assert week_desk.house().places[0].quiet == QuietHours(start=datetime.time(21, 30), end=datetime.time(6))
    assert cabin.end.text() == "06:00"
    week_desk.undo()
    assert cabin.start.text() == cabin.end.text() == ""


def test_a_time_that_is_none_is_said_and_kept(screen: WeekScreen, week_desk: Desk) -> None:
    hand.click(screen.days_button)
    towpath = screen.set_up.quiet.lines[1]
    towpath.start.edit.selectAll()
    hand.type_in(towpath.start.edit, "dusk")
    hand.key(towpath.start.edit, Qt.Key.Key_Return)
    assert "no time of day" in towpath.end.fault()
    assert towpath.start.text() == "dusk"
    assert week_desk.house().places[1].quiet == QuietHours(start=datetime.time(20), end=datetime.time(7))


def test_when_the_last_person_goes_the_screen_says_where_to_begin(screen: WeekScreen, week_desk: Desk) -> None:
    assert week_desk.do(RemovePerson(INES.id))
    assert screen.readiness.isVisible() or screen.set_up.isVisible()
    assert week_desk.do(RemovePerson("tomas"))
    assert screen.nobody.isVisible()


def _notices(screen: WeekScreen) -> list[Notice]:
    return [notice for notice in screen.findChildren(Notice) if notice.isVisible()]


def _shorten(screen: WeekScreen) -> None:
    """Two short days are planned sooner."""
    hand.click(screen.set_up.days.lines[4].chip)
    for line in screen.set_up.days.lines:
        if line.chip.isChecked():
            line.minutes.edit.selectAll()
            hand.type_in(line.minutes.edit, "20")
            hand.key(line.minutes.edit, Qt.Key.Key_Return)
