"""The week screen over the small household of the Dipper, with three short days that are planned once for all tests."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from core.house.wishes import DayWish, WeekWishes
from core.knowledge import Catalog
from core.plan.model import Week, WeekRequest
from core.store.commands import ChangeSettings, SetWishes
from gui.desk.desk import Desk
from gui.week import WeekScreen
from gui.week.ribbon import Ribbon
from tests.dipper import INES, dipper
from tests.gui.looking import settle, show_at

TODAY = datetime.date(2026, 5, 4)
WISHES = WeekWishes(
    days=(
        DayWish(weekday=0, minutes=30),
        DayWish(weekday=2, minutes=20),
        DayWish(weekday=5, minutes=30),
    )
)


@pytest.fixture(scope="session")
def planned(catalog: Catalog) -> Week:
    """The week of those days."""
    from core.plan.week import plan_week

    return plan_week(WeekRequest(wishes=WISHES), dipper(), INES, catalog)


@pytest.fixture
def ready_desk(desk: Desk) -> Desk:
    """Ines has answered the questions and chosen her days, but has no week yet."""
    assert desk.do(ChangeSettings(replace(desk.settings(), ready_on=TODAY)))
    assert desk.do(SetWishes(INES.id, WISHES))
    return desk


@pytest.fixture
def week_desk(ready_desk: Desk, planned: Week) -> Desk:
    """The same with her week."""
    assert ready_desk.save_week(planned, TODAY)
    return ready_desk


@pytest.fixture
def still_ribbon(monkeypatch: pytest.MonkeyPatch) -> None:
    """The block is not planned: most tests have no use for eight more weeks."""
    monkeypatch.setattr(Ribbon, "refresh", lambda _ribbon: None)


def shown(desk: Desk, qtbot: QtBot) -> WeekScreen:
    """The screen in a window of 1280 x 800, wired as the window wires it."""
    made = WeekScreen(desk)
    desk.said.connect(lambda sentence, undo: made.toast.say(sentence, undo=undo))
    made.toast.undo_wanted.connect(desk.undo)
    qtbot.addWidget(made)
    show_at(made, 1096, 800)
    made.activateWindow()
    settle()
    return made


@pytest.fixture
def screen(week_desk: Desk, qtbot: QtBot, still_ribbon: None) -> Iterator[WeekScreen]:
    """The screen on her week."""
    made = shown(week_desk, qtbot)
    yield made
    made.close_work()


@pytest.fixture
def new_screen(desk: Desk, qtbot: QtBot, still_ribbon: None) -> Iterator[WeekScreen]:
    """The screen of somebody who has never planned."""
    made = shown(desk, qtbot)
    yield made
    made.close_work()
