"""Sentences as the window shows them: in the person's units, and no line broken inside a quantity.

Core writes its sentences in metric units. Each quantity in them is read and written anew where the person reads US
units; names the person gave (“Coal bag 10 kg”) are left as they were typed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from core.quantity import Measured, Origin
from core.quantity.display import (
    UnitSystem,
    format_distance,
    format_length,
    format_mass,
    format_measured_mass,
    format_volume,
)
from core.quantity.measured import COVERAGE_FACTOR

NO_BREAK = "\u00a0"
_NUMBER = r"\d+(?:\.\d+)?"
_DOUBTED = rf"(?P<value>{_NUMBER})[ \u00a0]kg[ \u00a0]±[ \u00a0](?P<wide>{_NUMBER})"
_METRIC = rf"(?P<low>{_NUMBER})(?:(?P<join>–| to )(?P<high>{_NUMBER}))?[ \u00a0](?P<unit>kg|cm|km|mL|g|m|L)(?![\w²³/])"
_UNITS = r"kg|g|lb|oz|fl oz|mL|L|gal|cm|km|m|in|ft|yd|mi|min|s|h|°C|°F|sets?|reps?|%|m²"
_GLUED = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?![\w/]))|(?<=\d) (?=× ?\d)| (?=± ?\d)|(?<=[×±]) (?=\d)")
_WRITERS: dict[str, tuple[float, Callable[[float, UnitSystem], str]]] = {
    "kg": (1.0, format_mass),
    "g": (0.001, format_mass),
    "cm": (1.0, format_length),
    "m": (1.0, format_distance),
    "km": (1000.0, format_distance),
    "L": (1.0, format_volume),
    "mL": (0.001, format_volume),
}


def glued(text: str) -> str:
    """`text` with no-break spaces between numbers and units, and round × and ±."""
    return _GLUED.sub(NO_BREAK, text)


def nb(text: str) -> str:
    """`text` that no line breaks at all."""
    return text.replace(" ", NO_BREAK)


def counted(count: int, one: str, many: str = "") -> str:
    """“1 day”, “3 days”, not broken."""
    return f"{count}{NO_BREAK}{one if count == 1 else many or f'{one}s'}"


class Wording:
    """Writes sentences in a person's units; `names` are words of the person that are never touched."""

    def __init__(self, system: UnitSystem, names: Iterable[str] = ()) -> None:
        self.system = system
        kept = sorted({name for name in names if re.search(r"\d", name)}, key=lambda name: (-len(name), name))
        words = "|".join(re.escape(name) for name in kept)
        head = f"(?P<name>(?i:{words}))|" if words else "(?P<name>(?!))|"
        self._parts = re.compile(f"{head}{_DOUBTED}|{_METRIC}")

    def sentence(self, text: str) -> str:
        """`text` in the person's units, its quantities unbroken."""
        return glued(self._parts.sub(self._anew, text) if self.system is UnitSystem.US else text)

    def sentences(self, texts: Iterable[str]) -> tuple[str, ...]:
        """Several of them."""
        return tuple(self.sentence(text) for text in texts)

    def _anew(self, found: re.Match[str]) -> str:
        if found["name"] is not None:
            return found[0]
        if found["value"] is not None:
            mass = Measured(float(found["value"]), float(found["wide"]) / COVERAGE_FACTOR, Origin.ESTIMATE)
            return format_measured_mass(mass, self.system)
        last = self._written(found["high"] or found["low"], found["unit"])
        if found["high"] is None:
            return last
        first, _, _ = self._written(found["low"], found["unit"]).rpartition(" ")
        return f"{first}{found['join']}{last}"

    def _written(self, number: str, unit: str) -> str:
        factor, write = _WRITERS[unit]
        return write(float(number) * factor, self.system)
