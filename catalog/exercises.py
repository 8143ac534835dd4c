"""The exercises: read from a folder of TOML files (or from texts), checked, sorted by id."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from catalog.errors import CatalogFaults
from catalog.faults import entry_name, faults_of, read_tables, read_text, repeated
from catalog.schema_exercises import ExerciseEntry
from core.errors import InputError
from core.exercise.model import Exercise

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

SHIPPED = Path(__file__).with_name("exercises")
WAYS_OUT = {
    "extra_forbidden": "remove the field or check its spelling",
    "missing": "add the field",
    "enum": "use one of these words",
    "string_pattern_mismatch": "write it in that form",
    "value_error": "change the entry so that it holds",
}


def load_exercises(source: Path | Mapping[str, str] = SHIPPED) -> tuple[Exercise, ...]:
    """Exercises of every TOML file in a folder, or of texts by file name, sorted by id.

    `CatalogFaults` carries one sentence per fault, over all files, each naming file, entry, field, rule and way out.
    """
    texts = read_folder(source) if isinstance(source, Path) else source
    entries: list[ExerciseEntry] = []
    sentences: list[str] = []
    for file in sorted(texts):
        found, faults = _read_file(texts[file], file)
        entries.extend(found)
        sentences.extend(faults)
    ids = [entry.id for entry in entries]
    sentences.extend(f"{fault.sentence()}; give one of them another id." for fault in repeated(ids, "exercises"))
    if sentences:
        raise CatalogFaults(next(iter(texts)) if len(texts) == 1 else "exercises", sentences)
    return tuple(sorted((entry.exercise() for entry in entries), key=lambda exercise: exercise.id))


def read_folder(folder: Path) -> dict[str, str]:
    """The texts of a folder's TOML files by file name; `InputError` if it is missing or holds none."""
    files = sorted(folder.glob("*.toml"))
    if not files:
        raise InputError(folder.name, "holds no TOML files", "name the folder with the exercise files")
    return {file.name: read_text(file) for file in files}


def _read_file(text: str, file: str) -> tuple[list[ExerciseEntry], list[str]]:
    """The good entries of one file and the sentences for the others; a file that is no TOML is one fault."""
    try:
        tables = read_tables(text, file, "exercise")
    except InputError as error:
        return [], [error.sentence()]
    entries: list[ExerciseEntry] = []
    sentences: list[str] = []
    for number, table in enumerate(tables, start=1):
        try:
            entries.append(ExerciseEntry.model_validate(table))
        except ValidationError as error:
            sentences.extend(_sentences(file, table, number, error.errors()))
    return entries, sentences


def _sentences(file: str, table: dict[str, Any], number: int, errors: list[ErrorDetails]) -> Iterator[str]:
    for error, fault in zip(errors, faults_of(file, entry_name(table, number), errors), strict=True):
        yield f"{fault.sentence()}; {WAYS_OUT.get(error['type'], 'correct it')}."
