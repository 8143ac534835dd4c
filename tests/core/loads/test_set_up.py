"""The steps of a set-up start from what is in the thing now and end at the recipe."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.materials import load_materials
from core.exercise.model import Use
from core.house.model import House
from core.loads.model import Part, Recipe, Rung
from core.loads.set_up import fills_of, steps_of, time_words
from core.quantity import Measured
from core.quantity.display import UnitSystem
from core.things.model import Fill
from tests.dipper import dipper

MATERIALS = {material.id: material for material in load_materials()}


def part(thing_id: str, name: str, litres: float | None = None, count: int = 1) -> Part:
    material_id, material_name = (None, "") if litres is None else ("water", "Water")
    return Part(
        thing_id=thing_id,
        name=name,
        count=count,
        each=Measured(1.0),
        material_id=material_id,
        material_name=material_name,
        fill_l=litres or 0.0,
    )


def rung(*parts: Part, packed: bool = False) -> Rung:
    return Rung(use=Use.HUG, mass=Measured(1.0), recipe=Recipe(parts=parts, packed=packed), set_up_s=60)


def house(now: Fill | None) -> House:
    plain = dipper()
    return replace(plain, things=(replace(plain.thing("carrier"), fill=now), *plain.things[1:]))


def said(made: Rung, now: Fill | None = None, system: UnitSystem = UnitSystem.METRIC) -> list[str]:
    return [step.sentence for step in steps_of(made, house(now), MATERIALS, system=system)]


def inside(litres: float, material_id: str = "water") -> Fill:
    return Fill(material_id=material_id, volume_l=litres)


@pytest.mark.parametrize(
    ("now", "litres", "words"),
    [
        (None, 11.0, "pour in 11.0 L water (44 × 250 mL), up to 16.7 cm"),
        (inside(8.0), 11.0, "pour in 3.00 L more water (12 × 250 mL), up to 16.7 cm"),
        (inside(20.0), 11.0, "pour off 9.00 L water (36 × 250 mL), up to 16.7 cm"),
        (inside(11.0), 11.0, "it stays as it is"),
        (inside(3.0, "sand_dry"), 11.0, "empty it, then pour in 11.0 L water (44 × 250 mL), up to 16.7 cm"),
        (inside(3.0), 0.0, "empty it"),
        (None, 0.0, "take it empty"),
        (None, 11.1, "pour in 11.1 L water, up to 16.8 cm"),
    ],
)
def test_a_step_says_what_changes(now: Fill | None, litres: float, words: str) -> None:
    assert said(rung(part("carrier", "Carrier", litres)), now) == [f"Carrier: {words}."]


def test_two_alike_are_filled_each() -> None:
    assert said(rung(part("carrier", "Carrier", 4.0, count=2)))[0].startswith("2 × Carrier: pour in 4.00 L water each")


def test_us_units_are_poured_in_us_units() -> None:
    sentence = said(rung(part("carrier", "Carrier", 11.0)), system=UnitSystem.US)[0]
    assert sentence == "Carrier: pour in 2.91 gal water (44 × 8.5 fl oz), up to 6.6 in."


def test_the_bag_comes_last_with_what_goes_in() -> None:
    made = rung(
        part("daypack", "Daypack"), part("tins", "Bean tin", count=3), part("carrier", "Carrier", 2.0), packed=True
    )
    assert said(made)[1] == "Daypack: put in 3 × Bean tin, Carrier."
    assert said(rung(part("daypack", "Daypack"), packed=True)) == ["Daypack: take it empty."]


def test_a_solid_is_taken_as_it_is() -> None:
    (step,) = steps_of(rung(part("coal", "Coal bag")), house(None), MATERIALS)
    assert (step.sentence, step.ready) == ("Coal bag: take it as it is.", True)


def test_the_fills_to_keep_are_those_of_the_recipe() -> None:
    made = rung(part("daypack", "Daypack"), part("tins", "Bean tin"), part("carrier", "Carrier", 2.0), packed=True)
    assert fills_of(made) == (("carrier", Fill(material_id="water", volume_l=2.0)),)
    assert fills_of(rung(part("carrier", "Carrier", 0.0))) == (("carrier", None),)


@pytest.mark.parametrize(("seconds", "words"), [(20, "under a minute"), (60, "about 1 min"), (200, "about 3 min")])
def test_a_time_is_told_as_roughly_as_it_is_known(seconds: float, words: str) -> None:
    assert time_words(seconds) == words
