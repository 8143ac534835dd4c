"""The fill screen: a container drawn in true proportion; whatever moves its line, everything else follows.

Nothing is saved while the line moves. What is kept (a fill, a weighing, a tin's mass) is kept by a command, at once,
and can be undone.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from core.loads.filling import OtherWay
from core.store.commands import SetFill
from core.store.values import ChangeSet, Kind
from core.things.affordance import affordances
from core.things.model import Thing
from core.things.weighed import known_mass
from gui.desk.desk import Desk, Jump
from gui.desk.names import thing_picture
from gui.fill.asked import weighable
from gui.fill.fixed_side import TinFlow, fixed_lines, fixed_view, label_estimate, subject_of
from gui.fill.fronts import Front, Fronts
from gui.fill.goal_flow import GoalFlow, level_of
from gui.fill.pours_card import PoursFlow
from gui.fill.present import budget_view
from gui.fill.readings_flow import ReadingsFlow
from gui.fill.side import Side
from gui.fill.subject import FilledSubject, Subject
from gui.fill.vessel_card import VesselCard
from gui.fill.vessel_flow import VesselFlow
from gui.fill.weigh_flow import WeighFlow
from gui.fill.words import lesson_text, subtitle
from gui.shell.entry import ScreenName
from gui.theme import Space, ThingPicture
from gui.widgets import EmptyState, Page, PrimaryButton, SecondaryButton
from gui.widgets.page import PageScroll

TITLE = "Fill & weigh"
BUILD_TITLE = "Build a load"
STRIP_TITLE = "Fill strips"
KINDS = frozenset({Kind.THINGS, Kind.HOUSE, Kind.SETTINGS})
SIDE_WIDTH = (336, 480)
SIDE_LETTERS = 48
"""So many letters of the system's type have room in a line on the right, however large it is."""


class FillScreen(Page):
    """See the module. Works without a person."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(TITLE, "", scroll=False, gutter=False, parent=parent)
        self._desk = desk
        self._thing: Thing | None = None
        self.build = SecondaryButton("Build a load")
        self.one = SecondaryButton("One container")
        self.print = SecondaryButton("Fill strip…")
        self.weigh = SecondaryButton("I weighed it…")
        self.use = PrimaryButton("Use this load")
        self.left = VesselCard()
        self.side = Side()
        self.flow = VesselFlow(desk, self.left, self.side, self)
        self._weighing = WeighFlow(desk, self.side.weigh, self._subject, self)
        self._goal = GoalFlow(desk, self.side.goal, self)
        self._pours = PoursFlow(desk, self.side.pours, self)
        self._tin = TinFlow(desk, self.side.tin, self)
        self._readings = ReadingsFlow(desk, self.side.readings, self.flow, self)
        self._empty = EmptyState(
            ThingPicture.JUG,
            "Nothing to fill yet",
            "Add a jug, a bucket, a bottle or any other container. Here you see what it weighs at every fill.",
            "Go to your household",
        )
        self._work = QWidget()
        self.fronts = Fronts(desk, self._work, self._empty)
        self._arrange()
        self._connect()
        self._reload()

    def show_jump(self, jump: Jump) -> None:
        """Show the thing a jump names."""
        if jump.thing_id is not None:
            self.show_thing(jump.thing_id)

    def show_thing(self, thing_id: str) -> None:
        """Take a thing of the house in hand; one that can't be weighed here changes nothing."""
        found = next((one for one in weighable(self._desk.house()) if one.id == thing_id), None)
        if found is not None:
            self._thing = found
            self.side.uses.hide()
            self.side.weigh.shut()
            self._bring(Front.ONE)
            self._show(found)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.left.vessel.setFocus(Qt.FocusReason.OtherFocusReason)

    def thing(self) -> Thing | None:
        """The thing in hand."""
        return self._thing

    def _arrange(self) -> None:
        for button in (self.one, self.build, self.print, self.weigh, self.use):
            self.bar.add_action(button)
        row = QHBoxLayout(self._work)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.M + 2)
        row.addWidget(self.left, 8)
        scroll = PageScroll(self.side)
        scroll.setMinimumWidth(max(SIDE_WIDTH[0], SIDE_LETTERS * scroll.fontMetrics().averageCharWidth()))
        scroll.setMaximumWidth(SIDE_WIDTH[1])
        row.addWidget(scroll, 5)
        self._scroll = scroll
        self.body.addWidget(self.fronts, 1)

    def _connect(self) -> None:
        side = self.side
        self.left.controls.thing_chosen.connect(self._choose_thing)
        self.left.controls.pours_wanted.connect(self._open_pours)
        self.flow.moved.connect(self._follow)
        self.flow.filled_anew.connect(self._show_container)
        self._goal.line_wanted.connect(self.flow.set_level)
        self._goal.way_taken.connect(self._take_way)
        self.print.clicked.connect(self.show_strips)
        self.weigh.clicked.connect(self._begin_weighing)
        self.use.clicked.connect(self._use)
        self.build.clicked.connect(self.show_builder)
        self.one.clicked.connect(self.show_one)
        self.fronts.titled.connect(self._title_builder)
        self.fronts.said.connect(self.toast.say)
        self._readings.said.connect(self.toast.say)
        side.uses.movement_wanted.connect(self._find_movement)
        self._empty.acted.connect(self._go_home)
        self._desk.changed.connect(self._refresh)

    # --- from the record to the screen ---

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & KINDS:
            self._reload()

    def _reload(self) -> None:
        """The record changed: keep the thing in hand if it is still there."""
        things = weighable(self._desk.house())
        before, front = self._thing.id if self._thing is not None else "", self.fronts.front()
        self._thing = next((one for one in things if one.id == before), next(iter(things), None))
        if self._thing is None:
            front = Front.ONE
            self.show_title(TITLE)
        else:
            self._show(self._thing)
        self._bring(front)
        if front is Front.BUILD:
            self.fronts.building.refresh()

    def show_builder(self) -> None:
        """Build a load from several things instead of filling one; with nothing to build from nothing happens."""
        if self._thing is not None:
            self._bring(Front.BUILD)
            self.fronts.building.refresh()
            self.fronts.builder.mass.edit.setFocus()

    def show_one(self) -> None:
        """Back to the one container in hand."""
        self._bring(Front.ONE)
        self._reload()
        self.left.vessel.setFocus()

    def _bring(self, front: Front) -> None:
        """The page in front, and the actions that belong to it."""
        thing, filling = self._thing, self.flow.filling()
        alone = front is Front.ONE
        self.fronts.show_front(front, empty=thing is None)
        self.one.setVisible(not alone)
        for button in (self.weigh, self.use, self.build):
            button.setVisible(thing is not None and alone)
        self.print.setVisible(alone and thing is not None and filling is not None and filling.gauge.has_line)

    def _title_builder(self, line: str) -> None:
        self.show_title(BUILD_TITLE, line)

    def _show(self, thing: Thing) -> None:
        things = weighable(self._desk.house())
        names = tuple(one.name for one in things)
        self.left.controls.show_things(names, [one.id for one in things].index(thing.id))
        if self.fronts.front() is Front.ONE:
            self.show_title(TITLE, subtitle(thing, self._desk.units()))
        self._tin.show_thing(thing)
        if not self.flow.show_thing(thing):
            self._show_fixed(thing)
        self._bring(self.fronts.front())

    def _show_container(self) -> None:
        """The container or its fill is another: what hangs on that, beyond the vessel."""
        filling = self.flow.filling()
        if filling is not None:
            self._goal.show_filling(filling)
            self._pours.show_filling(filling)
            self._readings.show_thing(self._thing, tuple(lesson_text(one, filling.system) for one in filling.lessons()))

    def _show_fixed(self, thing: Thing) -> None:
        system = self._desk.units()
        container = thing.facts.container
        mass = known_mass(thing) if container is None else container.tare_kg
        self.left.controls.show_fixed()
        self.left.show_fixed(thing_picture(thing.icon), thing.name, fixed_lines(thing, system))
        self._goal.show_filling(None)
        self._pours.show_filling(None)
        found = label_estimate(thing, system)
        self.side.budget.setVisible(found is not None)
        if found is not None:
            self.side.budget.show_budget(budget_view(found, system))
        self.side.show_cautions(thing.cautions)
        if mass is not None:
            self.side.mass.show_mass(
                fixed_view(thing, mass, system), "One of these weighs" if thing.count > 1 else "It weighs"
            )
        self._readings.show_thing(thing, ())
        self._follow()

    # --- the hand ---

    def _choose_thing(self, place: int) -> None:
        self.show_thing(weighable(self._desk.house())[place].id)

    def _follow(self) -> None:
        """The line moved: an open weighing is judged anew."""
        self._weighing.follow(self.flow.inside_words())

    def _subject(self) -> Subject | None:
        """What lies on the scale."""
        filling, level = self.flow.filling(), self.flow.level()
        if filling is not None and level is not None:
            return FilledSubject(filling, level)
        return None if self._thing is None else subject_of(self._thing, self._desk.units())

    def show_strips(self) -> None:
        """The fill strip of the container in hand, before it is printed."""
        filling = self.flow.filling()
        if filling is not None:
            self._bring(Front.STRIP)
            self.show_title(STRIP_TITLE, filling.thing.name)
            self.fronts.strips.begin(filling)
            self.fronts.strip_page.save.setFocus()

    def _open_pours(self) -> None:
        self.side.pours.open()
        self._scroll.ensureWidgetVisible(self.side.pours)

    def _begin_weighing(self) -> None:
        self.side.uses.hide()
        self._weighing.begin(self.flow.inside_words())
        self._scroll.ensureWidgetVisible(self.side.weigh)

    def _use(self) -> None:
        """Keep the fill, and say where such a load can be used."""
        thing, filling, level = self._thing, self.flow.filling(), self.flow.level()
        if thing is None:
            return
        if filling is not None and level is not None and thing.fill != filling.inside(level):
            self._desk.do(SetFill(thing.id, filling.inside(level)))
        self.side.weigh.shut()
        self.side.uses.show_uses("Where this load can serve", affordances(thing, self._desk.person()))
        self._scroll.ensureWidgetVisible(self.side.uses)

    def _take_way(self, way: OtherWay) -> None:
        self.flow.expect(way.thing.id, way.material.id, level_of(way.fill))
        self.show_thing(way.thing.id)

    def _find_movement(self) -> None:
        thing_id = self._thing.id if self._thing is not None else None
        self._desk.jump.emit(Jump(screen=ScreenName.SWAP, thing_id=thing_id))

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))
