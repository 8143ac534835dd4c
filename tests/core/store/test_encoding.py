"""What each small encoding takes and refuses."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from core.errors import InputError
from core.exercise.model import Demand
from core.store.encoding import DATE, FLAG, TIME, Codec, number, one_word, text, whole
from core.store.encoding_groups import many, maybe, pair_of, word_set
from core.store.values import Theme

NAME = text(8, shortest=1)


@pytest.mark.parametrize(
    ("one", "written", "value"),
    [
        (NAME, "Coal bag", "Coal bag"),
        (NAME, "a\u00a0b", "a\u00a0b"),
        (text(9, lines=True), "a\nb", "a\nb"),
        (number(0, 5), 5, 5.0),
        (whole(0, 5), 5, 5),
        (FLAG, True, True),
        (DATE, "2026-05-31", datetime.date(2026, 5, 31)),
        (TIME, "22:30", datetime.time(22, 30)),
        (one_word(Theme), "dark", Theme.DARK),
        (maybe(FLAG), None, None),
        (many(FLAG), [True, False], (True, False)),
        (word_set(Demand), ["impact", "hanging"], frozenset({Demand.HANGING, Demand.IMPACT})),
        (pair_of(number(0, 1), number(0, 1)), [0.25, 1], (0.25, 1.0)),
    ],
)
def test_a_fitting_value_is_read(one: Codec[Any], written: object, value: object) -> None:
    assert one.read(written, "") == value


@pytest.mark.parametrize(
    ("one", "written", "words"),
    [
        (NAME, 7, "is not text"),
        (NAME, "", "1 to 8 characters"),
        (NAME, "123456789", "1 to 8 characters"),
        (NAME, "a\nb", "cannot be shown"),
        (NAME, "a\x07b", "cannot be shown"),
        (NAME, "a\ud800b", "cannot be shown"),
        (NAME, "a\u2028b", "cannot be shown"),
        (NAME, "a\u202eb", "cannot be shown"),
        (number(0, 5), "5", "is not a number"),
        (number(0, 5), True, "is not a number"),
        (number(0, 5), 5.1, "is not from 0 to 5"),
        (number(0, 5), float("nan"), "is not from 0 to 5"),
        (number(0, 5), 10**400, "is not from 0 to 5"),
        (whole(0, 5), 4.0, "is not a whole number"),
        (whole(0, 5), False, "is not a whole number"),
        (whole(0, 5), 6, "is not from 0 to 5"),
        (FLAG, 1, "neither true nor false"),
        (DATE, "20260531", "is not a date"),
        (DATE, "2026-W22-7", "is not a date"),
        (DATE, "2026-02-30", "is not a date"),
        (DATE, 20260531, "is not a date"),
        (TIME, "22:30:15", "is not a time"),
        (TIME, "22:30+01:00", "is not a time"),
        (TIME, "25:00", "is not a time"),
        (one_word(Theme), "Dark", "is none of system, light, dark"),
        (one_word(Theme), ["dark"], "is none of"),
        (many(FLAG, 2), [True] * 3, "more than the 2"),
        (many(FLAG), "true", "is not a list"),
        (word_set(Demand), ["impact", "impact"], "lists a word twice"),
        (pair_of(number(0, 1), number(0, 1)), [0.5], "is not a pair"),
    ],
)
def test_anything_else_is_refused_with_its_rule(one: Codec[Any], written: object, words: str) -> None:
    with pytest.raises(InputError, match=words):
        one.read(written, "field")
