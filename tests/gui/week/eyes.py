"""Eyes and hands for the week screen: what stands where, as a person would look for it."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from core.plan.model import DayKind, DayPlan
from gui.desk.wording import NO_BREAK
from gui.week import WeekScreen
from gui.widgets import BlockCard
from tests.gui import hand

PLANNING_MS = 30_000


def plain(text: str) -> str:
    """`text` with ordinary spaces."""
    return text.replace(NO_BREAK, " ")


def strength_day(screen: WeekScreen) -> DayPlan:
    """The first day of strength."""
    week = screen.week()
    assert week is not None
    return next(day for day in week.days if day.kind is DayKind.STRENGTH)


def first_card(screen: WeekScreen) -> BlockCard:
    """The first movement of the first day of strength."""
    return screen.page.columns[strength_day(screen).weekday].cards()[0]


def open_first(screen: WeekScreen) -> str:
    """Press the first movement; returns its id in the catalog."""
    hand.click(first_card(screen))
    return strength_day(screen).blocks[0].exercise.id


def chips(screen: WeekScreen) -> list[str]:
    """What is listed as kept and left out."""
    return [chip.accessibleName() for chip in screen.page.kept.chips()] if screen.page.kept.isVisible() else []


def await_plan(screen: WeekScreen, qtbot: QtBot) -> None:
    """Wait until nothing is planned any more."""
    qtbot.waitUntil(lambda: not screen.solving.is_busy(), timeout=PLANNING_MS)
