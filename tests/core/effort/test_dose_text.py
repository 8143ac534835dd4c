"""What a written dose stands for, and what is no dose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.effort.capacity import Prescription
from core.effort.dose_text import parse_dose
from core.errors import InputError

READ = {
    "4 x 5 at 40 kg, effort 8": Prescription(sets=4, reps=5, load_kg=40, effort=8),
    "4x5 at 14,5 kg": Prescription(sets=4, reps=5, load_kg=14.5),
    "4 × 5 at 14,5 kg, effort 7,5": Prescription(sets=4, reps=5, load_kg=14.5, effort=7.5),
    "4 sets of 8": Prescription(sets=4, reps=8),
    "1 set of 8 reps": Prescription(sets=1, reps=8),
    "8 reps": Prescription(sets=1, reps=8),
    "3 x 8-12": Prescription(sets=3, reps=10),
    "3 x 8 to 12 with 10 lb": Prescription(sets=3, reps=10, load_kg=4.5359237),
    "3 x 30 s": Prescription(sets=3, seconds=30),
    "2 x 1.5 min": Prescription(sets=2, seconds=90),
    "20 min": Prescription(sets=1, seconds=1200),
    "3 x 40 m at 20 kg": Prescription(sets=3, distance_m=40, load_kg=20),
    "5 km": Prescription(sets=1, distance_m=5000),
    "3 x 10 each side, 2 in reserve": Prescription(sets=3, reps=10, effort=8),
    "3 x 10, 1 rep left": Prescription(sets=3, reps=10, effort=9),
    "4 X 5 AT 40 KG EFFORT 8": Prescription(sets=4, reps=5, load_kg=40, effort=8),
}
REFUSED = {
    "": "is not a dose that can be read",
    "8": "does not say how many sets of what",
    "3 x": "is not a dose that can be read",
    "4 x 5 40 kg": "is not a dose that can be read",
    "3 x 5 bananas": "counts in bananas",
    "0 x 5": "asks for 0 sets",
    "21 x 5": "asks for 21 sets",
    "3 x 500": "asks for 500 repetitions",
    "3 x 5 h": "asks for 18000 seconds",
    "3 x 5, effort 12": "asks for 12 of effort",
    "3 x 5, 12 in reserve": "asks for -2 of effort",
    "3 x 5 at 501 kg": "asks for 501 kg of load",
    "3 x 5 at 5 gal": "is a volume, not a mass",
    "3 x 5 at -3 kg": "is a negative mass",
    "x" * 10_000: "is longer than 120 characters",
}


@pytest.mark.parametrize("text", READ)
def test_a_dose_is_read_as_it_is_written(text: str) -> None:
    read, wanted = parse_dose(text), READ[text]
    assert (read.sets, read.reps, read.effort) == (wanted.sets, wanted.reps, wanted.effort)
    assert read.load_kg == pytest.approx(wanted.load_kg) if wanted.load_kg is not None else read.load_kg is None
    assert read.seconds == (pytest.approx(wanted.seconds) if wanted.seconds is not None else None)
    assert read.distance_m == (pytest.approx(wanted.distance_m) if wanted.distance_m is not None else None)


@pytest.mark.parametrize("text", REFUSED)
def test_what_is_no_dose_is_refused_in_one_line(text: str) -> None:
    with pytest.raises(InputError, match=REFUSED[text]) as refused:
        parse_dose(text)
    assert "\n" not in refused.value.sentence()
    assert len(refused.value.sentence()) < 250


@given(st.integers(1, 20), st.integers(1, 200), st.integers(0, 500), st.integers(1, 10))
def test_sets_repetitions_load_and_effort_come_back(sets: int, reps: int, load: int, effort: int) -> None:
    read = parse_dose(f"{sets} x {reps} at {load} kg, effort {effort}")
    assert read == Prescription(sets=sets, reps=reps, load_kg=load, effort=effort)


@given(st.text(max_size=130))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        read = parse_dose(text)
    except InputError:
        return
    assert [read.reps, read.seconds, read.distance_m].count(None) == 2
