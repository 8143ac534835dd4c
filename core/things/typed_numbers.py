"""Reading typed text into tokens: numbers, quantities with a unit, and words.

"Two five-litre bottles", "1½ gal", "3x 1,5 l", "62 x 38 x 12 cm" and "a dozen" become numbers in L, kg, cm and m².
Factors come from `core.quantity.table`. What is no number and no word is dropped, so markup loses its teeth here.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, replace
from enum import StrEnum

from core.errors import InputError
from core.quantity.table import LENGTH, MASS, UNICODE_FRACTIONS, VOLUME


class Sort(StrEnum):
    """What a token is."""

    NUMBER = "number"
    QUANTITY = "quantity"
    SIDES = "sides"
    TIMES = "times"
    WORD = "word"


class Measure(StrEnum):
    """What a quantity measures, and the unit it is kept in."""

    VOLUME = "L"
    MASS = "kg"
    LENGTH = "cm"
    AREA = "m²"


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of the text. `text` is as typed (a quantity as it is best written), `key` in lower case.

    `loose` marks a whole number with a spelled-out unit after a space: "2 gallon" may be two of one gallon.
    """

    sort: Sort
    text: str
    value: float = 0.0
    measure: Measure | None = None
    sides_cm: tuple[float, ...] = ()
    loose: bool = False

    @property
    def key(self) -> str:
        """Lower case, without an apostrophe."""
        return self.text.lower().replace("'", "").replace("’", "")

    @property
    def is_owner(self) -> bool:
        """Whether the word says whose it is: Ines's, a neighbour's."""
        return self.sort is Sort.WORD and self.text.lower().endswith(("'s", "’s"))


# Words that are units elsewhere but things, or nothing, here: 2 cups, 3 stones, a yard.
_NOT_UNITS = {"c", "cup", "cups", "metric cup", "metric cups", "t", "#", "st", "stone", "stones", "yard", "yards"}
_NOT_UNITS |= {"tonne", "tonnes", "mg", "milligram", "milligrams", "tbsp", "tsp", "tablespoon", "tablespoons"}
_NOT_UNITS |= {"teaspoon", "teaspoons", "oz", "ounce", "ounces"}
_AREA = {"m2": 1.0, "sq m": 1.0, "sqm": 1.0, "square metres": 1.0, "square meters": 1.0, "square metre": 1.0}
_AREA |= {
    "sq ft": 0.09290304,
    "square feet": 0.09290304,
    "ft2": 0.09290304,
    "square meter": 1.0,
    "square foot": 0.09290304,
}
_FAR = {
    "km": 100_000.0,
    "kilometre": 100_000.0,
    "kilometres": 100_000.0,
    "kilometer": 100_000.0,
    "kilometers": 100_000.0,
}
_FAR |= {"mile": 160_934.4, "miles": 160_934.4}


def _units() -> dict[str, tuple[Measure, float]]:
    found = {
        unit: (measure, factor)
        for measure, dimension in ((Measure.MASS, MASS), (Measure.LENGTH, LENGTH), (Measure.VOLUME, VOLUME))
        for unit, factor in dimension.factors.items()
        if unit not in _NOT_UNITS
    }
    found.update(dict.fromkeys(("oz", "ounce", "ounces"), (Measure.MASS, MASS.factors["oz"])))
    found.update({unit: (Measure.LENGTH, factor) for unit, factor in _FAR.items()})
    found.update({unit: (Measure.AREA, factor) for unit, factor in _AREA.items()})
    return found


UNITS = _units()
_SHOWN = {"l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L", "ltr": "L", "ml": "mL", "gals": "gal"}
_SHOWN |= {"gallon": "gal", "gallons": "gal", "lbs": "lb", "pound": "lb", "pounds": "lb", "kilo": "kg", "kilos": "kg"}
_SHOWN |= {"inch": "in", "inches": "in", '"': "in", "″": "in", "”": "in", "'": "ft", "′": "ft", "’": "ft"}
_SHOWN |= {"gram": "g", "grams": "g", "kgs": "kg", "feet": "ft", "foot": "ft"}
_BARE_UNITS = {"gallon", "litre", "liter", "quart", "pint"}
"""A unit that, typed without a number, means one of it: a gallon jug."""

_SMALL = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_VALUES = {word: number for number, word in enumerate(_SMALL)} | {word: 10 * n for n, word in enumerate(_TENS, start=2)}
SCORES = {"dozen": 12.0, "dozens": 12.0, "hundred": 100.0}
"""Words that multiply the number before them."""
_ONES = "|".join(_SMALL[1:10])
_SPELLED = re.compile(rf"\b(?:({'|'.join(_TENS)})(?:[\s-]+({_ONES}))?|({'|'.join(_SMALL)}))\b", re.IGNORECASE)
_UNIT = "|".join(re.escape(unit) for unit in sorted(UNITS, key=len, reverse=True))
_DECIMAL = r"\d+(?:\.\d+)?|\.\d+"
_AMOUNT = rf"\d+\s+\d+/\d+|\d+/\d+|{_DECIMAL}"
_TIMES = "[x×*✕]"
_UNIT_END = r"(?![^\W\d_])"
_TOKEN = re.compile(
    rf"""(?P<sides>(?:(?:{_DECIMAL})\s*{_TIMES}\s*){{1,2}}(?:{_DECIMAL})\s*(?:cms?|mm|m|in|inch|inches|")){_UNIT_END}
    | (?P<number>{_AMOUNT})(?:[\s-]*(?P<unit>{_UNIT}){_UNIT_END})?
    | (?P<times>{_TIMES})(?=\s*\d) | (?P<word>[^\W\d_](?:[^\W_]|['’-](?=[^\W\d_]))*)""",
    re.VERBOSE | re.IGNORECASE,
)
_ONLY_LETTERS = re.compile(r"[A-Za-z -]*")
_NUMBER_WORDS = frozenset((*_VALUES, *SCORES, "half", "quarter", "quarters", "pair", "pairs", "couple", "number", "t"))
"""Words that `plain_text` changes, alone or with others; text without them and without digits stays as it is."""
_HALVES = "".join(UNICODE_FRACTIONS)


def plain_text(text: str) -> str:
    """`text` with every spelled-out number as digits and every odd sign in its usual form."""
    if _ONLY_LETTERS.fullmatch(text) and _NUMBER_WORDS.isdisjoint(text.lower().replace("-", " ").split()):
        return text
    spaced = re.sub(rf"(\d)([{_HALVES}])", r"\1 \2", text)
    usual = unicodedata.normalize("NFKC", spaced).replace("⁄", "/").replace("−", "-").replace("–", "-")
    _refuse_thousands(usual)
    usual = re.sub(r"(?<=\d),(?=\d{1,2}(?!\d))", ".", usual)
    for pattern, instead in _PROTECTED:
        usual = pattern.sub(instead, usual)
    usual = _SPELLED.sub(_spelled_value, usual)
    for pattern, instead in _PHRASES:
        usual = pattern.sub(instead, usual)
    return usual


def _refuse_thousands(text: str) -> None:
    found = re.search(r"(?<![\d.,])[1-9]\d{0,2},\d{3}(?!\d)", text)
    if found is not None:
        number = found.group()
        way_out = f"write {number.replace(',', '')} or {number.replace(',', '.')}"
        raise InputError(number, "could mean a thousand or a decimal comma", way_out)


def _spelled_value(match: re.Match[str]) -> str:
    tens, ones, small = (part.lower() if part else "" for part in match.groups())
    return str(_VALUES[small] if small else _VALUES[tens] + _VALUES.get(ones, 0))


def _phrase(pattern: str, instead: str) -> tuple[re.Pattern[str], str]:
    return re.compile(pattern, re.IGNORECASE), instead


_PROTECTED = (
    _phrase(r"\b(?:six|6)[\s-]?pack(s?)\b", r"sixpack\1"),
    _phrase(r"(?:\bno\.?|\bnumber|#)\s*10\b", "noten"),
    _phrase(r"\b(?:pairs?|couple) of (?=(?:wool(?:len)? |sliding |old )?(?:socks|tights)\b)", ""),
    _phrase(r"\bt-shirt", "tshirt"),
)
"""Numbers that belong to a name."""

_HALF_OF = r"(?=(?:litre|liter|gallon|l|gal|kilo|kg|pint|quart|metre|meter|m)\b)"
_PHRASES = (
    _phrase(r"\b(\d+) (?:and|&) a half\b", r"\1.5"),
    _phrase(r"\b(\d+) (?:and|&) a quarter\b", r"\1.25"),
    _phrase(r"\b(\d+) (?:and|&) (\d/\d)", r"\1 \2"),
    _phrase(r"\b3[\s-]quarters?(?: of)?(?: an?)?[\s-]" + _HALF_OF, "0.75 "),
    _phrase(r"\bhalf(?: an?)?[\s-]dozen\b", "6"),
    _phrase(r"\bhalf(?: an?)?[\s-]" + _HALF_OF, "0.5 "),
    _phrase(r"\bquarter(?: of)?(?: an?)?[\s-]" + _HALF_OF, "0.25 "),
    _phrase(r"\b(?:an?|1) dozen\b", "12"),
    _phrase(r"\b(?:a |1 )?(?:couple|pair) of\b", "2"),
    _phrase(r"\bpair\b(?=\s+\w)", "2"),
)


def tokens_of(plain: str) -> tuple[Token, ...]:
    """The tokens of `plain_text`'s answer, in order."""
    return tuple(_token(match) for match in _TOKEN.finditer(plain))


def _token(match: re.Match[str]) -> Token:
    if match["sides"]:
        return _sides(match["sides"])
    if match["times"]:
        return Token(Sort.TIMES, match["times"])
    if match["word"]:
        return _word(match["word"])
    value = number_value(match["number"])
    if match["unit"] is None:
        return Token(Sort.NUMBER, match["number"], value)
    unit = match["unit"].lower()
    found = _quantity(value, unit)
    spaced = match.group()[: -len(unit)].endswith(" ")
    return replace(found, loose=unit in _BARE_UNITS and spaced and value == int(value) and value >= 2)


def loosened(token: Token) -> tuple[Token, Token]:
    """A loose quantity read the other way: so many, of one unit each."""
    number, unit = token.text.split(" ", 1)
    count = float(number)
    return Token(Sort.NUMBER, number, count), replace(token, text=f"1 {unit}", value=token.value / count, loose=False)


def _word(word: str) -> Token:
    key = word.lower()
    if key in SCORES:
        return Token(Sort.NUMBER, word, SCORES[key])
    if key in _BARE_UNITS:
        return _quantity(1.0, key)
    return Token(Sort.WORD, word)


def _quantity(value: float, unit: str) -> Token:
    measure, factor = UNITS[unit]
    return Token(Sort.QUANTITY, f"{value:g} {_SHOWN.get(unit, unit)}", value * factor, measure)


def _sides(text: str) -> Token:
    numbers = [float(number) for number in re.findall(r"\d+(?:\.\d+)?|\.\d+", text)]
    unit = re.sub(r"[\d.\s×✕*]|x(?=\s*[\d.])", "", text.lower())
    factor = LENGTH.factors[unit]
    return Token(
        Sort.SIDES, " × ".join(f"{n:g}" for n in numbers) + f" {unit}", sides_cm=tuple(factor * n for n in numbers)
    )


def number_value(text: str) -> float:
    """The value of a decimal, a fraction or a mixed number."""
    *whole, last = text.split()
    if "/" not in last:
        return float(last)
    top, bottom = last.split("/")
    if int(bottom) == 0:
        raise InputError(text, "divides by zero", "write a fraction like 3/4")
    return (float(whole[0]) if whole else 0.0) + int(top) / int(bottom)
