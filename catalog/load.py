"""The shipped catalog as one value: from its compiled form when that is up to date, else from the TOML files."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from catalog.compiled import collector_paused, fingerprint, places, read_compiled, write_compiled
from core.knowledge import Catalog


def load_catalog(kept_at: Iterable[Path] | None = None) -> Catalog:
    """The shipped catalog. Parsing and checking it keeps the compiled form at the first place that can be written.

    `InputError` names file, entry and field if the shipped files were changed and hold a fault.
    """
    with collector_paused():
        return _loaded(places() if kept_at is None else kept_at)


def _loaded(kept_at: Iterable[Path]) -> Catalog:
    key = fingerprint()
    tried = []
    for place in kept_at:
        if (catalog := read_compiled(place, key)) is not None:
            return catalog
        tried.append(place)
    catalog = parse_catalog()
    for place in tried:
        if write_compiled(place, key, catalog):
            break
    return catalog


def parse_catalog() -> Catalog:
    """The shipped catalog read from its TOML files, every entry checked against its schema."""
    # Imported here: the schemas load pydantic, which a start from the compiled form does without.
    from catalog.exercises import load_exercises
    from catalog.materials import load_materials
    from catalog.protocols import load_norms, load_protocols
    from catalog.sources import load_sources
    from catalog.things import load_kinds

    return Catalog(
        exercises=load_exercises(),
        kinds=load_kinds(),
        materials=load_materials(),
        sources=load_sources(),
        protocols=load_protocols(),
        norms=load_norms(),
    )
