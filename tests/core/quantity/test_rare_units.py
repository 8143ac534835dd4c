"""The plain table and pint agree, pint reads the rest, and it is not loaded before it is needed."""

from __future__ import annotations

import subprocess
import sys

import pytest

from core.quantity.rare_units import pint_factor
from core.quantity.table import DIMENSIONS, Dimension
from core.quantity.units import parse_length_cm, parse_mass_kg, parse_time_min, parse_volume_l

PINT_NAMES = {
    "t": "metric_ton",
    "st": "stone",
    "us gal": "gallon",
    "imp gal": "imperial_gallon",
    "imp pt": "imperial_pint",
    "fl oz": "fluid_ounce",
    "cu ft": "foot**3",
    "cu in": "inch**3",
    "m3": "meter**3",
    "#": "pound",
    "c": "cup",
    "m": "meter",
    '"': "inch",
    "'": "foot",
    "g": "gram",
    "d": "day",
    "h": "hour",
    "pt": "pint",
    "qt": "quart",
    "l": "liter",
}


def _one_spelling_per_factor(dimension: Dimension) -> list[tuple[str, float]]:
    """The first spelling of every factor that pint knows under a name."""
    first: dict[float, str] = {}
    for spelling, factor in dimension.factors.items():
        first.setdefault(factor, spelling)
    return [(spelling, factor) for factor, spelling in first.items()]


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_the_plain_table_agrees_with_pint(dimension: Dimension) -> None:
    compared = 0
    for spelling, factor in _one_spelling_per_factor(dimension):
        if spelling == "metric cup":
            continue  # pint's cup is the US customary one
        name = PINT_NAMES.get(spelling, spelling)
        name = "minute" if (dimension.name, spelling) == ("time", "min") else name
        assert pint_factor(name, dimension, spelling, "") == pytest.approx(factor, rel=1e-9), spelling
        compared += 1
    assert compared >= 4


def test_units_outside_the_table_are_read_by_pint() -> None:
    assert parse_mass_kg("3 slugs") == pytest.approx(3 * 14.59390294, rel=1e-6)
    assert parse_length_cm("2 fathoms") == pytest.approx(2 * 182.88, rel=1e-5)
    assert parse_volume_l("1 peck") == pytest.approx(8.80976754, rel=1e-6)
    assert parse_time_min("0.25 week") == pytest.approx(2520.0)


def test_usual_units_do_not_load_pint() -> None:
    code = (
        "import sys; from core.quantity.units import parse_mass_kg, parse_volume_l;"
        "parse_mass_kg('35 lb'); parse_volume_l('2.5 gal'); sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
