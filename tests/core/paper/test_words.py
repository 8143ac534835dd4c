"""How doses and spans are written."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.effort.dose import Dose
from core.exercise.model import Sides
from core.paper.words import dose_words, minutes_words, span
from core.quantity.display import UnitSystem
from tests.core.paper.examples import movement

PLAIN = movement("Squat")
DOSES = {
    "4 × 9–15": Dose(sets=4, reps=(9, 15)),
    "1 × 9": Dose(sets=1, reps=(9, 9)),
    "3 × 20–30 s": Dose(sets=3, seconds=(20, 30)),
    "38 min": Dose(sets=1, seconds=(2280, 2280)),
    "2 × 2–3 min": Dose(sets=2, seconds=(120, 180)),
    "90 s": Dose(sets=1, seconds=(90, 90)),
    "150 s": Dose(sets=1, seconds=(150, 150)),
    "4 × 20–30 m": Dose(sets=4, distance_m=(20, 30)),
    "900 m–1.6 km": Dose(sets=1, distance_m=(900, 1600)),
}


@pytest.mark.parametrize("words", DOSES)
def test_a_dose_is_written_short(words: str) -> None:
    assert dose_words(PLAIN, DOSES[words]) == words


def test_one_sided_movements_say_so() -> None:
    assert dose_words(replace(PLAIN, sides=Sides.EACH), Dose(sets=2, reps=(5, 8))) == "2 × 5–8 a side"


def test_distances_follow_the_units() -> None:
    assert dose_words(PLAIN, Dose(sets=2, distance_m=(20, 30)), UnitSystem.US) == "2 × 22–33 yd"


def test_a_shared_unit_is_written_once() -> None:
    assert span("20 m", "30 m") == "20–30 m"
    assert span("20 m", "20 m") == "20 m"


def test_minutes_are_rounded_up() -> None:
    assert (minutes_words(0), minutes_words(1), minutes_words(60), minutes_words(61)) == (
        "0 min",
        "1 min",
        "1 min",
        "2 min",
    )
