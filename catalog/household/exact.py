"""A thing written field by field, for what words cannot say: the record's own form, without the fields that are empty.

TOML has no null, so empty fields are left out on writing and put back, from the form's schema, on reading.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from core.errors import InputError
from core.store.codec import THING
from core.things.model import Thing

DEEPEST = 12


def exact_table(thing: Thing) -> dict[str, Any]:
    """The thing as a TOML table; `InputError` for a thing the record would not keep either."""
    table = _without_nulls(THING.checked(thing))
    if not isinstance(table, dict):
        raise TypeError("a thing is written as an object")
    return table


def thing_from_table(table: dict[str, Any], thing_id: str) -> Thing:
    """The thing a table holds, under this id; `InputError` names the first field that does not fit."""
    return THING.read(_with_nulls({**table, "id": thing_id}, THING.schema, 0), "exact")


def _without_nulls(value: object) -> object:
    if isinstance(value, dict):
        return {key: _without_nulls(item) for key, item in value.items() if item is not None}
    if isinstance(value, list):
        return [_without_nulls(item) for item in value]
    return value


def _with_nulls(value: object, schema: Mapping[str, Any], depth: int) -> object:
    if depth > DEEPEST:
        raise InputError("exact", "is nested deeper than a thing can be", "write the thing in words")
    if "anyOf" in schema:
        return _with_nulls(value, schema["anyOf"][0], depth)
    if "oneOf" in schema:
        tag = value.get("is") if isinstance(value, dict) else None
        fitting = (one for one in schema["oneOf"] if one["properties"]["is"]["const"] == tag)
        return _with_nulls(value, next(fitting, {}), depth)
    if isinstance(value, dict):
        fields = schema.get("properties", {})
        missing = {name: None for name, inner in fields.items() if name not in value and "anyOf" in inner}
        filled = {key: _with_nulls(item, fields.get(key, {}), depth + 1) for key, item in value.items()}
        return {**filled, **missing}
    if isinstance(value, list):
        return [_with_nulls(item, schema.get("items", {}), depth + 1) for item in value]
    return value
