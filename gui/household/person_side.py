"""One person on the right side: name, measures, practice, what to spare, and what published tables are read by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from enum import StrEnum

from PySide6.QtWidgets import QWidget

from core.exercise.model import Demand
from core.house.model import Experience, Person, Sex
from core.store.commands import AddPerson, ChangePerson, Command, RemovePerson
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.desk.names import DEMAND_NAMES
from gui.household.chip_row import ChipRow, experience_row, sex_row
from gui.household.entry_side import NEW, EntrySide
from gui.household.line_form import Line
from gui.household.people_typed import BLANK_PERSON, PersonLine, born_line, person_lines, with_person_line
from gui.theme import Icon


class PersonSide(EntrySide[Person]):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        self.experience = experience_row()
        self.spares = ChipRow("What to spare")
        self.sex = sex_row()
        super().__init__(desk, Icon.PEOPLE, (self.experience, self.spares, self.sex), parent)
        self.experience.chosen.connect(self._keep_experience)
        self.spares.edited.connect(self._keep_spares)
        self.sex.chosen.connect(self._keep_sex)

    def _entries(self) -> Iterable[Person]:
        return self._desk.house().people

    def _question(self) -> str:
        return "Who else trains?" if self._desk.house().people else "Who trains?"

    def _lines(self, entry: Person | None) -> tuple[Line, ...]:
        return (*person_lines(entry, self._desk.units()), born_line(entry))

    def _show_choices(self, entry: Person | None) -> None:
        shown = entry or BLANK_PERSON
        self.experience.show_choice(shown.experience)
        self.sex.show_choice(shown.sex)
        self.spares.show_chips(tuple((one.value, words, one in shown.spares) for one, words in DEMAND_NAMES.items()))

    def _with_line(self, entry: Person, key: StrEnum, text: str) -> Person:
        return with_person_line(entry, PersonLine(key), text, self._desk.units())

    def _blank(self) -> Person:
        spares = _demands(self.spares.chosen())
        sex = self.sex.choice()
        return replace(BLANK_PERSON, id=NEW, experience=self.experience.choice(), spares=spares, sex=sex)

    def _adding(self, entry: Person) -> Command:
        return AddPerson(replace(entry, id=free_id(entry.name, {person.id for person in self._entries()})))

    def _changing(self, entry: Person) -> Command:
        return ChangePerson(entry)

    def _removing(self, entry_id: str) -> Command:
        return RemovePerson(entry_id)

    def _keep_experience(self, experience: Experience) -> None:
        person = self.entry()
        if person is not None and not self._change(replace(person, experience=experience)):
            self.refresh()

    def _keep_sex(self, sex: Sex | None) -> None:
        person = self.entry()
        if person is not None and not self._change(replace(person, sex=sex)):
            self.refresh()

    def _keep_spares(self, chosen: tuple[str, ...]) -> None:
        person = self.entry()
        if person is not None and not self._change(replace(person, spares=_demands(chosen))):
            self.refresh()


def _demands(chosen: tuple[str, ...]) -> frozenset[Demand]:
    return frozenset(Demand(value) for value in chosen)
