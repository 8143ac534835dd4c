"""`fillmark strip THING --fill MATERIAL --pdf FILE`: strips with mass marks, at true scale."""

from __future__ import annotations

import argparse

from core.paper.lettering import find_lettering
from core.paper.strip import Strip, strip_for
from core.paper.strip_pages import strip_pages
from gui.command_line.answer import Answer, Document
from gui.command_line.finding import thing_named
from gui.command_line.home import open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.paper import add_file_options, add_paper_option, paper_named, written
from gui.command_line.weigh import chosen_material


def add_options(parser: Parser) -> None:
    """The options of this command."""
    parser.add_argument("things", nargs="+", metavar="THING", help="a container of the house, or in words")
    parser.add_argument("--fill", metavar="MATERIAL", help="what will be in it")
    add_file_options(parser, "--pdf", "PDF")
    add_paper_option(parser)


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """A strip for each thing."""
    home = open_home(options, may_be_empty=True)
    paper = paper_named(options, home.system)
    things = [thing_named(text, home) for text in options.things]
    strips = [strip_for(thing, chosen_material(thing, options.fill, home)[0], system=home.system) for thing in things]
    content = strip_pages(strips, paper=paper, lettering=find_lettering(), system=home.system)
    more: Document = {"paper": paper.value, "strips": [_document(strip) for strip in strips]}
    names = ", ".join(dict.fromkeys(f"{strip.thing} with {strip.material.lower()}" for strip in strips))
    return written(options.pdf, content, f"fill strips for {names}", options, more)


def _document(strip: Strip) -> Document:
    return {
        "thing": strip.thing,
        "fill": strip.material,
        "full_kg": strip.full.value,
        "u95_kg": strip.full.u95,
        "marks": [
            {"mass_kg": mark.mass_kg, "height_cm": mark.height_cm, "volume_l": mark.volume_l} for mark in strip.marks
        ],
        "along": strip.along,
    }
