"""The kinds of household things: read from a folder of TOML files (or from texts), checked, sorted by id.

The name of a file is the group of its kinds. `fill_groups.toml` says which materials go into which opening.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from catalog.entries import entry_sentences, read_entries, read_folder
from catalog.errors import CatalogFaults
from catalog.faults import read_tables, read_text, repeated
from catalog.schema_things import Identifier, ThingEntry
from core.things.model import ThingKind

SHIPPED = Path(__file__).with_name("things")
SHIPPED_FILLS = Path(__file__).with_name("fill_groups.toml")
ICONS = (
    "backpack", "ball", "band", "barbell", "barrow", "beam", "bench", "book", "bottle", "box", "brick", "bucket",
    "chair", "door-frame", "dumbbell", "jug", "kettlebell", "mat", "other", "pan", "path", "pillow", "plate", "rail",
    "rings", "rope", "sack", "sofa", "stairs", "stick", "stool", "tin", "tote", "towel", "tyre", "wall",
)  # fmt: skip
"""The pictures a kind can have; each is drawn in resources/icons as thing-<name>.svg."""


class _FillGroup(BaseModel):
    """One `[[fills]]` table."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    id: Identifier
    materials: Annotated[tuple[str, ...], Field(min_length=1, max_length=60)]


def load_kinds(source: Path | Mapping[str, str] = SHIPPED, fills: Path | str = SHIPPED_FILLS) -> tuple[ThingKind, ...]:
    """Kinds of every TOML file in a folder, or of texts by file name, sorted by id.

    `CatalogFaults` carries one sentence per fault, over all files, each naming file, entry, field, rule and way out.
    """
    texts = read_folder(source, "name the folder with the files of things") if isinstance(source, Path) else source
    groups = load_fill_groups(fills)
    kinds: list[ThingKind] = []
    sentences: list[str] = []
    for file in sorted(texts):
        entries, faults = read_entries(texts[file], file, "thing", ThingEntry)
        sentences.extend(faults)
        sentences.extend(_unknown_fills(entries, file, groups))
        kinds.extend(entry.kind(file.removesuffix(".toml"), groups) for entry in entries)
    ids = [kind.id for kind in kinds]
    sentences.extend(f"{fault.sentence()}; give one of them another id." for fault in repeated(ids, "things"))
    if sentences:
        raise CatalogFaults(next(iter(texts)) if len(texts) == 1 else "things", sentences)
    return tuple(sorted(kinds, key=lambda kind: kind.id))


def load_fill_groups(source: Path | str = SHIPPED_FILLS) -> dict[str, tuple[str, ...]]:
    """Material ids by group; `CatalogFaults` if the file is wrong."""
    text, file = (read_text(source), source.name) if isinstance(source, Path) else (source, "fills")
    groups: dict[str, tuple[str, ...]] = {}
    sentences: list[str] = []
    for number, table in enumerate(read_tables(text, file, "fills"), start=1):
        try:
            group = _FillGroup.model_validate(table)
        except ValidationError as error:
            sentences.extend(entry_sentences(file, table, number, error.errors()))
            continue
        if group.id in groups:
            sentences.append(f"{file}: entry {group.id}, field id: “{group.id}” is used twice; name it otherwise.")
        groups[group.id] = group.materials
    if sentences:
        raise CatalogFaults(file, sentences)
    return groups


def _unknown_fills(entries: list[ThingEntry], file: str, groups: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    for entry in entries:
        if entry.fills is not None and entry.fills not in groups:
            known = ", ".join(groups)
            yield f"{file}: entry {entry.id}, field fills: “{entry.fills}” is no group of fills; use one of {known}."
