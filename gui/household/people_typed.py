"""The lines of a person, a place and the house itself: what stands in them and what is made of what is typed."""

from __future__ import annotations

import datetime
from dataclasses import replace
from enum import StrEnum

from core.errors import InputError
from core.house.model import Experience, House, Person, Place, QuietHours, Sex
from core.quantity.areas import format_area, parse_area_m2
from core.quantity.display import UnitSystem, format_distance, format_length, format_mass, format_volume
from core.quantity.units import parse_distance_m, parse_length_cm, parse_mass_kg, parse_volume_l
from gui.household.line_form import Line

LONGEST_NAME = 80
CEILING_CM = (100.0, 5000.0)
MOST_WALK_M = 100_000.0
CUP_L = (0.02, 5.0)


class PersonLine(StrEnum):
    """The lines of a person."""

    NAME = "name"
    BODY_MASS = "body_mass"
    HEIGHT = "height"
    BORN = "born"


class PlaceLine(StrEnum):
    """The lines of a place."""

    NAME = "name"
    CEILING = "ceiling"
    FLOOR = "floor"
    WALK = "walk"
    QUIET_FROM = "quiet_from"
    QUIET_TO = "quiet_to"


class HouseLine(StrEnum):
    """The lines of the house."""

    NAME = "name"
    CUP = "cup"


EXPERIENCE_NAMES: dict[Experience, str] = {
    Experience.NEW: "new to it",
    Experience.SOME: "some",
    Experience.TRAINED: "trained",
}
SEX_NAMES: dict[Sex | None, str] = {None: "not said", Sex.FEMALE: "female", Sex.MALE: "male"}
BLANK_PERSON = Person(id="", name="", body_mass_kg=70.0, height_cm=170.0)
"""Somebody whose lines are still to be read."""


def read_name(text: str) -> str:
    """A name without odd spaces; `InputError` for none or far too long a one."""
    name = " ".join(text.split())
    if not 0 < len(name) <= LONGEST_NAME:
        raise InputError(text, f"is no name (1 to {LONGEST_NAME} letters)", "write a short one")
    return name


def read_body_mass_kg(text: str, system: UnitSystem) -> float:
    """A body mass this program can plan for."""
    kg = parse_mass_kg(text, "kg" if system is UnitSystem.METRIC else "lb")
    return replace(BLANK_PERSON, body_mass_kg=kg).body_mass_kg


def read_height_cm(text: str, system: UnitSystem) -> float:
    """A height this program can plan for; “1.71” alone is taken as metres."""
    plain = text.strip().replace(",", ".")
    metres = system is UnitSystem.METRIC and plain.replace(".", "", 1).isdecimal() and "." in plain and float(plain) < 3
    unit = "m" if metres else "cm" if system is UnitSystem.METRIC else "in"
    return replace(BLANK_PERSON, height_cm=parse_length_cm(text, unit)).height_cm


def read_birth_year(text: str) -> int | None:
    """A year of birth; None for an empty line."""
    year = text.strip()
    if year and not (year.isascii() and year.isdecimal() and len(year) == 4):
        raise InputError(text, "is no year of birth", "write all four digits, or leave it empty")
    return replace(BLANK_PERSON, birth_year=int(year)).birth_year if year else None


def person_lines(person: Person | None, system: UnitSystem) -> tuple[Line, ...]:
    """What stands in the lines of a person; a new one has examples."""
    metric = system is UnitSystem.METRIC
    mass = format_mass(person.body_mass_kg, system).replace(".0 ", " ") if person is not None else ""
    height = format_length(person.height_cm, system) if person is not None else ""
    return (
        Line(key=PersonLine.NAME, caption="Name", text=person.name if person is not None else "", wide=True),
        Line(key=PersonLine.BODY_MASS, caption="Body mass", text=mass, example="68 kg" if metric else "150 lb"),
        Line(key=PersonLine.HEIGHT, caption="Height", text=height, example="171 cm" if metric else "5 ft 7"),
    )


def born_line(person: Person | None) -> Line:
    """The line that may stay empty."""
    born = "" if person is None or person.birth_year is None else str(person.birth_year)
    return Line(key=PersonLine.BORN, caption="Year of birth, only to read published tables", text=born, wide=True)


def with_person_line(person: Person, key: PersonLine, text: str, system: UnitSystem) -> Person:
    """The person with one line as typed; `InputError` when it can't be used."""
    if key is PersonLine.NAME:
        return replace(person, name=read_name(text))
    if key is PersonLine.BODY_MASS:
        return replace(person, body_mass_kg=read_body_mass_kg(text, system))
    if key is PersonLine.BORN:
        return replace(person, birth_year=read_birth_year(text))
    return replace(person, height_cm=read_height_cm(text, system))


def person_words(person: Person, system: UnitSystem) -> str:
    """“68 kg”."""
    return format_mass(person.body_mass_kg, system).replace(".0 ", " ")


def place_lines(place: Place | None, system: UnitSystem) -> tuple[Line, ...]:
    """What stands in the lines of a place."""
    shown = place or Place(id="", name="")
    ceiling = "" if shown.ceiling_cm is None else format_length(shown.ceiling_cm, system).replace(".0 ", " ")
    quiet = shown.quiet
    start, end = ("", "") if quiet is None else (_clock(quiet.start), _clock(quiet.end))
    return (
        Line(key=PlaceLine.NAME, caption="Name", text=shown.name, example="Living room", wide=True),
        Line(key=PlaceLine.CEILING, caption="Ceiling", text=ceiling, example="not known"),
        Line(key=PlaceLine.FLOOR, caption="Clear floor", text=format_area(shown.floor_m2, system)),
        Line(key=PlaceLine.WALK, caption="Longest clear walk", text=format_distance(shown.walk_m, system), wide=True),
        Line(key=PlaceLine.QUIET_FROM, caption="Quiet from", text=start, example="22:00"),
        Line(key=PlaceLine.QUIET_TO, caption="Quiet until", text=end, example="07:00"),
    )


def with_place_line(place: Place, key: PlaceLine, text: str, system: UnitSystem) -> Place:
    """The place with one line as typed; quiet hours are read with `read_quiet`."""
    if key is PlaceLine.NAME:
        return replace(place, name=read_name(text))
    if key is PlaceLine.CEILING:
        return replace(place, ceiling_cm=_ceiling_cm(text, system))
    if key is PlaceLine.FLOOR:
        return replace(place, floor_m2=parse_area_m2(text, system))
    if key is PlaceLine.WALK:
        return replace(place, walk_m=_walk_m(text, system))
    raise ValueError(f"quiet hours are read in pairs, not {key}")


def read_quiet(start: str, end: str) -> QuietHours | None:
    """Quiet hours; None while either end is empty."""
    if not (start.strip() and end.strip()):
        return None
    return QuietHours(start=_time(start), end=_time(end))


def place_words(place: Place, system: UnitSystem) -> str:
    """“193 cm high”, “outdoors” or “4.0 m²”: what tells one place from another."""
    if place.outdoors:
        return "outdoors"
    if place.ceiling_cm is not None:
        return f"{format_length(place.ceiling_cm, system)} high"
    return format_area(place.floor_m2, system)


def house_lines(house: House, system: UnitSystem) -> tuple[Line, ...]:
    """What stands in the lines of the house."""
    return (
        Line(key=HouseLine.NAME, caption="Name of this household", text=house.name, wide=True),
        Line(key=HouseLine.CUP, caption="Cup you pour with", text=format_volume(house.cup_l, system)),
    )


def read_cup_l(text: str, system: UnitSystem) -> float:
    """The cup to pour with."""
    low, high = CUP_L
    cup_l = parse_volume_l(text, "ml" if system is UnitSystem.METRIC else "fl oz")
    if not low <= cup_l <= high:
        raise InputError(text, f"is no cup to pour with ({low:g} to {high:g} L)", "give its size, like 250 mL")
    return cup_l


def _ceiling_cm(text: str, system: UnitSystem) -> float | None:
    if not text.strip():
        return None
    low, high = CEILING_CM
    ceiling_cm = parse_length_cm(text, "cm" if system is UnitSystem.METRIC else "in")
    if not low <= ceiling_cm <= high:
        rule = f"is no height of a ceiling ({low:g} to {high:g} cm)"
        raise InputError(text, rule, "check the unit, or leave it empty where it is not known or open sky")
    return ceiling_cm


def _walk_m(text: str, system: UnitSystem) -> float:
    walk_m = parse_distance_m(text, "m" if system is UnitSystem.METRIC else "yd")
    if walk_m > MOST_WALK_M:
        raise InputError(text, f"is longer than a walk is planned here ({MOST_WALK_M / 1000:g} km)", "write less")
    return walk_m


def _clock(time: datetime.time) -> str:
    return time.strftime("%H:%M")


def _time(text: str) -> datetime.time:
    for shape in ("%H:%M", "%H.%M", "%H"):
        try:
            return datetime.datetime.strptime(text.strip(), shape).time()  # noqa: DTZ007  # a time of day, no date
        except ValueError:
            continue
    raise InputError(text, "is no time of day", "write it like 22:00")
