"""Faults of the checker find their field, and read there without the names of data fields."""

from __future__ import annotations

import pytest

from gui.own.fault_places import placed

KEYS = ("name", "aliases", "typical", "muscles", "demands", "needs", "mass_kg", "fills", "level")
TABLE = {"name": "Gate push", "aliases": ["press-up"]}


@pytest.mark.parametrize(
    ("sentence", "key", "words"),
    [
        (
            "name: “” is refused: String should have at least 2 characters; correct it.",
            "name",
            "Needs at least 2 letters; write more.",
        ),
        (
            "“press-up” already means Push-up; choose another name.",
            "aliases",
            "“press-up” already means Push-up; choose another name.",
        ),
        (
            "“Gate push” is refused: typical must be low, high; change the entry so that it holds.",
            "typical",
            "The usual dose must be low, high; change it.",
        ),
        (
            "It is done on the floor but does not demand floor_transfer; change one of them.",
            "demands",
            "It is done on the floor but does not demand getting down to the floor; change one of them.",
        ),
        (
            "No muscle weighs 1.0; the prime mover must; change one of them.",
            "muscles",
            "No muscle weighs 1.0; the prime mover must; change one of them.",
        ),
        (
            "needs.0.mass share.1: “9.0” is refused: should be less than or equal to 4; correct it.",
            "needs",
            "“9.0” is refused: should be less than or equal to 4; correct it.",
        ),
        (
            "120 kg is more than anyone lifts; check mass_kg.",
            "mass_kg",
            "120 kg is more than anyone lifts; check its mass.",
        ),
        ("Something nobody thought of.", "", "Something nobody thought of."),
    ],
)
def test_a_fault_stands_at_its_field_in_plain_words(sentence: str, key: str, words: str) -> None:
    assert placed([sentence], TABLE, KEYS) == {key: words}


def test_a_fault_of_a_field_that_is_not_shown_is_said_of_the_whole() -> None:
    assert placed(["shape: “x” is refused: odd; correct it."], TABLE, KEYS) == {"": "“x” is refused: odd; correct it."}


def test_several_faults_of_one_field_are_said_together_and_once() -> None:
    twice = ["level: “9” is refused: too high; correct it."] * 2
    assert placed(twice, TABLE, KEYS) == {"level": "“9” is refused: too high; correct it."}
