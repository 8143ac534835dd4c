"""Where the numbers come from: read from TOML, checked, sorted by id."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from catalog.faults import Fault, entry_name, faults_of, raise_first, read_tables, read_text, repeated
from core.knowledge import Source

SHIPPED = Path(__file__).with_name("sources.toml")
Kind = Literal["exact", "measured", "published", "common practice", "assumed", "memory"]


class SourceEntry(BaseModel):
    """One `[[source]]` table."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    id: Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{1,59}$")]
    citation: Annotated[str, Field(min_length=10, max_length=500)]
    url: Annotated[str, Field(pattern=r"^(https?://\S{3,300})?$")] = ""
    kind: Kind


def load_sources(source: str | Path = SHIPPED) -> tuple[Source, ...]:
    """Sources of a TOML text or file, sorted by id; `InputError` names file, entry and field of the first fault."""
    entries, faults = _entries(source)
    raise_first(faults)
    found = (Source(id=entry.id, citation=entry.citation, kind=entry.kind, url=entry.url) for entry in entries)
    return tuple(sorted(found, key=lambda one: one.id))


def find_source_errors(source: str | Path) -> Iterator[str]:
    """One sentence per fault of a sources file."""
    yield from (fault.sentence() for fault in _entries(source)[1])


def _entries(source: str | Path) -> tuple[list[SourceEntry], list[Fault]]:
    text, file = (read_text(source), source.name) if isinstance(source, Path) else (source, "sources")
    entries: list[SourceEntry] = []
    faults: list[Fault] = []
    for number, table in enumerate(read_tables(text, file, "source"), start=1):
        try:
            entries.append(SourceEntry.model_validate(table))
        except ValidationError as error:
            faults.extend(faults_of(file, entry_name(table, number), error.errors()))
    faults.extend(repeated([entry.id for entry in entries], file))
    return entries, faults
