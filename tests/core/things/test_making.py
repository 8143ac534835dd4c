"""Facts with what the owner stated: scaled vessels and bags, printed masses, measured steps."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mass.tins import estimate_tin
from core.quantity import Origin
from core.things.amounts import Changes
from core.things.making import with_changes
from core.things.model import Hazard, RatingOrigin
from core.things.quick_add import ReadThing, make_thing
from tests.core.things.examples import shipped


def test_a_thing_takes_its_kinds_icon_fills_and_cautions() -> None:
    kind = shipped()["water_carrier"]
    thing = make_thing(ReadThing(kind=kind, count=2, name="Water carrier", changes=Changes()), "carrier")
    assert (thing.id, thing.kind_id, thing.count, thing.name) == ("carrier", "water_carrier", 2, "Water carrier")
    assert (thing.facts, thing.icon, thing.fills, thing.cautions) == (kind.facts, kind.icon, kind.fills, kind.cautions)


@given(st.floats(5, 60))
def test_a_vessel_keeps_its_proportions_at_another_capacity(litres: float) -> None:
    usual = shipped()["water_carrier"].facts
    facts = with_changes(usual, Changes(capacity_l=litres))
    before, after = usual.container, facts.container
    assert before is not None
    assert after is not None
    assert after.nominal_l.value == pytest.approx(litres)
    assert after.brimful_l.value / litres == pytest.approx(before.brimful_l.value / before.nominal_l.value)
    assert after.shape.full_volume_l == pytest.approx(after.brimful_l.value)
    ratio = litres / before.nominal_l.value
    assert after.tare_kg.value == pytest.approx(before.tare_kg.value * ratio ** (2 / 3))
    assert facts.height_cm == pytest.approx(usual.height_cm * math.cbrt(ratio))


def test_a_bag_scales_its_room_its_limit_and_its_own_mass() -> None:
    usual = shipped()["daypack"].facts
    facts = with_changes(usual, Changes(capacity_l=28.0))
    assert facts.hold is not None
    assert facts.hold.volume_l == 28.0
    assert facts.hold.limit_kg == pytest.approx(12.0 * 28 / 20)
    assert facts.mass is not None
    assert facts.mass.value == pytest.approx(0.55 * 1.4 ** (2 / 3))


def test_a_large_bag_never_takes_more_than_forty_kilograms_unless_stated() -> None:
    usual = shipped()["rucksack"].facts
    large = with_changes(usual, Changes(capacity_l=120.0)).hold
    assert large is not None
    assert large.limit_kg == 40.0
    stated = with_changes(usual, Changes(rating_kg=45.0)).hold
    assert stated is not None
    assert stated.limit_kg == 45.0


def test_a_tin_weighs_its_label_and_its_tin() -> None:
    facts = with_changes(shipped()["tin_food"].facts, Changes(mass_kg=0.8))
    assert facts.mass is not None
    assert facts.mass.value == pytest.approx(estimate_tin(net_kg=0.8).mass.value)
    assert (facts.label_kg, facts.mass.origin) == (0.8, Origin.LABEL)


def test_a_sack_weighs_its_label_and_its_bag() -> None:
    facts = with_changes(shipped()["coal_bag"].facts, Changes(mass_kg=20.0))
    assert facts.mass is not None
    assert facts.mass.value == pytest.approx(20.2)
    assert facts.label_kg == 20.0


def test_a_dumbbell_weighs_what_is_printed_on_it() -> None:
    facts = with_changes(shipped()["dumbbell"].facts, Changes(mass_kg=20.0))
    assert facts.mass is not None
    assert (facts.mass.value, facts.mass.origin, facts.label_kg) == (20.0, Origin.LABEL, None)


def test_steps_and_rise_change_a_flight_one_by_one() -> None:
    usual = shipped()["lock_steps"].facts
    both = with_changes(usual, Changes(steps=5, rise_cm=21.0)).flight
    assert both is not None
    assert (both.count, both.rise_cm) == (5, 21.0)
    one = with_changes(usual, Changes(rise_cm=21.0)).flight
    assert one is not None
    assert (one.count, one.rise_cm) == (7, 21.0)


def test_the_height_of_a_stool_is_its_seat_and_that_of_a_chair_only_the_seat() -> None:
    stool = with_changes(shipped()["stool"].facts, Changes(height_cm=40.0))
    assert (stool.surface_cm, stool.height_cm) == (40.0, 40.0)
    chair = with_changes(shipped()["dining_chair"].facts, Changes(height_cm=46.0))
    assert (chair.surface_cm, chair.height_cm) == (46.0, 88.0)


def test_a_typed_rating_is_the_label_of_a_step_and_the_owners_word_for_a_beam() -> None:
    step = with_changes(shipped()["exercise_step"].facts, Changes(rating_kg=150.0))
    assert (step.rating_kg, step.rating_origin) == (150.0, RatingOrigin.LABEL)
    beam = with_changes(shipped()["sturdy_beam"].facts, Changes(rating_kg=150.0))
    assert (beam.rating_kg, beam.rating_origin) == (150.0, RatingOrigin.OWN_CHECK)


def test_stated_sides_put_the_longer_one_first() -> None:
    facts = with_changes(shipped()["coal_bag"].facts, Changes(sides_cm=(38.0, 62.0, 12.0)))
    assert (facts.length_cm, facts.width_cm, facts.height_cm) == (62.0, 38.0, 12.0)
    flat = with_changes(shipped()["towel"].facts, Changes(sides_cm=(50.0, 90.0)))
    assert (flat.length_cm, flat.width_cm) == (90.0, 50.0)


def test_a_short_rope_is_not_wider_than_long() -> None:
    facts = with_changes(shipped()["rope"].facts, Changes(length_cm=1.5))
    assert facts.width_cm <= facts.length_cm


def test_ways_areas_and_hazards_are_taken_over() -> None:
    facts = with_changes(
        shipped()["garden"].facts, Changes(route_m=9.0, area_m2=25.0, hazards=frozenset({Hazard.TIPS}))
    )
    assert (facts.route_m, facts.area_m2) == (9.0, 25.0)
    assert facts.hazards == shipped()["garden"].facts.hazards | {Hazard.TIPS}


def test_a_capacity_means_nothing_for_a_brick() -> None:
    facts = shipped()["brick"].facts
    assert with_changes(facts, Changes(capacity_l=3.0)) == facts
