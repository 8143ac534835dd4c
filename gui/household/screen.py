"""The household screen: what is owned as cards in groups, one thing opened beside them, the patterns on top.

While there is nobody and nothing yet it shows the first run. Everything typed is saved at once; what can't be read is
asked about in place, and stays in the field.
"""

from __future__ import annotations

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtWidgets import QCompleter, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from core.errors import InputError
from core.house.model import House
from core.store.commands import LoadHouse
from core.store.values import ChangeSet
from core.things.quick_add import ReadThing
from gui.desk.desk import Desk, Jump
from gui.household.adding import Ask, adding, beginnings, things_of, understand
from gui.household.detail_words import materials_at_hand
from gui.household.first_run import FirstHouse, FirstRun
from gui.household.people_panel import PeoplePanel
from gui.household.strip_card import StripCard
from gui.household.thing_side import ThingSide
from gui.household.thing_words import group_of, grouped, thing_view
from gui.shell.entry import ScreenName
from gui.theme import Space, TextRole
from gui.widgets import (
    ActionChip,
    Card,
    FlowLayout,
    Ink,
    LineField,
    LinkButton,
    Page,
    PrimaryButton,
    SecondaryButton,
    SectionHeader,
    Text,
    ThingCard,
)
from gui.widgets.page import PageScroll

SIDE_WIDTH = 320
CARD_WIDTH = 212
INVENTED = "Narrowboat Dipper"


class HouseholdScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__("What you own", "", scroll=False, parent=parent)
        self._desk = desk
        self._chosen = ""
        self.cards: dict[str, ThingCard] = {}
        self.add_field = LineField("", "Add a thing: “2 five-litre bottles”", name="Add a thing")
        self.add_field.setFixedWidth(270)
        self.add_button = PrimaryButton("Add")
        self.people_button = SecondaryButton("People and places")
        self.remove_demo = LinkButton("Remove the invented household", TextRole.SMALL)
        self.strip = StripCard(desk)
        self.side = ThingSide(desk)
        self.side.setFixedWidth(SIDE_WIDTH)
        self.people = PeoplePanel(desk)
        self.first = FirstRun(desk.catalog, desk.units())
        self._asks = _Asks()
        self._names = QStringListModel(self)
        self._groups = QWidget()
        self._group_column = QVBoxLayout(self._groups)
        self._stack = QStackedWidget()
        self._arrange()
        self._connect()
        self.refresh()

    def show_jump(self, jump: Jump) -> None:
        """Open the thing a jump names."""
        if jump.thing_id in self.cards:
            self._choose(str(jump.thing_id))

    def refresh(self) -> None:
        """Paint the house as it is on disk."""
        house = self._desk.house()
        empty = not house.things and not house.people
        for widget in (self.add_field, self.add_button, self.people_button):
            widget.setVisible(not empty)
        self.remove_demo.setVisible(house.name.startswith(INVENTED))
        if empty:
            self._stack.setCurrentWidget(self._first_page)
            self.show_title("Welcome to Fillmark", "from nothing to a first week in two minutes")
            return
        if self._stack.currentWidget() in {self._first_page, self._house_page}:
            self._stack.setCurrentWidget(self._house_page)
        self._show_cards(house)
        self.people.refresh()
        self.strip.refresh()
        self._count("")

    def _arrange(self) -> None:
        for widget in (self.people_button, self.add_field, self.add_button):
            self.bar.add_action(widget)
        completer = QCompleter(self._names, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        self.add_field.edit.setCompleter(completer)
        self._group_column.setContentsMargins(0, 0, 0, 0)
        self._group_column.setSpacing(Space.M)
        self._first_page = PageScroll(self.first)
        self._people_page = PageScroll(self.people)
        self._house_page = self._made_house_page()
        for page in (self._first_page, self._people_page, self._house_page):
            self._stack.addWidget(page)
        self._stack.setCurrentWidget(self._house_page)
        self.body.addWidget(self._stack, 1)

    def _made_house_page(self) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        row = QHBoxLayout()
        row.setSpacing(Space.M)
        row.addWidget(PageScroll(self._groups), 1)
        row.addWidget(self.side)
        column.addWidget(self._asks)
        column.addWidget(self.strip)
        column.addWidget(self.remove_demo, 0, Qt.AlignmentFlag.AlignLeft)
        column.addLayout(row, 1)
        return page

    def _connect(self) -> None:
        self.add_button.clicked.connect(self._add)
        self.add_field.submitted.connect(self._add)
        self.add_field.edited.connect(self._suggest)
        self.people_button.clicked.connect(self._show_people)
        self.people.done.connect(self._show_house)
        self.strip.counted.connect(self._count)
        self.strip.person_wanted.connect(self._show_people)
        self.remove_demo.clicked.connect(self._clear)
        self.first.ready.connect(self._begin)
        self.first.demo_wanted.connect(self._load_demo)
        self._asks.answered.connect(self._add_one)
        self._desk.changed.connect(self._refresh)

    def _refresh(self, _change: ChangeSet) -> None:
        self.refresh()

    def _show_cards(self, house: House) -> None:
        materials, system = materials_at_hand(house, self._desk.catalog), self._desk.units()
        views = [(group_of(thing), thing_view(thing, house, system, materials)) for thing in house.things]
        while (item := self._group_column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.cards = {}
        for group, members in grouped(views):
            self._group_column.addWidget(SectionHeader(group.value))
            holder = QWidget()
            flow = FlowLayout(column_width=CARD_WIDTH, parent=holder)
            for view in members:
                card = ThingCard(view)
                card.chosen.connect(self._choose)
                card.opened.connect(self._edit)
                self.cards[view.thing_id] = card
                flow.addWidget(card)
            self._group_column.addWidget(holder)
        self._group_column.addStretch(1)
        self._choose(self._chosen if self._chosen in self.cards else next(iter(self.cards), ""))

    def _choose(self, thing_id: str) -> None:
        self._chosen = thing_id
        self.side.setVisible(bool(thing_id))
        for other, card in self.cards.items():
            card.setChecked(other == thing_id)
        if thing_id:
            self.side.show_thing(thing_id)

    def _edit(self, thing_id: str) -> None:
        self._choose(thing_id)
        self.side.open_form()

    def _suggest(self, text: str) -> None:
        self._names.setStringList(list(beginnings(text, self._desk.catalog)))

    def _add(self, *_ignored: object) -> None:
        try:
            found = understand(self.add_field.text(), self._desk.catalog.kinds)
        except InputError as error:
            self.add_field.show_fault(str(error))
            return
        if found.sure:
            self._keep(found.sure)
        self.add_field.show_text(", ".join(ask.typed for ask in found.asks))
        self._asks.show_asks(found.asks)

    def _add_one(self, reading: ReadThing) -> None:
        if self._keep((reading,)) and not self._asks.waiting():
            self.add_field.show_text("")

    def _keep(self, readings: tuple[ReadThing, ...]) -> bool:
        things = things_of(readings, (thing.id for thing in self._desk.house().things))
        self._chosen = things[0].id
        return self._desk.do(adding(things))

    def _count(self, total: str) -> None:
        house = self._desk.house()
        many = len(house.things)
        words = [house.name, "1 thing" if many == 1 else f"{many} things"]
        self.show_title("What you own", " · ".join(words + ([total] if total else [])))

    def _show_people(self) -> None:
        self._stack.setCurrentWidget(self._people_page)

    def _show_house(self) -> None:
        self._stack.setCurrentWidget(self._house_page)
        self.refresh()

    def _begin(self, first: FirstHouse) -> None:
        person = first.house.people[0]
        if self._desk.do(LoadHouse(first.house, wishes=((person.id, first.wishes),), replace_all=True)):
            self._desk.jump.emit(Jump(screen=ScreenName.WEEK))

    def _load_demo(self) -> None:
        self._desk.load_demo()

    def _clear(self) -> None:
        self._desk.do(LoadHouse(House(name="Household"), replace_all=True))


class _Asks(Card):
    """What was typed and could not be read for sure: a sentence each, with the nearest kinds to press."""

    answered = Signal(object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._waiting: list[QWidget] = []
        self.hide()

    def waiting(self) -> int:
        """How many questions are open."""
        return len(self._waiting)

    def show_asks(self, asks: tuple[Ask, ...]) -> None:
        """Paint other questions."""
        for row in self._waiting:
            self._drop(row)
        self._waiting = [self._row(ask) for ask in asks]
        self.setVisible(bool(asks))

    def _row(self, ask: Ask) -> QWidget:
        row = QWidget()
        column = QVBoxLayout(row)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(Text(ask.sentence, TextRole.BODY, Ink.SOFT, wrap=True))
        chips = QWidget()
        flow = FlowLayout(parent=chips)
        for answer, reading in zip(ask.answers, ask.readings, strict=True):
            chip = ActionChip(answer)
            chip.setProperty("reading", reading)
            chip.clicked.connect(self._pressed)
            flow.addWidget(chip)
        column.addWidget(chips)
        self.body.addWidget(row)
        return row

    def _pressed(self) -> None:
        chip = self.sender()
        if not isinstance(chip, QWidget):
            return
        reading = chip.property("reading")
        row = next(row for row in self._waiting if row.isAncestorOf(chip))
        self._waiting.remove(row)
        self._drop(row)
        self.setVisible(bool(self._waiting))
        self.answered.emit(reading)

    def _drop(self, row: QWidget) -> None:
        self.body.removeWidget(row)
        row.hide()
        row.deleteLater()
