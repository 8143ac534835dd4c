"""Frozen dataclasses as plain JSON values and back, driven by their type hints, for fast loading of checked data.

A dataclass is an object with its class name and the fields that differ from their defaults; an enum member is its
word; a tuple or a set is a list. What does not fit the hints raises `ValueError`, `TypeError` or `KeyError`.
"""

from __future__ import annotations

import types
from collections.abc import Callable
from dataclasses import MISSING, Field, fields, is_dataclass
from enum import Enum
from typing import Any, Union, get_args, get_origin, get_type_hints

Reader = Callable[[Any], Any]
TAG = "is"


def packed(value: Any) -> Any:
    """`value` as lists, words, numbers and None, ready for JSON."""
    if is_dataclass(value):
        kept = (
            (one.name, getattr(value, one.name)) for one in fields(value) if one.init and not _is_default(one, value)
        )
        return {TAG: type(value).__name__} | {name: packed(item) for name, item in kept}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, frozenset):
        return sorted(packed(item) for item in value)
    if isinstance(value, tuple):
        return [packed(item) for item in value]
    if value is None or isinstance(value, bool | int | float | str):
        return value
    raise TypeError(f"{type(value).__name__} has no form as a row")


def _is_default(one: Field[Any], value: object) -> bool:
    found = getattr(value, one.name)
    return one.default is not MISSING and found == one.default and type(found) is type(one.default)


class Unpacker:
    """Reads packed values back; works out how to read each type once."""

    def __init__(self) -> None:
        self._known: dict[Any, Reader | None] = {}

    def reader(self, hint: Any) -> Reader | None:
        """How a value of type `hint` is read; None when JSON already gives it as it is."""
        if hint not in self._known:
            self._known[hint] = self._made(hint)
        return self._known[hint]

    def _made(self, hint: Any) -> Reader | None:
        origin, inner = get_origin(hint), get_args(hint)
        if origin in {Union, types.UnionType}:
            return self._either([one for one in inner if one is not type(None)])
        if origin is tuple:
            return self._many(inner[0]) if inner[1:] == (Ellipsis,) else self._fixed(inner)
        if origin is frozenset:
            items = self._many(inner[0])
            return lambda value: frozenset(items(value))
        if isinstance(hint, type) and issubclass(hint, Enum):
            return {member.value: member for member in hint}.__getitem__
        if is_dataclass(hint):
            return self._record(hint)
        if hint in {str, int, float, bool}:
            return None
        raise TypeError(f"{hint} has no form as a row")

    def _many(self, hint: Any) -> Reader:
        read = self.reader(hint)
        return tuple if read is None else lambda value: tuple(map(read, value))

    def _fixed(self, hints: tuple[Any, ...]) -> Reader:
        reads = [self.reader(hint) for hint in hints]
        if not any(reads):
            return tuple
        each = [read or _same for read in reads]
        if len(each) == 2:  # by far the most common, and worth the shorter way
            first, second = each
            return lambda value: (first(value[0]), second(value[1]))
        return lambda value: tuple([read(item) for read, item in zip(each, value, strict=True)])

    def _either(self, hints: list[Any]) -> Reader | None:
        """One of several types or None; several dataclasses are told apart by name, numbers need no telling."""
        if len(hints) == 1:
            read = self.reader(hints[0])
            return None if read is None else lambda value: None if value is None else read(value)
        if not all(is_dataclass(hint) for hint in hints):
            raise TypeError(f"{hints} have no form as a row")
        by_name = {hint.__name__: self._record(hint) for hint in hints}
        return lambda value: None if value is None else by_name[value[TAG]](value)

    def _record(self, made: Any) -> Reader:
        hints = get_type_hints(made)
        reads = [
            (one.name, read) for one in fields(made) if one.init and (read := self.reader(hints[one.name])) is not None
        ]

        def read_record(values: dict[str, Any]) -> Any:
            tag = values.pop(TAG)
            if tag != made.__name__:
                raise ValueError(f"{tag} is not {made.__name__}")
            for name, read in reads:
                if name in values:
                    values[name] = read(values[name])
            return made(**values)

        return read_record


def _same(value: Any) -> Any:
    return value
