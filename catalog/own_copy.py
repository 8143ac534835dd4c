"""A table to begin an own entry with: that of an entry of the catalog, without what belongs to the original alone."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from catalog.exercises import SHIPPED as EXERCISE_FILES
from catalog.faults import read_tables, read_text
from catalog.own import table_of
from catalog.things import SHIPPED as THING_FILES
from core.errors import InputError
from core.house.own import OwnEntry, OwnKind

FILES: dict[OwnKind, tuple[Path, str]] = {
    OwnKind.EXERCISE: (EXERCISE_FILES, "exercise"),
    OwnKind.THING: (THING_FILES, "thing"),
}
ITS_OWN = ("id", "aliases", "plural", "label_kg", "staple", "source_ids", "sources")
"""Fields of the original that a copy does not take over."""


def copied(kind: OwnKind, entry_id: str, own: Iterable[OwnEntry]) -> dict[str, Any]:
    """The fields of an entry of the catalog, shipped or own, to be changed; `InputError` when there is no such entry.

    A copy is the person's word: it names no sources, and its share of the body only ranks.
    """
    mine = next((entry for entry in own if entry.id == entry_id and entry.kind is kind), None)
    table = table_of(mine) if mine is not None else _shipped(kind, entry_id)
    copy = {field: value for field, value in table.items() if field not in ITS_OWN}
    if "body" in copy:
        copy["body"] = {**copy["body"], "basis": "ordinal"}
        copy["body"].pop("source_ids", None)
    return copy


def _shipped(kind: OwnKind, entry_id: str) -> dict[str, Any]:
    """The table as it stands in its data file; only that file is read whole."""
    folder, word = FILES[kind]
    for file in sorted(folder.glob("*.toml")):
        text = read_text(file)
        if f'id = "{entry_id}"' not in text:
            continue
        for table in read_tables(text, file.name, word):
            if table.get("id") == entry_id:
                return table
    raise InputError(entry_id, "is no entry of the catalog", "copy another one")
