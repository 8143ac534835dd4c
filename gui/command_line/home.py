"""The household a command works on: from a file, the invented one, or the person's own record (only read here)."""

from __future__ import annotations

import argparse
import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from catalog.household.ids import slug
from catalog.load import load_catalog
from catalog.own import with_own
from core.errors import InputError
from core.fit.setting import Setting
from core.house.model import House, Person, Place
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.quantity.display import UnitSystem

DEMO_FILE = Path(__file__).parents[2] / "resources" / "demo" / "dipper.toml"
NOBODY_HOME = House(name="No household")


@dataclass(frozen=True, slots=True, kw_only=True)
class Home:
    """House, wishes by person, catalog (with own entries) and units.

    `folder` is the data folder when it is the person's own record.
    """

    house: House
    catalog: Catalog
    wishes: Mapping[str, WeekWishes] = field(default_factory=dict)
    system: UnitSystem = UnitSystem.METRIC
    invented: bool = False
    chosen_id: str | None = None
    folder: Path | None = None

    def person(self, name: str | None) -> Person:
        """The person named, else the chosen or the first one; `InputError` where there is none."""
        people = self.house.people
        if not people:
            raise InputError(self.house.name, "has nobody in it", "add a person with body mass and height")
        if name is None:
            return next((one for one in people if one.id == self.chosen_id), people[0])
        found = next((one for one in people if _same(name, one.name, one.id)), None)
        if found is None:
            raise InputError(name, "is nobody in this household", f"choose one of: {_names(people)}")
        return found

    def place(self, name: str | None) -> Place | None:
        """The place named, else the first one; None where the house lists none."""
        places = self.house.places
        if name is None:
            return places[0] if places else None
        found = next((one for one in places if _same(name, one.name, one.id)), None)
        if found is None:
            way_out = f"choose one of: {_names(places)}" if places else "leave --place out: it lists none"
            raise InputError(name, "is no place of this household", way_out)
        return found

    def setting(self, options: argparse.Namespace) -> Setting:
        """The person and place asked for, with what is there."""
        place = self.place(options.place)
        return Setting(self.house, self.person(options.person), self.catalog.material_by_id, place)


def _same(typed: str, name: str, entry_id: str) -> bool:
    plain = typed.strip().casefold()
    return plain in (name.casefold(), entry_id.casefold()) or slug(typed, "") == slug(name, " ")


def _names(entries: tuple[Person, ...] | tuple[Place, ...]) -> str:
    listed = ", ".join(entry.name for entry in entries[:5])
    return listed if len(entries) <= 5 else f"{listed} and {len(entries) - 5} more"


def open_home(options: argparse.Namespace, *, may_be_empty: bool = False) -> Home:
    """The household the options name; with `may_be_empty` an empty one where nothing is recorded yet."""
    if options.demo and options.home is not None:
        raise InputError(options.home, "and --demo are two households", "give one of them")
    system = None if options.units is None else units_named(options.units)
    catalog = load_catalog()
    if options.demo or options.home is not None:
        home = _from_file(DEMO_FILE if options.demo else options.home, catalog)
    else:
        home = _own(options.data, catalog, may_be_empty=may_be_empty)
    return home if system is None else replace(home, system=system)


def units_named(text: str) -> UnitSystem:
    """The system of this name; `InputError` for anything else."""
    try:
        return UnitSystem(text.strip().lower())
    except ValueError as error:
        raise InputError(text, "is no system of units", "use metric or us") from error


def _from_file(path: Path, catalog: Catalog) -> Home:
    from catalog.errors import CatalogFaults
    from catalog.household.load import load_household  # pydantic is only needed for files

    try:
        found = load_household(path, catalog)
    except CatalogFaults as faults:
        raise Unusable(path, faults.sentences) from faults
    whole = with_own(catalog, found.house.own)
    return Home(house=found.house, catalog=whole, wishes=found.wishes, invented=found.invented)


class Unusable(InputError):
    """A household file with faults, told in one sentence: the first one, and where to see the rest."""

    def __init__(self, path: Path, sentences: tuple[str, ...]) -> None:
        self.sentences = sentences
        super().__init__(path, f"has {len(sentences)} faults", "correct them")

    def sentence(self) -> str:
        """The first fault and how many more there are."""
        first, more = self.sentences[0].removesuffix("."), len(self.sentences) - 1
        return f"{first} (and {more} more; fillmark check lists all)." if more else f"{first}."


def _own(data: Path | None, catalog: Catalog, *, may_be_empty: bool) -> Home:
    """What the window keeps, read beside it if it is open."""
    from core.store.paths import DataFolder

    folder = DataFolder.chosen(data)
    if not folder.database.exists():
        if may_be_empty:
            return Home(house=NOBODY_HOME, catalog=catalog)
        rule = "holds no household yet"
        raise InputError(folder.folder, rule, "open the window once, or give --home FILE or --demo")
    from core.store.record import Record  # the database library, only for a record that is there

    with Record.look(folder, _utc_now) as record:
        settings, state = record.settings(), record.state()
        return Home(
            house=record.house(),
            catalog=with_own(catalog, record.house().own),
            wishes=dict(state.wishes),
            system=UnitSystem(settings.units.value),
            chosen_id=settings.person_id,
            folder=folder.folder,
        )


def _utc_now() -> datetime.datetime:
    return datetime.datetime.now(datetime.UTC)


def one_of(typed: str, words: Iterable[str], what: str) -> str:
    """The word typed, however it is spaced (“deep knee bend” is deep_knee_bend); `InputError` lists the words."""
    plain, known = typed.strip().casefold().replace(" ", "_").replace("-", "_"), tuple(words)
    if plain in known:
        return plain
    raise InputError(typed, f"is no {what}", f"use one of: {', '.join(known)}")
