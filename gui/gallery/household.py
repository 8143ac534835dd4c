"""The household screen over nothing, the invented household, one with long names and many things, and refusals."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QWidget

from core.store.commands import ChangePerson, ChangePlace, ChangeThing, LoadHouse
from gui.desk.desk import Desk
from gui.gallery.stage import Stage
from gui.household import HouseholdScreen
from gui.household.adding import one_of_kind, things_of
from gui.household.thing_typed import ThingLine
from gui.states import ShownState

LONG = "The second-best enamelled carrier that a neighbour left under the foredeck"
WAIT_MS = 5_000


def household_page(state: ShownState) -> QWidget:
    """The first run; the demo; long names among many things; what can't be read, and a form with a fault."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is ShownState.LONG:
        _lengthen(stage.desk)
    screen = HouseholdScreen(stage.desk)
    _await(screen)
    if state is ShownState.DEMO:
        screen.choose("coal-bag-10-kg")
    elif state is ShownState.REFUSED:
        _refuse(screen)
    return stage.bear(screen)


def _refuse(screen: HouseholdScreen) -> None:
    screen.add.field.show_text("paddle board, 3 frobs")
    screen.add.button.click()
    screen.add.field.show_text("2 bottles of 900 L")
    screen.add.button.click()
    screen.choose("bench")
    screen.page.things.open_form()
    field = screen.page.things.form.form.field(ThingLine.HEIGHT)
    field.edit.setText("9 km")
    field.committed.emit("9 km")


def _lengthen(desk: Desk) -> None:
    """Over a hundred things, some of them with long names, and a long name for somebody and somewhere."""
    house = desk.house()
    kinds = desk.catalog.kinds
    many = things_of((one_of_kind(kinds[at % len(kinds)]) for at in range(109)), (thing.id for thing in house.things))
    desk.do(LoadHouse(replace(house, people=(), places=house.places, things=many)))
    for thing in desk.house().things[:3]:
        desk.do(ChangeThing(replace(thing, name=LONG)))
    desk.do(ChangePerson(replace(house.people[0], name=LONG)))
    desk.do(ChangePlace(replace(house.places[0], name=LONG)))


def _await(screen: HouseholdScreen) -> None:
    """Until it is known what the things let one do."""
    turn = QEventLoop()
    net = QTimer()
    net.setSingleShot(True)
    net.timeout.connect(turn.quit)
    net.start(WAIT_MS)
    screen.possible.told.connect(turn.quit)
    while screen.possible.is_busy() and net.isActive():
        turn.exec()
