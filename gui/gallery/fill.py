"""The fill screen over the invented household, in every state worth a look."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import QWidget

from core.exercise.model import Use
from core.loads.filling import filling_of
from core.mass.model import HeightLevel, ScaleKind, VolumeLevel
from core.mass.weigh import reading_on
from core.paper.lettering import find_lettering
from core.paper.strip import strip_of
from core.paper.strip_pages import drawn_strips
from core.store.commands import AddReading, AddThing, ChangeThing
from core.store.commands.base import free_id
from core.things.quick_add import ReadThing, make_thing, read_things
from gui.desk.desk import Desk
from gui.fill import FillScreen
from gui.fill.strip_flow import MARK_NAMES, PAPERS
from gui.fill.strip_page import StripPage
from gui.gallery.stage import NOON, Stage
from gui.states import ShownState
from gui.widgets import Page

CARRIER, BUCKET = "water-carrier", "mop-bucket"
LONG_NAME = "Water carrier with the dented corner that stands beside the stove in winter"


def fill_page(state: ShownState) -> QWidget:
    """Nothing to fill; a carrier with a wanted mass; long names and weighings; what can't be and what disagrees."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is ShownState.LONG:
        _lengthen(stage.desk)
    screen = FillScreen(stage.desk)
    if state is ShownState.DEMO:
        screen.flow.set_level(VolumeLevel(volume_l=14.0))
        _ask_for(screen, "12 kg")
    elif state is ShownState.LONG:
        _ask_for(screen, "12.5 kg")
        screen.use.click()
    elif state is ShownState.REFUSED:
        screen.show_thing(BUCKET)
        _ask_for(screen, "20 kg")
        screen.left.controls.reasons.click()
        screen.weigh.click()
        _weigh(screen, "81.5", "68")
    return stage.bear(screen)


def build_page(state: ShownState) -> QWidget:
    """Nothing to build from; twelve kilograms to hug; long names on the back; what can't be made."""
    stage = Stage(demo=state is not ShownState.EMPTY)
    if state is ShownState.LONG:
        _lengthen(stage.desk)
        _add(stage.desk, "4 water bottles 1.5 L", "8 tomato tins", "rucksack 40 L", "2 bricks", "jerry can 10 L")
    screen = FillScreen(stage.desk)
    screen.show_builder()
    asked = {
        ShownState.DEMO: (Use.HUG, "12 kg"),
        ShownState.LONG: (Use.BACK, "9 kg"),
        ShownState.REFUSED: (Use.BACK, "6 kg"),
    }
    if state in asked:
        use, mass = asked[state]
        screen.fronts.building.ask(mass, use)
    return stage.bear(screen)


def strip_page(_state: ShownState) -> QWidget:
    """Strips of both containers before they are printed; drawn at once, since a picture can't wait for a worker."""
    stage = Stage(demo=True)
    house, materials = stage.desk.house(), stage.desk.catalog.material_by_id
    fillings = [filling_of(house.thing(thing_id), materials["water"]) for thing_id in (CARRIER, BUCKET)]
    strips = StripPage(PAPERS, MARK_NAMES)
    strips.show_choices(tuple(f"{one.thing.name} · water" for one in fillings), frozenset({0, 1}), 0, 0)
    strips.show_pages(drawn_strips([strip_of(one) for one in fillings], lettering=find_lettering()).pages)
    page = Page("Fill strips", "Water carrier", scroll=False, gutter=False)
    page.body.addWidget(strips, 1)
    return stage.bear(page)


def _ask_for(screen: FillScreen, mass: str) -> None:
    screen.side.goal.field.show_text(mass)
    screen.side.goal.asked.emit(mass)


def _weigh(screen: FillScreen, reading: str, without: str) -> None:
    form = screen.side.weigh.form
    form.reading.show_text(reading)
    form.without().show_text(without)
    form.typed.emit(form.now())


def _add(desk: Desk, *texts: str) -> None:
    """More things, as one would type them."""
    for text in texts:
        for read in read_things(text, desk.catalog.kinds):
            if isinstance(read, ReadThing):
                desk.do(AddThing(make_thing(read, free_id(read.name, [one.id for one in desk.house().things]))))


def _lengthen(desk: Desk) -> None:
    """A long name, and two weighings by a person who weighs often."""
    thing = desk.house().thing(CARRIER)
    desk.do(ChangeThing(replace(thing, name=LONG_NAME)))
    for kg, height_cm in ((82.7, 19.2), (77.9, 12.1)):
        reading = reading_on(
            ScaleKind.BATHROOM_DIFFERENCE,
            kg,
            without_kg=68.2,
            at_level=HeightLevel(height_cm=height_cm),
            date=NOON.date(),
        )
        desk.do(AddReading(CARRIER, replace(reading, material_id="water")))
