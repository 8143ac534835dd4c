"""The week screen over the invented household, in every state worth a look."""

from __future__ import annotations

import datetime
from dataclasses import replace

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QWidget

from core.house.readiness import QUESTIONS
from core.house.wishes import Pin, WeekWishes
from core.plan.model import DayKind, Week, WeekRequest
from core.plan.week import plan_week
from core.store.commands import ChangePlace, ChangeSettings, ChangeThing, SavePlan, SetWishes
from gui.desk.desk import Desk
from gui.gallery.stage import LONG_NAME, NOON, Stage
from gui.states import ShownState
from gui.week import WeekScreen
from gui.week.planning import PlanOrder, keep
from gui.week.solving import Brake, Solving

THURSDAY = Pin(weekday=3, kind="strength")
"""A day without minutes in the invented household."""
MOST_WAIT_MS = 60_000


def week_screen_page(state: ShownState) -> QWidget:
    """Nobody yet; a planned week; one with long names; the readiness questions with one answered yes."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is ShownState.LONG:
        lengthen(stage.desk)
    if state in {ShownState.DEMO, ShownState.LONG}:
        plan(stage.desk)
    screen = _made(stage.desk)
    if state is ShownState.REFUSED:
        screen.readiness.boxes[QUESTIONS[0][0]].setChecked(True)
    return stage.bear(screen)


def details_page(state: ShownState) -> QWidget:
    """A block opened, with something kept and something left out; long: a whole day opened; refused: a clash."""
    stage = Stage(demo=True)
    desk = stage.desk
    if state is ShownState.LONG:
        lengthen(desk)
    week = plan(desk)
    day = next(day for day in week.days if day.kind is DayKind.STRENGTH)
    first, last = day.blocks[0].exercise.id, day.blocks[-1].exercise.id
    _wish(desk, replace(desk.wishes(), pins=(Pin(weekday=day.weekday, exercise_id=first),), bans=(last,)))
    screen = _made(desk)
    column = screen.page.columns[day.weekday]
    if state is ShownState.REFUSED:
        _wish(desk, replace(desk.wishes(), pins=(THURSDAY,)))
        screen.plan_now()
        _await(screen.solving)
    elif state is ShownState.LONG:
        column.head().click()
    else:
        column.cards()[0].click()
    return stage.bear(screen)


def preview_page(state: ShownState) -> QWidget:
    """A building week of the block; refused: the retest."""
    stage = Stage(demo=True)
    plan(stage.desk)
    screen = _made(stage.desk)
    screen.page.ribbon.show_week(8 if state is ShownState.REFUSED else 3)
    return stage.bear(screen)


def set_up_page(state: ShownState) -> QWidget:
    """Days, goals and quiet hours: none chosen yet; as wished; with long names; with what makes no sense."""
    stage = Stage(demo=True)
    desk = stage.desk
    _ready(desk)
    if state is ShownState.EMPTY:
        _wish(desk, WeekWishes())
    if state is ShownState.LONG:
        for place in desk.house().places:
            desk.do(ChangePlace(replace(place, name=f"{place.name}, {LONG_NAME}"[:80])))
    screen = WeekScreen(desk)
    if state is ShownState.REFUSED:
        line = screen.set_up.days.lines[0]
        for field, text in ((line.minutes, "2 weeks"), (line.start, "dusk")):
            field.edit.setText(text)
            field.edit.editingFinished.emit()
    return stage.bear(screen)


def lengthen(desk: Desk) -> None:
    """Long names for every thing."""
    for thing in desk.house().things:
        desk.do(ChangeThing(replace(thing, name=f"{thing.name}, {LONG_NAME}"[:80])))


def plan(desk: Desk) -> Week:
    """A week as the person would have it, planned here and now, in a block that is in its second week."""
    person = desk.person()
    if person is None:
        raise ValueError("the invented household has somebody who trains")
    _ready(desk)
    request = WeekRequest(wishes=desk.wishes())
    week = plan_week(request, desk.house(), person, desk.catalog)
    today = NOON.date()
    order = PlanOrder(
        request=request,
        house=desk.house(),
        person=person,
        catalog=desk.catalog,
        today=today,
        starts=today - datetime.timedelta(weeks=2),
    )
    kept = keep(order, week, Brake())
    desk.do(SavePlan(person.id, kept.saved_week, kept.saved_block))
    return week


def _made(desk: Desk) -> WeekScreen:
    """The screen, its block read."""
    screen = WeekScreen(desk)
    _await(screen.page.ribbon.solving)
    return screen


def _ready(desk: Desk) -> None:
    desk.do(ChangeSettings(replace(desk.settings(), ready_on=NOON.date())))


def _wish(desk: Desk, wishes: WeekWishes) -> None:
    person = desk.person()
    if person is not None:
        desk.do(SetWishes(person.id, wishes))


def _await(solving: Solving) -> None:
    """Wait for a plan that is being made."""
    turn, net = QEventLoop(), QTimer()
    net.setSingleShot(True)
    net.timeout.connect(turn.quit)
    net.start(MOST_WAIT_MS)
    solving.busy_changed.connect(turn.quit)
    while solving.is_busy() and net.isActive():
        turn.exec()
