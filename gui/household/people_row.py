"""One line with everybody who trains here and everywhere one trains; a chip opens its form on the right."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.widgets import ActionChip, ChoiceChip, FlowLayout, Ink, Text

ADD = ""
"""The id of somebody or somewhere not there yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedView:
    """A person or a place: id, name, and a few words."""

    id: str
    name: str
    words: str


class PeopleRow(QWidget):
    """`person_wanted`, `place_wanted` (id, or `ADD`) and `house_wanted`."""

    person_wanted = Signal(str)
    place_wanted = Signal(str)
    house_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._flow = FlowLayout(gap=Space.S - 2, parent=self)
        self._people: dict[str, ChoiceChip] = {}
        self._places: dict[str, ChoiceChip] = {}
        self.add_person = ActionChip("+ person")
        self.add_place = ActionChip("+ place")
        self.house = ChoiceChip("")
        self._seen: tuple[tuple[NamedView, ...], tuple[NamedView, ...]] | None = None

    def show_all(self, people: tuple[NamedView, ...], places: tuple[NamedView, ...], pours: str) -> None:
        """Paint everybody and every place; `pours` are the words for the cup and the fills at hand."""
        if (people, places) != self._seen:
            self._rebuild(people, places)
            self._seen = (people, places)
        self.house.setText(pours.replace("&", "&&"))
        self.house.setAccessibleName(f"Pour with {pours}, change")
        self.house.updateGeometry()

    def mark(self, *, person: str = "", place: str = "", house: bool = False) -> None:
        """Draw the one whose form is open."""
        for ids, wanted in ((self._people, person), (self._places, place)):
            for id_, chip in ids.items():
                chip.setChecked(id_ == wanted)
        self.house.setChecked(house)

    def person(self, person_id: str) -> ChoiceChip:
        """The chip of a person."""
        return self._people[person_id]

    def place(self, place_id: str) -> ChoiceChip:
        """The chip of a place."""
        return self._places[place_id]

    def _rebuild(self, people: tuple[NamedView, ...], places: tuple[NamedView, ...]) -> None:
        self._flow.clear()
        self._people = {view.id: _chip(view, self._ask_person) for view in people}
        self._places = {view.id: _chip(view, self._ask_place) for view in places}
        self.add_person = _adder("+ person", "Add a person", self._new_person)
        self.add_place = _adder("+ place", "Add a place", self._new_place)
        self.house = ChoiceChip("")
        self.house.clicked.connect(self.house_wanted)
        self._lay("Who trains", (*self._people.values(), self.add_person))
        self._lay("Where", (*self._places.values(), self.add_place))
        self._lay("Pour with", (self.house,))

    def _lay(self, caption: str, chips: tuple[QWidget, ...]) -> None:
        """The caption stays on one line with its first chip; behind the last one there is room before the next."""
        self._flow.addWidget(_beside(Text(caption, TextRole.SMALL, Ink.SOFT), chips[0]))
        for chip in chips[1:-1]:
            self._flow.addWidget(chip)
        for chip in chips[1:][-1:]:
            self._flow.addWidget(_beside(chip, after=Space.M))

    def _ask_person(self) -> None:
        self.person_wanted.emit(str(self.sender().property("id")))

    def _ask_place(self) -> None:
        self.place_wanted.emit(str(self.sender().property("id")))

    def _new_person(self) -> None:
        self.person_wanted.emit(ADD)

    def _new_place(self) -> None:
        self.place_wanted.emit(ADD)


def _beside(*widgets: QWidget, after: int = 0) -> QWidget:
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, after, 0)
    row.setSpacing(Space.S - 2)
    for widget in widgets:
        row.addWidget(widget)
    return holder


def _chip(view: NamedView, ask: Callable[[], None]) -> ChoiceChip:
    chip = ChoiceChip(f"{view.name} · {view.words}")
    chip.setProperty("id", view.id)
    chip.setAccessibleName(f"{view.name}, {view.words}, change")
    chip.clicked.connect(ask)
    return chip


def _adder(words: str, name: str, ask: Callable[[], None]) -> ActionChip:
    chip = ActionChip(words)
    chip.setAccessibleName(name)
    chip.clicked.connect(ask)
    return chip
