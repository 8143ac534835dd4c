"""`fillmark calendar --ics FILE`: the week for a calendar; sent again it updates its events, it doubles none."""

from __future__ import annotations

import argparse

from core.paper.calendar import CalendarRequest, week_calendar
from gui.command_line.answer import Answer
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.paper import add_file_options, written
from gui.command_line.planning import add_plan_options, asked, monday_named, require_plan, week_for_paper


def add_options(parser: Parser) -> None:
    """The options of this command."""
    add_file_options(parser, "--ics", "calendar")
    parser.add_argument("--starts", metavar="DATE", help="the Monday the week starts on (else the next one)")
    add_plan_options(parser)


def answer(options: argparse.Namespace, clock: Clock) -> Answer:
    """Plan the week (or take the one in the record) and write an event for each training day."""
    home = open_home(options)
    question = asked(options, home)
    now = clock()
    given = None if options.starts is None else monday_named(options.starts, now.date())
    week, starts = week_for_paper(question)
    request = CalendarRequest(
        week=require_plan(week),
        house=home.house,
        person=question.person,
        starts=given or starts or monday_named(None, now.date()),
        stamp=now,
        materials=home.catalog.material_by_id,
        wishes=question.request.wishes,
        system=home.system,
    )
    more = {"starts": request.starts.isoformat()}
    return written(options.ics, week_calendar(request), f"the week from {more['starts']}", options, more)
