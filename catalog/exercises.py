"""The exercises: read from a folder of TOML files (or from texts), checked, sorted by id."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from catalog.entries import read_entries, read_folder
from catalog.errors import CatalogFaults
from catalog.faults import repeated
from catalog.schema_exercises import ExerciseEntry
from core.exercise.model import Exercise

SHIPPED = Path(__file__).with_name("exercises")


def load_exercises(source: Path | Mapping[str, str] = SHIPPED) -> tuple[Exercise, ...]:
    """Exercises of every TOML file in a folder, or of texts by file name, sorted by id.

    `CatalogFaults` carries one sentence per fault, over all files, each naming file, entry, field, rule and way out.
    """
    texts = read_folder(source, "name the folder with the exercise files") if isinstance(source, Path) else source
    entries: list[ExerciseEntry] = []
    sentences: list[str] = []
    for file in sorted(texts):
        found, faults = read_entries(texts[file], file, "exercise", ExerciseEntry)
        entries.extend(found)
        sentences.extend(faults)
    ids = [entry.id for entry in entries]
    sentences.extend(f"{fault.sentence()}; give one of them another id." for fault in repeated(ids, "exercises"))
    if sentences:
        raise CatalogFaults(next(iter(texts)) if len(texts) == 1 else "exercises", sentences)
    return tuple(sorted((entry.exercise() for entry in entries), key=lambda exercise: exercise.id))
