"""The fill materials: read from TOML, checked, sorted by id."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from pydantic import ValidationError

from catalog.faults import Fault, entry_name, faults_of, raise_first, read_tables, read_text, repeated
from catalog.schema_materials import MaterialEntry
from core.mass.model import Material

SHIPPED = Path(__file__).with_name("materials.toml")


def load_materials(source: str | Path = SHIPPED) -> tuple[Material, ...]:
    """Materials of a TOML text or file, sorted by id; `InputError` names file, entry and field of the first fault."""
    text, file = _text(source)
    entries, faults = _entries(text, file)
    raise_first(faults)
    return tuple(sorted((entry.material() for entry in entries), key=lambda material: material.id))


def find_material_errors(source: str | Path, known_sources: frozenset[str]) -> Iterator[str]:
    """One sentence per fault of a materials file, sources that are not listed among them."""
    text, file = _text(source)
    entries, faults = _entries(text, file)
    for entry in entries:
        unknown = (one for one in entry.sources if one not in known_sources)
        place = f"entry {entry.id}"
        faults.extend(
            Fault(file=file, entry=place, field="sources", found=one, rule="is not a listed source") for one in unknown
        )
    yield from (fault.sentence() for fault in faults)


def _text(source: str | Path) -> tuple[str, str]:
    return (read_text(source), source.name) if isinstance(source, Path) else (source, "materials")


def _entries(text: str, file: str) -> tuple[list[MaterialEntry], list[Fault]]:
    entries: list[MaterialEntry] = []
    faults: list[Fault] = []
    for number, table in enumerate(read_tables(text, file, "material"), start=1):
        try:
            entries.append(MaterialEntry.model_validate(table))
        except ValidationError as error:
            faults.extend(faults_of(file, entry_name(table, number), error.errors()))
    faults.extend(repeated([entry.id for entry in entries], file))
    return entries, faults
