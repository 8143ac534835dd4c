"""The desk holds the open record and the catalog; screens read frozen values from it and hand it commands.

Signals: `changed` (a `ChangeSet`) after every command, undo or redo; `said` (sentence, can it be undone) for the undo
line; `refused` (one sentence) when a command can't be carried out; `jump` (a `Jump`) when one screen sends the person
to another. `catalog` holds the household's own entries as well; it is another value after every change of
`Kind.CATALOG`, before `changed` tells of it, so a screen takes anew what it keeps from it. Nothing here computes a
load: it asks core and keeps the answer until something it depends on changes.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from catalog.own import with_usable_own
from core.errors import FillmarkError
from core.house.model import House, Person, Place
from core.house.own import OwnKind
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.plan.model import Week
from core.quantity.display import UnitSystem
from core.store.codec_week import WEEK_VERSION, week_from_text, week_text
from core.store.commands import ChangeSettings, Command, LoadHouse, SaveWeek
from core.store.record import Record
from core.store.values import ChangeSet, Kind, SavedWeek, Settings
from gui.shell.entry import ScreenName

if TYPE_CHECKING:
    from core.fit.setting import Setting

SETTING_KINDS = frozenset({Kind.THINGS, Kind.PEOPLE, Kind.PLACES, Kind.HOUSE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Jump:
    """Where to go: a screen, the thing or movement it should show, and whether the week is to be planned there.

    To the own entries: what kind to begin, and the name somebody typed for it.
    """

    screen: ScreenName
    thing_id: str | None = None
    exercise_id: str | None = None
    weekday: int | None = None
    plan: bool = False
    own: OwnKind | None = None
    name: str = ""


class Desk(QObject):
    """See the module. Lives on the GUI thread; closes the record with `close`."""

    changed = Signal(object)
    said = Signal(str, bool)
    refused = Signal(str)
    jump = Signal(object)

    def __init__(self, record: Record, catalog: Catalog, demo: Callable[[], LoadHouse], parent: QObject) -> None:
        super().__init__(parent)
        self.record = record
        self.catalog, self._unusable = with_usable_own(catalog, record.house().own)
        self._demo = demo
        self._settings_made: dict[tuple[str | None, str], Setting] = {}
        self._week_read: tuple[str, Week] | None = None

    def house(self) -> House:
        """The house as it is on disk."""
        return self.record.house()

    def settings(self) -> Settings:
        """The settings."""
        return self.record.settings()

    def units(self) -> UnitSystem:
        """The units the person reads."""
        return UnitSystem(self.settings().units.value)

    def unusable_own(self) -> tuple[str, ...]:
        """A sentence for each own entry that the catalog can't take in (damaged, or written by hand)."""
        return tuple(str(fault) for fault in self._unusable)

    def person(self) -> Person | None:
        """Who trains now: the person chosen, else the first one, else nobody."""
        people = self.house().people
        chosen = self.settings().person_id
        return next((person for person in people if person.id == chosen), next(iter(people), None))

    def place(self, place_id: str | None) -> Place | None:
        """The place with this id."""
        return next((place for place in self.house().places if place.id == place_id), None)

    def wishes(self) -> WeekWishes:
        """The week the person wishes for."""
        person = self.person()
        return WeekWishes() if person is None else self.record.wishes(person.id)

    def setting(self, place_id: str | None = None) -> Setting | None:
        """The person in a place with what is there; None while nobody trains. Kept until something of it changes."""
        person = self.person()
        if person is None:
            return None
        from core.fit.setting import Setting  # brings numpy, which the first screen can do without

        key = (place_id, person.id)
        if key not in self._settings_made:
            self._settings_made[key] = Setting(self.house(), person, self.catalog.material_by_id, self.place(place_id))
        return self._settings_made[key]

    def week(self) -> Week | None:
        """The week the person has, or None when there is none (or it names movements the catalog lost)."""
        person = self.person()
        saved = None if person is None else self.record.week(person.id)
        if saved is None or saved.version != WEEK_VERSION:
            return None
        if self._week_read is not None and self._week_read[0] == saved.plan:
            return self._week_read[1]
        try:
            week = week_from_text(saved.plan, self.catalog)
        except FillmarkError as error:
            self.refused.emit(str(error))
            return None
        self._week_read = (saved.plan, week)
        return week

    def save_week(self, week: Week, today: datetime.date) -> bool:
        """Keep a planned week, beginning on the Monday of this week."""
        person = self.person()
        if person is None:
            return False
        monday = today - datetime.timedelta(days=today.weekday())
        saved = SavedWeek(starts=monday, version=WEEK_VERSION, plan=week_text(week, self.catalog))
        return self.do(SaveWeek(person.id, saved))

    def do(self, command: Command) -> bool:
        """Carry a command out and save it at once; False (and `refused`) when it can't be."""
        return self._told(lambda: self.record.do(command), undoable=True)

    def undo(self) -> None:
        """Take the last change back."""
        self._told(self.record.undo, undoable=False)

    def redo(self) -> None:
        """Do it again."""
        self._told(self.record.redo, undoable=True)

    def choose_person(self, person_id: str) -> None:
        """Somebody else trains now."""
        self.do(ChangeSettings(replace(self.settings(), person_id=person_id)))

    def load_demo(self) -> bool:
        """Put the invented household in place; one undo takes it away."""
        return self.do(self._demo())

    def close(self) -> None:
        """Close the record."""
        self.record.close()

    def _told(self, work: Callable[[], ChangeSet], *, undoable: bool) -> bool:
        try:
            change = work()
        except FillmarkError as error:
            self.refused.emit(str(error))
            return False
        if Kind.CATALOG in change.kinds:
            self.catalog, self._unusable = with_usable_own(self.catalog, self.house().own)
        if change.kinds & SETTING_KINDS:
            self._settings_made.clear()
        self.changed.emit(change)
        self.said.emit(change.sentence, undoable)
        return True
