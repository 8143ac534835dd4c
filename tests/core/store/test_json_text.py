"""JSON from outside is bounded before it is parsed, and nothing doubtful in it is let through."""

from __future__ import annotations

import pytest

from core.errors import InputError
from core.store import json_text
from core.store.json_text import from_text, to_text


def test_equal_values_are_equal_text() -> None:
    assert to_text({"b": 1, "a": "Fährte"}) == to_text({"a": "Fährte", "b": 1}) == '{"a":"Fährte","b":1}'


@pytest.mark.parametrize(
    "written",
    [
        "",
        "{",
        "nonsense",
        '{"a": 1, "a": 2}',
        '{"a": NaN}',
        '{"a": -Infinity}',
        "[" * 200_000,
        '{"a":' * 100_000,
        "1" * 5000,
        '"\x00"',
    ],
    ids=lambda written: repr(written[:12]),
)
def test_text_that_is_no_plain_json_is_refused(written: str) -> None:
    with pytest.raises(InputError, match="JSON"):
        from_text(written, "file")


@pytest.mark.parametrize(
    "written",
    [
        '"' + "x" * json_text.LONGEST + '"',
        "[" + "[]," * json_text.MOST_GROUPS + "0]",
        "[" + "1," * (json_text.MOST_COMMAS + 1) + "1]",
    ],
    ids=["length", "lists", "entries"],
)
def test_text_that_would_unfold_to_too_much_is_refused_unparsed(written: str) -> None:
    with pytest.raises(InputError, match="more than this program reads"):
        from_text(written, "file")


def test_a_number_that_is_not_finite_is_never_written() -> None:
    with pytest.raises(ValueError, match="not JSON compliant"):
        to_text(float("nan"))
