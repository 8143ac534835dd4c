"""Typed floor areas in m², and how they are written for people.

Factor: the square of the international foot (NIST SP 811, appendix B).
"""

from __future__ import annotations

import math
import re

from core.errors import InputError
from core.quantity.display import UnitSystem
from core.quantity.table import INCH_CM

MOST_M2 = 10_000.0
SQUARE_FOOT_M2 = (12 * INCH_CM / 100) ** 2
_UNITS = {
    **dict.fromkeys(("m2", "m²", "sq m", "sqm", "square metre", "square metres", "square meter", "square meters"), 1.0),
    **dict.fromkeys(("ft2", "ft²", "sq ft", "sqft", "square foot", "square feet"), SQUARE_FOOT_M2),
}
_AREA = re.compile(r"(?P<number>\d+(?:[.,]\d+)?|[.,]\d+)\s*(?P<unit>[^\d].*)?")
_SIDES = re.compile(r"(?P<first>\d+(?:[.,]\d+)?)\s*[x×*]\s*(?P<second>\d+(?:[.,]\d+)?)\s*(?P<unit>m|ft)?")


def parse_area_m2(text: str, system: UnitSystem = UnitSystem.METRIC) -> float:
    """A typed area in m²: "4", "3,5 m²", "40 sq ft" or two sides, "2 x 3 m"; a bare number is in the person's units."""
    plain = " ".join(text.lower().replace("sq.", "sq").split())
    area_m2 = _by_sides(plain, system)
    if area_m2 is None:
        area_m2 = _by_unit(plain, text, system)
    if not 0 < area_m2 <= MOST_M2:
        raise InputError(text, f"is no usable area (more than 0, up to {MOST_M2:,.0f} m²)", "check the number")
    return area_m2


def format_area(area_m2: float, system: UnitSystem) -> str:
    """4.0 m², 20 m² or 43 sq ft."""
    if system is UnitSystem.US:
        return f"{area_m2 / SQUARE_FOOT_M2:.0f} sq ft"
    return f"{area_m2:.1f} m²" if area_m2 < 9.95 else f"{area_m2:.0f} m²"


def _by_sides(plain: str, system: UnitSystem) -> float | None:
    sides = _SIDES.fullmatch(plain)
    if sides is None:
        return None
    usual = "m" if system is UnitSystem.METRIC else "ft"
    factor = 1.0 if (sides["unit"] or usual) == "m" else SQUARE_FOOT_M2
    return math.prod((_number(sides["first"]), _number(sides["second"]), factor))


def _by_unit(plain: str, shown: str, system: UnitSystem) -> float:
    found = _AREA.fullmatch(plain)
    unit = (found["unit"] or ("m2" if system is UnitSystem.METRIC else "sq ft")) if found is not None else ""
    factor = _UNITS.get(unit.strip())
    if found is None or factor is None:
        raise InputError(shown, "is not an area", "write it like 4 m², 40 sq ft or 2 x 3 m")
    return _number(found["number"]) * factor


def _number(text: str) -> float:
    return float(text.replace(",", "."))
