"""What a person pours with: read as typed, counted in full measures and cups."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.loads.measures import Measure, Measured, cup_of, measured_out, measures_of, read_measure
from core.quantity import Measured as Quantity
from core.things.model import Hazard, Thing
from tests.dipper import bucket, carrier, dipper

HOUSE = dipper()


def small(litres: float, name: str, **facts: object) -> Thing:
    thing = bucket()
    assert thing.facts.container is not None
    container = replace(thing.facts.container, nominal_l=Quantity(litres), brimful_l=Quantity(litres * 1.04))
    changed = replace(thing.facts, container=container, **facts)  # type: ignore[arg-type]  # fields under test
    return replace(thing, id=name, name=name, facts=changed)


@pytest.mark.parametrize(
    ("typed", "name", "litres"),
    [
        ("", "cup", 0.25),
        ("cup", "cup", 0.25),
        ("ladle 120 mL", "ladle", 0.12),
        ("0.5 L bottle", "bottle", 0.5),
        ("100 ml", "measure", 0.1),
        ("Jar", "Jar", 0.7),
        ("8 fl oz", "measure", 0.2366),
    ],
)
def test_a_measure_is_read_as_typed(typed: str, name: str, litres: float) -> None:
    home = replace(HOUSE, things=(*HOUSE.things, small(0.7, "Jar")))
    found = read_measure(typed, home, carrier())
    assert found.name == name
    assert found.litres == pytest.approx(litres, abs=1e-4)


@pytest.mark.parametrize(
    ("typed", "rule"),
    [("spoon", "is nothing to pour with here"), ("bath 80 L", "is not a size to pour with"), ("1 ml", "is not a size")],
)
def test_what_is_no_measure_is_refused(typed: str, rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        read_measure(typed, HOUSE, carrier())


def test_small_vessels_of_the_house_are_offered_but_not_the_one_that_is_filled() -> None:
    things = (small(0.7, "Jar"), small(0.5, "Flask"), small(8.0, "Pail"))
    spoilt = small(1.0, "Can", hazards=frozenset({Hazard.HELD_CHEMICALS}))
    home = replace(HOUSE, things=(*HOUSE.things, *things, spoilt))
    assert [one.name for one in measures_of(home, carrier())] == ["cup", "Flask", "Jar"]
    assert [one.name for one in measures_of(home, things[0])] == ["cup", "Flask"]


@pytest.mark.parametrize(
    ("volume_l", "litres", "measures", "cups"),
    [(10.9, 0.25, 44, 0), (10.9, 1.5, 7, 2), (3.0, 1.5, 2, 0), (2.9, 1.5, 2, 0), (0.3, 1.5, 0, 1), (10.9, 0.12, 91, 0)],
)
def test_a_volume_is_counted_in_full_measures_and_cups(
    volume_l: float, litres: float, measures: int, cups: int
) -> None:
    assert measured_out(volume_l, Measure(name="x", litres=litres), 0.25) == Measured(measures=measures, cups=cups)


@given(volume_l=st.floats(0, 30), litres=st.floats(0.05, 5))
def test_what_is_counted_is_never_more_than_half_a_cup_off(volume_l: float, litres: float) -> None:
    out = measured_out(volume_l, Measure(name="x", litres=litres), 0.25)
    assert out.cups == 0 or litres > 0.25
    assert abs(out.measures * litres + out.cups * 0.25 - volume_l) <= 0.125 + 1e-9


def test_the_cup_is_that_of_the_house() -> None:
    assert cup_of(replace(HOUSE, cup_l=0.3)) == Measure(name="cup", litres=0.3)
