"""Finding movements by what is typed: exact before beginning before likeness, and the same order every time."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.exercise.find import exercise_named, find_exercises
from core.exercise.model import BodyShare, DoseKind, Exercise, Muscle, Pattern


def movement(exercise_id: str, name: str, *aliases: str) -> Exercise:
    return Exercise(
        id=exercise_id,
        name=name,
        aliases=aliases,
        patterns=((Pattern.SQUAT, 1.0),),
        muscles=((Muscle.QUADS, 1.0),),
        dose=DoseKind.REPS,
        body=BodyShare(share=0.7),
        level=1,
        typical=(5, 15),
    )


@dataclass(frozen=True)
class Listed:
    exercises: tuple[Exercise, ...]


CATALOG = Listed(
    (
        movement("body_squat", "Body-weight squat", "air squat", "squat"),
        movement("goblet_squat", "Goblet squat", "jug squat"),
        movement("plank", "Forearm plank", "front hold"),
        movement("push_up", "Push-up", "press-up"),
        movement("side_plank", "Side plank"),
        movement("split_squat", "Split squat"),
        movement("squat_hold", "Squat hold"),
    )
)


def ids(text: str, most: int = 8) -> list[str]:
    return [found.exercise.id for found in find_exercises(text, CATALOG, most)]


def test_an_exact_alias_beats_every_beginning() -> None:
    assert ids("squat") == ["body_squat", "squat_hold", "goblet_squat", "split_squat"]
    assert find_exercises("squat", CATALOG)[0].exact


@pytest.mark.parametrize("text", ["push-up", "PUSH UP", "pushup", "Push-Ups", "press ups", "push_up"])
def test_case_hyphens_spaces_and_plurals_are_free(text: str) -> None:
    assert exercise_named(text, CATALOG).id == "push_up"


def test_a_beginning_beats_a_likeness() -> None:
    assert ids("gob") == ["goblet_squat"]
    assert ids("sp sq") == ["split_squat"]


def test_a_slip_of_the_pen_is_forgiven() -> None:
    assert ids("forearm plnak")[0] == "plank"
    assert exercise_named("gobelt squat", CATALOG).id == "goblet_squat"


def test_the_match_names_the_alias() -> None:
    assert find_exercises("jug", CATALOG)[0].matched == "jug squat"


def test_no_more_than_asked_for_are_given() -> None:
    assert ids("squat", most=2) == ["body_squat", "squat_hold"]


def test_several_beginnings_are_asked_about() -> None:
    with pytest.raises(InputError, match="could be more than one movement; choose one of: .*goblet_squat"):
        exercise_named("squ", Listed(CATALOG.exercises[1:]))


def test_a_poor_likeness_is_asked_about() -> None:
    with pytest.raises(InputError, match="is no movement in the catalog; perhaps you mean Forearm plank"):
        exercise_named("forearn plakn x", CATALOG)


@pytest.mark.parametrize("text", ["", "  ", "zzzz", "<b>bold</b>", "☃", "x" * 10_000])
def test_what_is_nothing_finds_nothing(text: str) -> None:
    assert ids(text) == []
    with pytest.raises(InputError, match="is no movement in the catalog") as refused:
        exercise_named(text, CATALOG)
    assert len(refused.value.sentence()) < 200


@given(st.text(max_size=40))
def test_the_order_does_not_depend_on_the_order_of_the_catalog(text: str) -> None:
    assert find_exercises(text, CATALOG) == find_exercises(text, Listed(CATALOG.exercises[::-1]))
