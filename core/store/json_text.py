"""JSON as text, and back with care: bounded before it is parsed, and nothing doubtful is let through."""

from __future__ import annotations

import json

from core.errors import InputError

LONGEST = 20 * 1024 * 1024
MOST_GROUPS = 500_000
MOST_COMMAS = 800_000
"""Bounds on what a text can unfold to in memory; sixty thousand logged sets stay below four fifths of them."""
WAY_OUT = "use a file as it was exported"


def to_text(json_value: object) -> str:
    """JSON as compact text, fields sorted, so that equal values are equal text."""
    return json.dumps(json_value, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"))


def from_text(written: str, where: str, *, bounded: bool = True) -> object:
    """JSON from text; `InputError` when it is too much, is no JSON, gives a field twice or holds NaN or Infinity."""
    if bounded:
        _check_bounds(written, where)
    try:
        return json.loads(written, object_pairs_hook=_single_fields, parse_constant=_refuse_constant)
    except (ValueError, RecursionError) as fault:
        raise InputError(written[:200], f"is not readable as JSON ({fault})", WAY_OUT, where=where) from fault


def _check_bounds(written: str, where: str) -> None:
    groups = written.count("[") + written.count("{")
    if len(written) > LONGEST or groups > MOST_GROUPS or written.count(",") > MOST_COMMAS:
        raise InputError(f"{len(written)} characters", "hold more than this program reads", WAY_OUT, where=where)


def _single_fields(pairs: list[tuple[str, object]]) -> dict[str, object]:
    fields = dict(pairs)
    if len(fields) != len(pairs):
        raise ValueError("a field is given twice")
    return fields


def _refuse_constant(name: str) -> float:
    raise ValueError(f"{name} is not a number")
