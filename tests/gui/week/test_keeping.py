"""Keeping, leaving out and swapping a movement where it stands, and taking each of it back."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.house.wishes import Pin
from gui.desk.desk import Desk, Jump
from gui.shell.entry import ScreenName
from gui.week import WeekScreen
from tests.gui import hand
from tests.gui.week.eyes import await_plan, chips, first_card, open_first, plain, strength_day


def test_a_pressed_block_says_what_why_and_how(screen: WeekScreen) -> None:
    open_first(screen)
    block = strength_day(screen).blocks[0]
    detail = screen.page.detail
    assert detail.isVisible()
    assert block.exercise.name in detail.title()
    assert detail.headings() == ("What", "Why this?", "How")
    assert plain(detail.column("Why this?")).splitlines() == list(block.why)
    assert f"Effort {block.dose.effort:g} of 10" in plain(detail.column("What"))
    hand.click(detail.close_button)
    assert not detail.isVisible()


def test_a_load_is_said_with_its_doubt_and_its_fill(screen: WeekScreen) -> None:
    week = screen.week()
    assert week is not None
    loaded = [(day, block) for day in week.days for block in day.blocks if block.binding.load is not None]
    assert loaded
    for day, block in loaded:
        card = next(
            card for card in screen.page.columns[day.weekday].cards() if block.exercise.id in card.view().block_id
        )
        assert block.binding.load is not None
        words = plain(card.view().detail)
        assert "kg ± " in words
        assert all(part.name in words for part in block.binding.load.recipe.parts)
        assert all("at " in words for part in block.binding.load.recipe.parts if part.fill_l)


def test_a_pin_is_kept_listed_and_let_go(screen: WeekScreen, week_desk: Desk) -> None:
    exercise_id = open_first(screen)
    hand.click(screen.page.detail.pin)
    assert week_desk.wishes().pins == (Pin(weekday=strength_day(screen).weekday, exercise_id=exercise_id),)
    assert first_card(screen).view().pinned
    assert [name.partition(" keeping ")[0] for name in chips(screen)] == ["Stop"]
    assert screen.rebuild.isVisible()
    assert not screen.again.isVisible()
    hand.click(screen.page.kept.chips()[0])
    assert week_desk.wishes().pins == ()
    assert chips(screen) == []
    assert screen.again.isVisible()


def test_a_kind_of_day_is_kept(screen: WeekScreen, week_desk: Desk) -> None:
    day = strength_day(screen)
    hand.click(screen.page.columns[day.weekday].head())
    assert "Why this day?" in screen.page.detail.headings()
    hand.click(screen.page.detail.pin)
    assert week_desk.wishes().pins == (Pin(weekday=day.weekday, kind="strength"),)
    assert "You asked to keep it here." in plain(screen.page.detail.column("Why this day?"))


def test_a_movement_left_out_is_gone_from_the_next_plan_and_can_come_back(
    screen: WeekScreen, week_desk: Desk, qtbot: QtBot
) -> None:
    exercise_id = open_first(screen)
    hand.click(screen.page.detail.ban)
    assert week_desk.wishes().bans == (exercise_id,)
    assert "stays out from the next plan on" in screen.toast.sentence()
    assert first_card(screen).view().block_id.endswith(exercise_id)
    hand.click(screen.rebuild)
    await_plan(screen, qtbot)
    week = screen.week()
    assert week is not None
    assert exercise_id not in {block.exercise.id for day in week.days for block in day.blocks}
    assert screen.toast.sentence().endswith("he rest stayed.")
    hand.click(screen.page.kept.chips()[0])
    assert week_desk.wishes().bans == ()


def test_everything_can_be_undone(screen: WeekScreen, week_desk: Desk) -> None:
    before = week_desk.wishes()
    open_first(screen)
    hand.click(screen.page.detail.ban)
    assert week_desk.wishes() != before
    screen.toast.undo_wanted.emit()
    assert week_desk.wishes() == before
    assert chips(screen) == []


def test_a_swap_is_asked_on_its_own_screen(screen: WeekScreen, week_desk: Desk) -> None:
    jumps: list[Jump] = []
    week_desk.jump.connect(jumps.append)
    exercise_id = open_first(screen)
    hand.click(screen.page.detail.swap)
    weekday = strength_day(screen).weekday
    assert jumps == [Jump(screen=ScreenName.SWAP, exercise_id=exercise_id, weekday=weekday)]


def test_the_same_deeds_are_under_the_right_button(screen: WeekScreen, week_desk: Desk) -> None:
    card = first_card(screen)
    screen.page.menu_wanted.emit(card.view().block_id, card.mapToGlobal(card.rect().center()))
    menu = screen.flow.menu()
    assert menu is not None
    labels = [action.text() for action in menu.actions()]
    assert labels == ["Swap it", "Keep it on this day", "Not this one"]
    menu.actions()[1].trigger()
    assert len(week_desk.wishes().pins) == 1
    menu.close()


def test_arrows_walk_the_week_and_return_opens_a_block(screen: WeekScreen) -> None:
    first = first_card(screen)
    first.setFocus()
    hand.key(first, Qt.Key.Key_Down)
    second = screen.page.columns[strength_day(screen).weekday].cards()[1]
    assert second.hasFocus()
    hand.key(second, Qt.Key.Key_Return)
    assert second.is_open()
    hand.key(second, Qt.Key.Key_Right)
    assert not second.hasFocus()
