"""Every cell of the pre-participation logic: active or not, disease, symptoms, and what else asks for care."""

from __future__ import annotations

import re
from itertools import chain, combinations

import pytest

from core.house.readiness import QUESTIONS, STOP_SIGNS, Intensity, readiness

KEYS = tuple(key for key, _ in QUESTIONS)
EVERY_ANSWER = [frozenset(some) for some in chain.from_iterable(combinations(KEYS, n) for n in range(len(KEYS) + 1))]


@pytest.mark.parametrize(
    ("yes", "ask_first", "may_do", "words"),
    [
        (set(), False, Intensity.VIGOROUS, "Nothing here speaks against starting"),
        ({"inactive"}, False, Intensity.MODERATE, "Start light"),
        ({"disease"}, True, Intensity.MODERATE, "go on at a pace at which you can talk"),
        ({"disease", "inactive"}, True, Intensity.NONE, "first, then begin with light to moderate"),
        ({"symptoms"}, True, Intensity.NONE, "Stop training, and see a doctor"),
        ({"symptoms", "inactive"}, True, Intensity.NONE, "See a doctor"),
        ({"other"}, True, Intensity.NONE, "midwife"),
    ],
)
def test_each_cell_of_the_algorithm_gives_its_own_advice(
    yes: set[str], ask_first: bool, may_do: Intensity, words: str
) -> None:
    found = readiness(frozenset(yes))
    assert (found.ask_first, found.may_do) == (ask_first, may_do)
    assert words in found.sentence


@pytest.mark.parametrize("yes", EVERY_ANSWER, ids=lambda yes: "-".join(sorted(yes)) or "none")
def test_signs_disease_and_other_reasons_always_send_to_a_professional(yes: frozenset[str]) -> None:
    found = readiness(yes)
    assert found.ask_first == bool(yes & {"symptoms", "disease", "other"})
    assert (found.may_do is Intensity.VIGOROUS) == (not yes)
    if found.ask_first:
        assert re.search("doctor|professional", found.sentence)


@pytest.mark.parametrize("yes", [answer for answer in EVERY_ANSWER if "symptoms" in answer])
def test_signs_come_before_everything_else(yes: frozenset[str]) -> None:
    assert "these signs" in readiness(yes).sentence


def test_one_more_yes_never_allows_more() -> None:
    order = list(Intensity)
    for yes in EVERY_ANSWER:
        for key in KEYS:
            assert order.index(readiness(yes | {key}).may_do) <= order.index(readiness(yes).may_do)


def test_no_answer_names_an_illness_the_person_might_have() -> None:
    for yes in EVERY_ANSWER:
        assert not re.search("you have|diagnos|risk of", readiness(yes).sentence, re.IGNORECASE)


def test_an_answer_to_no_question_is_a_mistake_of_ours() -> None:
    with pytest.raises(ValueError, match="no question is called mood"):
        readiness(frozenset({"mood"}))


@pytest.mark.parametrize("sign", ["chest", "faintness", "breathlessness", "heartbeat", "weakness", "headache"])
def test_the_stop_signs_name_what_calls_for_help(sign: str) -> None:
    assert sign in STOP_SIGNS
    assert "emergency number" in STOP_SIGNS
