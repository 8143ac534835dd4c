"""The entries of TOML data files, validated by their pydantic form; every fault becomes a sentence with a way out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from pydantic import BaseModel, ValidationError

from catalog.faults import entry_name, faults_of, read_tables, read_text
from core.errors import InputError

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

Entry = TypeVar("Entry", bound=BaseModel)

WAYS_OUT = {
    "extra_forbidden": "remove the field or check its spelling",
    "missing": "add the field",
    "enum": "use one of these words",
    "string_pattern_mismatch": "write it in that form",
    "value_error": "change the entry so that it holds",
}


def read_folder(folder: Path, way_out: str) -> dict[str, str]:
    """The texts of a folder's TOML files by file name; `InputError` with `way_out` if it is missing or holds none."""
    files = sorted(folder.glob("*.toml"))
    if not files:
        raise InputError(folder.name, "holds no TOML files", way_out)
    return {file.name: read_text(file) for file in files}


def read_entries(text: str, file: str, name: str, form: type[Entry]) -> tuple[list[Entry], list[str]]:
    """The good `[[name]]` entries of one file and the sentences for the others; a file that is no TOML is one fault."""
    try:
        tables = read_tables(text, file, name)
    except InputError as error:
        return [], [error.sentence()]
    entries: list[Entry] = []
    sentences: list[str] = []
    for number, table in enumerate(tables, start=1):
        try:
            entries.append(form.model_validate(table))
        except ValidationError as error:
            sentences.extend(entry_sentences(file, table, number, error.errors()))
    return entries, sentences


def entry_sentences(file: str, table: dict[str, Any], number: int, errors: list[ErrorDetails]) -> Iterator[str]:
    """One sentence per error of an entry: file, entry, field, rule and way out."""
    for error, fault in zip(errors, faults_of(file, entry_name(table, number), errors), strict=True):
        yield f"{fault.sentence()}; {WAYS_OUT.get(error['type'], 'correct it')}."
