"""A retest is compared only with the same test done the same way, and called better only beyond published noise."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.assess.retest import Verdict, change_between
from core.errors import InputError
from tests.core.assess.examples import CHAIR, JULY, MAY, MILE, SQUATS, result


@pytest.mark.parametrize(
    ("later", "verdict"),
    [
        (12, Verdict.WITHIN_NOISE),
        (14, Verdict.WITHIN_NOISE),
        (15, Verdict.BETTER),
        (10, Verdict.WITHIN_NOISE),
        (9, Verdict.WORSE),
    ],
)
def test_a_change_counts_from_the_published_threshold_on(later: float, verdict: Verdict) -> None:
    found = change_between(CHAIR, result(CHAIR, 12), result(CHAIR, later, JULY))
    assert (found.amount, found.verdict) == (later - 12, verdict)
    assert "an invented study" in found.sentence


def test_where_nothing_is_published_the_change_is_called_unknown() -> None:
    found = change_between(MILE, result(MILE, 15, pulse_bpm=130), result(MILE, 13, JULY, pulse_bpm=128))
    assert found.verdict is Verdict.UNKNOWN
    assert found.sentence.startswith("-2 min. How much this test varies by itself is not published")


def test_less_is_better_where_the_test_says_so() -> None:
    quick = replace(MILE, change=CHAIR.change)
    found = change_between(quick, result(MILE, 15, pulse_bpm=130), result(MILE, 11, JULY, pulse_bpm=130))
    assert found.verdict is Verdict.BETTER


def test_another_load_makes_two_results_not_comparable() -> None:
    first, later = result(SQUATS, 12, load_kg=15.0), result(SQUATS, 20, JULY, load_kg=10.0)
    found = change_between(SQUATS, first, later)
    assert found.verdict is Verdict.NOT_COMPARABLE
    assert "Load held was not the same" in found.sentence


def test_a_load_within_two_per_cent_is_the_same() -> None:
    found = change_between(SQUATS, result(SQUATS, 12, load_kg=15.0), result(SQUATS, 14, JULY, load_kg=15.2))
    assert found.verdict is Verdict.UNKNOWN


def test_a_load_written_down_only_once_is_not_comparable() -> None:
    assert change_between(SQUATS, result(SQUATS, 12), result(SQUATS, 14, JULY, load_kg=15.0)).verdict is (
        Verdict.NOT_COMPARABLE
    )


def test_results_of_another_test_or_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(InputError, match="is not the test one mile walk"):
        change_between(MILE, result(MILE, 15), result(CHAIR, 12, JULY))
    with pytest.raises(InputError, match="is no later result"):
        change_between(CHAIR, result(CHAIR, 12, JULY), result(CHAIR, 12, MAY))
