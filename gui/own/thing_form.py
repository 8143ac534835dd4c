"""The form of an own kind of thing: what it is, what it weighs, its size, how it is held and used, what to mind."""

from __future__ import annotations

from typing import Any

from catalog.things import ICONS, load_fill_groups
from core.quantity.display import UnitSystem
from core.things.model import Closure, Form, Handle, Hazard, RatingOrigin, Rigidity
from gui.household.thing_typed import HAZARD_NAMES
from gui.own.field import ChoiceOf, Field, FlagsOf, LineOf, LinesOf, SetOf, Table, WordsOf
from gui.own.quantities import LENGTH, MASS, VOLUME, WAY, Quantity
from gui.own.section import Section

HANDLES = {
    Handle.NONE: "no handle",
    Handle.MOULDED: "moulded grip",
    Handle.BAIL: "wire handle",
    Handle.LOOP: "one loop",
    Handle.TWO_LOOPS: "two loops",
    Handle.STRAPS: "straps over both shoulders",
    Handle.CUT_OUT: "cut-out",
}
CLOSURES = {
    Closure.SOLID: "solid, nothing to close",
    Closure.SEALED: "closes tight",
    Closure.LID: "loose lid",
    Closure.TIED: "tied",
}
RIGIDITIES = {Rigidity.RIGID: "rigid", Rigidity.SEMI: "gives a little", Rigidity.SOFT: "soft"}
RATERS = {
    RatingOrigin.NONE: "nobody",
    RatingOrigin.LABEL: "its label or maker",
    RatingOrigin.BUILDING: "it is part of the building",
}


def thing_sections(table: Table, system: UnitSystem) -> tuple[Section, ...]:
    """The sections that a thing like this one has, empty."""
    sections = (_what(), _weighs(table, system), _size(table, system), _held(table), _bears(system), _mind())
    return tuple(section for section in sections if section.fields)


def _words(value: Any) -> str:
    return str(value).replace("_", " ").replace("-", " ")


def _named(kind: Any, names: dict[Any, str]) -> tuple[tuple[Any, str], ...]:
    """Every value of a list of words, in words of ours where there are some."""
    return tuple((one.value, names.get(one, _words(one.value))) for one in kind)


def _what() -> Section:
    fields: tuple[Field, ...] = (
        LineOf("name", "Name", hint="Feed sack"),
        LineOf("plural", "Several of them", hint="as usual: feed sacks"),
        WordsOf("aliases", "Other names for it, with commas between", hint="feed bag, sack of feed"),
        ChoiceOf("form", "Kind", _named(Form, {}), Form.BLOCK.value),
        ChoiceOf("icon", "Picture", tuple((icon, _words(icon)) for icon in ICONS), "other"),
    )
    return Section("What it is", "", fields)


def _weighs(table: Table, system: UnitSystem) -> Section:
    mass, volume = Quantity(MASS, system), Quantity(VOLUME, system)
    if "litres" in table:
        groups = tuple((group, _words(group)) for group in load_fill_groups())
        fields: tuple[Field, ...] = (
            LineOf("litres", "Holds", write=volume.write_doubt, parse=volume.parse_doubt, hint="12 L ± 0.5 L"),
            LineOf("tare_kg", "Weighs, empty", write=mass.write_doubt, parse=mass.parse_doubt, hint="1.1 kg ± 0.1 kg"),
            ChoiceOf("fills", "Can be filled like", groups, table["fills"]),
        )
        return Section("What it holds and weighs", "Its inner shape is that of the thing you copied.", fields)
    weight = LineOf("mass_kg", "Weighs", write=mass.write_doubt, parse=mass.parse_doubt, hint="12.5 kg ± 0.3 kg")
    fields = (weight,) if "mass_kg" in table else ()
    if "pack_l" in table:
        room = LineOf("pack_l", "Room it takes in a bag", write=volume.write, parse=volume.parse, hint="0.7 L")
        fields = (*fields, room)
    return Section("What it weighs", "", fields)


def _size(table: Table, system: UnitSystem) -> Section:
    length = Quantity(LENGTH, system)
    way = Quantity(WAY, system)
    lines = (
        ("length_cm", "Length, the longer side", length, "55 cm"),
        ("width_cm", "Width", length, "35 cm"),
        ("height_cm", "Height", length, "14 cm"),
        ("surface_cm", "Height of what one stands, sits or leans on", length, "45 cm"),
        ("route_m", "Length of the way", way, "400 m"),
    )
    fields = tuple(
        LineOf(key, caption, write=quantity.write, parse=quantity.parse, hint=hint)
        for key, caption, quantity, hint in lines
        if key in table
    )
    return Section("How large it is", "", fields)


def _held(table: Table) -> Section:
    fields: tuple[Field, ...] = (
        ChoiceOf("closure", "Closes", _named(Closure, CLOSURES), Closure.SOLID.value),
        ChoiceOf("rigidity", "Gives", _named(Rigidity, RIGIDITIES), Rigidity.RIGID.value),
    )
    if "grip_cm" in table:
        fields = (ChoiceOf("handle", "Handle", _named(Handle, HANDLES), Handle.NONE.value), *fields)
    return Section("How it is held", "", fields)


def _bears(system: UnitSystem) -> Section:
    mass = Quantity(MASS, system)
    raters = tuple((one.value, words) for one, words in RATERS.items())
    fields: tuple[Field, ...] = (
        LineOf("rating_kg", "Rated for", write=mass.write, parse=mass.parse, hint="not rated"),
        ChoiceOf(
            "rating_origin",
            "Who says so",
            raters,
            RatingOrigin.NONE.value,
        ),
        FlagsOf("Where it is", (("fixed", "fixed in place"), ("outdoors", "outdoors"))),
    )
    return Section("What it bears", "Only a rating, or a part of the building, is stood or hung on.", fields)


def _mind() -> Section:
    fields = (
        SetOf("hazards", "Hazards", tuple((hazard.value, HAZARD_NAMES[hazard]) for hazard in Hazard)),
        LinesOf("cautions", "Cautions, a sentence in each line"),
    )
    return Section("What to mind", "", fields)
