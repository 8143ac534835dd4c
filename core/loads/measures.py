"""What a person pours with: the cup of the house, a ladle of so much, or a bottle the house owns."""

from __future__ import annotations

import re
from dataclasses import dataclass

from core.errors import InputError
from core.house.model import House
from core.quantity.units import parse_volume_l
from core.things.model import Hazard, Thing

LARGEST_L = 6.0
"""What holds more is not lifted to pour with (a judgement)."""
LEAST_L = 0.005
_UNITS = r"ml|cl|dl|l|litres?|liters?|fl\.?\s?oz|oz|gal|gallons?|pints?|quarts?|cups?"
_AMOUNT = re.compile(rf"\d[\d.,]*\s*(?:{_UNITS})\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A vessel of known volume to pour with, and what it is called: “cup”, “ladle”, “Water bottle”."""

    name: str
    litres: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A volume as so many full measures and, for the rest, so many cups."""

    measures: int
    cups: int


def cup_of(house: House) -> Measure:
    """The cup the house pours with."""
    return Measure(name="cup", litres=house.cup_l)


def measures_of(house: House, thing: Thing) -> tuple[Measure, ...]:
    """The cup, then every small vessel of the house other than `thing`, the smallest first."""
    small = (one for one in house.things if one.id != thing.id and _pours(one))
    found = sorted(
        (Measure(name=one.name, litres=_litres(one)) for one in small), key=lambda one: (one.litres, one.name)
    )
    return (cup_of(house), *found)


def read_measure(text: str, house: House, thing: Thing) -> Measure:
    """“ladle 120 mL”, “0.5 L bottle”, “100 mL”, or the name of a small vessel of the house; `InputError` for the rest.

    Nothing typed is the cup of the house.
    """
    plain = " ".join(text.split())
    if not plain:
        return cup_of(house)
    for known in measures_of(house, thing):
        if known.name.casefold() == plain.casefold():
            return known
    amount = _AMOUNT.search(plain)
    if amount is None:
        names = ", ".join(one.name for one in measures_of(house, thing)[:4])
        raise InputError(text, "is nothing to pour with here", f"write a size, like “ladle 120 mL”, or one of: {names}")
    litres = parse_volume_l(amount.group())
    if not LEAST_L <= litres <= LARGEST_L:
        rule = f"is not a size to pour with, from {LEAST_L * 1000:g} mL to {LARGEST_L:g} L"
        raise InputError(text, rule, "write the size of your cup, ladle or bottle")
    name = " ".join((plain[: amount.start()] + " " + plain[amount.end() :]).split()).strip(",;·- ")
    return Measure(name=name or "measure", litres=litres)


def measured_out(volume_l: float, measure: Measure, cup_l: float) -> Measured:
    """`volume_l` in full measures, and the rest to the nearest cup; a measure no larger than a cup is counted alone."""
    if measure.litres <= cup_l:
        return Measured(measures=round(volume_l / measure.litres), cups=0)
    full = int(volume_l / measure.litres + 1e-9)
    rest_l = volume_l - full * measure.litres
    if rest_l >= measure.litres - cup_l / 2:
        return Measured(measures=full + 1, cups=0)
    return Measured(measures=full, cups=round(rest_l / cup_l))


def _pours(thing: Thing) -> bool:
    container = thing.facts.container
    if container is None or Hazard.HELD_CHEMICALS in thing.facts.hazards:
        return False
    return LEAST_L <= container.nominal_l.value <= LARGEST_L


def _litres(thing: Thing) -> float:
    container = thing.facts.container
    return 0.0 if container is None else container.nominal_l.value
