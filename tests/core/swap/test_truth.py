"""The program answers as the written cases say an experienced coach would."""

from __future__ import annotations

import pytest

from core.swap.model import Cause
from tests.core.swap.truth_houses import CATALOG, OWNED, PEOPLE, PLACES
from tests.core.swap.truth_table import Case, answered, cases, differences


@pytest.mark.parametrize("case", cases(), ids=lambda case: str(case.id))
def test_the_answer_is_what_a_coach_would_sign(case: Case) -> None:
    found = answered(case)
    first = [answer.exercise.id for answer in found.answers[:5]]
    assert list(differences(case, found)) == [], f"{case.why} Got {first}"


def test_every_case_names_what_exists_and_asks_for_something() -> None:
    for case in cases():
        assert set(case.ids) <= set(CATALOG.exercise_by_id), case.id
        assert case.house in {*OWNED, "dipper"}
        assert case.place in PLACES
        assert case.person in PEOPLE
        assert case.why
        assert case.source


def test_cases_are_told_apart_by_name() -> None:
    assert len({case.id for case in cases()}) == len(cases()) >= 80


def test_the_cases_cover_every_cause_house_and_person() -> None:
    assert {case.because for case in cases()} == set(Cause)
    assert {case.house for case in cases()} == {*OWNED, "dipper"}
    assert {case.person for case in cases()} == set(PEOPLE)


def test_the_cases_cover_every_family() -> None:
    families = {exercise.family for exercise in CATALOG.exercises}
    assert {CATALOG.exercise_by_id[case.asked].family for case in cases()} == families
