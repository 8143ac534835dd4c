"""A swap must follow typing, gaps a click. Bounds are ratios to a plain loop that takes about 15 ms on a quiet machine.

Every run begins cold: a new setting, so that offers, ladders and packings are worked out again.
"""

from __future__ import annotations

from dataclasses import replace

from catalog.load import load_catalog
from core.exercise.model import Use
from core.fit.setting import Setting
from core.house.model import Experience, House, Person, Place
from core.knowledge import Catalog
from core.swap.additions import as_thing
from core.swap.gaps import gaps
from core.swap.model import SwapRequest
from core.swap.swap import swap
from tests.benchmarks.conftest import Ratio

WHOLE = load_catalog()
ROOM = Place(id="room", name="Room", ceiling_cm=245.0, floor_m2=8.0, walk_m=10.0)
SOMEONE = Person(id="p", name="Someone", body_mass_kg=75.0, height_cm=175.0, experience=Experience.SOME)
KINDS = [kind for kind in WHOLE.kinds if kind.group != "gear"]


def house(count: int) -> House:
    """So many things of mixed kinds, one to three pieces of each."""
    picked = (KINDS[(number * 7) % len(KINDS)] for number in range(count))
    things = (
        replace(as_thing(kind, 1 + number % 3), id=f"{kind.id}-{number}") for number, kind in enumerate(picked, 1)
    )
    return House(name="Many things", places=(ROOM,), things=tuple(things))


def part(count: int) -> Catalog:
    """So many exercises: a part of the catalog, or the catalog several times over."""
    times = -(-count // len(WHOLE.exercises))
    every = (replace(one, id=f"{one.id}_{turn}") for turn in range(times) for one in WHOLE.exercises)
    exercises = tuple(every) if times > 1 else WHOLE.exercises[::2]
    return replace(WHOLE, exercises=exercises[:count])


def setting(home: House) -> Setting:
    return Setting(home, SOMEONE, WHOLE.material_by_id, ROOM)


def plain_loop() -> int:
    total = 0
    for number in range(300_000):
        total += number * number % 7
    return total


FORTY, HUNDREDS = house(40), house(400)
SMALL, LARGE = part(320), part(3200)


def asked(exercise_id: str, home: House, catalog: Catalog) -> object:
    return swap(SwapRequest(asked=WHOLE.exercise_by_id[exercise_id]), setting(home), catalog)


def test_a_swap_over_320_exercises_and_40_things(ratio: Ratio) -> None:
    ratio(lambda: asked("pull_up", FORTY, SMALL), plain_loop, bound=1.8)


def test_the_widest_swap_over_320_exercises_and_40_things(ratio: Ratio) -> None:
    ratio(lambda: asked("back_squat_bar", FORTY, SMALL), plain_loop, bound=2.5)


def test_a_swap_over_3200_exercises_and_400_things(ratio: Ratio) -> None:
    ratio(lambda: asked("back_squat_bar", HUNDREDS, LARGE), plain_loop, bound=25.0, rounds=5)


def test_gaps_of_40_things(ratio: Ratio) -> None:
    ratio(lambda: gaps(FORTY, SOMEONE, WHOLE), plain_loop, bound=8.0, rounds=7)


def test_a_ladder_of_40_things(ratio: Ratio) -> None:
    ratio(lambda: setting(FORTY).ladder(Use.BACK), plain_loop, bound=0.7)
