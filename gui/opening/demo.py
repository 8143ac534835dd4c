"""The invented demo household, read from its file like any other."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from core.knowledge import Catalog
from core.store.commands import LoadHouse
from gui.desk.names import INVENTED

DEMO_FILE = Path(__file__).resolve().parents[2] / "resources" / "demo" / "dipper.toml"


def demo_house(catalog: Catalog) -> LoadHouse:
    """The command that puts the invented household in place of what is there (one undo brings that back)."""
    from catalog.household.load import read_household  # slow to import and rarely needed

    found = read_household(DEMO_FILE.read_text(encoding="utf-8"), DEMO_FILE.name, catalog)
    house = replace(found.house, name=f"{found.house.name} {INVENTED}")
    return LoadHouse(house, wishes=tuple(found.wishes.items()), replace_all=True)
