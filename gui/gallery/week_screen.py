"""The week screen over the invented household, in every state worth a look."""

from __future__ import annotations

import datetime
from dataclasses import replace

from PySide6.QtWidgets import QWidget

from core.house.readiness import QUESTIONS
from core.plan.model import WeekRequest
from core.plan.week import plan_week
from core.store.commands import ChangeSettings, ChangeThing
from gui.desk.desk import Desk
from gui.gallery.stage import LONG_NAME, NOON, Stage
from gui.states import ShownState
from gui.week import WeekScreen


def week_screen_page(state: ShownState) -> QWidget:
    """Nobody yet; a planned week; one with long names; the readiness questions with one answered yes."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    desk = stage.desk
    if state is ShownState.LONG:
        for thing in desk.house().things:
            desk.do(ChangeThing(replace(thing, name=f"{thing.name}, {LONG_NAME}"[:80])))
    if state in {ShownState.DEMO, ShownState.LONG}:
        _plan(desk)
    screen = WeekScreen(desk)
    if state is ShownState.REFUSED:
        screen.readiness.boxes[QUESTIONS[0][0]].setChecked(True)
    return stage.bear(screen)


def _plan(desk: Desk) -> None:
    """A week as the person would have it, planned here and now."""
    person = desk.person()
    if person is None:
        raise ValueError("the invented household has somebody who trains")
    today: datetime.date = NOON.date()
    desk.do(ChangeSettings(replace(desk.settings(), ready_on=today)))
    desk.save_week(plan_week(WeekRequest(wishes=desk.wishes()), desk.house(), person, desk.catalog), today)
