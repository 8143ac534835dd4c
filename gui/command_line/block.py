"""`fillmark block`: several weeks in a row, from a baseline week to a retest."""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Iterator, Sequence

from core.errors import InputError
from core.plan.model import DayKind
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.planning import Asked, add_plan_options, asked, checked
from gui.command_line.week import week_document

USUAL_WEEKS = 8


def add_options(parser: Parser) -> None:
    """The options of this command."""
    add_plan_options(parser)
    parser.add_argument("--weeks", default=str(USUAL_WEEKS), metavar="N", help="4 to 16 (else 8)")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The weeks in order and the tests at both ends."""
    from core.plan.block import TrainingBlock, plan_block  # the solver, only for commands that plan

    weeks = _weeks(options.weeks)
    home = open_home(options)
    question = asked(options, home)
    block: TrainingBlock = plan_block(question.request, home.house, question.person, home.catalog, weeks=weeks)
    for one in block.weeks:
        checked(one.week, question)
    document: Document = {
        "person": question.person.name,
        "weeks": [
            {"n": one.number, "kind": one.kind, "load": one.load, "notes": list(one.notes)}
            | week_document(one.week, home)
            for one in block.weeks
        ],
        "tests": [{"id": test.id, "name": test.name, "how": test.how, "unit": test.unit} for test in block.tests],
    }
    rows = [(str(one["n"]), one["kind"], str(one["load"]), _days(one["days"]), _said(one)) for one in document["weeks"]]
    return Answer(document=document, lines=tuple(_lines(rows, document, question)))


def _weeks(text: str) -> int:
    try:
        return int(text)
    except ValueError as error:
        raise InputError(text, "is no number of weeks", "give a number from 4 to 16") from error


def _days(days: list[Document]) -> str:
    """Which kinds of days the week has: 2 strength, 1 easy."""
    kinds = Counter(day["kind"] for day in days if day["kind"] != DayKind.REST.value)
    return ", ".join(f"{count} {kind.replace('_', ' ')}" for kind, count in kinds.items())


def _said(week: Document) -> str:
    return "; ".join(week["clash"]) or (counted(len(week["notes"]), "wide step") if week["notes"] else "")


def _lines(rows: Sequence[tuple[str, ...]], document: Document, question: Asked) -> Iterator[str]:
    yield f"{question.person.name}: {len(rows)} weeks, the first one to test"
    columns = (Column("week", right=True), Column("kind"), Column("load", right=True), Column("days"), Column(""))
    yield from table(columns, rows)
    for week in document["weeks"]:
        yield from (f"Week {week['n']}: {note}" for note in week["notes"])
    yield ""
    yield from table(
        (Column("test"), Column("how"), Column("unit")),
        [(test["name"], test["how"], test["unit"]) for test in document["tests"]],
    )
