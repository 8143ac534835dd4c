"""A result is checked before it is kept; what can't be is refused in one sentence."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from core.assess.entry import new_result
from core.errors import InputError
from core.house.log import LoggedTest
from tests.core.assess.examples import JULY, MAY, MILE, SQUATS

USUAL: dict[str, Any] = {"result_id": "r1", "person_id": "ines", "date": MAY, "today": JULY}


def test_a_result_is_kept_with_what_was_written_down() -> None:
    kept = new_result(SQUATS, 14, {"load_kg": 15.1}, note="Windy.", **USUAL)
    assert (kept.test_id, kept.result, kept.date, kept.note) == ("squat_load", 14.0, MAY, "Windy.")
    assert kept.beside_value("load_kg") == 15.1
    assert kept.beside_value("pulse_bpm") is None


def test_what_is_written_down_stands_in_the_order_of_the_protocol() -> None:
    kept = new_result(SQUATS, 14, {"pulse_bpm": 120, "load_kg": 15.1}, **USUAL)
    assert kept.beside == (("load_kg", 15.1), ("pulse_bpm", 120.0))


@pytest.mark.parametrize(
    ("value", "beside", "words"),
    [
        (-1, {"load_kg": 15}, r"“-1 reps” is no result of this test \(0 to 100 reps\)"),
        (101, {"load_kg": 15}, "“101 reps” is no result"),
        (float("nan"), {"load_kg": 15}, "“nan reps” is no result"),
        (float("inf"), {"load_kg": 15}, "“inf reps” is no result"),
        (12.5, {"load_kg": 15}, "“12.5 reps” is no whole number of repetitions; count only complete ones"),
        (12, {}, "“Load held” is missing; give it in kg"),
        (12, {"load_kg": 0.1}, r"“0.1 kg” is no load held for this test \(0.5 to 100 kg\)"),
        (12, {"load_kg": float("nan")}, "“nan kg” is no load held"),
        (12, {"load_kg": 15, "pulse_bpm": 300}, "“300 bpm” is no pulse right after"),
        (12, {"load_kg": 15, "mood": 3}, "“mood” is not written down in this test; it asks for: load_kg, pulse_bpm"),
    ],
)
def test_a_number_that_cannot_be_is_refused_in_one_sentence(value: float, beside: dict[str, float], words: str) -> None:
    with pytest.raises(InputError, match=words) as told:
        new_result(SQUATS, value, beside, **USUAL)
    assert str(told.value).endswith(".")
    assert "\n" not in str(told.value)


@pytest.mark.parametrize(
    ("day", "words"),
    [(JULY + datetime.timedelta(days=1), "lies ahead"), (datetime.date(1926, 5, 4), "is before 1990-01-01")],
)
def test_a_day_that_cannot_be_is_refused(day: datetime.date, words: str) -> None:
    with pytest.raises(InputError, match=words):
        new_result(MILE, 15, {"pulse_bpm": 130}, **(USUAL | {"date": day}))


def test_minutes_may_have_parts() -> None:
    assert new_result(MILE, 14.5, {"pulse_bpm": 130}, **USUAL).result == 14.5


def test_a_number_is_written_down_once() -> None:
    with pytest.raises(InputError, match="written down twice"):
        LoggedTest(
            id="r", person_id="ines", test_id="t", date=MAY, result=1, beside=(("load_kg", 1.0), ("load_kg", 2.0))
        )
