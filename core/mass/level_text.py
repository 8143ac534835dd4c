"""A fill level as people type it: "80%", "14 L", "18 cm", "12 x 250 mL", "12 cups", "half", "full", "brim", "empty".

Whatever cannot be read raises `InputError`. `level_text` writes a level so that it reads back equal.
"""

from __future__ import annotations

import re

from core.errors import InputError
from core.mass.model import (
    BrimLevel,
    CupsLevel,
    FullLevel,
    HeightLevel,
    Level,
    ShareLevel,
    VolumeLevel,
)
from core.quantity.table import LENGTH, METRIC_CUP_L
from core.quantity.units import parse_length_cm, parse_volume_l

EXAMPLE = "write it like 80%, 14 L, 18 cm, 12 x 250 mL, full or brim"
LONGEST_TEXT = 60
MOST_CUPS = 10_000.0
WORDS: dict[str, Level] = {
    "full": FullLevel(),
    "brim": BrimLevel(),
    "brimful": BrimLevel(),
    "to the brim": BrimLevel(),
    "half": ShareLevel(share=0.5),
    "half full": ShareLevel(share=0.5),
    "empty": ShareLevel(share=0.0),
}
_NUMBER = r"(?P<number>\d{1,6}(?:[.,]\d{1,17})?|[.,]\d{1,17})"
_SHARE = re.compile(rf"{_NUMBER}\s*(?:%|percent|per cent)(?:\s+full)?")
_CUPS = re.compile(rf"{_NUMBER}\s*(?:x|cups?\s+of\b)\s*(?P<size>.+)")
_OWN_CUPS = re.compile(r"(?P<number>[\d.,\s/½⅓⅔¼¾⅛⅜⅝⅞]+?)\s*cups?")
_UNIT = re.compile(r"[^\d.,\s/½⅓⅔¼¾⅛⅜⅝⅞]+$")


def parse_level(text: str, *, cup_l: float = METRIC_CUP_L) -> Level:
    """The level `text` stands for; "cups" without a size are of `cup_l` litres."""
    plain = " ".join(text[: LONGEST_TEXT + 1].lower().replace("×", "x").split())
    if len(text) > LONGEST_TEXT or not plain:
        raise InputError(text, "is no fill level", EXAMPLE)
    if plain in WORDS:
        return WORDS[plain]
    share, cups, own = _SHARE.fullmatch(plain), _CUPS.fullmatch(plain), _OWN_CUPS.fullmatch(plain)
    if share is not None:
        return ShareLevel(share=_share(_plain(share["number"]), text))
    if cups is not None:
        return CupsLevel(count=_count(cups["number"], text), cup_l=parse_volume_l(cups["size"]))
    if own is not None:
        # Fractions and all, as the door for volumes reads them.
        count = parse_volume_l(f"{own['number']} metric cups") / METRIC_CUP_L
        return CupsLevel(count=round(count, 9), cup_l=cup_l)
    return _measured(plain, text)


def _measured(plain: str, text: str) -> Level:
    """A volume or a height, told apart by the unit."""
    unit = _UNIT.search(plain)
    if unit is not None and unit.group().replace(".", "") in LENGTH.factors:
        return HeightLevel(height_cm=parse_length_cm(plain))
    if not re.match(r"[\d.,½⅓⅔¼¾⅛⅜⅝⅞-]", plain) or unit is None:
        raise InputError(text, "is no fill level", EXAMPLE)
    return VolumeLevel(volume_l=parse_volume_l(plain))


def _share(percent: float, text: str) -> float:
    if percent > 100:
        raise InputError(text, "is more than full (100%)", "write brim for filled to the brim")
    return percent / 100


def _count(number: str, text: str) -> float:
    count = _plain(number)
    if count > MOST_CUPS:
        raise InputError(text, f"is more than {MOST_CUPS:g} cups", "write a volume instead")
    return count


def _plain(number: str) -> float:
    return float(number.replace(",", "."))


def level_text(level: Level) -> str | None:
    """`level` in words that `parse_level` reads back equal; None where words would lose something."""
    words = next((word for word, known in WORDS.items() if known == level), None) or _number_words(level)
    return words if words is not None and _reads_back(words, level) else None


def _number_words(level: Level) -> str | None:
    match level:
        case ShareLevel():
            return f"{level.share * 100!r}%"
        case VolumeLevel():
            return f"{level.volume_l!r} L"
        case HeightLevel():
            return f"{level.height_cm!r} cm"
        case CupsLevel():
            return f"{level.count!r} x {level.cup_l!r} L"
        case _:
            return None


def _reads_back(words: str, level: Level) -> bool:
    try:
        return parse_level(words) == level
    except InputError:
        return False
