"""`fillmark week`: plan a week and show it day by day, with what to pour and the rules it is held to."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from catalog.household.schema import WEEKDAY_KEYS
from core.house.wishes import WEEKDAYS
from core.paper.words import dose_words, load_words, minutes_words, pour_lines
from core.plan.model import KIND_WORDS, Block, DayKind, DayPlan, Week
from gui.command_line.answer import Answer, Column, Document, table
from gui.command_line.bindings import dose_document, exercise_document, things_document
from gui.command_line.home import Home, open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.planning import Asked, add_plan_options, asked, kept_week, planned


def add_options(parser: Parser) -> None:
    """The options of this command."""
    add_plan_options(parser)
    parser.add_argument(
        "--from", dest="before", type=Path, metavar="FILE", help="the week there is: change as little of it as possible"
    )
    parser.epilog = "--from takes what an earlier “fillmark week --json” wrote."


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The best week for the wishes, or the wishes that clash."""
    from core.store.codec_week import week_codec

    home = open_home(options)
    question = asked(options, home)
    if options.before is not None:
        question = replace(question, request=replace(question.request, keep=kept_week(options.before, home)))
    week = planned(question)
    plan = week_codec(home.catalog).write(week)
    document = {"person": question.person.name} | week_document(week, home) | {"plan": plan}
    return Answer(document=document, lines=tuple(_lines(week, question)))


def week_document(week: Week, home: Home) -> Document:
    """A week as JSON; `clash` is empty unless the status is impossible."""
    clash = week.clash
    return {
        "status": week.status.value,
        "days": [_day_document(day, home) for day in week.days],
        "fills": [
            {
                "before": WEEKDAY_KEYS[step.weekday],
                "during": step.during,
                "for": step.for_exercise,
                "thing": step.name,
                "thing_id": step.thing_id,
                "fill": step.material_id,
                "volume_l": step.volume_l,
                "mass_kg": step.mass.value,
                "u95_kg": step.mass.u95,
            }
            for step in week.fills
        ],
        "checks": [
            {"rule": check.rule, "met": check.met, "note": check.note, "hard": check.hard} for check in week.checks
        ],
        "clash": list(clash.wishes) if clash is not None else [],
        "ways_out": list(clash.ways_out) if clash is not None else [],
        "cost": week.objective,
    }


def _day_document(day: DayPlan, home: Home) -> Document:
    return {
        "day": WEEKDAY_KEYS[day.weekday],
        "kind": day.kind.value,
        "place": _place(day, home) or None,
        "minutes": day.seconds / 60,
        "limit_min": day.limit_s / 60,
        "warm_up": [_block_document(block) for block in day.warm_up],
        "blocks": [_block_document(block) for block in day.blocks],
        "cool_down": [_block_document(block) for block in day.cool_down],
        "pour_min": day.pour_s / 60,
    }


def _block_document(block: Block) -> Document:
    return (
        exercise_document(block.exercise)
        | {"things": things_document(block.binding)}
        | dose_document(block.dose)
        | {
            "rest_s": block.rest_s,
            "load_kg": block.binding.load_kg,
            "minutes": block.seconds / 60,
            "hard": block.hard,
            "why": list(block.why),
            "cautions": list(block.binding.cautions),
        }
    )


def _place(day: DayPlan, home: Home) -> str:
    return next((place.name for place in home.house.places if place.id == day.place_id), "")


def _lines(week: Week, question: Asked) -> Iterator[str]:
    home = question.home
    if week.clash is not None:
        yield "These wishes can't hold together:"
        yield from (f"  {wish}" for wish in week.clash.wishes)
        yield from (f"Way out: {way}" for way in week.clash.ways_out)
        return
    yield f"{question.person.name}: the week, {'proven best' if week.status.value == 'optimal' else 'best so far'}"
    for day in week.days:
        yield ""
        yield from day_lines(day, week, home)
    yield ""
    rows = [("yes" if check.met else "no", check.rule, check.note) for check in week.checks]
    yield from table((Column("met"), Column("rule"), Column("")), rows)


def day_lines(day: DayPlan, week: Week, home: Home) -> Iterator[str]:
    """A day: its head, what to pour, and a line a movement."""
    if day.kind is DayKind.REST:
        yield f"{WEEKDAYS[day.weekday]}: rest"
        return
    place = f", {_place(day, home)}" if _place(day, home) else ""
    minutes = f"{minutes_words(day.seconds)} of {day.limit_s // 60}"
    yield f"{WEEKDAYS[day.weekday]}: {KIND_WORDS[day.kind].lower()}{place}, {minutes}"
    for during, verb in ((False, "pour first"), (True, "refill on the way")):
        steps = [step for step in week.fills if step.weekday == day.weekday and step.during is during]
        lines = pour_lines(steps, home.catalog.material_by_id, home.system)
        yield from (f"  {verb}: {line}" for line in lines)
    if day.warm_up:
        yield f"  warm up, {minutes_words(sum(block.seconds for block in day.warm_up))}"
    for block in day.blocks:
        load = load_words(block.binding, home.system)
        dose = dose_words(block.exercise, block.dose, home.system)
        yield f"  {dose:<16} {block.exercise.name}{f': {load}' if load else ''}"
    if day.cool_down:
        yield f"  cool down, {minutes_words(sum(block.seconds for block in day.cool_down))}"
