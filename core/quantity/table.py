"""The units people usually type, with exact factors, one table per dimension.

Factors: international yard and pound of 1959, US gallon of 231 in³, imperial gallon of 4.54609 L (NIST SP 811,
appendix B; NIST Handbook 44, appendix C). Spellings are compared in lower case without dots.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

POUND_KG = 0.45359237
INCH_CM = 2.54
US_GALLON_L = 3.785411784
IMPERIAL_GALLON_L = 4.54609
MILE_M = 1609.344
METRIC_CUP_L = 0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """A kind of quantity: its words, the unit it is kept in, how large is absurd, and the usual spellings."""

    name: str
    unit: str
    most: float
    factors: dict[str, float]


def _spelled(rows: tuple[tuple[float, str], ...]) -> dict[str, float]:
    return {spelling: factor for factor, spellings in rows for spelling in spellings.split(",")}


_CUP = US_GALLON_L / 16
_FL_OZ = US_GALLON_L / 128

MASS = Dimension(
    name="mass",
    unit="kg",
    most=10_000.0,
    factors=_spelled(
        (
            (1.0, "kg,kgs,kilo,kilos,kilogram,kilograms,kilogramme,kilogrammes"),
            (0.001, "g,gr,gram,grams,gramme,grammes"),
            (1e-6, "mg,milligram,milligrams"),
            (1000.0, "t,tonne,tonnes"),
            (POUND_KG, "lb,lbs,pound,pounds,#"),
            (POUND_KG / 16, "oz,ounce,ounces"),
            (POUND_KG * 14, "st,stone,stones"),
        )
    ),
)

_INCH = 'in,inch,inches,",″,”'
_FOOT = "ft,foot,feet,',′,’"

LENGTH = Dimension(
    name="length",
    unit="cm",
    most=10_000.0,
    factors=_spelled(
        (
            (1.0, "cm,cms,centimetre,centimetres,centimeter,centimeters"),
            (0.1, "mm,millimetre,millimetres,millimeter,millimeters"),
            (100.0, "m,metre,metres,meter,meters"),
            (INCH_CM, _INCH),
            (12 * INCH_CM, _FOOT),
            (36 * INCH_CM, "yd,yard,yards"),
        )
    ),
)

VOLUME = Dimension(
    name="volume",
    unit="L",
    most=100_000.0,
    factors=_spelled(
        (
            (1.0, "l,litre,litres,liter,liters,ltr,dm3,dm³"),
            (0.001, "ml,millilitre,millilitres,milliliter,milliliters,cc,cm3,cm³"),
            (0.01, "cl,centilitre,centilitres,centiliter,centiliters"),
            (0.1, "dl,decilitre,decilitres,deciliter,deciliters"),
            (1000.0, "m3,m³"),
            (US_GALLON_L, "gal,gals,gallon,gallons,us gal,us gallon,us gallons"),
            (US_GALLON_L / 4, "qt,quart,quarts"),
            (US_GALLON_L / 8, "pt,pint,pints"),
            (_CUP, "cup,cups,c"),
            (METRIC_CUP_L, "metric cup,metric cups"),
            (_FL_OZ, "fl oz,floz,fluid ounce,fluid ounces"),
            (_FL_OZ / 2, "tbsp,tablespoon,tablespoons"),
            (_FL_OZ / 6, "tsp,teaspoon,teaspoons"),
            (IMPERIAL_GALLON_L, "imp gal,imperial gallon,imperial gallons,uk gal,uk gallon"),
            (IMPERIAL_GALLON_L / 8, "imp pt,imperial pint,imperial pints,uk pint"),
            (1728 * INCH_CM**3 / 1000, "cu ft,cubic foot,cubic feet,ft3,ft³"),
            (INCH_CM**3 / 1000, "cu in,cubic inch,cubic inches,in3,in³"),
        )
    ),
)

TIME = Dimension(
    name="time",
    unit="min",
    most=7 * 24 * 60.0,
    factors=_spelled(
        (
            (1.0, "min,mins,minute,minutes,m"),
            (1 / 60, "s,sec,secs,second,seconds"),
            (60.0, "h,hr,hrs,hour,hours"),
            (24 * 60.0, "d,day,days"),
        )
    ),
)

DISTANCE = Dimension(
    name="distance",
    unit="m",
    most=1_000_000.0,
    factors=_spelled(
        (
            (1.0, "m,metre,metres,meter,meters"),
            (1000.0, "km,kms,kilometre,kilometres,kilometer,kilometers,k"),
            (0.01, "cm,centimetre,centimetres,centimeter,centimeters"),
            (MILE_M, "mi,mile,miles"),
            (36 * INCH_CM / 100, "yd,yds,yard,yards"),
            (12 * INCH_CM / 100, _FOOT),
        )
    ),
)

DIMENSIONS = (MASS, LENGTH, VOLUME, TIME, DISTANCE)

UNICODE_FRACTIONS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
