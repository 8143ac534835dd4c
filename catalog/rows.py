"""Frozen dataclasses as plain JSON values and back, driven by their type hints, for fast loading of checked data.

A dataclass is an object with its class name and the fields that differ from their defaults; an enum member is its
word; a tuple or a set is a list. Dataclasses and lists of pairs stand once in a pool and are named by their number, so
that what many entries share is read once. What does not fit the hints raises `ValueError`, `TypeError`, `KeyError` or
`IndexError`.
"""

from __future__ import annotations

import sys
import types
from collections.abc import Callable
from dataclasses import Field, fields, is_dataclass
from enum import Enum
from typing import Any, Union, get_args, get_origin, get_type_hints

Reader = Callable[[Any], Any]
TAG = "is"
PLAIN = {"str": str, "int": int, "float": float, "bool": bool}
AS_THEY_ARE = frozenset({*PLAIN.values(), type(None)})


class Packer:
    """Turns values into lists, words and numbers ready for JSON, what is shared into `pool`."""

    def __init__(self) -> None:
        self.pool: list[Any] = []
        self._places: dict[tuple[type, Any], int] = {}
        self._fields: dict[type, tuple[Field[Any], ...]] = {}

    def packed(self, value: Any) -> Any:
        """`value` in plain form; a number in place of what went to the pool."""
        kind = type(value)
        if kind in AS_THEY_ARE:
            return value
        if kind is tuple:
            items = [self.packed(item) for item in value]
            return self._place(value, items) if value and type(value[0]) is tuple else items
        if issubclass(kind, Enum):
            return value.value
        if kind is frozenset:
            return sorted(self.packed(item) for item in value)
        if is_dataclass(kind):
            kept = (one for one in self._fields_of(kind) if not _is_default(one, value))
            row = {one.name: self.packed(getattr(value, one.name)) for one in kept}
            return self._place(value, {TAG: kind.__name__} | row)
        raise TypeError(f"{kind.__name__} has no form as a row")

    def _fields_of(self, kind: Any) -> tuple[Field[Any], ...]:
        if kind not in self._fields:
            self._fields[kind] = tuple(one for one in fields(kind) if one.init)
        return self._fields[kind]

    def _place(self, value: Any, plain: Any) -> int:
        key = (type(value), value)
        if key not in self._places:
            self._places[key] = len(self.pool)
            self.pool.append(plain)
        return self._places[key]


def _is_default(one: Field[Any], value: object) -> bool:
    found = getattr(value, one.name)
    return found is one.default or (type(found) is type(one.default) and found == one.default)


class Unpacker:
    """Reads packed values back out of their pool; works out how to read each type once."""

    def __init__(self, pool: list[Any]) -> None:
        self._pool = pool
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
            return self._pooled(self._record(hint))
        if hint in PLAIN.values():
            return None
        raise TypeError(f"{hint} has no form as a row")

    def _pooled(self, read: Reader) -> Reader:
        """What a number stands for, read once; what stands for itself is read as it is."""
        done: dict[int, Any] = {}
        pool = self._pool

        def read_pooled(value: Any) -> Any:
            if type(value) is not int:
                return read(value)
            if value not in done:
                done[value] = read(pool[value])
            return done[value]

        return read_pooled

    def _many(self, hint: Any) -> Reader:
        read = self.reader(hint)
        if read is None:
            return tuple
        if get_origin(hint) is tuple:
            return self._pooled(lambda value: tuple(map(read, value)))
        return lambda value: tuple(map(read, value))

    def _fixed(self, hints: tuple[Any, ...]) -> Reader:
        reads = [self.reader(hint) for hint in hints]
        if not any(reads):
            return tuple
        each = [read or _same for read in reads]
        return lambda value: tuple([read(item) for read, item in zip(each, value, strict=True)])

    def _either(self, hints: list[Any]) -> Reader | None:
        """One of several types or None; several dataclasses are told apart by name."""
        if len(hints) == 1:
            read = self.reader(hints[0])
            return None if read is None else lambda value: None if value is None else read(value)
        if not all(is_dataclass(hint) for hint in hints):
            raise TypeError(f"{hints} have no form as a row")
        by_name = {hint.__name__: self._record(hint) for hint in hints}
        read_one = self._pooled(lambda value: by_name[value[TAG]](value))
        return lambda value: None if value is None else read_one(value)

    def _record(self, made: Any) -> Reader:
        hints = _hints(made)
        reads = [(name, read) for name, hint in hints.items() if (read := self.reader(hint)) is not None]

        def read_record(values: dict[str, Any]) -> Any:
            if type(values) is not dict:
                raise TypeError(f"{made.__name__} is written as an object")
            tag = values.pop(TAG)
            if tag != made.__name__:
                raise ValueError(f"{tag} is not {made.__name__}")
            for name, read in reads:
                if name in values:
                    values[name] = read(values[name])
            return made(**values)

        return read_record


def _hints(made: Any) -> dict[str, Any]:
    """The types of the fields a dataclass is made with; plain ones without the cost of evaluating their names."""
    written = {one.name: one.type for one in fields(made) if one.init}
    other = {name: hint for name, hint in written.items() if hint not in PLAIN}
    holder = types.SimpleNamespace(__annotations__=other)
    found = get_type_hints(holder, vars(sys.modules[made.__module__]))
    return {name: found.get(name, PLAIN.get(str(hint))) for name, hint in written.items()}


def _same(value: Any) -> Any:
    return value
