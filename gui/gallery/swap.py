"""The swap screen over the invented household, in every state worth a look."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import QWidget

from core.exercise.model import Demand
from core.store.commands import ChangeThing
from core.swap.model import Cause
from gui.gallery.stage import LONG_NAME, Stage
from gui.states import ShownState
from gui.swap import SwapScreen


def swap_page(state: ShownState) -> QWidget:
    """Nobody yet; a squat without its gear; long names; an honest no, with a dose nobody can read."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is ShownState.LONG:
        for thing in stage.desk.house().things:
            stage.desk.do(ChangeThing(replace(thing, name=f"{thing.name}, {LONG_NAME}"[:80])))
    screen = SwapScreen(stage.desk)
    panel = screen.panel
    if state is ShownState.REFUSED:
        panel.movement.show_text("Pull-up")
        panel.dose.show_text("4 × 5 at forty kilos")
        panel.show_spare((Demand.OVERHEAD_REACH,))
        panel.causes.button(tuple(Cause).index(Cause.TOO_EASY)).setChecked(True)
    elif state is not ShownState.EMPTY:
        panel.movement.show_text("Back squat")
    screen.answer_now()
    return stage.bear(screen)
