"""`fillmark check`: every fault of a household file or of the catalog, or the form of a household file."""

from __future__ import annotations

import argparse
from pathlib import Path

from catalog.load import load_catalog
from core.errors import InputError
from core.knowledge import Catalog
from gui.command_line.answer import Answer, counted
from gui.command_line.main import Clock
from gui.command_line.options import Parser, Usage


def add_options(parser: Parser) -> None:
    """The options of this command."""
    parser.add_argument("files", nargs="*", type=Path, metavar="FILE", help="household files")
    parser.add_argument("--schema", action="store_true", help="print the form of a household file (JSON Schema)")
    parser.add_argument("--catalog", action="store_true", help="check the exercises, things, materials and sources")
    parser.add_argument("--report", action="store_true", help="with --catalog: what the exercises cover")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The faults, and exit code 2 when there are any."""
    if sum((bool(options.files), options.schema, options.catalog)) != 1:
        raise Usage("check takes a FILE, --schema or --catalog, one of them; fillmark check --help tells more.")
    if options.schema:
        return _schema()
    if options.catalog:
        return _catalog(report=options.report)
    return _files(options.files, load_catalog())


def _schema() -> Answer:
    from catalog.household.schema import form_schema  # pydantic is only needed for files
    from gui.command_line.answer import as_json

    document = form_schema()
    return Answer(document=document, lines=(as_json(document, ascii_only=False),))


def _catalog(*, report: bool) -> Answer:
    from catalog.check import find_catalog_errors
    from catalog.coverage import coverage

    catalog = load_catalog()
    faults = list(find_catalog_errors(catalog))
    counts = {
        "exercises": len(catalog.exercises),
        "kinds": len(catalog.kinds),
        "materials": len(catalog.materials),
        "sources": len(catalog.sources),
    }
    told = ", ".join(f"{count} {what}" for what, count in counts.items())
    lines = [*faults, f"The catalog ({told}) has {counted(len(faults), 'fault') if faults else 'no faults'}."]
    covered = list(coverage(catalog.exercises).lines()) if report else []
    document = {"faults": faults, "counts": counts, "report": covered}
    return Answer(document=document, lines=(*lines, *covered), fault=_told("the catalog", len(faults)))


def _files(paths: list[Path], catalog: Catalog) -> Answer:
    faults: list[str] = []
    sound: list[str] = []
    for path in paths:
        found = _faults_of(path, catalog)
        faults.extend(found)
        if not found:
            sound.append(f"{path.name} is in order.")
    what = paths[0].name if len(paths) == 1 else f"{len(paths)} files"
    document = {"files": [str(path) for path in paths], "faults": faults}
    return Answer(document=document, lines=(*faults, *sound), fault=_told(what, len(faults)))


def _faults_of(path: Path, catalog: Catalog) -> tuple[str, ...]:
    from catalog.errors import CatalogFaults
    from catalog.household.load import load_household

    try:
        load_household(path, catalog)
    except CatalogFaults as faults:
        return faults.sentences
    except InputError as fault:
        return (fault.sentence(),)
    return ()


def _told(what: str, count: int) -> str:
    return f"“{what}” has {counted(count, 'fault')}; correct {'it' if count == 1 else 'them'}." if count else ""
