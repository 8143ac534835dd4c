"""A door frame may be leaned on and pressed against; pulled on only with the owner's own check or a rating."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from catalog.load import load_catalog
from core.exercise.model import Use
from core.fit.bind import bind
from core.fit.fixtures import LIGHT_HOLD
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.house.model import House
from core.swap.additions import as_thing
from core.things.affordance import Grade
from core.things.model import OwnCheck, Thing
from tests.dipper import CABIN, INES

CATALOG = load_catalog()
PULLED = [
    exercise.id
    for exercise in CATALOG.exercises
    for need in exercise.needs
    if need.uses == (Use.DOOR_FRAME,) and need.bears > LIGHT_HOLD
]
LEANED_ON = ["doorway_chest_stretch", "side_raise_isometric", "door_frame_press_isometric"]


def setting(*things: Thing) -> Setting:
    return Setting(House(name="Boat", places=(CABIN,), things=things), INES, CATALOG.material_by_id)


def frame(took_kg: float | None = None) -> Thing:
    check = None if took_kg is None else OwnCheck(date=datetime.date(2026, 11, 3), took_kg=took_kg)
    return replace(as_thing(CATALOG.kind_by_id["door_frame"]), own_check=check)


def test_some_movements_pull_on_a_door_frame() -> None:
    assert "door_frame_row" in PULLED


@pytest.mark.parametrize("exercise_id", PULLED)
def test_a_pull_is_refused_without_a_check(exercise_id: str) -> None:
    exercise = CATALOG.exercise_by_id[exercise_id]
    for here in (setting(), setting(frame())):
        made = bind(exercise, here)
        assert isinstance(made, Missing)
        assert any("not made to be pulled on" in why for why in made.why)


def test_a_checked_frame_serves_a_row_fairly_and_says_why() -> None:
    made = bind(CATALOG.exercise_by_id["door_frame_row"], setting(frame(80.0)))
    assert isinstance(made, Binding)
    assert made.fixtures[0].grade is Grade.FAIR
    assert "your own check" in made.fixtures[0].reason


def test_a_check_that_took_too_little_does_not_count() -> None:
    made = bind(CATALOG.exercise_by_id["door_frame_row"], setting(frame(10.0)))
    assert isinstance(made, Missing)
    assert "your check took 10 kg" in made.why[0]


@pytest.mark.parametrize("exercise_id", LEANED_ON)
def test_leaning_and_pressing_need_no_check(exercise_id: str) -> None:
    assert isinstance(bind(CATALOG.exercise_by_id[exercise_id], setting()), Binding)
