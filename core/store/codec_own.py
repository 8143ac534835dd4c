"""How own entries of the catalog are written as JSON: their table as an object, so that an export can be read."""

from __future__ import annotations

import math

from core.house.own import OWN_FORM, OwnEntry, OwnKind
from core.store.codec import ID
from core.store.encoding import Codec, one_word, text, unfit, whole
from core.store.encoding_groups import record
from core.store.json_text import from_text, to_text

LONGEST_TABLE = 20_000
GIVEN_APART = ("id", "name")


def _write_table(table: str) -> object:
    return from_text(table, "table")


def _read_table(json_value: object, where: str) -> str:
    if not isinstance(json_value, dict):
        raise unfit(json_value, "is not an object with fields", where)
    for name in GIVEN_APART:
        if name in json_value:
            raise unfit(name, "is given beside the table, not in it", where, "leave it out")
    _check(json_value, where)
    written = to_text(json_value)
    if len(written) > LONGEST_TABLE:
        raise unfit(json_value, "is longer than an entry can be", where, "make it shorter")
    return written


def _check(value: object, where: str) -> None:
    """`InputError` for what an entry cannot hold: text that cannot be shown, numbers that are not finite."""
    if isinstance(value, dict):
        for name, inner in value.items():
            _WORDS.read(name, where)
            _check(inner, f"{where}.{name}")
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            _check(inner, f"{where}[{number}]")
    elif isinstance(value, str):
        _WORDS.read(value, where)
    elif isinstance(value, float) and not math.isfinite(value):
        raise unfit(value, "is not a finite number", where)


_WORDS = text(1000)
TABLE: Codec[str] = Codec(_write_table, _read_table, {"type": "object"})

OWN: Codec[OwnEntry] = record(
    "own",
    OwnEntry,
    {
        "kind": one_word(OwnKind),
        "id": ID,
        "name": text(60, shortest=1),
        "form": whole(1, OWN_FORM),
        "table": TABLE,
    },
)
