"""Bag contents agree with brute force over every set of pieces, and the quickest way to each mass is kept."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.loads.packing import Choices, choices_for, combine, pack, pack_volume_l, quickest, sorts_allowed
from core.loads.pieces import FETCH_S, GRAIN_KG, PACK_S, States, states_of
from core.quantity import Measured
from core.things.model import Closure, Facts, Form, Hazard, Hold, Thing


def solid(name: str, mass_kg: float, volume_l: float, count: int, **changes: object) -> Thing:
    facts = Facts(form=Form.TIN, mass=Measured(mass_kg), pack_l=volume_l, closure=Closure.SEALED)
    if changes:
        facts = Facts(**({"form": Form.TIN, "mass": Measured(mass_kg), "pack_l": volume_l} | changes))  # type: ignore[arg-type]  # fields under test
    return Thing(id=name, kind_id=name, name=name, count=count, facts=facts)


def states(thing: Thing) -> States:
    return states_of(thing, {}, (), 0.25)


def every_packing(hold: Hold, things: list[Thing], most_sorts: int) -> Iterator[tuple[float, float]]:
    """(mass, set-up time) of every way to take some pieces of at most so many sorts that fits."""
    for counts in itertools.product(*(range(thing.count + 1) for thing in things)):
        taken = [(thing, count) for thing, count in zip(things, counts, strict=True) if count]
        mass = sum(count * thing.facts.mass.value for thing, count in taken if thing.facts.mass is not None)
        room = sum(count * pack_volume_l(thing) for thing, count in taken)
        if len(taken) <= most_sorts and mass <= hold.limit_kg + 1e-9 and room <= hold.volume_l + 1e-9:
            yield mass, sum(count * (FETCH_S + PACK_S) for _, count in taken)


def brute(hold: Hold, things: list[Thing], most_sorts: int, tare_kg: float) -> dict[int, float]:
    best: dict[int, float] = {}
    for mass, time in every_packing(hold, things, most_sorts):
        grains = round((mass + tare_kg) / GRAIN_KG)
        best[grains] = min(best.get(grains, 1e9), time)
    return best


def choices(hold: Hold, things: list[Thing]) -> Choices:
    return choices_for(hold, tuple((thing, states(thing)) for thing in things))


stock = st.lists(st.tuples(st.integers(3, 400), st.integers(2, 120), st.integers(1, 3)), min_size=1, max_size=5)


@given(stock, st.integers(20, 300), st.integers(20, 200))
def test_every_packing_is_found_and_none_is_invented(
    items: list[tuple[int, int, int]], room_dl: int, limit_hg: int
) -> None:
    hold = Hold(volume_l=room_dl / 10, limit_kg=limit_hg / 10)
    things = [solid(f"t{i}", mass / 100, volume / 10, count) for i, (mass, volume, count) in enumerate(items)]
    rows = choices(hold, things)
    packed = pack(hold, rows, 1.1)
    found = dict(zip(packed.grains.tolist(), packed.set_up_s.tolist(), strict=True))
    expected = brute(hold, things, sorts_allowed(len(rows)), 1.1)
    assert sorted(found) == sorted(expected)
    assert all(abs(found[grains] - expected[grains]) < 0.051 for grains in expected)


@given(stock)
def test_the_picks_make_the_mass_they_stand_for(items: list[tuple[int, int, int]]) -> None:
    hold = Hold(volume_l=20.0, limit_kg=12.0)
    rows = choices(hold, [solid(f"t{i}", mass / 100, room / 10, count) for i, (mass, room, count) in enumerate(items)])
    packed = pack(hold, rows, 0.0)
    for grains, picks in zip(packed.grains.tolist(), packed.picks.tolist(), strict=True):
        taken = [row for row in picks if row >= 0]
        assert round(sum(float(rows.mass_kg[row]) for row in taken) / GRAIN_KG) == grains
        assert len({int(rows.owner[row]) for row in taken}) == len(taken)


def test_a_small_house_may_mix_as_many_sorts_as_fit() -> None:
    hold = Hold(volume_l=100.0, limit_kg=100.0)
    things = [solid(f"t{i}", 2.0**i / 10, 1.0, 1) for i in range(6)]
    packed = pack(hold, choices(hold, things), 0.0)
    assert packed.grains.tolist() == [10 * n for n in range(64)]


def test_a_smaller_bag_takes_from_the_combinations_of_a_larger_one_only_what_fits() -> None:
    large, small = Hold(volume_l=20.0, limit_kg=20.0), Hold(volume_l=4.0, limit_kg=3.0)
    things = [solid("a", 0.5, 1.0, 4), solid("b", 1.3, 2.0, 2)]
    rows = choices(large, things)
    shared = pack(small, rows, 0.0, combine(large, rows))
    own = pack(small, choices(small, things), 0.0)
    assert shared.grains.tolist() == own.grains.tolist()


def test_more_choices_mean_fewer_sorts() -> None:
    sorts = [sorts_allowed(count) for count in (1, 14, 15, 20, 36, 90, 91, 1600, 1601)]
    assert sorts == [6, 6, 5, 5, 4, 3, 2, 2, 1]


@pytest.mark.parametrize(
    "changes",
    [
        {"closure": Closure.OPEN},
        {"closure": Closure.SEALED, "hazards": frozenset({Hazard.GLASS})},
        {"closure": Closure.SEALED, "hazards": frozenset({Hazard.HELD_CHEMICALS})},
        {"closure": Closure.SEALED, "hazards": frozenset({Hazard.SHARP})},
        {"closure": Closure.SEALED, "fixed": True},
        {"closure": Closure.SEALED, "form": Form.SEAT},
    ],
)
def test_what_is_open_glass_or_fixed_or_held_chemicals_stays_out_of_the_bag(changes: dict[str, object]) -> None:
    hold = Hold(volume_l=28.0, limit_kg=16.0)
    rows = choices(hold, [solid("tin", 0.47, 0.5, 3), solid("not_for_it", 1.0, 2.0, 1, **changes)])
    assert [thing.id for thing in rows.things] == ["tin"]
    assert rows.count.tolist() == [1, 2, 3]


def test_an_empty_bag_is_a_packing_too() -> None:
    hold = Hold(volume_l=10.0, limit_kg=5.0)
    assert pack(hold, choices(hold, []), 0.8).grains.tolist() == [80]


def test_of_equal_masses_the_quickest_is_kept_and_the_earlier_of_equals() -> None:
    grains, times = np.array([5, 3, 5, 5, 3]), np.array([9.0, 4.0, 2.0, 2.0, 4.0])
    assert quickest(grains, times).tolist() == [1, 2]
