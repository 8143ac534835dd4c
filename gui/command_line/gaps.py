"""`fillmark gaps`: what this house can't train, why, and the things that would open most."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from core.swap import gaps as use_case
from core.swap.gaps import Gaps
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser

SHOWN = 8
FEW = 5
"""Fewer movements than this are called few."""
COST_WORDS = ("costs nothing", "cheap", "costs some money", "real gear")


def add_options(parser: Parser) -> None:
    """The options of this command."""
    del parser  # the options every command takes are all it needs


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """Every pattern with its movements, and what would help, best first."""
    home = open_home(options)
    person = home.person(options.person)
    found = use_case.gaps(home.house, person, home.catalog)
    document: Document = {
        "person": person.name,
        "patterns": [
            {
                "pattern": state.family.value,
                "movements": state.movements,
                "exercises": list(state.exercise_ids),
                "why": state.why,
            }
            for state in found.families
        ],
        "would_help": [
            {
                "thing": helper.name,
                "kind": helper.kind_id,
                "opens": [family.value for family in helper.opens],
                "movements": helper.movements,
                "common": helper.common,
                "cost": helper.cost,
            }
            for helper in found.would_help
        ],
        "together": [
            {
                "things": list(pair.names),
                "kinds": list(pair.kind_ids),
                "opens": [family.value for family in pair.opens],
                "movements": pair.movements,
                "cost": pair.cost,
            }
            for pair in found.together
        ],
    }
    return Answer(document=document, lines=tuple(_lines(found, person.name)))


def _lines(found: Gaps, name: str) -> Iterator[str]:
    yield f"{name} can do {counted(found.movements, 'movement')} here"
    columns = (Column("pattern"), Column("movements", right=True), Column(""))
    rows = [
        (_word(state.family), str(state.movements), _remark(state.movements, state.why)) for state in found.families
    ]
    yield from table(columns, rows)
    for pair in found.together:
        opens = ", ".join(map(_word, pair.opens))
        yield f"{pair.names[0]} and {pair.names[1]} together would open {opens}"
    if found.would_help:
        yield ""
        yield from _helper_lines(found)


def _helper_lines(found: Gaps) -> Iterator[str]:
    columns = (Column("what would help"), Column("movements", right=True), Column("opens"), Column("cost"))
    rows = [
        (one.name, str(one.movements), ", ".join(map(_word, one.opens)) or "-", COST_WORDS[one.cost])
        for one in found.would_help[:SHOWN]
    ]
    yield from table(columns, rows)


def _word(name: str) -> str:
    return name.replace("_", " ")


def _remark(movements: int, why: str) -> str:
    if movements == 0:
        return why
    return "few" if movements < FEW else ""
