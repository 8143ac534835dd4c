"""The words of the fill screen: quantities that never break over a line, levels, materials, shapes, origins."""

from __future__ import annotations

import datetime
import re

from PySide6.QtCore import QDate, QLocale

from core.mass.lessons import Lesson, Taught
from core.mass.model import (
    Bag,
    BrimLevel,
    Container,
    CupsLevel,
    FullLevel,
    HeightLevel,
    Level,
    LyingCylinder,
    Material,
    MaterialKind,
    Packing,
    PourTable,
    ScaleKind,
    ScaleReading,
    ShareLevel,
    Shouldered,
    Tapered,
)
from core.mass.scale import weighed
from core.quantity import Measured, Origin
from core.quantity.display import (
    UnitSystem,
    format_length,
    format_mass,
    format_measured_density,
    format_measured_mass,
    format_measured_volume,
    format_temperature,
    format_volume,
)
from core.things.model import Thing

SCALE_NAMES: dict[ScaleKind, str] = {
    ScaleKind.BATHROOM_DIFFERENCE: "bathroom scale, you with it and you alone",
    ScaleKind.LUGGAGE: "luggage scale",
    ScaleKind.KITCHEN: "kitchen scale",
    ScaleKind.DIRECT: "bathroom scale, it alone",
}
PACKING_NAMES: dict[Packing, str] = {
    Packing.LOOSE: "loose, as poured",
    Packing.SETTLED: "shaken down",
    Packing.DAMP: "damp",
    Packing.TOPPED_UP: "topped up with water",
}
ORIGIN_NAMES: dict[Origin, str] = {
    Origin.EXACT: "exact",
    Origin.SCALE: "from a scale",
    Origin.LABEL: "from its label",
    Origin.MEASURED: "as you measured it",
    Origin.COMBINED: "from what was known and your weighings",
    Origin.ESTIMATE: "usual for such a thing, not weighed yet",
}
TAUGHT_NAMES: dict[Taught, str] = {
    Taught.EMPTY: "Empty it weighs",
    Taught.CAPACITY: "To the mark it holds",
    Taught.BRIM: "To the brim it holds",
    Taught.DENSITY: "The contents lie at",
}


MOST_NAME_WORDS = 2
"""Only in a name this short is the last word surely what the thing is."""
_PLUS_MINUS = re.compile(r" ?± ")
_UNIT = re.compile(r"(?<=\d) (?=(?:kg|g|lb|oz|L|mL|gal|cm|in|°C|°F)\b)")


def nb(text: str) -> str:
    """`text` with spaces that no line breaks at."""
    return text.replace(" ", "\u00a0")


def whole(sentence: str) -> str:
    """A sentence whose quantities no line breaks."""
    return _UNIT.sub("\u00a0", _PLUS_MINUS.sub("\u00a0±\u00a0", sentence))


def mass_text(kg: float, system: UnitSystem) -> str:
    """A mass without its doubt."""
    return nb(format_mass(kg, system))


def measured_text(mass: Measured, system: UnitSystem) -> str:
    """A mass with its ±."""
    return nb(format_measured_mass(mass, system))


def volume_text(litres: float, system: UnitSystem) -> str:
    """A volume."""
    return nb(format_volume(litres, system))


def length_text(cm: float, system: UnitSystem) -> str:
    """A length."""
    return nb(format_length(cm, system))


def other_system(system: UnitSystem) -> UnitSystem:
    """The units the person does not read."""
    return UnitSystem.US if system is UnitSystem.METRIC else UnitSystem.METRIC


def date_text(date: datetime.date | None) -> str:
    """A day as people write it, or that it is not known."""
    if date is None:
        return "no date"
    return nb(QLocale().toString(QDate(date.year, date.month, date.day), "d MMM yyyy"))


def material_text(material: Material, packing: Packing) -> str:
    """A fill inside a sentence: “dry sand, shaken down”."""
    name = f"{material.name[0].lower()}{material.name[1:]}"
    return name if packing is Packing.LOOSE else f"{name}, {PACKING_NAMES[packing]}"


def contents_text(
    volume_l: float, material: Material, packing: Packing, temperature_c: float | None, system: UnitSystem
) -> str:
    """What is inside: “14.0 L water, 12 °C”, “9.5 L dry sand”, “empty”; no temperature when it is not given."""
    if volume_l <= 0:
        return "empty"
    words = f"{volume_text(volume_l, system)} {material_text(material, packing)}"
    if temperature_c is None or not material.by_temperature:
        return words
    return f"{words}, {nb(format_temperature(temperature_c, system))}"


def level_words(level: Level, system: UnitSystem) -> str:
    """A level as one would type it."""
    match level:
        case FullLevel():
            return "full"
        case BrimLevel():
            return "brim"
        case ShareLevel():
            return "empty" if level.share == 0 else f"{level.share:.0%}"
        case CupsLevel():
            return f"{level.count:g} x {format_volume(level.cup_l, system)}"
        case HeightLevel():
            return format_length(level.height_cm, system)
        case _:
            return format_volume(level.volume_l, system)


def shape_words(container: Container, system: UnitSystem) -> str:
    """How it is built, as far as it matters to a line: “straight sides to 31 cm”."""
    shape = container.shape
    match shape:
        case Shouldered():
            return f"straight sides to {length_text(shape.straight_to_cm, system)}"
        case Tapered():
            return "wider at the top" if shape.top_cm > shape.bottom_cm else "narrower at the top"
        case LyingCylinder():
            return "lying on its side"
        case Bag():
            return "soft, without a true line"
        case PourTable():
            return "by your own pour table"
        case _:
            return "straight sides"


def subtitle(thing: Thing, system: UnitSystem) -> str:
    """The line beside the title."""
    container = thing.facts.container
    many = f" × {thing.count}" if thing.count > 1 else ""
    if container is None:
        return f"{thing.name}{many}"
    nominal = re.sub(r"\.0+(?=\u00a0)", "", volume_text(container.nominal_l.value, system))
    return f"{thing.name}{many} · {nominal}, {shape_words(container, system)}"


def lesson_text(lesson: Lesson, system: UnitSystem) -> str:
    """What a weighing taught, and what was known before."""
    formats = {Taught.EMPTY: format_measured_mass, Taught.DENSITY: format_measured_density}
    written = formats.get(lesson.what, format_measured_volume)
    after, before = nb(written(lesson.after, system)), nb(written(lesson.before, system))
    return f"{TAUGHT_NAMES[lesson.what]} {after} (before: {before})."


def empty_word(thing: Thing, material: Material) -> str:
    """What the container itself is called in the split of a load."""
    words = thing.name.lower().split()
    plain = len(words) <= MOST_NAME_WORDS and words[-1].isalpha()
    return f"empty {words[-1]}" if plain and material.kind is MaterialKind.LIQUID else "empty container"


def reading_text(reading: ScaleReading, names: dict[str, str], system: UnitSystem) -> str:
    """One reading of a thing: day, scale, mass, and what was in it."""
    mass = mass_text(weighed(reading).mass_kg, system)
    parts = [date_text(reading.date), SCALE_NAMES[reading.kind]]
    if reading.at_level is not None:
        within = level_words(reading.at_level, system)
        name = names.get(reading.material_id or "", "")
        parts.append(within if within == "empty" or not name else f"{name.lower()}, {nb(within)}")
    return f"{mass} · {' · '.join(parts)}"
