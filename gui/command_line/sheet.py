"""`fillmark sheet --pdf FILE`: the week on one page for the fridge door."""

from __future__ import annotations

import argparse

from core.paper.lettering import find_lettering
from core.paper.sheet import SheetRequest, week_sheet
from gui.command_line.answer import Answer
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.paper import INVENTED, add_file_options, add_paper_option, paper_named, written
from gui.command_line.planning import add_plan_options, asked, monday_named, require_plan, week_for_paper


def add_options(parser: Parser) -> None:
    """The options of this command."""
    add_file_options(parser, "--pdf", "PDF")
    add_paper_option(parser)
    parser.add_argument("--starts", metavar="DATE", help="the Monday to print on it (2026-05-04)")
    add_plan_options(parser)


def answer(options: argparse.Namespace, clock: Clock) -> Answer:
    """Plan the week (or take the one in the record) and print it."""
    home = open_home(options)
    paper = paper_named(options, home.system)
    question = asked(options, home)
    week, starts = week_for_paper(question)
    if options.starts is not None:
        starts = monday_named(options.starts, clock().date())
    request = SheetRequest(
        week=require_plan(week),
        house=home.house,
        person=question.person,
        materials=home.catalog.material_by_id,
        wishes=question.request.wishes,
        starts=starts,
        note=INVENTED if home.invented else "",
        system=home.system,
    )
    content = week_sheet(request, paper=paper, lettering=find_lettering())
    return written(options.pdf, content, f"the week of {question.person.name}", options, {"paper": paper.value})
