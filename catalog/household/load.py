"""Reading a household file: bounded text in, values out, or every fault at once."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from catalog.household.faults import NO_ENTRY, FaultList, entry_words
from catalog.household.people import people_from, places_from, wishes_from
from catalog.household.schema import FILE_VERSION, HouseholdForm
from catalog.household.things import Around, things_from
from catalog.own import kept, with_usable_own
from catalog.own_forms import OwnExerciseEntry, OwnThingEntry
from core.errors import InputError, shorten
from core.house.model import House, Person, Place
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.mass.naming import material_named
from core.quantity.units import parse_volume_l

MOST_CHARACTERS = 1_000_000
MOST_DOTS, MOST_DOTS_IN_LINE = 50_000, 400
"""A key of very many dotted parts takes the TOML reader minutes; a household's numbers stay far below these."""
CUP_L = (0.02, 5.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseholdFile:
    """What a file holds: the house, each person's wishes by id, and whether it says that it is invented."""

    house: House
    wishes: Mapping[str, WeekWishes]
    invented: bool = False


def load_household(path: Path, catalog: Catalog) -> HouseholdFile:
    """The household in a file; `InputError` (all faults in `CatalogFaults`) if it cannot be used."""
    return read_household(_text_of(path), path.name, catalog)


def read_household(text: str, file_name: str, catalog: Catalog) -> HouseholdFile:
    """The household in a text; `CatalogFaults` holds a sentence per fault."""
    file = shorten(file_name)
    data = _table(text, file)
    _check_version(data, file)
    faults = FaultList(file)
    try:
        form = HouseholdForm.model_validate(data)
    except ValidationError as error:
        faults.add_form_errors(data, error.errors(include_url=False, include_context=False))
        faults.raise_any()
        raise
    found = _household(form, catalog, faults)
    faults.raise_any()
    return found


def _text_of(path: Path) -> str:
    """The file's text, unless it is none, too large or no UTF-8."""
    try:
        if not path.exists():
            raise InputError(path, "is not there", "check the name of the file")
        if not path.is_file():
            raise InputError(path, "is no file", "give the name of a household file")
        if path.stat().st_size > MOST_CHARACTERS:
            raise _too_large(path)
        return path.read_text(encoding="utf-8-sig")
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "it is no UTF-8 text"
        raise InputError(path, f"cannot be read ({why})", "save it as plain UTF-8 text") from error


def _too_large(name: object) -> InputError:
    return InputError(name, "is larger than a household file can be (1 MB)", "split it into several")


def _table(text: str, file: str) -> dict[str, Any]:
    if len(text) > MOST_CHARACTERS:
        raise _too_large(file)
    if text.count(".") > MOST_DOTS or any(line.count(".") > MOST_DOTS_IN_LINE for line in text.splitlines()):
        raise InputError(file, "has more dots than a household file can have", "split it, or write shorter lines")
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        why = shorten(error) if isinstance(error, ValueError) else "it is nested too deep"
        raise InputError(file, f"is not a TOML file: {why}", "correct that line") from error


def _check_version(data: dict[str, Any], file: str) -> None:
    """A newer form is refused before anything else is said about it."""
    version = data.get("fillmark")
    if isinstance(version, int) and version > FILE_VERSION:
        rule = f"is the form of a newer Fillmark; this one reads {FILE_VERSION}"
        raise InputError(f"fillmark = {version}", rule, "update the program", where=file)
    if version is None:
        rule = "does not begin with fillmark = 1"
        raise InputError(file, rule, "put that line first, so that the form of the file is known")


def _household(form: HouseholdForm, shipped: Catalog, faults: FaultList) -> HouseholdFile:
    own = tuple(_own_entries(form, faults))
    catalog, odd = with_usable_own(shipped, own)
    for fault in odd:
        faults.add(NO_ENTRY, "own_movements or own_kinds", fault)
    places = places_from(form.places, faults)
    people = people_from(form.people, catalog, faults)
    cup_l = faults.attempt(NO_ENTRY, "cup", lambda: _cup_l(form.cup)) or 0.25
    fills = [faults.attempt(NO_ENTRY, "fills", partial(_fill_id, name, catalog)) for name in form.fills]
    house = House(
        name=form.name,
        places=places,
        things=things_from(form.things, Around(places, cup_l, catalog, faults)),
        people=people,
        fills=tuple(dict.fromkeys(one for one in fills if one is not None)),
        cup_l=cup_l,
        own=own,
    )
    wishes = _wishes(form, people, places, catalog, faults)
    return HouseholdFile(house=house, wishes=wishes, invented=form.invented)


def _own_entries(form: HouseholdForm, faults: FaultList) -> Iterator[OwnEntry]:
    """What the file adds to the catalog; it is read first, since things and wishes may mention it."""
    for at, movement in enumerate(form.own_movements):
        yield from _own_entry("own_movements", at, movement, faults)
    for at, kind in enumerate(form.own_kinds):
        yield from _own_entry("own_kinds", at, kind, faults)


def _own_entry(section: str, at: int, form: OwnExerciseEntry | OwnThingEntry, faults: FaultList) -> Iterator[OwnEntry]:
    made = faults.attempt(entry_words(section, at, {"name": form.name}), "", partial(kept, form))
    if made is not None:
        yield made


def _fill_id(name: str, catalog: Catalog) -> str:
    return material_named(name, catalog.materials).id


def _cup_l(text: str) -> float:
    low, high = CUP_L
    cup_l = parse_volume_l(text)
    if not low <= cup_l <= high:
        raise InputError(text, f"is no cup to pour with ({low:g} to {high:g} L)", "give its size, like 250 mL")
    return cup_l


def _wishes(
    form: HouseholdForm,
    people: tuple[Person, ...],
    places: tuple[Place, ...],
    catalog: Catalog,
    faults: FaultList,
) -> dict[str, WeekWishes]:
    """Each person's own week, or the household's."""
    shared = wishes_from(form.week, "week", places, catalog, faults)
    by_name = {person.name: person for person in people}
    found = {person.id: shared for person in people}
    for at, one in enumerate(form.people):
        if one.week is None:
            continue
        own = wishes_from(one.week, f"{entry_words('people', at, one.name)}, week", places, catalog, faults)
        if one.name in by_name:
            found[by_name[one.name].id] = own
    return found
