"""The screen of own movements and kinds of things, in every state worth a look."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QWidget

from catalog.own import own_exercise, own_kind
from core.house.own import OwnKind
from core.store.commands import AddOwn
from gui.desk.desk import Desk, Jump
from gui.gallery.stage import LONG_NAME, Stage
from gui.own import OwnScreen
from gui.own.field import LineOf
from gui.shell.entry import ScreenName
from gui.states import ShownState

BEAM_PUSH: dict[str, Any] = {
    "name": "Lock beam push",
    "patterns": {"push_level": 1.0, "lunge": 0.4},
    "muscles": {"quads": 1.0, "chest": 0.6},
    "dose": "time",
    "posture": "standing",
    "body": {"share": 0.6, "basis": "ordinal"},
    "level": 3,
    "rep_s": 1.0,
    "typical": [20.0, 60.0],
    "outdoors_only": True,
    "cues": ["Lean in until your body is one line.", "Walk the beam round with short steps."],
}
FEED_SACK: dict[str, Any] = {
    "name": "Feed sack",
    "form": "sack",
    "icon": "sack",
    "mass_kg": [12.5, 0.3],
    "length_cm": 55.0,
    "width_cm": 35.0,
    "height_cm": 14.0,
    "closure": "sealed",
    "rigidity": "soft",
}


def own_page(state: ShownState) -> QWidget:
    """Nothing of one's own; a movement in the form; long names; a name that is taken and a dose nobody can read."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is not ShownState.EMPTY:
        _fill(stage.desk, f", {LONG_NAME}"[:40] if state is ShownState.LONG else "")
    screen = OwnScreen(stage.desk)
    if state is ShownState.LONG:
        screen.list.wanted.emit(stage.desk.house().own[-1].id)
    elif state is not ShownState.EMPTY:
        screen.show_jump(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, exercise_id="push_up"))
    if state is ShownState.REFUSED:
        for key, text in (("name", "Push-up"), ("typical", "as many as I like")):
            field = screen.editor.field(key)
            if isinstance(field, LineOf):
                field.line.show_text(text)
                field.edited.emit()
    if screen.is_editing():
        screen.editor.check_now()
    return stage.bear(screen)


def _fill(desk: Desk, tail: str) -> None:
    for make, table in ((own_exercise, BEAM_PUSH), (own_kind, FEED_SACK)):
        desk.do(AddOwn(make({**table, "name": f"{table['name']}{tail}".strip(" ,")}, desk.catalog)))
