"""Strict two-way encodings between values and JSON, put together from small parts.

A `Codec` writes a value as plain JSON and reads it back; reading names the place and the rule of whatever does not fit
(`InputError`), and never guesses: unknown, missing and doubled fields, numbers that are not finite, text that is not
printable and tags of another type are all refused.
"""

from __future__ import annotations

import datetime
import json
import unicodedata
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Generic, TypeVar

from core.errors import InputError

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

TAG = "is"
MOST_ITEMS = 2000
HIDDEN_CATEGORIES = ("Cc", "Cs", "Zl", "Zp")
TURNING_SIGNS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
LONGEST_JSON = 64 * 1024 * 1024


@dataclass(frozen=True, slots=True)
class Codec(Generic[T]):
    """How one type is written as JSON and read back; `read` takes the JSON and where it stands, for the message."""

    write: Callable[[T], object]
    read: Callable[[object, str], T]

    def checked(self, value: T, where: str = "") -> object:
        """`value` as JSON, once it is certain that it reads back as the same value; `InputError` if not."""
        written = self.write(value)
        if self.read(written, where) != value:
            raise unfit(value, "cannot be kept as it is", where)
        return written


@dataclass(frozen=True, slots=True)
class TaggedCodec(Codec[T]):
    """A codec of one dataclass, told from others by its tag."""

    tag: str
    type: type[T]


def unfit(
    value: object, rule: str, where: str, way_out: str = "correct it, or go back to an earlier copy"
) -> InputError:
    """The error for JSON that does not hold what it should."""
    return InputError(value, rule, way_out, where=where)


def text(longest: int, *, shortest: int = 0, lines: bool = False) -> Codec[str]:
    """Printable text; `lines` allows line breaks."""

    def read(json_value: object, where: str) -> str:
        if not isinstance(json_value, str):
            raise unfit(json_value, "is not text", where)
        if not shortest <= len(json_value) <= longest:
            raise unfit(json_value, f"must be {shortest} to {longest} characters long", where, "make it fit")
        if any(_hidden(character, lines=lines) for character in json_value):
            raise unfit(json_value, "holds characters that cannot be shown", where, "type it again without them")
        return json_value

    return Codec(lambda value: value, read)


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

    return Codec(lambda value: value, read)


def whole(low: int, high: int) -> Codec[int]:
    """A whole number from `low` to `high`."""

    def read(json_value: object, where: str) -> int:
        if isinstance(json_value, bool) or not isinstance(json_value, int):
            raise unfit(json_value, "is not a whole number", where)
        if not low <= json_value <= high:
            raise unfit(json_value, f"is not from {low} to {high}", where, "check the number")
        return json_value

    return Codec(lambda value: value, read)


def _read_flag(json_value: object, where: str) -> bool:
    if not isinstance(json_value, bool):
        raise unfit(json_value, "is neither true nor false", where)
    return json_value


FLAG: Codec[bool] = Codec(lambda value: value, _read_flag)


def _read_date(json_value: object, where: str) -> datetime.date:
    try:
        date = datetime.date.fromisoformat(str(json_value))
    except ValueError:
        raise unfit(json_value, "is not a date such as 2026-05-31", where) from None
    if date.isoformat() != json_value:  # fromisoformat also takes week dates and dates without hyphens
        raise unfit(json_value, "is not a date such as 2026-05-31", where)
    return date


DATE: Codec[datetime.date] = Codec(lambda value: value.isoformat(), _read_date)


def _read_time(json_value: object, where: str) -> datetime.time:
    try:
        time = datetime.time.fromisoformat(str(json_value))
    except ValueError:
        raise unfit(json_value, "is not a time such as 22:30", where) from None
    if time.isoformat("minutes") != json_value:
        raise unfit(json_value, "is not a time such as 22:30", where)
    return time


TIME: Codec[datetime.time] = Codec(lambda value: value.isoformat("minutes"), _read_time)


def one_word(words: type[E]) -> Codec[E]:
    """A member of a `StrEnum`, written as its word."""
    by_word = {member.value: member for member in words}

    def read(json_value: object, where: str) -> E:
        member = by_word.get(json_value) if isinstance(json_value, str) else None
        if member is None:
            raise unfit(json_value, f"is none of {', '.join(by_word)}", where)
        return member

    return Codec(lambda value: value.value, read)


def maybe(inner: Codec[T]) -> Codec[T | None]:
    """Something that may be absent (null)."""
    return Codec(
        lambda value: None if value is None else inner.write(value),
        lambda json_value, where: None if json_value is None else inner.read(json_value, where),
    )


def many(inner: Codec[T], most: int = MOST_ITEMS) -> Codec[tuple[T, ...]]:
    """A tuple of any length up to `most`, written as a list."""

    def read(json_value: object, where: str) -> tuple[T, ...]:
        items = _list(json_value, where)
        if len(items) > most:
            raise unfit(f"{len(items)} entries", f"are more than the {most} there may be", where, "leave some out")
        return tuple(inner.read(item, f"{where}[{i}]") for i, item in enumerate(items))

    return Codec(lambda value: [inner.write(item) for item in value], read)


def word_set(words: type[E]) -> Codec[frozenset[E]]:
    """A set of enum members, written as a sorted list without repeats."""
    inner = one_word(words)

    def read(json_value: object, where: str) -> frozenset[E]:
        members = [inner.read(item, where) for item in _list(json_value, where)]
        if len(set(members)) != len(members):
            raise unfit(json_value, "lists a word twice", where)
        return frozenset(members)

    return Codec(lambda value: sorted(member.value for member in value), read)


def pair_of(first: Codec[float], second: Codec[float]) -> Codec[tuple[float, float]]:
    """Two numbers, written as a list of two."""

    def read(json_value: object, where: str) -> tuple[float, float]:
        items = _list(json_value, where)
        if len(items) != 2:
            raise unfit(json_value, "is not a pair", where)
        return first.read(items[0], where), second.read(items[1], where)

    return Codec(lambda value: [first.write(value[0]), second.write(value[1])], read)


def record(
    tag: str, made: type[T], fields: Mapping[str, Codec[Any]], added: Mapping[str, object] | None = None
) -> TaggedCodec[T]:
    """A dataclass, written as an object with its tag and every field.

    `added` gives the JSON to assume for fields that older files do not have yet.
    """
    assumed = dict(added or {})
    known = {TAG, *fields}

    def read(json_value: object, where: str) -> T:
        found = {**assumed, **_object(json_value, where)}
        if found.get(TAG) != tag:
            raise unfit(found.get(TAG), f"is not “{tag}”, which belongs here", where)
        for name in sorted(known ^ found.keys()):
            raise unfit(name, "is missing" if name in known else "is not known here", where)
        values = {name: codec.read(found[name], f"{where}.{name}" if where else name) for name, codec in fields.items()}
        return _make(made, values, where)

    def write(value: T) -> object:
        return {TAG: tag} | {name: codec.write(getattr(value, name)) for name, codec in fields.items()}

    return TaggedCodec(write, read, tag, made)


def either(*kinds: TaggedCodec[Any]) -> Codec[Any]:
    """One of several dataclasses, told apart by their tags."""
    by_tag = {kind.tag: kind for kind in kinds}
    by_type = {kind.type: kind for kind in kinds}

    def read(json_value: object, where: str) -> object:
        tag = _object(json_value, where).get(TAG)
        kind = by_tag.get(tag) if isinstance(tag, str) else None
        if kind is None:
            raise unfit(tag, f"is none of {', '.join(by_tag)}", where)
        return kind.read(json_value, where)

    return Codec(lambda value: by_type[type(value)].write(value), read)


def _make(made: type[T], values: Mapping[str, object], where: str) -> T:
    """The dataclass itself, whose own rules (a body mass in range, a table that rises) then name the place too."""
    try:
        return made(**values)
    except InputError as fault:
        raise InputError(fault.value, fault.rule, fault.way_out, where=where) from fault
    except ValueError as fault:
        raise unfit(made.__name__, str(fault), where) from fault


def _list(json_value: object, where: str) -> list[object]:
    if not isinstance(json_value, list):
        raise unfit(json_value, "is not a list", where)
    return json_value


def _object(json_value: object, where: str) -> dict[str, object]:
    if not isinstance(json_value, dict):
        raise unfit(json_value, "is not an object with fields", where)
    return json_value


def to_text(json_value: object) -> str:
    """JSON as compact text, fields sorted, so that equal values are equal text."""
    return json.dumps(json_value, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"))


def from_text(written: str, where: str, *, longest: int = LONGEST_JSON) -> object:
    """JSON from text; `InputError` when it is too long, is no JSON, doubles a field or holds NaN or Infinity."""
    if len(written) > longest:
        rule = f"is longer than the {longest // 1024} KiB this program reads"
        raise unfit(f"{len(written)} characters", rule, where, "use a smaller file")
    try:
        return json.loads(written, object_pairs_hook=_single_fields, parse_constant=_refuse_constant)
    except (ValueError, RecursionError) as fault:
        raise unfit(written, f"is not readable as JSON ({fault})", where) from fault


def _single_fields(pairs: list[tuple[str, object]]) -> dict[str, object]:
    fields = dict(pairs)
    if len(fields) != len(pairs):
        raise ValueError("a field is given twice")
    return fields


def _refuse_constant(name: str) -> float:
    raise ValueError(f"{name} is not a number")
