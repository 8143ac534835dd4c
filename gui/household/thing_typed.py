"""The lines in which a thing is corrected: what stands in them, and what is made of what somebody types there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.house.model import House
from core.quantity.display import UnitSystem, format_distance, format_length, format_mass, format_volume
from core.quantity.units import parse_distance_m, parse_length_cm, parse_mass_kg, parse_volume_l
from core.things.amounts import LONG_FORMS, RATING_KG, WAY_FORMS
from core.things.corrections import Corrections
from core.things.describe import BORNE_FORMS, MASS_IS_NO_MATTER
from core.things.model import Facts, Form, Hazard, RatingOrigin, Thing
from gui.household.line_form import Line


class ThingLine(StrEnum):
    """Every line a thing can be corrected in."""

    NAME = "name"
    COUNT = "count"
    CAPACITY = "capacity"
    MASS = "mass"
    LIMIT = "limit"
    HEIGHT = "height"
    LENGTH = "length"
    STEPS = "steps"
    RISE = "rise"
    WAY = "way"
    RATING = "rating"


@dataclass(frozen=True, slots=True, kw_only=True)
class EditView:
    """The form of a thing, ready to paint. `places` are (id, name, chosen); `took` is empty without an own check."""

    title: str
    lines: tuple[Line, ...]
    places: tuple[tuple[str, str, bool], ...]
    hazards: frozenset[Hazard]
    checkable: bool
    took: str
    checked_on: str


HAZARD_NAMES: dict[Hazard, str] = {
    Hazard.FOLDING: "folds",
    Hazard.WHEELED: "has wheels",
    Hazard.GLASS: "glass",
    Hazard.TIPS: "can tip",
    Hazard.SLIPPERY_WET: "slippery when wet",
    Hazard.SHARP: "sharp edges",
    Hazard.DUSTY: "dusty",
    Hazard.SPLITS: "can split",
    Hazard.HELD_CHEMICALS: "held fuel or chemicals",
}
_MASS_UNIT = {UnitSystem.METRIC: "kg", UnitSystem.US: "lb"}
_LENGTH_UNIT = {UnitSystem.METRIC: "cm", UnitSystem.US: "in"}
_VOLUME_UNIT = {UnitSystem.METRIC: "L", UnitSystem.US: "gal"}
_WAY_UNIT = {UnitSystem.METRIC: "m", UnitSystem.US: "yd"}


def edit_view(thing: Thing, house: House, system: UnitSystem) -> EditView:
    """What stands in the form of this thing."""
    check = thing.own_check
    return EditView(
        title=thing.name,
        lines=_lines(thing, system),
        places=tuple((place.id, place.name, place.id in thing.place_ids) for place in house.places),
        hazards=thing.facts.hazards,
        checkable=is_checkable(thing),
        took="" if check is None else format_mass(check.took_kg, system),
        checked_on="" if check is None else check.date.isoformat(),
    )


def is_checkable(thing: Thing) -> bool:
    """Whether an own check can say what it bears: things to stand or lean on that nobody rated."""
    facts = thing.facts
    rated = facts.rating_kg is not None or facts.rating_origin is RatingOrigin.BUILDING
    return facts.form in BORNE_FORMS and not rated


def read_line(key: ThingLine, text: str, system: UnitSystem) -> Corrections:
    """What a line now says; `InputError` when it can't be used."""
    return _READERS[key](text, system)


def read_took_kg(text: str, system: UnitSystem) -> float:
    """The load of an own check."""
    took_kg = parse_mass_kg(text, _MASS_UNIT[system])
    low, high = RATING_KG
    if not low <= took_kg <= high:
        raise InputError(text, f"is no load to check with ({low:g} to {high:,.0f} kg)", "write body and load together")
    return took_kg


def _lines(thing: Thing, system: UnitSystem) -> tuple[Line, ...]:
    facts = thing.facts
    lines = [
        Line(key=ThingLine.NAME, caption="Name", text=thing.name, wide=True),
        Line(key=ThingLine.COUNT, caption="How many alike", text=str(thing.count), example="1"),
        *_size_lines(facts, system),
        *_bearing_lines(facts, system),
    ]
    return tuple(lines)


def _size_lines(facts: Facts, system: UnitSystem) -> list[Line]:
    if facts.container is not None:
        return [
            _line(ThingLine.CAPACITY, "Holds", format_volume(facts.container.nominal_l.value, system)),
            _line(ThingLine.MASS, "Weighs, empty", format_mass(facts.container.tare_kg.value, system)),
        ]
    if facts.hold is not None:
        empty = format_mass(facts.mass.value, system) if facts.mass is not None else ""
        return [
            _line(ThingLine.CAPACITY, "Room inside", format_volume(facts.hold.volume_l, system)),
            _line(ThingLine.MASS, "Weighs, empty", empty),
            _line(ThingLine.LIMIT, "Carries up to", format_mass(facts.hold.limit_kg, system)),
        ]
    if facts.form in LONG_FORMS and facts.length_cm:
        return [_line(ThingLine.LENGTH, "Length", format_length(facts.length_cm, system))]
    if facts.form in WAY_FORMS:
        return [_line(ThingLine.WAY, "Length of the way", format_distance(facts.route_m, system))]
    return _mass_line(facts, system)


def _mass_line(facts: Facts, system: UnitSystem) -> list[Line]:
    if facts.mass is None or facts.fixed or facts.form in MASS_IS_NO_MATTER or facts.form in BORNE_FORMS:
        return []
    return [_line(ThingLine.MASS, "Weighs, each", format_mass(facts.mass.value, system))]


def _bearing_lines(facts: Facts, system: UnitSystem) -> list[Line]:
    if facts.flight is not None:
        return [
            _line(ThingLine.STEPS, "Steps", str(facts.flight.count)),
            _line(ThingLine.RISE, "Height of a step", format_length(facts.flight.rise_cm, system)),
        ]
    lines = []
    if facts.surface_cm is not None or facts.form in BORNE_FORMS:
        height = "" if facts.surface_cm is None else format_length(facts.surface_cm, system)
        lines.append(_line(ThingLine.HEIGHT, _height_caption(facts), height))
    if facts.form in BORNE_FORMS:
        rating = "" if facts.rating_kg is None else format_mass(facts.rating_kg, system)
        lines.append(_line(ThingLine.RATING, "Rated for", rating, "not rated"))
    return lines


def _height_caption(facts: Facts) -> str:
    return "Height of the seat" if facts.form is Form.SEAT else "Height"


def _line(key: ThingLine, caption: str, text: str, example: str = "not known") -> Line:
    return Line(key=key, caption=caption, text=text.replace(".0 ", " "), example=example)


def _whole(text: str, what: str) -> int:
    plain = text.strip()
    if not plain.isdecimal() or len(plain) > 6:
        raise InputError(text, f"is no number of {what}", "write a whole number, like 2")
    return int(plain)


def _rating(text: str, system: UnitSystem) -> Corrections:
    if not text.strip():
        return Corrections(unrated=True)
    return Corrections(rating_kg=parse_mass_kg(text, _MASS_UNIT[system]))


_READERS: dict[ThingLine, Callable[[str, UnitSystem], Corrections]] = {
    ThingLine.NAME: lambda text, _: Corrections(name=text),
    ThingLine.COUNT: lambda text, _: Corrections(count=_whole(text, "things")),
    ThingLine.CAPACITY: lambda text, system: Corrections(capacity_l=parse_volume_l(text, _VOLUME_UNIT[system])),
    ThingLine.MASS: lambda text, system: Corrections(mass_kg=parse_mass_kg(text, _MASS_UNIT[system])),
    ThingLine.LIMIT: lambda text, system: Corrections(limit_kg=parse_mass_kg(text, _MASS_UNIT[system])),
    ThingLine.HEIGHT: lambda text, system: Corrections(height_cm=parse_length_cm(text, _LENGTH_UNIT[system])),
    ThingLine.LENGTH: lambda text, system: Corrections(length_cm=parse_length_cm(text, _LENGTH_UNIT[system])),
    ThingLine.STEPS: lambda text, _: Corrections(steps=_whole(text, "steps")),
    ThingLine.RISE: lambda text, system: Corrections(rise_cm=parse_length_cm(text, _LENGTH_UNIT[system])),
    ThingLine.WAY: lambda text, system: Corrections(route_m=parse_distance_m(text, _WAY_UNIT[system])),
    ThingLine.RATING: _rating,
}
