"""A container described by pouring: “4 cups 5.2 cm; 8 cups 9.8 cm; 25 L 36 cm” becomes its shape.

Heights are of the surface above the inner base. The last pour is taken as brimful, so it must fill the container.
"""

from __future__ import annotations

import re
from dataclasses import replace

from core.errors import InputError
from core.mass.level_text import parse_level
from core.mass.model import Container, CupsLevel, PourTable, VolumeLevel
from core.quantity.measured import Measured, Origin
from core.quantity.units import parse_length_cm

EXAMPLE = "write each as a volume and a height, like “4 cups 5.2 cm; 8 cups 9.8 cm; 25 L 36 cm”"
LONGEST_TEXT = 600
FILLED = 0.97
"""So full (of the nominal capacity) the last pour must be; what is missing is within the doubt of the cups."""
CUPS_DOUBT = 0.02
TABLE_DOUBT = 0.01
"""Half-widths of the capacity so poured, and of the shape between the pours at half height (assumed)."""
_BETWEEN = r"(?:\s*(?:=|:|->|→|\bat\b|\bto\b)\s*|\s+)"
_POUR = re.compile(rf"(?P<amount>.+?){_BETWEEN}(?P<height>\d[\d.,]*\s*(?:mm|cm|m|in|inch(?:es)?|\"))")


def read_pours(text: str, cup_l: float) -> tuple[tuple[float, float], ...]:
    """(volume L, height cm) of each pour typed, in their order; `InputError` for what can't be read."""
    if len(text) > LONGEST_TEXT:
        raise InputError(text, "is too long for a table of pours", "ten pours are plenty")
    parts = [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]
    if not parts:
        raise InputError("nothing", "tells nothing about the container", EXAMPLE)
    return tuple(_pour(part, cup_l) for part in parts)


def poured_container(container: Container, pours: tuple[tuple[float, float], ...]) -> Container:
    """The container with the shape its owner poured; `InputError` unless the pours rise and fill it."""
    shape = PourTable(points=pours)
    last_l = pours[-1][0]
    if last_l < FILLED * container.nominal_l.value:
        rule = f"is less than it holds when full ({container.nominal_l.value:.3g} L)"
        raise InputError(f"{last_l:.3g} L", rule, "pour on until it is full, and write down the last height too")
    brimful = Measured.rectangular(last_l, CUPS_DOUBT * last_l, Origin.MEASURED)
    nominal = container.nominal_l
    if nominal.value > last_l:
        nominal = replace(nominal, value=last_l)
    return replace(container, shape=shape, nominal_l=nominal, brimful_l=brimful, shape_doubt=TABLE_DOUBT)


def _pour(part: str, cup_l: float) -> tuple[float, float]:
    found = _POUR.fullmatch(part.lower())
    if found is None:
        raise InputError(part, "is no pour", EXAMPLE)
    level = parse_level(found["amount"], cup_l=cup_l)
    if isinstance(level, CupsLevel):
        litres = level.count * level.cup_l
    elif isinstance(level, VolumeLevel):
        litres = level.volume_l
    else:
        raise InputError(found["amount"], "is no volume", EXAMPLE)
    return litres, parse_length_cm(found["height"].replace('"', " in"))
