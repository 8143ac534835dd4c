"""The household screen: what one owns and what that lets one do; while there is nothing, the first run.

It asks core through the desk and hands it commands; its parts only paint. Everything is saved at once.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from core.house.model import House
from core.house.own import OwnKind
from core.quantity.display import format_volume
from core.store.commands import LoadHouse, RemoveThing
from core.store.values import ChangeSet, Kind
from core.things.quick_add import ReadThing
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.desk.names import INVENTED
from gui.household.add_bar import AddBar
from gui.household.adding import adding, one_of_kind, things_of
from gui.household.beginning import begin
from gui.household.detail_words import materials_at_hand
from gui.household.first_run import FirstRun
from gui.household.gap_words import ADD_PERSON, StripView
from gui.household.house_page import HousePage
from gui.household.people_row import ADD, NamedView
from gui.household.people_typed import person_lines, person_words, place_words
from gui.household.possible import Possible
from gui.household.thing_words import group_of, grouped, thing_view
from gui.household.typing_flow import TypingFlow
from gui.shell.entry import ScreenName
from gui.theme import Icon
from gui.widgets import Page, PictureButton

TITLE, FIRST_TITLE = "What you own", "Your first week"
FIRST_NOTE = "three short answers, about two minutes"
EMPTY_NAME = "Household"
SHORT_BELOW = 900
"""A screen narrower than this keeps more of its title than of the line to type in."""


class HouseholdScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(TITLE, scroll=False, gutter=False, parent=parent)
        self._desk = desk
        self._thing_id = ""
        self.possible = Possible(desk, self)
        self.add = AddBar()
        self.rename = PictureButton(Icon.PENCIL, "Rename this household; its cup and fills", size=26)
        self.page = HousePage(desk)
        self._first: FirstRun | None = None
        self._typing = TypingFlow(self.add, self.page.asks, desk.catalog, self._keep, self)
        self._stack = QStackedWidget()
        self._stack.addWidget(self.page)
        self.bar.add_beside(self.rename)
        self.bar.add_action(self.add)
        self.body.addWidget(self._stack, 1)
        self._connect()
        self._show_all()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.add.show_short(self.width() < SHORT_BELOW)

    def show_jump(self, jump: Jump) -> None:
        """Put the thing a jump names in hand."""
        if any(thing.id == jump.thing_id for thing in self._desk.house().things):
            self.choose(str(jump.thing_id))

    def choose(self, thing_id: str) -> None:
        """Put a thing in hand: its card drawn so, its details on the right."""
        self._thing_id = thing_id
        page = self.page
        page.cards.choose(thing_id)
        page.people.mark()
        if not thing_id:
            page.side.setCurrentWidget(page.blank)
            return
        page.things.show_thing(thing_id)
        page.side.setCurrentWidget(page.things)
        page.left.ensureWidgetVisible(page.cards.card(thing_id))

    def chosen(self) -> str:
        """The thing in hand."""
        return self._thing_id

    def is_first_run(self) -> bool:
        """Whether the first run is shown."""
        return self._stack.currentWidget() is not self.page

    @property
    def first(self) -> FirstRun:
        """The first run, made when it is needed: most starts have no use for it."""
        if self._first is None:
            self._first = self._made_first()
        return self._first

    def _made_first(self) -> FirstRun:
        first = FirstRun(self._desk.catalog)
        things = first.things
        self._first_typing = TypingFlow(things.add, things.asks, self._desk.catalog, things.keep, self)
        first.began.connect(self._begin)
        first.demo_wanted.connect(self._desk.load_demo)
        self._stack.addWidget(first)
        return first

    def _connect(self) -> None:
        page = self.page
        page.demo.link_followed.connect(self._remove_all)
        page.own.clicked.connect(self._add_own)
        page.strip.have.connect(self._have)
        page.strip.followed.connect(self._follow)
        page.cards.chosen.connect(self.choose)
        page.cards.opened.connect(self._open)
        page.cards.removal_wanted.connect(self._remove)
        page.things.remove_wanted.connect(self._remove)
        page.things.left.connect(self._back_to_card)
        self._connect_people()
        self.possible.told.connect(self._show_possible)
        self._desk.changed.connect(self._refresh)

    def _connect_people(self) -> None:
        page = self.page
        page.people.person_wanted.connect(self._show_person)
        page.people.place_wanted.connect(self._show_place)
        page.people.house_wanted.connect(self._show_house)
        self.rename.clicked.connect(self._show_house)
        page.person.added.connect(self._show_person)
        page.place.added.connect(self._show_place)
        for side in (page.person, page.place):
            side.removed.connect(self._back_to_thing)
        for panel in (page.person, page.place, page.house):
            panel.closer.clicked.connect(self._back_to_thing)

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & (SETTING_KINDS | {Kind.SETTINGS}):
            self._show_all()

    def _show_all(self) -> None:
        """Paint everything as it is on disk."""
        house = self._desk.house()
        if house.things or house.people:
            self._stack.setCurrentWidget(self.page)
        else:
            self.first.show_lines(person_lines(None, self._desk.units()))
            self._stack.setCurrentWidget(self.first)
        for widget in (self.add, self.rename):
            widget.setVisible(not self.is_first_run())
        self.page.demo.setVisible(house.name.endswith(INVENTED))
        self._show_things(house)
        self._show_people(house)
        for side in (self.page.person, self.page.place, self.page.house):
            side.refresh()
        self.possible.refresh()
        self._show_title()

    def _show_things(self, house: House) -> None:
        materials, units = materials_at_hand(house, self._desk.catalog), self._desk.units()
        views = ((group_of(thing), thing_view(thing, house, units, materials)) for thing in house.things)
        page = self.page
        page.cards.show_things(grouped(views))
        page.nothing.setVisible(not house.things)
        order = page.cards.order()
        if self._thing_id in order:
            page.things.refresh()
            return
        on_things = page.side.currentWidget() in {page.things, page.blank}
        self._thing_id = next(iter(order), "")
        page.cards.choose(self._thing_id)
        if on_things:
            self.choose(self._thing_id)

    def _show_people(self, house: House) -> None:
        units = self._desk.units()
        people = tuple(NamedView(id=one.id, name=one.name, words=person_words(one, units)) for one in house.people)
        places = tuple(NamedView(id=one.id, name=one.name, words=place_words(one, units)) for one in house.places)
        names = [one.name.lower() for one in materials_at_hand(house, self._desk.catalog)]
        self.page.people.show_all(people, places, f"{format_volume(house.cup_l, units)} cup, {_listed(names)}")
        self._mark_people()

    def _mark_people(self) -> None:
        page = self.page
        side = page.side.currentWidget()
        page.people.mark(
            person=page.person.entry_id() if side is page.person else "",
            place=page.place.entry_id() if side is page.place else "",
            house=side is page.house,
        )

    def _show_possible(self, view: StripView) -> None:
        self.page.strip.show_strip(view)
        self._show_title()

    def _show_title(self) -> None:
        if self.is_first_run():
            self.show_title(FIRST_TITLE, FIRST_NOTE)
            return
        house = self._desk.house()
        many = len(house.things)
        name = house.name.removesuffix(INVENTED).rstrip()  # that it is invented stands right below
        words = (name, f"{many} thing{'' if many == 1 else 's'}", self.possible.view().total)
        self.show_title(TITLE, " · ".join(word for word in words if word))

    def _keep(self, readings: tuple[ReadThing, ...]) -> bool:
        """Add things and put the first of them in hand; False when they could not be saved."""
        things = things_of(readings, (thing.id for thing in self._desk.house().things))
        kept = self._desk.do(adding(things))
        if kept:
            self.choose(things[0].id)
        return kept

    def _have(self, kind_id: str) -> None:
        self._keep((one_of_kind(self._desk.catalog.kind_by_id[kind_id]),))

    def _add_own(self) -> None:
        name = self.add.field.text().strip()
        self._desk.jump.emit(Jump(screen=ScreenName.OWN, own=OwnKind.THING, name=name))

    def _follow(self, link: str) -> None:
        if link == ADD_PERSON:
            self._show_person(ADD)

    def _open(self, thing_id: str) -> None:
        self.choose(thing_id)
        self.page.things.open_form()

    def _remove(self, thing_id: str) -> None:
        """Take a thing out; the one beside it is then in hand, with the keyboard on it."""
        beside = self.page.cards.neighbour(thing_id)
        if self._desk.do(RemoveThing(thing_id)):
            self.choose(beside)
            self._focus_card()

    def _focus_card(self) -> None:
        if self._thing_id:
            self.page.cards.card(self._thing_id).setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.add.field.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _back_to_card(self) -> None:
        self._focus_card()

    def _show_person(self, person_id: str) -> None:
        self.page.side.setCurrentWidget(self.page.person)
        self.page.person.show_entry(person_id)
        self._mark_people()

    def _show_place(self, place_id: str) -> None:
        self.page.side.setCurrentWidget(self.page.place)
        self.page.place.show_entry(place_id)
        self._mark_people()

    def _show_house(self) -> None:
        self.page.side.setCurrentWidget(self.page.house)
        self.page.house.open_form()
        self._mark_people()

    def _back_to_thing(self) -> None:
        self.choose(self._thing_id)

    def _begin(self) -> None:
        """Save everything in one step and go to the first week."""
        ready = self._first_typing.take_rest()
        begun = begin(self.first.page(), self._desk.house(), self._desk.catalog, self._desk.units())
        self.first.show_faults(begun.faults)
        if ready and begun.command is not None and self._desk.do(begun.command):
            self.first.things.clear()
            self._desk.jump.emit(Jump(screen=ScreenName.WEEK))

    def _remove_all(self) -> None:
        self._desk.do(LoadHouse(House(name=EMPTY_NAME), replace_all=True))


def _listed(names: list[str]) -> str:
    """The first two names and how many more."""
    if len(names) <= 2:
        return " and ".join(names) or "nothing at hand"
    return f"{', '.join(names[:2])} and {len(names) - 2} more"
