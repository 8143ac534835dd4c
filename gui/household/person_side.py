"""One person on the right side: who trains here, changed in place; a new one is added once the lines are complete."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from core.errors import InputError
from core.exercise.model import Demand
from core.house.model import Experience, Person
from core.store.commands import AddPerson, ChangePerson, RemovePerson
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.desk.names import DEMAND_NAMES
from gui.household.chip_row import ChipRow, ExperienceRow
from gui.household.line_form import LineForm
from gui.household.panel import Panel
from gui.household.people_typed import (
    PersonLine,
    person_lines,
    read_body_mass_kg,
    read_height_cm,
    read_name,
    with_person_line,
)
from gui.theme import Icon
from gui.widgets import PrimaryButton, SecondaryButton

NEW = ""


class PersonSide(Panel):
    """`added` (id) after a new person was added, `removed` after one was taken out."""

    added = Signal(str)
    removed = Signal()

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(Icon.PEOPLE, parent=parent)
        self._desk = desk
        self._person_id = NEW
        self.form = LineForm()
        self.experience = ExperienceRow()
        self.spares = ChipRow("What to spare")
        self.add = PrimaryButton("Add")
        self.remove = SecondaryButton("Remove")
        for widget in (self.form, self.experience, self.spares):
            self.column.addWidget(widget)
        self.column.addStretch(1)
        self.buttons.addWidget(self.add)
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.remove)
        self.closer.show()
        self.form.edited.connect(self._keep_line)
        self.experience.chosen.connect(self._keep_experience)
        self.spares.edited.connect(self._keep_spares)
        self.add.clicked.connect(self._add)
        self.remove.clicked.connect(self._remove)

    def show_person(self, person_id: str) -> None:
        """Show somebody, or with `NEW` empty lines."""
        self._person_id = person_id
        person = self._person()
        self.show_head(person.name if person is not None else "Who else trains?" if self._others() else "Who trains?")
        self.form.show_lines(person_lines(person, self._desk.units()))
        self.experience.show_experience(person.experience if person is not None else Experience.NEW)
        spares = person.spares if person is not None else frozenset()
        self.spares.show_chips(tuple((one.value, words, one in spares) for one, words in DEMAND_NAMES.items()))
        self.add.setVisible(person is None)
        self.remove.setVisible(person is not None)
        self.remove.setAccessibleName(f"Remove {person.name}" if person is not None else "")
        if person is None:
            self.form.field(PersonLine.NAME).edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def refresh(self) -> None:
        """Paint the person as they are on disk; what is half typed for a new one stays."""
        if self._person_id != NEW and self._person() is not None:
            self.show_person(self._person_id)

    def person_id(self) -> str:
        """Whom it shows."""
        return self._person_id

    def _others(self) -> bool:
        return bool(self._desk.house().people)

    def _person(self) -> Person | None:
        return next((person for person in self._desk.house().people if person.id == self._person_id), None)

    def _keep_line(self, key: PersonLine, text: str) -> None:
        person = self._person()
        if person is None:
            return
        try:
            changed = with_person_line(person, key, text, self._desk.units())
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        if changed == person or not self._desk.do(ChangePerson(changed)):
            self.refresh()

    def _keep_experience(self, experience: Experience) -> None:
        person = self._person()
        if person is not None:
            self._desk.do(ChangePerson(replace(person, experience=experience)))

    def _keep_spares(self, chosen: tuple[str, ...]) -> None:
        person = self._person()
        if person is not None:
            self._desk.do(ChangePerson(replace(person, spares=frozenset(Demand(value) for value in chosen))))

    def _add(self) -> None:
        person = self._typed()
        if person is not None and self._desk.do(AddPerson(person)):
            self.added.emit(person.id)

    def _typed(self) -> Person | None:
        """The new person; None after every line that can't be used has said so."""
        units = self._desk.units()
        name = self.form.read(PersonLine.NAME, read_name)
        mass_kg = self.form.read(PersonLine.BODY_MASS, lambda text: read_body_mass_kg(text, units))
        height_cm = self.form.read(PersonLine.HEIGHT, lambda text: read_height_cm(text, units))
        if name is None or mass_kg is None or height_cm is None:
            return None
        taken = {person.id for person in self._desk.house().people}
        return Person(
            id=free_id(name, taken),
            name=name,
            body_mass_kg=mass_kg,
            height_cm=height_cm,
            experience=self.experience.experience(),
            spares=frozenset(Demand(value) for value in self.spares.chosen()),
        )

    def _remove(self) -> None:
        if self._person() is not None and self._desk.do(RemovePerson(self._person_id)):
            self.removed.emit()
