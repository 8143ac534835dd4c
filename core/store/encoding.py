"""Strict two-way encodings between values and JSON, put together from small parts: here the single ones.

A `Codec` writes a value as plain JSON and reads it back; reading names the place and the rule of whatever does not fit
(`InputError`), and never guesses: unknown, missing and doubled fields, numbers that are not finite, text that cannot be
shown and tags of another type are all refused. `schema` is the same as a JSON Schema (draft 2020-12).
"""

from __future__ import annotations

import datetime
import unicodedata
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

from core.errors import InputError

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

HIDDEN_CATEGORIES = ("Cc", "Cs", "Zl", "Zp")
TURNING_SIGNS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"


@dataclass(frozen=True, slots=True)
class Codec(Generic[T]):
    """How one type is written as JSON and read back; `read` takes the JSON and where it stands, for the message."""

    write: Callable[[T], object]
    read: Callable[[object, str], T]
    schema: Mapping[str, object]

    def checked(self, value: T, where: str = "") -> object:
        """`value` as JSON, once it is certain that it reads back as the same value; `InputError` if not."""
        written = self.write(value)
        if self.read(written, where) != value:
            raise unfit(value, "cannot be kept as it is", where)
        return written


def unfit(
    value: object, rule: str, where: str, way_out: str = "correct it, or go back to an earlier copy"
) -> InputError:
    """The error for JSON that does not hold what it should; a large value is described rather than shown."""
    return InputError(_glimpse(value), rule, way_out, where=where)


def _glimpse(value: object) -> object:
    if isinstance(value, str):
        return value[:200]
    if isinstance(value, int) and not isinstance(value, bool) and value.bit_length() > 200:
        return "a number of very many digits"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    return f"an object with {len(value)} fields" if isinstance(value, dict) else value


def text(longest: int, *, shortest: int = 0, lines: bool = False) -> Codec[str]:
    """Text that can be shown; `lines` allows line breaks."""

    def read(json_value: object, where: str) -> str:
        if not isinstance(json_value, str):
            raise unfit(json_value, "is not text", where)
        if not shortest <= len(json_value) <= longest:
            raise unfit(json_value, f"must be {shortest} to {longest} characters long", where, "make it fit")
        # What Python calls printable needs no closer look; much that can be shown (a fixed space) it does not call so.
        if not json_value.isprintable() and any(_hidden(character, lines=lines) for character in json_value):
            raise unfit(json_value, "holds characters that cannot be shown", where, "type it again without them")
        return json_value

    return Codec(_same, read, {"type": "string", "minLength": shortest, "maxLength": longest})


def _hidden(character: str, *, lines: bool) -> bool:
    """Control characters, halves of surrogate pairs, separators of lines, and signs that turn the writing round."""
    if character == "\n":
        return not lines
    return unicodedata.category(character) in HIDDEN_CATEGORIES or character in TURNING_SIGNS


def number(low: float, high: float) -> Codec[float]:
    """A finite number from `low` to `high`."""

    def read(json_value: object, where: str) -> float:
        if isinstance(json_value, bool) or not isinstance(json_value, int | float):
            raise unfit(json_value, "is not a number", where)
        if not low <= json_value <= high:  # also false for a number that is not finite
            raise unfit(json_value, f"is not from {low:g} to {high:g}", where, "check the number and its unit")
        return float(json_value)

    return Codec(_same, read, {"type": "number", "minimum": low, "maximum": high})


def whole(low: int, high: int) -> Codec[int]:
    """A whole number from `low` to `high`."""

    def read(json_value: object, where: str) -> int:
        if isinstance(json_value, bool) or not isinstance(json_value, int):
            raise unfit(json_value, "is not a whole number", where)
        if not low <= json_value <= high:
            raise unfit(json_value, f"is not from {low} to {high}", where, "check the number")
        return json_value

    return Codec(_same, read, {"type": "integer", "minimum": low, "maximum": high})


def one_word(words: type[E]) -> Codec[E]:
    """A member of a `StrEnum`, written as its word."""
    by_word = {member.value: member for member in words}

    def read(json_value: object, where: str) -> E:
        member = by_word.get(json_value) if isinstance(json_value, str) else None
        if member is None:
            raise unfit(json_value, f"is none of {', '.join(by_word)}", where)
        return member

    return Codec(lambda member: member.value, read, {"enum": list(by_word)})


def _same(value: object) -> object:
    return value


def _read_flag(json_value: object, where: str) -> bool:
    if not isinstance(json_value, bool):
        raise unfit(json_value, "is neither true nor false", where)
    return json_value


def _read_date(json_value: object, where: str) -> datetime.date:
    try:
        date = datetime.date.fromisoformat(str(json_value))
    except ValueError:
        raise unfit(json_value, "is not a date such as 2026-05-31", where) from None
    if date.isoformat() != json_value:  # fromisoformat also takes week dates and dates without hyphens
        raise unfit(json_value, "is not a date such as 2026-05-31", where)
    return date


def _read_time(json_value: object, where: str) -> datetime.time:
    try:
        time = datetime.time.fromisoformat(str(json_value))
    except ValueError:
        raise unfit(json_value, "is not a time such as 22:30", where) from None
    if time.tzinfo is not None or time.isoformat("minutes") != json_value:
        raise unfit(json_value, "is not a time such as 22:30", where)
    return time


FLAG: Codec[bool] = Codec(_same, _read_flag, {"type": "boolean"})
DATE: Codec[datetime.date] = Codec(
    lambda date: date.isoformat(), _read_date, {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"}
)
"""A day, without a time or zone."""
TIME: Codec[datetime.time] = Codec(
    lambda time: time.isoformat("minutes"), _read_time, {"type": "string", "pattern": r"^\d{2}:\d{2}$"}
)
"""A local time of day, to the minute."""
