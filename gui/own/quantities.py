"""Masses, lengths, volumes, ranges and values with a doubt: text in the person's units, values in kg, cm, L, m."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from core.errors import InputError
from core.quantity.display import UnitSystem, format_length, format_mass, format_volume
from core.quantity.units import parse_distance_m, parse_length_cm, parse_mass_kg, parse_volume_l
from gui.own.field import plain_number

_PLUS_MINUS = re.compile(r"\s*(?:±|\+/-|\+-)\s*")
_TO = re.compile(r"\s*(?:–|\bto\b|(?<=\d)\s*-)\s*")
_DIGITS = re.compile(r"[\d.,]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """How one kind of quantity is read and written."""

    parse: Callable[[str, str], float]
    write: Callable[[float, UnitSystem], str]
    units: dict[UnitSystem, str]


MASS = Measure(parse=parse_mass_kg, write=format_mass, units={UnitSystem.METRIC: "kg", UnitSystem.US: "lb"})
LENGTH = Measure(parse=parse_length_cm, write=format_length, units={UnitSystem.METRIC: "cm", UnitSystem.US: "in"})
VOLUME = Measure(parse=parse_volume_l, write=format_volume, units={UnitSystem.METRIC: "L", UnitSystem.US: "gal"})
WAY = Measure(
    parse=parse_distance_m,
    write=lambda metres, _system: f"{metres:g} m",
    units={UnitSystem.METRIC: "m", UnitSystem.US: "yd"},
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity in the person's units."""

    measure: Measure
    system: UnitSystem

    def write(self, value: float) -> str:
        """“45.0 cm”; in metric units with as many digits as it was given with."""
        if self.system is UnitSystem.METRIC:
            return f"{value:g} {self.measure.units[self.system]}"
        return self.measure.write(value, self.system)

    def parse(self, text: str) -> float:
        """The value in kg, cm, L or m."""
        return round(self.measure.parse(text, self.measure.units[self.system]), 4)

    def write_doubt(self, pair: Any) -> str:
        """“12.5 kg ± 0.3 kg” of a value and its half-width."""
        value, half = pair
        return f"{self.write(value)} ± {self.write(half)}"

    def parse_doubt(self, text: str) -> list[float]:
        """A value and its half-width; without a ± it is taken as sure to a hundredth."""
        value, *half = _PLUS_MINUS.split(text, maxsplit=1)
        found = self.parse(value)
        return [found, self.parse(half[0]) if half else round(found / 100, 4)]

    def write_range(self, pair: Any) -> str:
        """“20 to 45 cm” of a low and a high."""
        low, high = pair
        return f"{self.write(low)} to {self.write(high)}"

    def parse_range(self, text: str) -> list[float]:
        """A low and a high; the first may leave its unit to the second."""
        low, high = _two(text)
        unit = _DIGITS.sub("", high).strip()
        return [self.parse(low if _DIGITS.sub("", low).strip() else f"{low} {unit}"), self.parse(high)]


def write_dose(pair: Any) -> str:
    """“8 to 15” of a usual dose."""
    low, high = pair
    return f"{low:g} to {high:g}" if low != high else f"{low:g}"


def parse_dose_range(text: str) -> list[float]:
    """A low and a high in repetitions, seconds or metres; “min” and “km” are made into those."""
    plain = text.strip().lower()
    factor = 60.0 if plain.endswith("min") else 1000.0 if plain.endswith("km") else 1.0
    numbers = re.sub(r"\s*(min|reps?|s|km|m)$", "", plain)
    low, high = _two(numbers) if _TO.search(numbers) else (numbers, numbers)
    return [plain_number(low) * factor, plain_number(high) * factor]


def percent_range(text: str) -> list[float]:
    """Two shares from percentages: “5 to 30 %”."""
    low, high = _two(text.replace("%", ""))
    return [round(plain_number(low) / 100, 4), round(plain_number(high) / 100, 4)]


def write_percent_range(pair: Any) -> str:
    """“5 to 30 %”."""
    low, high = pair
    return f"{100 * low:g} to {100 * high:g} %"


def _two(text: str) -> tuple[str, str]:
    parts = [part.strip() for part in _TO.split(text.strip())]
    if len(parts) != 2 or not all(parts):
        raise InputError(text, "is no range", "write the lowest and the highest, like 20 to 45")
    return parts[0], parts[1]
