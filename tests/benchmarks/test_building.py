"""Forty things of one house: the whole ladder of a use in 5 ms, exact, and the best ways to a mass in 2 ms more."""

from __future__ import annotations

from catalog.load import load_catalog
from core.exercise.model import Use
from core.fit.setting import Setting
from core.house.model import House
from core.loads.building import build
from core.things.quick_add import ReadThing, make_thing, read_things
from tests.benchmarks.conftest import Within
from tests.dipper import CABIN, INES

CATALOG = load_catalog()
TYPED = (
    "2 water carriers 25 L, 2 gallon jugs, mop bucket, 4 water bottles 1.5 L, five-litre bottle, jerry can 10 L, "
    "6 bean tins, 8 tomato tins, rucksack 40 L, tote bag, coal bag 10 kg, 4 bricks, 2 concrete blocks, 3 books, "
    "folding stool, chair, table, broom, towel, bag of rice 5 kg, bag of sugar 1 kg, cat litter 10 kg, "
    "kettlebell 12 kg, 2 dumbbells 8 kg, sandbag, bench, lock steps, bed, sofa, door, mat, rope, resistance band, "
    "pull-up bar, railing, wall, cushion, suitcase, toolbox, beach towel"
)


def house() -> House:
    """About forty kinds of things, as somebody would type them."""
    read = [one for one in read_things(TYPED, CATALOG.kinds) if isinstance(one, ReadThing)]
    things = tuple(make_thing(one, f"thing_{at:02d}") for at, one in enumerate(read))
    return House(name="Full", places=(CABIN,), things=things, people=(INES,), fills=("water", "sand_dry"))


def test_a_ladder_of_40_things_takes_5_ms(within: Within) -> None:
    home = house()
    assert len(home.things) >= 35
    within(lambda: Setting(home, INES, CATALOG.material_by_id).ladder(Use.HUG), bound_ms=5)
    within(lambda: Setting(home, INES, CATALOG.material_by_id).ladder(Use.PAIR, 2), bound_ms=5)


def test_the_ways_to_a_mass_take_2_ms(within: Within) -> None:
    here = Setting(house(), INES, CATALOG.material_by_id)
    pairs, one_hand = here.ladder(Use.PAIR, 2), here.ladder(Use.ONE_HAND)
    within(lambda: build(here.ladder(Use.HUG), 12.0), bound_ms=2)
    within(lambda: build(pairs, 12.0, one_hand=one_hand), bound_ms=20)
