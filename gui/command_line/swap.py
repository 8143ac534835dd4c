"""`fillmark swap EXERCISE`: what to do instead, with what is here, and what was left out and why."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from core.effort.dose_text import parse_dose
from core.exercise.find import exercise_named
from core.exercise.model import Demand
from core.paper.words import dose_words, load_words
from core.quantity.display import UnitSystem
from core.swap import swap as use_case
from core.swap.chain import chain_words
from core.swap.model import Answer as SwapAnswer
from core.swap.model import Cause, Swap, SwapRequest
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.bindings import dose_document, exercise_document, things_document
from gui.command_line.finding import thing_named
from gui.command_line.home import one_of, open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser

SHOWN = 8


def add_options(parser: Parser) -> None:
    """The options of this command."""
    causes = ", ".join(cause.value for cause in Cause)
    parser.add_argument("exercise", metavar="EXERCISE", help="the movement asked for, by name, alias or id")
    parser.add_argument("--because", default=Cause.NO_GEAR.value, metavar="CAUSE", help=f"one of {causes}")
    parser.add_argument(
        "--spare", action="append", default=[], metavar="DEMAND", help=f"spare a demand ({', '.join(Demand)})"
    )
    parser.add_argument("--using", metavar="THING", help="only what uses this thing, by its id or name")
    parser.add_argument("--dose", metavar="DOSE", help="the dose it was set at: “4 x 5 at 40 kg, effort 8”")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The nearest movements, best first."""
    cause = Cause(one_of(options.because, [cause.value for cause in Cause], "cause"))
    spare = frozenset(Demand(one_of(text, [one.value for one in Demand], "demand")) for text in options.spare)
    prescription = None if options.dose is None else parse_dose(options.dose)
    home = open_home(options)
    asked = exercise_named(options.exercise, home.catalog)
    using = "" if options.using is None else thing_named(options.using, home).id
    request = SwapRequest(asked=asked, cause=cause, spare=spare, prescription=prescription, using=using)
    setting = home.setting(options)
    found = use_case.swap(request, setting, home.catalog)
    document: Document = {
        "asked": exercise_document(asked),
        "because": cause.value,
        "person": setting.person.name,
        "place": setting.place.name,
        "note": found.note,
        "chain": [exercise_document(one) for one in found.chain],
        "answers": [_document(one) for one in found.answers],
        "left_out": [
            {"exercise": one.exercise_id, "name": one.name, "ground": one.ground.value, "why": one.why}
            for one in found.left_out
        ],
    }
    where = f"{setting.person.name}, {setting.place.name}"
    return Answer(document=document, lines=tuple(_lines(found, where, home.system)))


def _document(one: SwapAnswer) -> Document:
    close = one.closeness
    return (
        exercise_document(one.exercise)
        | {
            "demands": sorted(demand.value for demand in one.exercise.demands),
            "impact": one.exercise.impact,
            "things": things_document(one.binding),
            "load_kg": one.binding.load_kg,
        }
        | dose_document(one.dose)
        | {
            "closeness": {
                "total": close.total,
                "pattern": close.pattern,
                "muscles": close.muscles,
                "effort": close.effort,
                "set_up": close.set_up,
                "ahead": close.ahead,
            },
            "why": list(one.why),
            "cautions": list(one.cautions),
        }
    )


def _lines(found: Swap, where: str, system: UnitSystem) -> Iterator[str]:
    yield f"Instead of {found.asked.name.lower()} ({where})"
    if found.note:
        yield found.note
    if found.chain:
        yield chain_words(found.chain)
    columns = (Column("close", right=True), Column("movement"), Column("dose"), Column("with"))
    shown = found.answers[:SHOWN]
    if shown:
        yield from table(columns, [_row(one, system) for one in shown])
        best = shown[0]
        yield f"{best.exercise.name}: {' '.join(best.why)}"
        yield from (f"Mind: {sentence}" for sentence in best.cautions)
    more = len(found.answers) - len(shown)
    left = counted(len(found.left_out), "movement")
    yield f"{more} more fit less closely, {left} were left out; --json lists all with the reasons."


def _row(one: SwapAnswer, system: UnitSystem) -> tuple[str, str, str, str]:
    held = ", ".join(held.name for held in one.binding.fixtures if held.thing_id)
    taken = "; ".join(part for part in (load_words(one.binding, system), held) if part)
    dose = dose_words(one.exercise, one.dose, system)
    return f"{100 * one.closeness.total:.0f} %", one.exercise.name, dose, taken or "your body"
