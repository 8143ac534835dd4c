"""Own entries as a TOML file: a household file that holds nothing else, so that either can be taken in."""

from __future__ import annotations

from pathlib import Path

from catalog.faults import read_text
from catalog.household.load import read_household
from catalog.household.write import write_household
from catalog.own import shipped
from core.errors import InputError
from core.house.model import House
from core.house.own import OwnEntry
from core.knowledge import Catalog

NAME = "Own movements and things"


def own_text(entries: tuple[OwnEntry, ...], catalog: Catalog) -> str:
    """The text of the file."""
    return write_household(House(name=NAME, own=entries), {}, shipped(catalog))


def own_in(path: Path, catalog: Catalog) -> tuple[OwnEntry, ...]:
    """The own entries a household file holds; `InputError` (or `CatalogFaults`) when it can't be used or holds none."""
    found = read_household(read_text(path), path.name, shipped(catalog)).house.own
    if not found:
        raise InputError(path.name, "holds no movements or kinds of things of somebody's own", "choose another file")
    return found
