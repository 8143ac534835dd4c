"""The words of the command line: options every command takes, and a parser that answers with one sentence.

Nothing heavy is imported here, since the window's start reads its options by it too.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from core.errors import FillmarkError, shorten

COMMANDS = {
    "weigh": "what a thing weighs at a fill, or how to fill it to a mass",
    "loads": "every load this house can make for a use",
    "swap": "what to do instead of a movement, with what is here",
    "gaps": "what this house can't train, and what would help most",
    "week": "plan a week",
    "block": "plan 4 to 16 weeks",
    "sheet": "the week on one page, as PDF",
    "strip": "a strip with mass marks to tape up a container, as PDF",
    "calendar": "the week for a calendar, as .ics",
    "export": "everything as JSON, or the log as CSV",
    "check": "check a household file, or the catalog; print the form of a household file",
}
WIDTH = 100


class Usage(FillmarkError):
    """The words can't be used; its text is one sentence."""


class Parser(argparse.ArgumentParser):
    """A parser that raises `Usage` instead of printing two lines and leaving."""

    def __init__(self, program: str, description: str) -> None:
        super().__init__(prog=program, description=description, allow_abbrev=False, formatter_class=_Help)

    def error(self, message: str) -> NoReturn:
        """Raise the message as a sentence that points to the help."""
        plain = shorten(message.removesuffix("."), 160)
        raise Usage(f"{plain[:1].upper()}{plain[1:]}; {self.prog} --help lists what there is.")


class _Help(argparse.RawDescriptionHelpFormatter):
    """Help of a steady width, so that it reads the same everywhere."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=WIDTH, max_help_position=30)


def add_globals(parser: argparse.ArgumentParser, *, default: object, with_json: bool = True) -> None:
    """The options every command takes; `default` SUPPRESS lets a value given before the command stand."""
    common = parser.add_argument_group("for every command")
    if with_json:
        common.add_argument("--json", action="store_true", default=default, help="one JSON document instead of a table")
    common.add_argument("--units", default=default, metavar="metric|us", help="the units printed")
    common.add_argument("--home", type=Path, default=default, metavar="FILE", help="use a household file")
    common.add_argument("--demo", action="store_true", default=default, help="use the invented household")
    common.add_argument("--data", type=Path, default=default, metavar="DIR", help="use another data folder")
    common.add_argument("--person", default=default, metavar="NAME", help="who trains (else the first)")
    common.add_argument("--place", default=default, metavar="NAME", help="where (else the first place)")


def top_parser() -> Parser:
    """Reads what stands before the command, and which command it is."""
    listed = "\n".join(f"  {name:<10}{words}" for name, words in COMMANDS.items())
    description = f"Without a command the window opens. The commands need none:\n\n{listed}"
    parser = Parser("fillmark", description)
    parser.epilog = "fillmark COMMAND --help tells the options of a command."
    parser.add_argument("--version", action="store_true", help="print the version")
    parser.add_argument("command", nargs="?", metavar="COMMAND", help="one of the above")
    parser.add_argument("words", nargs=argparse.REMAINDER, help=argparse.SUPPRESS)
    add_globals(parser, default=None)
    return parser


def read_top(words: Sequence[str]) -> argparse.Namespace:
    """The global options, the command (None for the window) and its words."""
    options = top_parser().parse_args(list(words))
    if options.command is not None and options.command not in COMMANDS:
        raise Usage(f"“{shorten(options.command)}” is no command; use one of {', '.join(COMMANDS)}.")
    return options
