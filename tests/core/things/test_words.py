"""The plural of a thing's name, and back again."""

from __future__ import annotations

import pytest

from catalog.load import load_catalog
from core.things.words import plural_of, singular


@pytest.mark.parametrize(
    ("name", "plural"),
    [
        ("Brick", "Bricks"),
        ("Storage box", "Storage boxes"),
        ("Park bench", "Park benches"),
        ("Car battery", "Car batteries"),
        ("Hallway", "Hallways"),
        ("Scarf", "Scarves"),
        ("Bag of rice", "Bags of rice"),
        ("Sack of potatoes", "Sacks of potatoes"),
        ("Chest of drawers", "Chests of drawers"),
        ("Glass", "Glasses"),
        ("Foot", "Feet"),
        ("Potato", "Potatoes"),
    ],
)
def test_the_noun_takes_the_plural(name: str, plural: str) -> None:
    assert plural_of(name) == plural


def test_every_kind_of_thing_can_be_found_by_its_plural() -> None:
    for kind in load_catalog().kinds:
        many, one = kind.plural.lower().split(), kind.name.lower().split()
        assert [singular(word) for word in many] == [singular(word) for word in one]
