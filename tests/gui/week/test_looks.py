"""The week screen in every state and size: no word cut, every place named, nothing past the edge."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.house.wishes import Pin
from core.quantity.display import UnitSystem
from core.store.commands import ChangeSettings, ChangeThing, SetWishes
from core.store.values import Units
from gui.desk.desk import Desk
from gui.gallery.stage import LONG_NAME
from gui.theme import Theme, ThemeMode
from gui.week import WeekScreen
from tests.dipper import INES
from tests.gui import hand
from tests.gui.looking import clipped_labels, nameless, settle, show_at
from tests.gui.week.conftest import WISHES
from tests.gui.week.eyes import open_first, plain, strength_day

SIZES = ((840, 700), (1096, 800), (1736, 1200))
"""The windows of 1024 to 1920 less the sidebar."""


def test_the_week_is_whole_at_every_size(screen: WeekScreen, theme: Theme) -> None:
    _look(screen)
    theme.set_mode(ThemeMode.DARK)
    _look(screen)


def test_opened_details_are_whole_and_leave_the_days_in_sight(screen: WeekScreen, week_desk: Desk) -> None:
    block = strength_day(screen).blocks[1].exercise.id
    pins = (Pin(weekday=strength_day(screen).weekday, exercise_id=block),)
    assert week_desk.do(SetWishes(INES.id, replace(WISHES, pins=pins, bans=("push_up",))))
    open_first(screen)
    _look(screen)
    hand.click(screen.page.columns[strength_day(screen).weekday].head())
    _look(screen)
    show_at(screen, *SIZES[0])
    assert screen.page.detail.visibleRegion().boundingRect().height() <= screen.page.height() / 2


def test_set_up_and_questions_are_whole_at_every_size(new_screen: WeekScreen) -> None:
    for box in new_screen.readiness.boxes.values():
        box.setChecked(True)
    _look(new_screen)
    hand.click(new_screen.readiness.go_on)
    _look(new_screen)


def test_long_names_are_cut_on_the_blocks_and_whole_in_the_details(week_desk: Desk, screen: WeekScreen) -> None:
    for thing in week_desk.house().things:
        assert week_desk.do(ChangeThing(replace(thing, name=f"{thing.name}, {LONG_NAME}"[:80])))
    _look(screen)


def test_the_page_never_scrolls_sideways(screen: WeekScreen) -> None:
    for size in SIZES:
        show_at(screen, *size)
        last = screen.page.columns[-1]
        right = last.mapTo(screen, last.rect().topRight()).x()
        assert right <= screen.width()
        assert all(column.width() >= 96 for column in screen.page.columns)


def test_american_readers_get_pounds(screen: WeekScreen, week_desk: Desk) -> None:
    assert week_desk.do(ChangeSettings(replace(week_desk.settings(), units=Units.US)))
    assert week_desk.units() is UnitSystem.US
    words = [plain(card.accessibleName()) for column in screen.page.columns for card in column.cards()]
    assert any(" lb ± " in word for word in words)
    assert not any(" kg ± " in word for word in words)


def test_doses_are_tidy(screen: WeekScreen) -> None:
    words = [plain(card.view().detail) for column in screen.page.columns for card in column.cards()]
    assert not any(word.startswith("1 ×") for word in words)
    assert all("None" not in word and "_" not in word for word in words)


@pytest.mark.parametrize("press", ["again", "days_button", "print_button", "calendar_button"])
def test_the_buttons_say_what_they_do(screen: WeekScreen, press: str) -> None:
    assert getattr(screen, press).isVisible()
    assert getattr(screen, press).label()


def _look(screen: WeekScreen) -> None:
    for width, height in SIZES:
        show_at(screen, width, height)
        settle(40)
        assert clipped_labels(screen) == [], f"at {width} x {height}"
        assert nameless(screen) == []
        assert (screen.width(), screen.height()) == (width, height)
