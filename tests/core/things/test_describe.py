"""A thing in three lines, and its mass from empty to full."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from catalog.materials import load_materials
from core.mass.model import FullLevel, ScaleKind
from core.mass.weigh import estimate, reading_on
from core.quantity.display import UnitSystem
from core.things.describe import Trust, card, describe
from core.things.model import RatingOrigin, Thing
from core.things.quick_add import ReadThing, make_thing, read_things
from core.things.weighed import known_mass
from core.things.weight import mass_range
from tests.core.things.examples import checked, owned, shipped

MATERIALS = {material.id: material for material in load_materials()}
WATER = (MATERIALS["water"],)
METRIC, US = UnitSystem.METRIC, UnitSystem.US


def typed(text: str) -> Thing:
    (found,) = read_things(text, tuple(shipped().values()))
    assert isinstance(found, ReadThing)
    return make_thing(found, "it")


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("2 water carriers, 25 L", ("1.10 – 26.1 kg each", "any fill, 250 mL cups", "estimated ± 2.6 %")),
        ("6 bean tins", ("0.46 kg each", "no handle, fixed mass", "label")),
        ("daypack 28 L", ("0.69 + up to 16.8 kg", "holds other things", "estimated ± 2.1 %")),
        ("lock steps, 7 at 19 cm", ("rise 19 cm · 7 steps", "outdoors", "built to walk on")),
        ("folding stool", ("44 cm high", "folding", "not for stepping")),
        ("stern beam 118 cm high rated 150 kg", ("118 cm high", "you rated it 150 kg")),
        ("pull-up bar", ("200 cm high", "rated 100 kg")),
        ("dining chair", ("44 cm high", "no load rating")),
        ("handrail", ("90 cm high", "built in")),
        ("watering can", ("0.60 – 10.6 kg", "water only, 250 mL cups", "estimated ± 4.5 %")),
        ("hallway 8 m", ("8 m · 6 m²", "indoors", "as you say")),
        ("towel", ("140 cm long",)),
        ("wall", ("240 cm high",)),
    ],
)
def test_a_card_says_the_most_useful_in_three_lines(text: str, lines: tuple[str, ...]) -> None:
    assert describe(typed(text), METRIC, WATER) == lines


def test_a_card_speaks_us_units() -> None:
    assert describe(typed("2 water carriers, 25 L"), US, WATER)[:2] == (
        "2.43 – 57.5 lb each",
        "any fill, 8.5 fl oz cups",
    )
    assert describe(typed("stairs, 12 steps"), US)[0] == "rise 7.5 in · 12 steps"
    assert describe(typed("garden 40 m2"), US)[0] == "13 yd · 431 sq ft"
    assert describe(typed("beam rated 150 kg"), US)[1] == "you rated it 331 lb"


def test_without_fills_at_hand_a_container_tells_its_capacity() -> None:
    assert describe(owned("water_carrier"), METRIC)[0] == "1.10 kg empty, holds 25.0 L"


def test_a_weighed_thing_says_when_and_how_well() -> None:
    reading = reading_on(ScaleKind.DIRECT, 10.3, date=datetime.date(2026, 11, 3))
    sack = replace(owned("coal_bag"), readings=(reading,))
    shown = card(sack, METRIC)
    assert (shown.standing, shown.trust) == ("weighed 3 Nov 2026", Trust.WEIGHED)
    assert shown.size.startswith("10.1")
    assert "±" in shown.size


def test_an_own_check_is_shown_with_its_date() -> None:
    step = replace(owned("plastic_step"), own_check=checked(95))
    assert card(step, METRIC).standing == "your check 3 Nov 2026: 95 kg"
    assert card(step, METRIC).trust is Trust.CHECKED


def test_a_building_needs_no_figure_and_an_unmeasured_height_says_so() -> None:
    stairs = owned("stairs")
    assert stairs.facts.rating_origin is RatingOrigin.BUILDING
    assert card(stairs, METRIC).trust is Trust.BUILT
    stool = replace(owned("stool"), facts=replace(owned("stool").facts, surface_cm=None))
    assert card(stool, METRIC).size == "height not known"


@pytest.mark.parametrize("kind_id", sorted(shipped()))
@pytest.mark.parametrize("system", UnitSystem)
def test_every_kind_has_a_card(kind_id: str, system: UnitSystem) -> None:
    lines = describe(owned(kind_id, count=2), system, MATERIALS.values())
    assert 1 <= len(lines) <= 3
    assert all(0 < len(line) <= 40 for line in lines), lines


def test_the_range_goes_from_empty_to_full_of_the_densest_fill_at_hand() -> None:
    carrier = owned("water_carrier")
    found = mass_range(carrier, (MATERIALS["water"], MATERIALS["sand_dry"], MATERIALS["cement"]))
    assert found is not None
    assert found.material_id == "sand_dry"
    assert carrier.facts.container is not None
    assert found.low == carrier.facts.container.tare_kg
    assert found.high == estimate(carrier.facts.container, MATERIALS["sand_dry"], FullLevel()).mass


def test_a_fixed_piece_has_one_mass_and_a_bag_goes_up_to_its_limit() -> None:
    brick = mass_range(owned("brick"), WATER)
    assert brick is not None
    assert brick.low == brick.high
    bag = mass_range(owned("backpack"), WATER)
    assert bag is not None
    assert bag.high.value == pytest.approx(bag.low.value + 15.0)


def test_a_range_without_a_fill_that_fits_stays_empty_and_without_a_mass_is_unknown() -> None:
    carrier = mass_range(owned("water_carrier"), (MATERIALS["coal_house"],))
    assert carrier is not None
    assert (carrier.low, carrier.material_id) == (carrier.high, None)
    assert mass_range(owned("stairs"), WATER) is None


def test_a_weighing_sharpens_the_mass_of_a_piece() -> None:
    label = known_mass(owned("coal_bag"))
    sack = replace(owned("coal_bag"), readings=(reading_on(ScaleKind.LUGGAGE, 10.2),))
    known = known_mass(sack)
    assert label is not None
    assert known is not None
    assert label.value < known.value < 10.2
    assert known.u < label.u


def test_weighings_of_a_filled_container_improve_its_range() -> None:
    carrier = owned("water_carrier")
    full = replace(carrier, readings=(reading_on(ScaleKind.LUGGAGE, 26.6, at_level=FullLevel()),))
    before, after = mass_range(carrier, WATER), mass_range(full, WATER)
    assert before is not None
    assert after is not None
    assert after.high.u < before.high.u
    assert before.high.value < after.high.value < 26.6
