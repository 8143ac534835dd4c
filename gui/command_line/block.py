"""`fillmark block`: several weeks in a row, from a baseline week to a retest."""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Iterator, Sequence

from catalog.household.schema import WEEKDAY_KEYS
from core.assess.model import Protocol
from core.errors import InputError
from core.house.wishes import WEEKDAYS
from core.plan.block_model import BlockWeek, TrainingBlock
from core.plan.model import DayKind
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.planning import Asked, add_plan_options, asked, checked, monday_named
from gui.command_line.week import week_document

USUAL_WEEKS = 8


def add_options(parser: Parser) -> None:
    """The options of this command."""
    add_plan_options(parser)
    parser.add_argument("--weeks", default=str(USUAL_WEEKS), metavar="N", help="4 to 16 (else 8)")
    parser.add_argument("--start", metavar="DATE", help="the Monday of the test week (else the next Monday)")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:
    """The weeks in order and the tests at both ends."""
    from core.plan.block import plan_block

    weeks = _weeks(options.weeks)
    starts = monday_named(options.start, clock().date())
    home = open_home(options)
    question = asked(options, home)
    block = plan_block(question.request, home.house, question.person, home.catalog, weeks=weeks, starts=starts)
    for one in block.weeks:
        checked(one.week, question)
    document = _document(block, question)
    return Answer(document=document, lines=tuple(_lines(document, question)))


def _document(block: TrainingBlock, question: Asked) -> Document:
    return {
        "person": question.person.name,
        "starts": None if block.starts is None else block.starts.isoformat(),
        "weeks": [_week_document(week, block, question) for week in block.weeks],
        "tests": [_test_document(test) for test in block.tests],
    }


def _week_document(week: BlockWeek, block: TrainingBlock, question: Asked) -> Document:
    monday = block.monday_of(week.number)
    tests = [
        {"id": test.protocol_id, "day": None if test.weekday is None else WEEKDAY_KEYS[test.weekday]}
        for test in week.tests
    ]
    head: Document = {
        "n": week.number,
        "kind": week.kind,
        "starts": None if monday is None else monday.isoformat(),
        "load": week.load,
        "notes": list(week.notes),
        "tests": tests,
    }
    return head | week_document(week.week, question.home)


def _test_document(test: Protocol) -> Document:
    beside = [{"key": one.key, "name": one.name, "unit": one.unit, "needed": one.needed} for one in test.beside]
    return {
        "id": test.id,
        "name": test.name,
        "how": test.how,
        "unit": test.unit,
        "things": list(test.things),
        "stop": list(test.stop_rules),
        "practice": test.practice,
        "beside": beside,
    }


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


def _lines(document: Document, question: Asked) -> Iterator[str]:
    weeks = document["weeks"]
    if not weeks[0]["clash"]:
        yield f"{question.person.name}: {len(weeks)} weeks from {document['starts']}, the first one to test"
    columns = (Column("week", right=True), Column("kind"), Column("load", right=True), Column("days"), Column(""))
    yield from table(
        columns, [(str(one["n"]), one["kind"], str(one["load"]), _days(one["days"]), _said(one)) for one in weeks]
    )
    for week in weeks:
        yield from (f"Week {week['n']}: {note}" for note in week["notes"])
    for test in document["tests"]:
        yield ""
        yield f"{test['name']}, in {test['unit']}{_when(test['id'], weeks)}"
        yield f"  {test['how']}"
        yield f"  Stop: {' '.join(test['stop'])}"


def _when(test_id: str, weeks: Sequence[Document]) -> str:
    """On which day of the first and the last week a test is done."""
    day = next((test["day"] for test in weeks[0]["tests"] if test["id"] == test_id), None)
    return "" if day is None else f", {WEEKDAYS[WEEKDAY_KEYS.index(day)]} of the first and the last week"
