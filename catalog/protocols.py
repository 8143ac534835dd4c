"""The tests and the published norms: read from TOML, checked, sorted by id."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel, ValidationError

from catalog.faults import Fault, entry_name, faults_of, raise_first, read_tables, read_text, repeated
from catalog.schema_protocols import NormEntry, ProtocolEntry
from core.assess.model import NormTable, Protocol
from core.exercise.model import Exercise

PROTOCOLS = Path(__file__).with_name("protocols.toml")
NORMS = Path(__file__).with_name("norms.toml")
Entry = TypeVar("Entry", bound=BaseModel)


def load_protocols(source: str | Path = PROTOCOLS) -> tuple[Protocol, ...]:
    """Tests of a TOML text or file, sorted by id; `InputError` names file, entry and field of the first fault."""
    entries, faults = _entries(source, "protocol", ProtocolEntry)
    raise_first([*faults, *repeated([entry.id for entry in entries], _name(source, "protocols"))])
    return tuple(sorted((entry.protocol() for entry in entries), key=lambda one: one.id))


def load_norms(source: str | Path = NORMS) -> tuple[NormTable, ...]:
    """Norms of a TOML text or file, sorted by id; `InputError` names file, entry and field of the first fault."""
    entries, faults = _entries(source, "norm", NormEntry)
    raise_first([*faults, *repeated([entry.id for entry in entries], _name(source, "norms"))])
    return tuple(sorted((entry.table() for entry in entries), key=lambda one: one.id))


def find_protocol_errors(
    protocols: Sequence[Protocol],
    norms: Sequence[NormTable],
    exercises: Sequence[Exercise],
    known_sources: frozenset[str],
) -> Iterator[str]:
    """One sentence per mention of a movement, test or source that is not there."""
    movements = {exercise.id for exercise in exercises}
    for protocol in protocols:
        if protocol.exercise_id not in movements:
            yield f"{protocol.id}: the movement {protocol.exercise_id} is not there"
        change_sources = protocol.change.source_ids if protocol.change is not None else ()
        yield from _unlisted(protocol.id, (*protocol.source_ids, *change_sources), known_sources)
    ids = {protocol.id for protocol in protocols}
    for table in norms:
        if table.protocol_id not in ids:
            yield f"{table.id}: the test {table.protocol_id} is not there"
        yield from _unlisted(table.id, table.source_ids, known_sources)


def _unlisted(entry_id: str, source_ids: Sequence[str], known: frozenset[str]) -> Iterator[str]:
    yield from (f"{entry_id}: the source {one} is not listed" for one in source_ids if one not in known)


def _name(source: str | Path, what: str) -> str:
    return source.name if isinstance(source, Path) else what


def _entries(source: str | Path, table: str, form: type[Entry]) -> tuple[list[Entry], list[Fault]]:
    file = _name(source, f"{table}s")
    text = read_text(source) if isinstance(source, Path) else source
    entries: list[Entry] = []
    faults: list[Fault] = []
    for number, found in enumerate(read_tables(text, file, table), start=1):
        try:
            entries.append(form.model_validate(found))
        except ValidationError as error:
            faults.extend(faults_of(file, entry_name(found, number), error.errors()))
    return entries, faults
