"""What the commands that write files have in common: where to, on which paper, and saying what was written."""

from __future__ import annotations

import argparse
from pathlib import Path

from core.errors import InputError
from core.paper.page import Paper
from core.paper.whole_file import write_whole
from core.quantity.display import UnitSystem
from gui.command_line.answer import Answer, Document
from gui.command_line.home import one_of
from gui.command_line.options import Parser

INVENTED = "Invented example"


def add_file_options(parser: Parser, flag: str, ending: str) -> None:
    """Where to write, and whether a file there may be replaced."""
    parser.add_argument(flag, required=True, type=Path, metavar="FILE", help=f"the {ending} file to write")
    add_force(parser)


def add_force(parser: Parser) -> None:
    """Leave to replace a file."""
    parser.add_argument("--force", action="store_true", help="replace the file if it is there already")


def add_paper_option(parser: Parser) -> None:
    """The paper size."""
    parser.add_argument("--paper", metavar="a4|letter", help="the paper (else a4, or letter with US units)")


def paper_named(options: argparse.Namespace, system: UnitSystem) -> Paper:
    """The paper asked for, else the usual one of the units."""
    if options.paper is None:
        return Paper.LETTER if system is UnitSystem.US else Paper.A4
    return Paper(one_of(options.paper, [paper.value for paper in Paper], "paper size"))


def written(path: Path, content: bytes, what: str, options: argparse.Namespace, more: Document | None = None) -> Answer:
    """Write the file and say so; `InputError` with the way out when one is there already."""
    if path.exists() and not path.is_dir() and not options.force:
        raise InputError(path, "is there already", "choose another name, or add --force to replace it")
    write_whole(path, content, replace=bool(options.force))
    document: Document = {"written": str(path), "what": what, "bytes": len(content)} | (more or {})
    return Answer(document=document, lines=(f"Wrote {what} to {path} ({len(content):,} bytes).",))
