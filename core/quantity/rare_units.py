"""Units outside the usual table, asked of pint. pint loads on first use, never at start-up."""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING, Any

from core.errors import InputError
from core.quantity.table import Dimension

if TYPE_CHECKING:
    from pint import UnitRegistry

# A unit is words only: with no digit and no operator in it, nothing typed can make pint compute.
_WORDS = re.compile(r"[a-zµμ]{1,24}(?:[ _][a-zµμ]{1,24}){0,2}")
_PINT_UNIT = {"mass": "kilogram", "length": "centimeter", "volume": "liter", "time": "minute", "distance": "meter"}


@cache
def _registry() -> UnitRegistry[Any]:
    import pint  # half a second of start-up that most people never need

    return pint.UnitRegistry(cache_folder=None)


def rare_factor(unit: str, dimension: Dimension, shown: str) -> float:
    """How many of the dimension's own unit one `unit` is; `InputError` if it is unknown or of another kind."""
    way_out = f"use {', '.join(list(dimension.factors)[:1])} or another usual unit of {dimension.name}"
    if not _WORDS.fullmatch(unit):
        raise InputError(shown, f"has no unit of {dimension.name} that is known here", way_out)
    return pint_factor(unit.replace(" ", "_"), dimension, shown, way_out)


def pint_factor(unit: str, dimension: Dimension, shown: str, way_out: str) -> float:
    """The factor as pint has it."""
    from pint.errors import PintError

    registry = _registry()
    try:
        factor = registry.Quantity(1.0, unit).to(_PINT_UNIT[dimension.name]).magnitude
    except (PintError, AttributeError, ValueError) as error:
        raise InputError(shown, f"has no unit of {dimension.name} that is known here", way_out) from error
    return float(factor)
