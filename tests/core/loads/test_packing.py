"""Bag contents agree with brute force on every small house, and the ladder keeps the quickest way to each mass."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from core.loads.packing import PACK_S, Choice, choices_for, pack, pack_volume_l
from core.loads.pieces import GRAIN_KG, Piece
from core.quantity import Measured
from core.things.model import Closure, Facts, Form, Handle, Hazard, Hold, Thing


def bag(volume_l: float = 28.0, limit_kg: float = 16.0) -> Thing:
    facts = Facts(
        form=Form.BAG, mass=Measured(1.1), hold=Hold(volume_l=volume_l, limit_kg=limit_kg), handle=Handle.STRAPS
    )
    return Thing(id="daypack", kind_id="daypack", name="Daypack", facts=facts)


def solid(name: str, mass_kg: float, volume_l: float, count: int) -> Thing:
    facts = Facts(form=Form.TIN, mass=Measured(mass_kg), pack_l=volume_l, closure=Closure.SEALED)
    return Thing(id=name, kind_id=name, name=name, count=count, facts=facts)


def states(thing: Thing) -> tuple[Piece, ...]:
    assert thing.facts.mass is not None
    return (Piece(thing.facts.mass.value, None, 0.0, 0.0, 5.0),)


def brute(hold: Hold, choices: tuple[Choice, ...]) -> dict[int, float]:
    """Grains -> least set-up time, over every subset of at most three choices of different things."""
    best: dict[int, float] = {0: 0.0}
    for size in (1, 2, 3):
        for group in itertools.combinations(choices, size):
            if len({choice.thing.id for choice in group}) < size:
                continue
            mass = sum(choice.count * choice.piece.mass_kg for choice in group)
            room = sum(choice.count * pack_volume_l(choice.thing) for choice in group)
            if mass > hold.limit_kg + 1e-9 or room > hold.volume_l + 1e-9:
                continue
            grains = round(mass / GRAIN_KG)
            time = sum(choice.count * (choice.piece.set_up_s + PACK_S) for choice in group)
            best[grains] = min(best.get(grains, 1e9), time)
    return best


stock = st.lists(
    st.tuples(st.integers(3, 400), st.integers(2, 120), st.integers(1, 4)),
    min_size=1,
    max_size=5,
)


@given(stock, st.integers(20, 300), st.integers(20, 200))
def test_every_packing_is_found_and_none_is_invented(
    items: list[tuple[int, int, int]], room_dl: int, limit_hg: int
) -> None:
    carrier = bag(room_dl / 10, limit_hg / 10)
    hold = carrier.facts.hold
    assert hold is not None
    things = [solid(f"t{i}", mass / 100, volume / 10, count) for i, (mass, volume, count) in enumerate(items)]
    choices = choices_for(carrier, hold, tuple((thing, states(thing)) for thing in things))
    packed = pack(hold, choices)
    found = dict(zip(packed.grains.tolist(), packed.set_up_s.tolist(), strict=True))
    expected = brute(hold, choices)
    assert sorted(found) == sorted(expected)
    assert all(abs(found[grains] - expected[grains]) < 0.051 for grains in expected)


def test_what_is_open_or_glass_or_held_chemicals_stays_out_of_the_bag() -> None:
    carrier = bag()
    hold = carrier.facts.hold
    assert hold is not None
    tin = solid("tin", 0.47, 0.5, 6)
    open_pot = Thing(
        id="pot", kind_id="pot", name="Pot", facts=Facts(form=Form.VESSEL, mass=Measured(1.0), pack_l=2.0, closure=Closure.OPEN)
    )
    jar = Thing(
        id="jar",
        kind_id="jar",
        name="Jar",
        facts=Facts(
            form=Form.VESSEL,
            mass=Measured(1.0),
            pack_l=1.0,
            closure=Closure.SEALED,
            hazards=frozenset({Hazard.GLASS}),
        ),
    )
    found = choices_for(carrier, hold, tuple((thing, states(thing)) for thing in (tin, open_pot, jar)))
    assert {choice.thing.id for choice in found} == {"tin"}
    assert [choice.count for choice in found] == [1, 2, 3, 4, 5, 6]


def test_an_empty_bag_is_a_packing_too() -> None:
    hold = Hold(volume_l=10.0, limit_kg=5.0)
    packed = pack(hold, ())
    assert packed.grains.tolist() == [0]
