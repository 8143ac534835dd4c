"""`fillmark loads --use USE`: every load this house can make for a use, the steps between them, the ways to a mass."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence

from core.errors import InputError
from core.exercise.model import LOAD_USES, Use
from core.fit.setting import Setting
from core.loads.building import WITHIN_PCT, Built, Way, build
from core.loads.ladder import Ladder
from core.loads.model import Part, Rung, recipe_name
from core.loads.set_up import steps_of, time_words
from core.quantity.display import UnitSystem, format_mass, format_measured_mass
from core.quantity.units import parse_mass_kg
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.home import one_of, open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser

NEAR = 7
"""Rungs shown round a wanted mass."""
SHOWN = 40
MOST_GAPS = 8


def add_options(parser: Parser) -> None:
    """The options of this command."""
    uses = ", ".join(use.value for use in LOAD_USES)
    parser.add_argument("--use", required=True, metavar="USE", help=f"one of {uses}")
    parser.add_argument("--near", metavar="MASS", help="the best ways to this mass (“12 kg”), and the loads nearest it")
    parser.add_argument("--within", metavar="PER CENT", help=f"how far off a way may be, else {WITHIN_PCT:g} %%")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The rungs by rising mass, with what each is made of, and the wide steps."""
    use = Use(one_of(options.use, [use.value for use in LOAD_USES], "use of a load"))
    near_kg = None if options.near is None else parse_mass_kg(options.near)
    within_pct = _within(options)
    home = open_home(options)
    setting = home.setting(options)
    ladder = setting.ladder(use, 2 if use is Use.PAIR else 1)
    rungs = [ladder.rung(index) for index in _wanted(ladder, near_kg)]
    gaps = ladder.gaps()
    document: Document = {
        "use": use.value,
        "person": home.person(options.person).name,
        "all": len(ladder),
        "rungs": [rung_document(rung) for rung in rungs],
        "gaps": [{"from_kg": gap.from_kg, "to_kg": gap.to_kg, "step_pct": gap.step_pct} for gap in gaps],
    }
    lines = list(_lines(ladder, rungs, use, near_kg, home.system))
    if near_kg is not None:
        above = ladder.next_above(near_kg)
        built = build(ladder, near_kg, one_hand=setting.ladder(Use.ONE_HAND), within_pct=within_pct)
        document |= {"near_kg": near_kg, "next_above_kg": None if above is None else above.mass.value}
        document |= {"within_pct": within_pct, "ways": [_way_document(way, setting) for way in built.ways]}
        lines.extend(_way_lines(built, setting, home.system) if rungs else ())
    return Answer(document=document, lines=tuple(lines))


def _within(options: argparse.Namespace) -> float:
    """The tolerance asked for, in per cent."""
    text = options.within
    if text is None:
        return WITHIN_PCT
    if options.near is None:
        raise InputError("--within", "says how far off a mass may be", "give the mass with --near")
    try:
        return float(text.strip().removesuffix("%"))
    except ValueError as error:
        raise InputError(text, "is no number of per cent", "write it like 5") from error


def _way_document(way: Way, setting: Setting) -> Document:
    """One way to the mass: its rung, how far off it is, how far two hands differ, and what to do."""
    steps = [step.sentence for step in steps_of(way.rung, setting.house, setting.materials)]
    return rung_document(way.rung) | {"off_kg": way.off_kg, "apart_kg": way.apart_kg, "steps": steps}


def _way_lines(built: Built, setting: Setting, system: UnitSystem) -> Iterator[str]:
    target = format_mass(built.target_kg, system)
    yield ""
    if built.ways:
        yield f"{counted(len(built.ways), 'way')} to {target} within {built.within_pct:g} %, the best first:"
    else:
        yield f"Nothing here makes {target} within {built.within_pct:g} %. The nearest:"
    for way in built.nearest:
        apart = f", {format_mass(way.apart_kg, system)} apart" if way.apart_kg else ""
        mass, time = format_measured_mass(way.rung.mass, system), time_words(way.rung.set_up_s)
        yield f"{mass}{apart}, {time} to set up: {recipe_name(way.rung.recipe, system)}"
        yield from (
            f"  {step.sentence}" for step in steps_of(way.rung, setting.house, setting.materials, system=system)
        )


def _wanted(ladder: Ladder, near_kg: float | None) -> Sequence[int]:
    """Places of the rungs asked for: all, or the nearest few by rising mass."""
    if near_kg is None:
        return range(len(ladder))
    nearest = sorted(range(len(ladder)), key=lambda at: (abs(ladder.masses_kg[at] - near_kg), at))
    return sorted(nearest[:NEAR])


def rung_document(rung: Rung) -> Document:
    """One rung; `set_up` are the seconds to make it."""
    return {
        "mass_kg": rung.mass.value,
        "u95_kg": rung.mass.u95,
        "recipe": [part_document(part) for part in rung.recipe.parts],
        "set_up": rung.set_up_s,
        "words": rung.recipe.name,
    }


def part_document(part: Part) -> Document:
    """One part of a recipe: how many pieces, each with this fill."""
    return {
        "thing": part.name,
        "thing_id": part.thing_id,
        "count": part.count,
        "fill": part.material_id,
        "volume_l": part.fill_l if part.material_id is not None else None,
        "mass_kg": part.each.value,
        "u95_kg": part.each.u95,
    }


def _lines(ladder: Ladder, rungs: Sequence[Rung], use: Use, near_kg: float | None, system: UnitSystem) -> Iterator[str]:
    words = use.value.replace("_", " ")
    if not rungs:
        yield f"Nothing here can be a load for {words}."
        return
    both = ", both together" if use is Use.PAIR else ""
    yield f"{counted(len(ladder), 'load')} for {words}{both}"
    shown = rungs if len(rungs) <= SHOWN else _spread(rungs)
    yield from table((Column("mass", right=True), Column("with")), [_row(rung, system) for rung in shown])
    if len(shown) < len(rungs):
        yield f"{len(rungs) - len(shown)} more lie between; --near MASS shows the nearest, --json all."
    if near_kg is None:
        yield from _gap_lines(ladder, system)


def _spread(rungs: Sequence[Rung]) -> list[Rung]:
    """As many rungs as are shown, evenly from the lightest to the heaviest."""
    return [rungs[round(at * (len(rungs) - 1) / (SHOWN - 1))] for at in range(SHOWN)]


def _row(rung: Rung, system: UnitSystem) -> tuple[str, str]:
    return format_measured_mass(rung.mass, system), recipe_name(rung.recipe, system)


def _gap_lines(ladder: Ladder, system: UnitSystem) -> Iterator[str]:
    gaps = ladder.gaps()
    for gap in gaps[:MOST_GAPS]:
        low, high = format_mass(gap.from_kg, system), format_mass(gap.to_kg, system)
        yield f"Wide step: {low} to {high} ({gap.step_pct:.0f} %)"
    if len(gaps) > MOST_GAPS:
        yield f"and {len(gaps) - MOST_GAPS} more wide steps"
