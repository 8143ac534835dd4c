"""Where `fillmark` starts: with a command the answer is printed, without one the window opens.

Exit codes: 0 answered, 1 a fault of ours, 2 input that can't be used (one sentence on stderr, nothing written).
"""

from __future__ import annotations

import argparse
import datetime
import importlib
import os
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Protocol, TextIO, cast

from core.errors import FillmarkError, InputError, StoreError, Unreachable
from gui.command_line.options import COMMANDS, Parser, Usage, add_globals, read_top

if TYPE_CHECKING:
    from gui.command_line.answer import Answer

DONE, OUR_FAULT, BAD_INPUT, STOPPED = 0, 1, 2, 130
INPUT_FAULTS = (Usage, InputError, StoreError, Unreachable)

Clock = Callable[[], datetime.datetime]


class Command(Protocol):
    """What each command's module offers."""

    def add_options(self, parser: Parser) -> None:
        """Add the command's own options."""

    def answer(self, options: argparse.Namespace, clock: Clock) -> Answer:
        """Do it; `InputError` for what can't be used."""


def now() -> datetime.datetime:
    """The time now, with its zone."""
    return datetime.datetime.now().astimezone()


def main(words: Sequence[str] | None = None, clock: Clock = now) -> int:
    """Run one command, or open the window; the exit code."""
    given = sys.argv[1:] if words is None else words
    try:
        options = read_top(given)
        if options.version:
            return _print_version()
        if options.command is None:
            return _open_window(options)
        return _run(options, clock)
    except INPUT_FAULTS as fault:
        return _refuse(fault, BAD_INPUT)
    except FillmarkError as fault:
        return _refuse(fault, OUR_FAULT)
    except KeyboardInterrupt:
        return STOPPED
    except BrokenPipeError:
        # Whoever read the answer has read enough; Python must not try to flush it again at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE


def _run(options: argparse.Namespace, clock: Clock) -> int:
    command = cast("Command", importlib.import_module(f"gui.command_line.{options.command}"))
    parser = Parser(f"fillmark {options.command}", f"{COMMANDS[options.command].capitalize()}.")
    command.add_options(parser)
    add_globals(parser, default=argparse.SUPPRESS, with_json=options.command != "export")
    given = argparse.Namespace(**{key: value for key, value in vars(options).items() if key != "words"})
    answer = command.answer(parser.parse_args(options.words, given), clock)
    _print(answer, sys.stdout, as_document=bool(given.json))
    if answer.fault:
        sys.stderr.write(f"{answer.fault}\n")
        return BAD_INPUT
    return DONE


def _print(answer: Answer, stream: TextIO, *, as_document: bool) -> None:
    """The answer as lines or as JSON, in letters the stream can take."""
    from gui.command_line.answer import as_json

    whole = (stream.encoding or "ascii").lower().replace("-", "") == "utf8"
    text = as_json(answer.document, ascii_only=not whole) if as_document else "\n".join(answer.lines)
    encoding = stream.encoding or "ascii"
    stream.write(text.encode(encoding, "replace").decode(encoding) + "\n")
    stream.flush()


def _refuse(fault: FillmarkError, code: int) -> int:
    sentence = " ".join(str(fault).split())
    encoding = sys.stderr.encoding or "ascii"
    sys.stderr.write(sentence.encode(encoding, "replace").decode(encoding) + "\n")
    return code


def _print_version() -> int:
    from importlib.metadata import PackageNotFoundError, version

    try:
        sys.stdout.write(f"fillmark {version('fillmark')}\n")
    except PackageNotFoundError:
        sys.stdout.write("fillmark, not installed\n")
    return DONE


def _open_window(options: argparse.Namespace) -> int:
    """The window, or a sentence where Qt is missing."""
    if options.home is not None:
        raise Usage("--home is for commands; the window keeps its own data (--data DIR chooses where).")
    try:
        # By name, so that nothing of the command line depends on Qt.
        opening = importlib.import_module("gui.opening.start")
    except ImportError as error:
        if (error.name or "").partition(".")[0] not in {"PySide6", "shiboken6"}:
            raise
        commands = ", ".join(COMMANDS)
        raise Usage(f"The window needs PySide6, which is missing here; {commands} work without.") from error
    return int(opening.main(options.data, demo=bool(options.demo)))
