"""People and places: each a small form whose lines are saved as they are left, with chips for what is yes or no."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from core.errors import InputError
from core.exercise.model import Demand
from core.house.model import Experience, Person, Place
from core.store.commands import AddPerson, AddPlace, ChangePerson, ChangePlace, RemovePerson, RemovePlace
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.desk.names import DEMAND_NAMES
from gui.household.line_form import LineForm
from gui.household.people_typed import (
    PersonLine,
    PlaceLine,
    person_lines,
    place_lines,
    read_quiet,
    with_person_line,
    with_place_line,
)
from gui.household.thing_edit_panel import ChipRow
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, LinkButton, PrimaryButton, SecondaryButton, SectionHeader, Text

EXPERIENCE_WORDS = {Experience.NEW: "new to it", Experience.SOME: "some", Experience.TRAINED: "trained"}
NEW_PERSON = Person(id="new", name="New person", body_mass_kg=70.0, height_cm=170.0)


class PeoplePanel(QWidget):
    """Everyone who trains here and every place; `done` on its button."""

    done = Signal()

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._forms: list[QWidget] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Space.L)
        self.add_person = SecondaryButton("Add a person")
        self.add_place = SecondaryButton("Add a place")
        self.close_button = PrimaryButton("Done")
        self.add_person.clicked.connect(self._add_person)
        self.add_place.clicked.connect(self._add_place)
        self.close_button.clicked.connect(self.done)
        for button in (self.add_person, self.add_place, self.close_button):
            self._column.addWidget(button)
        self._column.addStretch(1)
        self.refresh()

    def refresh(self) -> None:
        """Paint everyone and every place as they are on disk; forms that still fit stay, with their cursor."""
        house, system = self._desk.house(), self._desk.units()
        wanted = [("person", person.id) for person in house.people] + [("place", place.id) for place in house.places]
        if [form.property("stands_for") for form in self._forms] != [list(pair) for pair in wanted]:
            self._rebuild(wanted)
        by_person = {person.id: person for person in house.people}
        by_place = {place.id: place for place in house.places}
        for form in self._forms:
            kind, entry_id = form.property("stands_for")
            if kind == "person" and isinstance(form, PersonForm):
                form.show_person(by_person[entry_id], system)
            elif isinstance(form, PlaceForm):
                form.show_place(by_place[entry_id], system)

    def _rebuild(self, wanted: list[tuple[str, str]]) -> None:
        for form in self._forms:
            self._column.removeWidget(form)
            form.hide()
            form.deleteLater()
        self._forms = []
        for at, pair in enumerate(wanted):
            form = PersonForm(self._desk) if pair[0] == "person" else PlaceForm(self._desk)
            form.setProperty("stands_for", list(pair))
            self._forms.append(form)
            self._column.insertWidget(at, form)

    def _add_person(self) -> None:
        taken = {person.id for person in self._desk.house().people}
        self._desk.do(AddPerson(replace(NEW_PERSON, id=free_id(NEW_PERSON.name, taken))))

    def _add_place(self) -> None:
        taken = {place.id for place in self._desk.house().places}
        self._desk.do(AddPlace(Place(id=free_id("New place", taken), name="New place")))


class PersonForm(Card):
    """One person."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._desk = desk
        self._person = NEW_PERSON
        self.heading = SectionHeader("")
        self.form = LineForm()
        self.experience = ChipRow("How used to strength work")
        self.spares = ChipRow("Spare these (ask a professional when something hurts)")
        self.remove = LinkButton("Remove this person", TextRole.SMALL)
        for widget in (self.heading, self.form, self.experience, self.spares, self.remove):
            self.body.addWidget(widget)
        self.form.edited.connect(self._keep_line)
        self.experience.edited.connect(self._keep_experience)
        self.spares.edited.connect(self._keep_spares)
        self.remove.clicked.connect(self._remove)

    def show_person(self, person: Person, system: object) -> None:
        """Paint the person as on disk."""
        self._person = person
        self.heading.setText(person.name)
        self.form.show_lines(person_lines(person, self._desk.units()))
        chips = tuple((level.value, words, level is person.experience) for level, words in EXPERIENCE_WORDS.items())
        self.experience.show_chips(chips)
        self.spares.show_chips(tuple((d.value, DEMAND_NAMES[d], d in person.spares) for d in Demand))

    def _keep_line(self, key: StrEnum, text: str) -> None:
        try:
            changed = with_person_line(self._person, PersonLine(key), text, self._desk.units())
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        self._desk.do(ChangePerson(changed))

    def _keep_experience(self, chosen: tuple[str, ...]) -> None:
        new = [word for word in chosen if word != self._person.experience.value]
        if new:
            self._desk.do(ChangePerson(replace(self._person, experience=Experience(new[0]))))

    def _keep_spares(self, chosen: tuple[str, ...]) -> None:
        spares = frozenset(Demand(word) for word in chosen)
        if spares != self._person.spares:
            self._desk.do(ChangePerson(replace(self._person, spares=spares)))

    def _remove(self) -> None:
        self._desk.do(RemovePerson(self._person.id))


class PlaceForm(Card):
    """One place."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._desk = desk
        self._place = Place(id="new", name="New place")
        self.heading = SectionHeader("")
        self.form = LineForm()
        self.marks = ChipRow("What is so here")
        self.remove = LinkButton("Remove this place", TextRole.SMALL)
        hint = Text(
            "Quiet hours keep noisy movements out of sessions that run into them.", TextRole.SMALL, Ink.SOFT, wrap=True
        )
        for widget in (self.heading, self.form, self.marks, hint, self.remove):
            self.body.addWidget(widget)
        self.form.edited.connect(self._keep_line)
        self.marks.edited.connect(self._keep_marks)
        self.remove.clicked.connect(self._remove)

    def show_place(self, place: Place, system: object) -> None:
        """Paint the place as on disk."""
        self._place = place
        self.heading.setText(place.name)
        self.form.show_lines(place_lines(place, self._desk.units()))
        marks = (
            ("outdoors", "outdoors", place.outdoors),
            ("neighbours", "neighbours below", place.neighbours),
            ("wet", "wet underfoot", place.wet),
        )
        self.marks.show_chips(marks)

    def _keep_line(self, key: StrEnum, text: str) -> None:
        line = PlaceLine(key)
        try:
            changed = (
                self._with_quiet() if line in _QUIET else with_place_line(self._place, line, text, self._desk.units())
            )
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        self._desk.do(ChangePlace(changed))

    def _with_quiet(self) -> Place:
        start, end = (self.form.text(key) for key in _QUIET)
        return replace(self._place, quiet=read_quiet(start, end))

    def _keep_marks(self, chosen: tuple[str, ...]) -> None:
        outdoors, neighbours, wet = (mark in chosen for mark in ("outdoors", "neighbours", "wet"))
        changed = replace(self._place, outdoors=outdoors, neighbours=neighbours, wet=wet)
        if changed != self._place:
            self._desk.do(ChangePlace(changed))

    def _remove(self) -> None:
        self._desk.do(RemovePlace(self._place.id))


_QUIET = (PlaceLine.QUIET_FROM, PlaceLine.QUIET_TO)
