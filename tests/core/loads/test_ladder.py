"""The ladder of whole small houses agrees with brute force, and every rung's recipe makes its mass."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.materials import load_materials
from core.exercise.model import Use
from core.fit.setting import Setting
from core.house.model import House, Place
from core.loads.packing import can_be_packed, choices_for, pack_volume_l, sorts_allowed
from core.loads.pieces import GRAIN_KG, HEAVIEST_KG
from core.mass.model import Container, CupsLevel, StraightRound, VolumeLevel, shape_for_capacity
from core.mass.weigh import estimate
from core.quantity import Measured
from core.things.affordance import Grade, grade_use
from core.things.model import Closure, Facts, Fill, Form, Handle, Hold, Rigidity, Thing
from tests.dipper import INES, dipper

MATERIALS = {material.id: material for material in load_materials()}
SHED = Place(id="shed", name="Shed", floor_m2=9.0)
USES = (Use.HUG, Use.ONE_HAND, Use.PAIR, Use.BACK, Use.OVERHEAD, Use.BETWEEN_FEET)
CUP_L = 0.25


def vessel(name: str, litres: float, count: int, handle: Handle, closure: Closure, fill: Fill | None = None) -> Thing:
    diameter = 10 * (litres / math.pi * 4) ** (1 / 3)
    shape = shape_for_capacity(StraightRound(diameter_cm=diameter, full_height_cm=diameter), litres * 1.05)
    container = Container(
        shape=shape,
        nominal_l=Measured.rectangular(litres, 0.02 * litres),
        brimful_l=Measured.rectangular(litres * 1.05, 0.02 * litres),
        tare_kg=Measured.rectangular(0.05 * litres, 0.01 * litres),
    )
    facts = Facts(
        form=Form.VESSEL,
        container=container,
        length_cm=diameter,
        width_cm=diameter,
        height_cm=diameter,
        handle=handle,
        closure=closure,
    )
    fills = ("water", "sand_dry")
    return Thing(id=name, kind_id="vessel", name=name.title(), count=count, facts=facts, fills=fills, fill=fill)


def solid(name: str, mass_kg: float, size_cm: float, count: int) -> Thing:
    facts = Facts(
        form=Form.BLOCK,
        mass=Measured(mass_kg, 0.02),
        length_cm=size_cm,
        width_cm=size_cm,
        height_cm=size_cm,
        closure=Closure.SOLID,
    )
    return Thing(id=name, kind_id="block", name=name.title(), count=count, facts=facts)


def bag(name: str, volume_l: float, limit_kg: float) -> Thing:
    facts = Facts(
        form=Form.BAG,
        mass=Measured(0.73, 0.05),
        hold=Hold(volume_l=volume_l, limit_kg=limit_kg),
        length_cm=45,
        width_cm=30,
        height_cm=18,
        handle=Handle.STRAPS,
        closure=Closure.ZIP,
        rigidity=Rigidity.SOFT,
    )
    return Thing(id=name, kind_id="bag", name=name.title(), facts=facts)


def pours(thing: Thing, fills: tuple[str, ...]) -> list[float]:
    """Masses of one piece, worked out here from tare, density and whole cups, with the mass engine as the judge."""
    container = thing.facts.container
    if container is None:
        return [] if thing.facts.mass is None else [thing.facts.mass.value]
    full = container.nominal_l.value
    volumes = [cups * CUP_L for cups in range(int(full / CUP_L + 1e-9) + 1)]
    volumes += [] if abs(volumes[-1] - full) < 1e-6 else [full]
    masses: list[float] = []
    for name in fills:
        levels = (VolumeLevel(volume_l=volume) for volume in volumes)
        masses.extend(estimate(container, MATERIALS[name], level).mass.value for level in levels)
    return masses


def packings(hold: Hold, things: list[Thing], fills: tuple[str, ...], most_sorts: int) -> set[float]:
    """Masses of the contents of a bag, over every set of pieces."""
    sorts = []
    for thing in things:
        own = [(0, 0.0, 0.0)]
        for count in range(1, thing.count + 1):
            own += [(1, count * mass, count * pack_volume_l(thing)) for mass in pours(thing, fills)]
        sorts.append(own)
    found = set()
    for taken in itertools.product(*sorts):
        used, mass, room = (sum(column) for column in zip(*taken, strict=True))
        if used <= most_sorts and mass <= hold.limit_kg + 1e-9 and room <= hold.volume_l + 1e-9:
            found.add(mass)
    return found


def brute(house: House, use: Use) -> set[int]:
    """Grains of every load for the use."""
    alike = 2 if use is Use.PAIR else 1
    found: set[float] = set()
    inside = [thing for thing in house.things if can_be_packed(thing)]
    for thing in house.things:
        if grade_use(thing, use, INES, SHED).grade is Grade.NO or thing.count < alike:
            continue
        hold = thing.facts.hold
        if hold is None:
            found |= {alike * mass for mass in pours(thing, house.fills)}
        elif alike == 1 and thing.facts.mass is not None:
            states = Setting(house, INES, MATERIALS, SHED).states
            rows = choices_for(hold, tuple((one, states(one)) for one in inside))
            contents = packings(hold, inside, house.fills, sorts_allowed(len(rows))) if inside else {0.0}
            found |= {thing.facts.mass.value + mass for mass in contents}
    grains = {round(mass / GRAIN_KG) for mass in found}
    return {grain for grain in grains if 0 < grain <= HEAVIEST_KG / GRAIN_KG}


vessels = st.lists(
    st.tuples(
        st.sampled_from((0.5, 0.75, 1.0, 1.3)),
        st.integers(1, 2),
        st.sampled_from((Handle.NONE, Handle.MOULDED, Handle.BAIL)),
        st.sampled_from((Closure.SEALED, Closure.OPEN)),
    ),
    max_size=2,
)
solids = st.lists(st.tuples(st.integers(2, 90), st.integers(5, 22), st.integers(1, 2)), max_size=2)
bags = st.lists(st.tuples(st.integers(2, 30), st.integers(1, 12)), max_size=1)


@st.composite
def houses(draw: st.DrawFn) -> House:
    things = [vessel(f"vessel{i}", *one) for i, one in enumerate(draw(vessels))]
    things += [solid(f"solid{i}", mass / 10, size, count) for i, (mass, size, count) in enumerate(draw(solids))]
    things += [bag(f"bag{i}", volume, limit) for i, (volume, limit) in enumerate(draw(bags))]
    fills = draw(st.sampled_from((("water",), ("water", "sand_dry"))))
    return House(name="small", places=(SHED,), things=tuple(things), fills=fills, cup_l=CUP_L)


@given(houses(), st.sampled_from(USES))
def test_the_ladder_holds_every_load_of_a_small_house_and_no_other(house: House, use: Use) -> None:
    ladder = Setting(house, INES, MATERIALS, SHED).ladder(use)
    expected = brute(house, use)
    found = {round(mass / GRAIN_KG) for mass in ladder.masses_kg}
    # Where rounding falls on the edge between two grains either is right.
    assert {grain for grain in found if not expected & {grain - 1, grain, grain + 1}} == set()
    assert {grain for grain in expected if not found & {grain - 1, grain, grain + 1}} == set()
    assert abs(len(found) - len(expected)) <= max(2, len(expected) // 20)


@given(houses(), st.sampled_from(USES))
def test_the_recipe_of_every_rung_makes_its_mass(house: House, use: Use) -> None:
    ladder = Setting(house, INES, MATERIALS, SHED).ladder(use)
    counts = {thing.id: thing.count for thing in house.things}
    for mass_kg, rung in zip(ladder.masses_kg, ladder, strict=True):
        total = sum(part.count * part.each.value for part in rung.recipe.parts)
        assert rung.mass.value == pytest.approx(total)
        assert abs(total - mass_kg) <= GRAIN_KG / 2 + 1e-9
        assert all(part.count <= counts[part.thing_id] for part in rung.recipe.parts)
        assert len(set(rung.recipe.thing_ids)) == len(rung.recipe.parts)
        if use is Use.PAIR:
            assert [part.count for part in rung.recipe.parts] == [2]


@given(houses(), st.floats(0, 20), st.floats(0, 12), st.floats(0, 12))
def test_the_nearest_rung_is_the_nearest_by_brute_force(house: House, target: float, one: float, other: float) -> None:
    ladder = Setting(house, INES, MATERIALS, SHED).ladder(Use.HUG)
    low, high = min(one, other), max(one, other)
    inside = [mass for mass in ladder.masses_kg if low - 1e-9 <= mass <= high + 1e-9]
    found = ladder.nearest_index(target, low, high)
    expected = min(inside, key=lambda mass: (abs(mass - target), mass), default=None)
    assert (None if found is None else ladder.masses_kg[found]) == expected


def dipper_setting() -> Setting:
    return Setting(dipper(), INES, MATERIALS, dipper().places[1])


def test_masses_rise_without_a_repeat() -> None:
    for use in USES:
        masses = dipper_setting().ladder(use).masses_kg
        assert list(masses) == sorted(set(masses))


def test_the_next_rung_is_the_first_heavier_one() -> None:
    ladder = dipper_setting().ladder(Use.ONE_HAND)
    here = ladder.masses_kg[10]
    above = ladder.next_above(here)
    assert above is not None
    assert above.mass.value == pytest.approx(ladder.masses_kg[11], abs=GRAIN_KG)
    assert ladder.next_above(ladder.masses_kg[-1]) is None


def test_a_pair_shares_its_errors_and_unlike_parts_do_not() -> None:
    pair = dipper_setting().ladder(Use.PAIR).nearest(20.0, 0.0, 60.0)
    packed = dipper_setting().ladder(Use.BACK).nearest(3.5, 0.0, 4.0)
    assert pair is not None
    assert packed is not None
    assert pair.mass.u == pytest.approx(2 * pair.recipe.parts[0].each.u)
    parts = packed.recipe.parts
    assert packed.mass.u == pytest.approx(math.hypot(*(part.count * part.each.u for part in parts)))


def test_the_mass_of_a_rung_is_what_the_mass_engine_says() -> None:
    rung = dipper_setting().ladder(Use.ONE_HAND).at_fill("carrier", "water", 10.0)
    assert rung is not None
    container = dipper().thing("carrier").facts.container
    assert container is not None
    assert rung.mass == estimate(container, MATERIALS["water"], CupsLevel(count=40, cup_l=0.25)).mass


def test_a_fill_that_is_no_step_of_the_cup_has_no_rung() -> None:
    ladder = dipper_setting().ladder(Use.ONE_HAND)
    assert ladder.at_fill("carrier", "water", 10.1) is None
    assert ladder.at_fill("carrier", "milk", 10.0) is None
    assert ladder.at_fill("bench", "water", 10.0) is None


def test_steps_wider_than_a_tenth_are_shown_as_gaps() -> None:
    tins = replace(dipper(), things=(dipper().thing("tins"),))
    ladder = Setting(tins, INES, MATERIALS).ladder(Use.ONE_HAND)
    assert ladder.masses_kg == (0.47,)
    wide = dipper_setting().ladder(Use.HUG)
    for gap in wide.gaps():
        assert gap.step_pct == pytest.approx(100 * (gap.to_kg - gap.from_kg) / gap.from_kg)
        assert gap.step_pct > 10
        assert gap.from_kg >= 1.0


def test_what_stands_filled_needs_no_pour() -> None:
    standing = vessel("jug", 1.0, 1, Handle.MOULDED, Closure.SEALED, Fill(material_id="water", volume_l=0.75))
    house = House(name="one", things=(standing,))
    ladder = Setting(house, INES, MATERIALS).ladder(Use.ONE_HAND)
    full, empty = ladder.at_fill("jug", "water", 0.75), ladder.at_fill("jug", "water", 0.25)
    assert full is not None
    assert empty is not None
    assert full.set_up_s == pytest.approx(5.0)
    assert empty.set_up_s == pytest.approx(5.0 + 6.0 * 0.5)


def test_a_thing_in_use_is_left_out_of_the_ladder() -> None:
    setting = dipper_setting()
    without = setting.ladder(Use.ONE_HAND, without=frozenset({"carrier"}))
    assert "carrier" not in {part for rung in without for part in rung.recipe.thing_ids}
    assert len(without) > 0


def test_a_better_grip_is_worth_some_seconds() -> None:
    """Of two ways to one mass a poor grip has to be two minutes quicker."""
    handled = vessel("handled", 1.0, 1, Handle.MOULDED, Closure.SEALED)
    bare = replace(handled, id="bare", name="Bare", facts=replace(handled.facts, handle=Handle.RIM))
    house = House(name="two", things=(bare, handled))
    ladder = Setting(house, INES, MATERIALS).ladder(Use.ONE_HAND)
    assert {rung.recipe.thing_ids for rung in ladder} == {("handled",)}
