"""How quantities are written for people: metric or US units, digits chosen from the uncertainty, a decimal point."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import StrEnum

from core.quantity.measured import COVERAGE_FACTOR, Measured
from core.quantity.table import INCH_CM, MILE_M, POUND_KG, US_GALLON_L

YARD_M = 36 * INCH_CM / 100
MOST_DECIMALS = 6


class UnitSystem(StrEnum):
    """The units a person reads."""

    METRIC = "metric"
    US = "us"


def format_mass(kg: float, system: UnitSystem) -> str:
    """14.7 kg or 32.4 lb; light things in g or oz."""
    value, unit = _mass(kg, kg, system)
    return f"{_fixed(value, _usual_decimals(value, unit))} {unit}"


def format_measured_mass(mass: Measured, system: UnitSystem) -> str:
    """14.7 kg ± 0.3: u95 to one digit (two where it starts with 1), the value to the same decimals.

    An exact value is written without ±, so that "± 0.0" is never seen.
    """
    value, unit = _mass(mass.value, mass.value, system)
    wide, _ = _mass(mass.u95, mass.value, system)
    if wide < 10**-MOST_DECIMALS:
        return format_mass(mass.value, system)
    decimals = decimals_for(wide)
    return f"{_fixed(value, decimals)} {unit} ± {_fixed(wide, decimals)}"


def format_doubts(u_kg: Sequence[float], of: Measured, system: UnitSystem) -> tuple[str, ...]:
    """Contributions (one standard uncertainty each) as half-widths like the ± of `of`, one digit finer: 0.24 kg."""
    wide, _ = _mass(of.u95, of.value, system)
    decimals = min(decimals_for(max(wide, 10**-MOST_DECIMALS)) + 1, MOST_DECIMALS)
    shown = (_mass(COVERAGE_FACTOR * u, of.value, system) for u in u_kg)
    return tuple(_at_least(value, unit, decimals) for value, unit in shown)


def _at_least(value: float, unit: str, decimals: int) -> str:
    """A number that would show as nothing is told to be less than the last digit."""
    text = _fixed(value, decimals)
    return f"{text} {unit}" if float(text) > 0 or value <= 0 else f"< {10**-decimals:.{decimals}f} {unit}"


def format_measured_volume(volume_l: Measured, system: UnitSystem) -> str:
    """24.8 L ± 0.2, in L or gal whatever the size."""
    factor, unit = (1.0, "L") if system is UnitSystem.METRIC else (US_GALLON_L, "gal")
    wide = volume_l.u95 / factor
    if wide < 10**-MOST_DECIMALS:
        return f"{_fixed(volume_l.value / factor, _usual_decimals(volume_l.value / factor))} {unit}"
    decimals = decimals_for(wide)
    return f"{_fixed(volume_l.value / factor, decimals)} {unit} ± {_fixed(wide, decimals)}"


def format_measured_density(kg_l: Measured, system: UnitSystem) -> str:
    """1.58 kg/L ± 0.06, or lb/gal."""
    factor, unit = (1.0, "kg/L") if system is UnitSystem.METRIC else (POUND_KG / US_GALLON_L, "lb/gal")
    decimals = decimals_for(max(kg_l.u95 / factor, 10**-MOST_DECIMALS))
    return f"{_fixed(kg_l.value / factor, decimals)} {unit} ± {_fixed(kg_l.u95 / factor, decimals)}"


def decimals_for(wide: float) -> int:
    """Decimals that show a half-width `wide` > 0 with one significant digit, or two where the first is 1."""
    exponent = math.floor(math.log10(wide))
    # 0.096 shows as 0.10 and 0.196 as 0.20: round first, then look at the leading digit.
    leading = round(wide / 10**exponent, 1)
    if leading >= 10:
        exponent, leading = exponent + 1, 1.0
    return min(max(-exponent + (1 if leading < 2 else 0), 0), MOST_DECIMALS)


def format_volume(litres: float, system: UnitSystem) -> str:
    """14.0 L, 250 mL, 3.7 gal or 8 fl oz."""
    if system is UnitSystem.METRIC:
        return f"{_fixed(litres * 1000, 0)} mL" if litres < 0.9995 else f"{_fixed(litres, _usual_decimals(litres))} L"
    gallons = litres / US_GALLON_L
    if gallons < 0.25:
        return f"{_fixed(gallons * 128, 1)} fl oz"
    return f"{_fixed(gallons, _usual_decimals(gallons))} gal"


def format_length(cm: float, system: UnitSystem) -> str:
    """18.4 cm, 171 cm, 7.2 in or 5 ft 7 in."""
    if system is UnitSystem.METRIC:
        return f"{_fixed(cm, 1 if cm < 100 else 0)} cm"
    inches = cm / INCH_CM
    if inches < 36:
        return f"{_fixed(inches, 1)} in"
    feet, rest = divmod(round(inches), 12)
    return f"{feet} ft {rest} in"


def format_distance(metres: float, system: UnitSystem) -> str:
    """400 m, 1.6 km, 437 yd or 1.0 mi."""
    if system is UnitSystem.METRIC:
        return f"{_fixed(metres, 0)} m" if metres < 999.5 else f"{_fixed(metres / 1000, 1)} km"
    miles = metres / MILE_M
    return f"{_fixed(metres / YARD_M, 0)} yd" if miles < 0.5 else f"{_fixed(miles, 1)} mi"


def format_temperature(celsius: float, system: UnitSystem) -> str:
    """12 °C or 54 °F."""
    return f"{_fixed(celsius, 0)} °C" if system is UnitSystem.METRIC else f"{_fixed(celsius * 9 / 5 + 32, 0)} °F"


def _mass(kg: float, size_kg: float, system: UnitSystem) -> tuple[float, str]:
    """`kg` in the unit that suits a mass of `size_kg`: below 0.1 kg in g, below a quarter pound in oz.

    The size is rounded first, so that a mass just below the limit is not shown as the limit in the smaller unit.
    """
    if system is UnitSystem.METRIC:
        return (kg * 1000, "g") if round(abs(size_kg), 3) < 0.1 else (kg, "kg")
    return (kg / POUND_KG * 16, "oz") if round(abs(size_kg) / POUND_KG, 2) < 0.25 else (kg / POUND_KG, "lb")


def _usual_decimals(value: float, unit: str = "") -> int:
    """Decimals without a known uncertainty: three digits or so."""
    if unit == "g":
        return 0
    return 1 if abs(value) >= 9.995 or unit == "oz" else 2


def _fixed(value: float, decimals: int) -> str:
    """Fixed decimals without a negative zero."""
    text = f"{value:.{decimals}f}"
    return text.lstrip("-") if float(text) == 0 else text
