"""The way up to a movement that is too hard: real steps, each easier than the next, ending at the movement itself."""

from __future__ import annotations

from itertools import pairwise

import pytest

from catalog.load import load_catalog
from core.exercise.model import Exercise
from core.fit.setting import Setting
from core.swap.chain import chain_to, chain_words
from core.swap.model import Cause, SwapRequest
from core.swap.swap import swap
from tests.core.swap.truth_houses import PEOPLE, PLACES, house_named

CATALOG = load_catalog()
BY_ID = CATALOG.exercise_by_id
HARD = [exercise for exercise in CATALOG.exercises if exercise.level >= 3 and not exercise.needs_gym]


def setting(house: str = "flat", person: str = "new") -> Setting:
    return Setting(house_named(house), PEOPLE[person], CATALOG.material_by_id, PLACES["room"])


@pytest.mark.parametrize("house", ["flat", "bar", "chair"])
def test_every_way_up_climbs_link_by_link_and_ends_at_what_was_asked(house: str) -> None:
    here, found = setting(house), 0
    for exercise in HARD[::12]:
        chain = swap(SwapRequest(asked=exercise, cause=Cause.TOO_HARD), here, CATALOG).chain
        if not chain:
            continue
        found += 1
        assert chain[-1].id == exercise.id
        assert len({one.id for one in chain}) == len(chain)
        for lower, upper in pairwise(chain):
            assert lower.id in upper.easier
            assert lower.level <= upper.level
    assert found > 3


def test_the_first_step_can_be_done_now() -> None:
    here = setting("bar")
    found = swap(SwapRequest(asked=BY_ID["pull_up"], cause=Cause.TOO_HARD), here, CATALOG)
    assert found.chain[0].id in {answer.exercise.id for answer in found.answers}


def test_no_way_leads_where_the_things_or_the_place_are_lacking() -> None:
    found = swap(SwapRequest(asked=BY_ID["pull_up"]), setting("flat"), CATALOG)
    assert all(one.id == "pull_up" or one.id in {a.exercise.id for a in found.answers} for one in found.chain)


@pytest.mark.parametrize("cause", [Cause.HURTS, Cause.TOO_EASY, Cause.TOO_LOUD, Cause.NO_ROOM])
def test_only_too_hard_and_no_gear_ask_for_a_way_up(cause: Cause) -> None:
    assert swap(SwapRequest(asked=BY_ID["pull_up"], cause=cause), setting("bar"), CATALOG).chain == ()


def test_of_ways_equally_short_the_most_alike_wins() -> None:
    def can_do(exercise: Exercise) -> bool | None:
        return exercise.level <= 4

    chain = chain_to(BY_ID["single_leg_squat"], can_do, CATALOG)
    assert [one.id for one in chain] == ["single_leg_squat_to_chair", "single_leg_squat"]


def test_nothing_easier_is_no_way() -> None:
    assert chain_to(BY_ID["pull_up"], lambda exercise: None, CATALOG) == ()  # noqa: ARG005 - the shape of a question
    assert chain_words(()) == ""


def test_a_way_reads_from_the_bottom_up() -> None:
    chain = (BY_ID["foot_assisted_pull_up"], BY_ID["slow_lowering_pull_up"], BY_ID["pull_up"])
    assert chain_words(chain) == "Until you can do pull-up: foot-assisted pull-up, then slow-lowering pull-up."
