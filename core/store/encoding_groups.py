"""Encodings put together from others: absent values, lists, sets, pairs, dataclasses and choices between them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, TypeVar

from core.errors import InputError
from core.store.encoding import Codec, one_word, unfit

A = TypeVar("A")
B = TypeVar("B")
T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

TAG = "is"
"""The field that tells which type an object is."""
MOST_ITEMS = 2000


@dataclass(frozen=True, slots=True)
class TaggedCodec(Codec[T]):
    """A codec of one dataclass, told from others by its tag."""

    write: Callable[[T], dict[str, object]]
    tag: str
    made: type[T]


def maybe(inner: Codec[T]) -> Codec[T | None]:
    """Something that may be absent (null)."""
    return Codec(
        lambda value: None if value is None else inner.write(value),
        lambda json_value, where: None if json_value is None else inner.read(json_value, where),
        {"anyOf": [inner.schema, {"type": "null"}]},
    )


def many(inner: Codec[T], most: int = MOST_ITEMS) -> Codec[tuple[T, ...]]:
    """A tuple of any length up to `most`, written as a list."""

    def read(json_value: object, where: str) -> tuple[T, ...]:
        items = _list(json_value, where)
        if len(items) > most:
            raise unfit(f"{len(items)} entries", f"are more than the {most} there may be", where, "leave some out")
        return tuple(inner.read(item, f"{where}[{i}]") for i, item in enumerate(items))

    schema = {"type": "array", "items": inner.schema, "maxItems": most}
    return Codec(lambda value: [inner.write(item) for item in value], read, schema)


def word_set(words: type[E]) -> Codec[frozenset[E]]:
    """A set of enum members, written as a sorted list without repeats."""
    inner = one_word(words)

    def read(json_value: object, where: str) -> frozenset[E]:
        members = [inner.read(item, where) for item in _list(json_value, where)]
        if len(set(members)) != len(members):
            raise unfit(json_value, "lists a word twice", where)
        return frozenset(members)

    schema = {"type": "array", "items": inner.schema, "uniqueItems": True}
    return Codec(lambda value: sorted(member.value for member in value), read, schema)


def pair_of(first: Codec[A], second: Codec[B]) -> Codec[tuple[A, B]]:
    """A pair, written as a list of two."""

    def read(json_value: object, where: str) -> tuple[A, B]:
        items = _list(json_value, where)
        if len(items) != 2:
            raise unfit(json_value, "is not a pair", where)
        return first.read(items[0], where), second.read(items[1], where)

    schema = {"type": "array", "prefixItems": [first.schema, second.schema], "minItems": 2, "maxItems": 2}
    return Codec(lambda value: [first.write(value[0]), second.write(value[1])], read, schema)


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
            raise unfit(found.get(TAG), f"stands where “{tag}” belongs", where)
        odd = min(known ^ found.keys(), default=None)
        if odd is not None:
            raise unfit(odd, "is missing" if odd in known else "is not known here", where)
        values = {name: codec.read(found[name], f"{where}.{name}" if where else name) for name, codec in fields.items()}
        return _make(made, values, where)

    def write(value: T) -> dict[str, object]:
        return {TAG: tag} | {name: codec.write(getattr(value, name)) for name, codec in fields.items()}

    schema = {
        "type": "object",
        "properties": {TAG: {"const": tag}} | {name: codec.schema for name, codec in fields.items()},
        "required": sorted(known - assumed.keys()),
        "additionalProperties": False,
    }
    return TaggedCodec(write=write, read=read, schema=schema, tag=tag, made=made)


def either(*kinds: TaggedCodec[Any]) -> Codec[Any]:
    """One of several dataclasses, told apart by their tags."""
    by_tag = {kind.tag: kind for kind in kinds}
    by_type = {kind.made: kind for kind in kinds}

    def read(json_value: object, where: str) -> object:
        tag = _object(json_value, where).get(TAG)
        kind = by_tag.get(tag) if isinstance(tag, str) else None
        if kind is None:
            raise unfit(tag, f"is none of {', '.join(by_tag)}", where)
        return kind.read(json_value, where)

    return Codec(lambda value: by_type[type(value)].write(value), read, {"oneOf": [kind.schema for kind in kinds]})


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
