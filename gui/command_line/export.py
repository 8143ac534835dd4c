"""`fillmark export`: everything as one JSON document, or the log as a table for a spreadsheet."""

from __future__ import annotations

import argparse
import json
from datetime import UTC, datetime
from pathlib import Path

from core.errors import InputError
from core.paper.log_csv import log_csv
from core.store.changes import HouseFacts
from core.store.contents import Contents, WishesOf, contents_json, contents_schema
from gui.command_line.answer import Answer
from gui.command_line.home import Home, open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.paper import add_force, written


def add_options(parser: Parser) -> None:
    """The options of this command; here --json names the file to write."""
    kinds = parser.add_mutually_exclusive_group(required=True)
    kinds.add_argument("--json", dest="everything", type=Path, metavar="FILE", help="everything, to take along")
    kinds.add_argument("--csv", type=Path, metavar="FILE", help="the log, a row a set")
    kinds.add_argument("--schema", type=Path, metavar="FILE", help="the JSON Schema of what --json writes")
    kinds.add_argument("--toml", type=Path, metavar="FILE", help="the household as a file to edit")
    add_force(parser)


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """Write the file that was asked for."""
    if options.schema is not None:
        return written(options.schema, _json(contents_schema()), "the schema of the export", options)
    home = open_home(options)
    if options.toml is not None:
        return written(options.toml, _household(home), f"the household {home.house.name}", options)
    contents = contents_of(home)
    if options.everything is not None:
        return written(options.everything, _json(contents_json(contents)), "everything", options)
    people = {person.id: person.name for person in contents.people}
    exercises = {exercise.id: exercise.name for exercise in home.catalog.exercises}
    content = log_csv(contents.sessions, people, exercises)
    return written(options.csv, content, "the log", options, {"sessions": len(contents.sessions)})


def contents_of(home: Home) -> Contents:
    """The whole record, or a household file as a record without a log."""
    if home.folder is not None:
        from core.store.paths import DataFolder
        from core.store.record import Record

        with Record.look(DataFolder.chosen(home.folder), lambda: datetime.now(UTC)) as record:
            return record.contents()
    house = home.house
    return Contents(
        house=HouseFacts(name=house.name, fills=house.fills, cup_l=house.cup_l),
        own=house.own,
        places=house.places,
        people=house.people,
        things=house.things,
        wishes=tuple(WishesOf(person_id=name, wishes=wishes) for name, wishes in home.wishes.items()),
    )


def _household(home: Home) -> bytes:
    from catalog.household.write import write_household

    return write_household(home.house, home.wishes, home.catalog, invented=home.invented).encode()


def _json(document: object) -> bytes:
    try:
        return (json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1) + "\n").encode()
    except ValueError as error:
        raise InputError("the record", f"can't be written as JSON ({error})", "go back to a backup") from error
