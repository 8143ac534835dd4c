"""The window furnished from a desk: its screens, who trains, undo and redo, the theme."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject

from core.quantity.display import format_mass
from gui.desk.desk import Desk
from gui.opening.rooms import Rooms
from gui.shell import Deeds, MainWindow, PersonView
from gui.theme import ThemeMode

MODES = {"system": ThemeMode.AUTO, "light": ThemeMode.LIGHT, "dark": ThemeMode.DARK}


class Furnishing(QObject):
    """Goes with its desk; screens are made at their first visit."""

    def __init__(self, desk: Desk, window: MainWindow, dress: Callable[[ThemeMode], None]) -> None:
        super().__init__(desk)
        self._desk = desk
        self._window = window
        self._dress = dress
        self.rooms = Rooms(desk, window)
        desk.changed.connect(self._refresh)
        desk.jump.connect(self.rooms.go)
        window.person_chosen.connect(self._choose_person)
        window.furnish(self.rooms.makers(), Deeds(undo=desk.undo, redo=desk.redo))
        self._refresh(None)

    def _choose_person(self, person_id: str) -> None:
        self._desk.choose_person(person_id)

    def _refresh(self, _change: object) -> None:
        self._dress(MODES[self._desk.settings().theme.value])
        person = self._desk.person()
        people = tuple(self._view(one.id, one.name, one.body_mass_kg) for one in self._desk.house().people)
        self._window.show_people(people, person.id if person is not None else "")

    def _view(self, person_id: str, name: str, body_mass_kg: float) -> PersonView:
        return PersonView(person_id=person_id, name=name, detail=format_mass(body_mass_kg, self._desk.units()))
