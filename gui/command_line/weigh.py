"""`fillmark weigh THING`: what it weighs at a fill with its ±, or how to fill it to a wanted mass."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence
from dataclasses import replace

from core.errors import InputError
from core.loads.filling import filling_of
from core.loads.fills import HELD_CHEMICALS, fill_choices
from core.loads.measures import read_measure
from core.mass.level_text import parse_level
from core.mass.model import (
    FullLevel,
    Level,
    Material,
    Packing,
    ScaleKind,
    ScaleReading,
    VolumeLevel,
)
from core.mass.naming import material_named
from core.mass.scale import reading_on
from core.quantity.display import (
    format_measured_mass,
)
from core.quantity.units import parse_mass_kg, parse_temperature_c
from core.things.model import Thing
from core.things.weighed import known_mass, weighed
from gui.command_line.answer import Answer, Document
from gui.command_line.finding import thing_named
from gui.command_line.home import Home, one_of, open_home
from gui.command_line.main import Clock
from gui.command_line.options import Parser
from gui.command_line.weigh_case import Case, caution_lines, named

KITCHEN_KG = 5.0
"""Up to here a plain reading is taken to come from a kitchen scale, above from a bathroom scale."""
SCALES = {
    "kitchen": ScaleKind.KITCHEN,
    "luggage": ScaleKind.LUGGAGE,
    "direct": ScaleKind.DIRECT,
    "bathroom": ScaleKind.DIRECT,
}
USUAL_C = 15.0


def add_options(parser: Parser) -> None:
    """The options of this command."""
    parser.add_argument("thing", metavar="THING", help="a thing of the house, or in words: “25 L water carrier”")
    parser.add_argument("--fill", metavar="MATERIAL", help="what is in it (water, dry sand, long-grain rice ...)")
    parser.add_argument("--level", metavar="LEVEL", help="80%%, “14 L”, “18 cm”, “12 x 250 mL”, full, brim or empty")
    parser.add_argument("--measure", metavar="SIZE", help="what you pour with: “ladle 120 mL”, a bottle of the house")
    parser.add_argument("--for", dest="wanted", metavar="MASS", help="how to fill it to this mass (“12 kg”)")
    parser.add_argument(
        "--scale",
        action="append",
        default=[],
        metavar="READING",
        help="what a scale says of it now: “14.6 kg”, “14.6 kg luggage”, with you minus you “82.7 kg - 68.1 kg”, "
        "minus what it shows with nothing on it “14.9 kg - 0.3 kg luggage”; add “in steps of 0.5 kg” for a coarse one",
    )
    parser.add_argument("--packing", default="loose", metavar="HOW", help="loose, settled or damp (grain and sand)")
    parser.add_argument("--temperature", metavar="T", help="of the water, else 15 °C")


def answer(options: argparse.Namespace, clock: Clock) -> Answer:  # noqa: ARG001 - every command is handed the clock
    """The estimate, or the fill for a mass."""
    home = open_home(options, may_be_empty=True)
    thing = thing_named(options.thing, home)
    readings = [_reading(text) for text in options.scale]
    if thing.facts.container is None:
        return _fixed(thing, readings, options, home)
    case = _case(thing, options, home)
    if options.wanted is None:
        return case.estimated(_level(thing, case.filling.material, options.level, home), readings)
    if options.level is not None or readings:
        other = "--scale" if options.level is None else "--level"
        raise InputError(f"--for and {other}", "ask two different things", "give one of them")
    return case.reached(parse_mass_kg(options.wanted))


def _case(thing: Thing, options: argparse.Namespace, home: Home) -> Case:
    material, caution = chosen_material(thing, options.fill, home)
    packing = Packing(one_of(options.packing, [packing.value for packing in Packing], "packing"))
    celsius = USUAL_C if options.temperature is None else parse_temperature_c(options.temperature)
    filling = filling_of(
        thing, material, temperature_c=celsius, packing=packing, cup_l=home.house.cup_l, system=home.system
    )
    measure = read_measure(options.measure or "", home.house, thing)
    return Case(home, filling, caution, measure)


def chosen_material(thing: Thing, text: str | None, home: Home) -> tuple[Material, tuple[str, ...]]:
    """The material named, else what is in it, else the first that suits; and what is to be minded about it.

    `InputError` for what must not be a fill, and for any fill of what held chemicals.
    """
    if thing.facts.container is None:
        raise InputError(thing.name, "is nothing that can be filled", "choose a container")
    known, materials = home.catalog.material_by_id, home.catalog.materials
    choices = fill_choices(thing, [material.id for material in materials], materials)
    if text is not None:
        material = material_named(text, materials)
    elif thing.fill is not None and thing.fill.material_id in known:
        material = known[thing.fill.material_id]
    else:
        fitting = [choice.material for choice in choices if not choice.why_not]
        at_hand = [material for material in fitting if material.id in home.house.fills]
        if not fitting:
            raise InputError(thing.name, "has no usual fill", "name one with --fill")
        material = (at_hand or fitting)[0]
    why_not = next((choice.why_not for choice in choices if choice.material.id == material.id), "")
    if why_not == HELD_CHEMICALS:
        raise InputError(thing.name, f"must not be filled: {why_not}", "use another container")
    return material, (f"{material.name}: {why_not}.",) if why_not else ()


def _level(thing: Thing, material: Material, text: str | None, home: Home) -> Level:
    """The level typed, else what is in it now, else full."""
    if text is not None:
        return parse_level(text, cup_l=home.house.cup_l)
    fill = thing.fill
    if fill is not None and fill.material_id == material.id:
        return VolumeLevel(volume_l=fill.volume_l)
    return FullLevel()


def _reading(text: str) -> ScaleReading:
    """“14.6 kg”, “14.6 kg luggage”, “82.7 kg - 68.1 kg” (you with it, you alone), “14.9 kg - 0.3 kg luggage” (what it
    shows with nothing on it), each with “in steps of 0.5 kg” where the scale's step is another.
    """
    plain, _, step = text.strip().lower().partition(" in steps of ")
    step_kg = parse_mass_kg(step) if step else None
    words, _, last = plain.rpartition(" ")
    kind = SCALES.get(last)
    both = re.split(r"(?<=[a-z])\s*[-−–]\s*(?=\d)", words if kind is not None else plain)
    if len(both) == 2:
        with_it, without = (parse_mass_kg(part) for part in both)
        on = kind or ScaleKind.BATHROOM_DIFFERENCE
        return reading_on(on, with_it, without_kg=without, resolution_kg=step_kg)
    kg = parse_mass_kg(words if kind is not None else plain)
    usual = ScaleKind.KITCHEN if kg <= KITCHEN_KG else ScaleKind.DIRECT
    return reading_on(kind or usual, kg, resolution_kg=step_kg)


def _fixed(thing: Thing, readings: Sequence[ScaleReading], options: argparse.Namespace, home: Home) -> Answer:
    """A thing that is not filled: what it weighs as it is."""
    for given, name in ((options.fill, "--fill"), (options.level, "--level"), (options.wanted, "--for")):
        if given is not None:
            raise InputError(thing.name, f"can't be filled, so {name} says nothing about it", f"leave {name} out")
    thing = replace(thing, readings=(*thing.readings, *readings))
    mass, weighing = known_mass(thing), weighed(thing, home.system)
    if mass is None:
        raise InputError(thing.name, "has no known mass", "weigh it and note the reading")
    document: Document = {
        "thing": thing.name,
        "count": thing.count,
        "fill": None,
        "mass_kg": mass.value,
        "u95_kg": mass.u95,
        "contents_kg": None,
        "tare_kg": None,
        "volume_l": None,
        "height_cm": None,
        "budget": [{"from": mass.origin.value, "u_kg": mass.u}],
        "advice": "",
        "weighing": None if weighing is None else {"agrees": weighing.agrees, "sentence": weighing.sentence},
        "cautions": list(thing.cautions),
    }
    lines = [f"{named(thing)}: {format_measured_mass(mass, home.system)}"]
    lines.extend([weighing.sentence] if weighing is not None else [])
    return Answer(document=document, lines=(*lines, *caution_lines(thing.cautions)))
