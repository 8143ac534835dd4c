"""Opening Fillmark: what loads off the GUI thread, and how the window is furnished with its screens."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from gui.app import Opening, start
from gui.shell import Deeds, MainWindow, PersonView
from gui.theme import Theme, ThemeMode
from gui.worker import Report

if TYPE_CHECKING:
    from core.knowledge import Catalog
    from core.store.paths import DataFolder
    from gui.desk.desk import Desk

MODES = {"system": ThemeMode.AUTO, "light": ThemeMode.LIGHT, "dark": ThemeMode.DARK}


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """What the worker brings: the catalog and the folder to open the record in."""

    catalog: Catalog
    folder: DataFolder


def main(data: Path | None = None, *, demo: bool = False) -> int:
    """Open the window on a data folder; with `demo` the invented household is put in place if the house is empty."""

    def load(report: Report) -> Loaded:
        import gui.desk.desk  # noqa: F401  # likewise
        from catalog.load import load_catalog
        from core.store.paths import DataFolder

        report(0, 1)
        return Loaded(catalog=load_catalog(), folder=DataFolder.chosen(data))

    def furnish(window: MainWindow, theme: Theme, loaded: Loaded) -> None:
        desk = open_desk(loaded, window)
        if desk is None:
            return
        if demo and not desk.house().things:
            desk.load_demo()
        Furnishing(desk, window, theme)

    return start([], Opening(load=load, furnish=furnish, explain=_explain))


def _explain(error: Exception) -> str:
    from core.errors import FillmarkError

    if isinstance(error, FillmarkError):
        return str(error)
    raise error


def _now() -> datetime.datetime:
    return datetime.datetime.now(tz=datetime.UTC).astimezone()


def open_desk(loaded: Loaded, window: MainWindow) -> Desk | None:
    """The desk on the record of this folder, or None after the window has said why it can't be opened."""
    from core.errors import FillmarkError
    from core.store.record import Record
    from gui.desk.desk import Desk
    from gui.opening.demo import demo_house

    try:
        record = Record.open(loaded.folder, _now)
    except FillmarkError as error:
        window.show_trouble(str(error))
        return None
    desk = Desk(record, loaded.catalog, lambda: demo_house(loaded.catalog), window)
    window.closed.connect(desk.close)
    return desk


class Furnishing:
    """Wires a desk to the window: screens made at their first visit, people, undo, theme."""

    def __init__(self, desk: Desk, window: MainWindow, theme: Theme) -> None:
        from gui.opening.rooms import Rooms

        self._desk = desk
        self._window = window
        self._theme = theme
        self._rooms = Rooms(desk, window)
        desk.changed.connect(self._refresh)
        desk.jump.connect(self._rooms.go)
        window.person_chosen.connect(desk.choose_person)
        window.furnish(self._rooms.makers(), Deeds(undo=desk.undo, redo=desk.redo))
        window.setProperty("furnishing", self)
        self._refresh(None)

    def _refresh(self, _change: object) -> None:
        self._theme.set_mode(MODES[self._desk.settings().theme.value])
        person = self._desk.person()
        people = tuple(self._view(one.id, one.name, one.body_mass_kg) for one in self._desk.house().people)
        self._window.show_people(people, person.id if person is not None else "")

    def _view(self, person_id: str, name: str, body_mass_kg: float) -> PersonView:
        from core.quantity.display import format_mass

        return PersonView(person_id=person_id, name=name, detail=format_mass(body_mass_kg, self._desk.units()))


__all__ = ["Furnishing", "Loaded", "main", "open_desk"]
