"""Units at the door: what people type becomes one unit per dimension (kg, cm, L, min, °C, m).

Read are "2.5 gal", "14,5 kg", "7 3/4 in", "1½ cups", "6 ft 2 in", "5'11", "1 h 20 min". The usual units come from a
plain table (`core.quantity.table`); any other is asked of pint, which loads only then. Whatever cannot be used raises
`InputError` with the value, the rule and the way out.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from itertools import pairwise

from core.errors import InputError
from core.quantity.display import (
    UnitSystem,
    format_distance,
    format_length,
    format_mass,
    format_measured_mass,
    format_temperature,
    format_volume,
)
from core.quantity.rare_units import rare_factor
from core.quantity.table import DIMENSIONS, DISTANCE, LENGTH, MASS, TIME, UNICODE_FRACTIONS, VOLUME, Dimension

__all__ = [
    "UnitSystem",
    "format_distance",
    "format_length",
    "format_mass",
    "format_measured_mass",
    "format_temperature",
    "format_volume",
    "parse_distance_m",
    "parse_length_cm",
    "parse_mass_kg",
    "parse_temperature_c",
    "parse_time_min",
    "parse_volume_l",
]

LONGEST_TEXT = 60
COLDEST_C, HOTTEST_C = -60.0, 100.0

_HALVES = "".join(UNICODE_FRACTIONS)
_PART = re.compile(
    rf"""\s*(?P<number>\d+(?:\s+|-)\d+\s*[/⁄]\s*\d+ | \d+\s*[/⁄]\s*\d+ | \d*\s*[{_HALVES}]
        | \d+(?:[.,]\d+)?(?:e[+-]?\d{{1,3}})? | [.,]\d+)
    \s*(?P<unit>(?:d|c)?m3 | (?:ft|in)3 | [^\d{_HALVES}]*)""",
    re.VERBOSE | re.IGNORECASE,
)
_MIXED = re.compile(r"(?:(?P<whole>\d+)(?:\s+|-))?(?P<top>\d+)\s*[/⁄]\s*(?P<bottom>\d+)")
# A last number without a unit takes the next smaller one: 5'11 and 1h30.
_NEXT_SMALLER = {"'": "in", "′": "in", "’": "in", "ft": "in", "h": "min"}
_DEGREES = {
    "c": (1.0, 0.0),
    "celsius": (1.0, 0.0),
    "f": (5 / 9, -32.0),
    "fahrenheit": (5 / 9, -32.0),
    "k": (1.0, -273.15),
    "kelvin": (1.0, -273.15),
}


def parse_mass_kg(text: str, default_unit: str = "kg") -> float:
    """A typed mass in kg."""
    return _parse(text, MASS, default_unit)


def parse_length_cm(text: str, default_unit: str = "cm") -> float:
    """A typed length in cm."""
    return _parse(text, LENGTH, default_unit)


def parse_volume_l(text: str, default_unit: str = "L") -> float:
    """A typed volume in litres; a gallon, quart, pint and cup are US customary unless "imp" is written."""
    return _parse(text, VOLUME, default_unit)


def parse_time_min(text: str, default_unit: str = "min") -> float:
    """A typed length of time in minutes."""
    return _parse(text, TIME, default_unit)


def parse_distance_m(text: str, default_unit: str = "m") -> float:
    """A typed distance in metres."""
    return _parse(text, DISTANCE, default_unit)


def parse_temperature_c(text: str, default_unit: str = "C") -> float:
    """A typed temperature in °C; below zero is fine here."""
    shown, plain = text, _plain(text)
    sign = -1.0 if plain[:1] in "-−" else 1.0
    parts = _parts(plain.lstrip("-−"), shown, "temperature", "12 °C")
    unit = re.sub(r"°|degrees?|deg", "", parts[0][1]).strip() or default_unit.lower()
    if len(parts) != 1 or unit not in _DEGREES:
        raise InputError(shown, "is not a temperature in °C or °F", "write it like 12 °C or 54 °F")
    factor, shift = _DEGREES[unit]
    celsius = (sign * parts[0][0] + shift) * factor
    if not COLDEST_C <= celsius <= HOTTEST_C:
        rule = f"is outside {COLDEST_C:.0f} to {HOTTEST_C:.0f} °C"
        raise InputError(shown, rule, "check the number and its unit")
    return celsius


def _parse(text: str, dimension: Dimension, default_unit: str) -> float:
    plain = _plain(text)
    example = _example(dimension)
    if plain[:1] in "-−":
        raise InputError(text, f"is a negative {dimension.name}", f"write a {dimension.name} from 0, like {example}")
    parts = _with_units(_parts(plain, text, dimension.name, example), default_unit.lower())
    factors = [_factor(unit, dimension, text) for _, unit in parts]
    if any(later >= earlier for earlier, later in pairwise(factors)):
        raise InputError(text, "has its units out of order", "write the larger unit first, like 6 ft 2 in")
    total = math.fsum(number * factor for (number, _), factor in zip(parts, factors, strict=True))
    if not math.isfinite(total) or total > dimension.most:
        rule = f"is more than {dimension.most:,.0f} {dimension.unit}, the largest {dimension.name} used here"
        raise InputError(text, rule, "check the number and its unit")
    return total


def _plain(text: str) -> str:
    """`text` in lower case with single spaces; `InputError` if there is nothing or far too much."""
    if len(text) > LONGEST_TEXT:
        raise InputError(text, f"is longer than {LONGEST_TEXT} characters", "write one number and its unit")
    plain = " ".join(text.lower().split())
    if not plain:
        raise InputError(text, "is empty", "write a number and its unit")
    return plain


def _parts(plain: str, shown: str, what: str, example: str) -> list[tuple[float, str]]:
    """(number, unit) pairs, in order; a unit may be empty."""
    found: list[tuple[float, str]] = []
    at = 0
    while not found or at < len(plain):
        match = _PART.match(plain, at)
        if match is None:
            raise InputError(shown, f"is not a {what}", f"write a number and its unit, like {example}")
        unit = re.sub(r"[\s,.]*(?:\band)?[\s,]*$", "", match["unit"].replace(".", ""))
        found.append((_number(match["number"], shown), unit))
        at = match.end()
    return found


def _with_units(parts: list[tuple[float, str]], default_unit: str) -> list[tuple[float, str]]:
    """The same with every empty unit filled in."""
    if len(parts) == 1:
        number, unit = parts[0]
        return [(number, unit or default_unit)]
    number, unit = parts[-1]
    return [*parts[:-1], (number, unit or _NEXT_SMALLER.get(parts[-2][1], ""))]


def _number(text: str, shown: str) -> float:
    """The value of a decimal, a fraction or a mixed number."""
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", text):
        rule = "could mean a thousand or a decimal comma"
        raise InputError(shown, rule, f"write {text.replace(',', '')} or {text.replace(',', '.')}")
    for sign, fraction in UNICODE_FRACTIONS.items():
        if text.endswith(sign):
            return float(int(text[:-1].strip() or 0) + fraction)
    mixed = _MIXED.fullmatch(text)
    if mixed is not None:
        if int(mixed["bottom"]) == 0:
            raise InputError(shown, "divides by zero", "write a fraction like 3/4")
        return float(int(mixed["whole"] or 0) + Fraction(int(mixed["top"]), int(mixed["bottom"])))
    return float(text.replace(",", "."))


def _factor(unit: str, dimension: Dimension, shown: str) -> float:
    """How many of the dimension's own unit one `unit` is."""
    factor = dimension.factors.get(unit)
    if factor is not None:
        return factor
    if dimension is VOLUME and unit in ("oz", "ounce", "ounces"):
        raise InputError(shown, "could be a mass or a volume", "write fl oz for a volume")
    for other in DIMENSIONS:
        if unit in other.factors:
            raise _wrong_dimension(shown, dimension, other.name)
    return rare_factor(unit, dimension, shown)


def _wrong_dimension(shown: str, wanted: Dimension, got: str) -> InputError:
    return InputError(shown, f"is a {got}, not a {wanted.name}", f"write a {wanted.name} like {_example(wanted)}")


def _example(dimension: Dimension) -> str:
    examples = {"mass": "12 kg", "length": "18.5 cm", "volume": "2.5 gal", "time": "20 min", "distance": "400 m"}
    return examples[dimension.name]
