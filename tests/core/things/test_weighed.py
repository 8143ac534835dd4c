"""Readings of things that are not filled, and what to mind before lifting what is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.mass.model import ScaleKind
from core.mass.weigh import reading_on
from core.things.fill_cautions import CHEMICALS, CLOSE_IT, GLASS, SPILLS, TIE_IT, fill_cautions
from core.things.model import Closure, Hazard, Thing
from core.things.weighed import known_mass, weighed
from tests.core.mass.examples import SAND, WATER
from tests.dipper import bucket, carrier, coal, stool


def read(thing: Thing, *kg: float) -> Thing:
    return replace(thing, readings=tuple(reading_on(ScaleKind.LUGGAGE, one) for one in kg))


def test_an_agreeing_scale_moves_the_stated_mass() -> None:
    thing = read(stool(), 2.7, 2.7)
    mass = known_mass(thing)
    assert mass is not None
    assert 2.5 < mass.value <= 2.7
    assert mass.u < 0.3


def test_a_scale_far_off_is_said_and_leaves_the_value() -> None:
    found = weighed(read(coal(), 14.0))
    assert found is not None
    assert not found.agrees
    assert found.mass.value == pytest.approx(10.2)


def test_without_readings_the_stated_mass_stands() -> None:
    assert weighed(coal()) is None
    assert known_mass(coal()) == coal().facts.mass
    assert known_mass(carrier()) is None


def test_a_reading_that_cannot_be_one_is_said() -> None:
    broken = replace(coal(), readings=(replace(reading_on(ScaleKind.LUGGAGE, 3.0), without_kg=4.0),))
    found = weighed(broken)
    assert found is not None
    assert "is less than the scale shows without it" in found.sentence
    assert found.mass == coal().facts.mass


def with_closure(thing: Thing, closure: Closure, *hazards: Hazard) -> Thing:
    return replace(thing, facts=replace(thing.facts, closure=closure, hazards=frozenset(hazards)))


def test_water_in_a_closed_container_is_tried_for_leaks() -> None:
    assert fill_cautions(carrier(), WATER, 14.0) == (CLOSE_IT,)
    assert fill_cautions(carrier(), WATER, 0.0) == ()
    assert fill_cautions(carrier(), SAND, 14.0) == ()


def test_open_water_is_a_drowning_hazard() -> None:
    assert fill_cautions(bucket(), WATER, 5.0) == (SPILLS,)
    assert fill_cautions(bucket(), SAND, 5.0) == ()


def test_what_is_tied_and_what_breaks_is_said() -> None:
    assert fill_cautions(with_closure(carrier(), Closure.TIED), SAND, 5.0) == (TIE_IT,)
    assert fill_cautions(with_closure(carrier(), Closure.OPEN, Hazard.GLASS), SAND, 5.0) == (GLASS,)
    assert fill_cautions(with_closure(carrier(), Closure.OPEN, Hazard.HELD_CHEMICALS), SAND, 0.0) == (CHEMICALS,)


def test_a_kind_that_says_how_to_close_it_needs_no_second_sentence() -> None:
    told = replace(carrier(), cautions=("Close the cap tight and tape it.",))
    assert fill_cautions(told, WATER, 14.0) == ("Close the cap tight and tape it.",)
