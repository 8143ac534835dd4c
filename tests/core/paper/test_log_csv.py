"""The log as CSV: every set on a row, and nothing a spreadsheet would run."""

from __future__ import annotations

import csv
import datetime
import io

from hypothesis import given
from hypothesis import strategies as st

from core.house.log import LoggedSession, LoggedSet
from core.paper.log_csv import HEADINGS, guarded, log_csv

DAY = datetime.date(2026, 5, 5)
TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
DANGEROUS = ("=", "+", "-", "@", "\t", "\r")


def session(**changes: object) -> LoggedSession:
    one = LoggedSet(exercise_id="squat", reps=8, load_kg=14.1, u95_kg=0.4, effort=8.0, note="easy")
    hold = LoggedSet(exercise_id="plank", time_s=40.0)
    facts: dict[str, object] = {
        "id": "s1",
        "person_id": "ines",
        "date": DAY,
        "minutes": 45.0,
        "effort": 7.0,
        "note": "by the lock",
        "sets": (one, hold),
    }
    return LoggedSession(**(facts | changes))  # type: ignore[arg-type]  # any fields, as the test names them


def rows(made: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(made.decode("utf-8-sig"), newline="")))


def test_each_set_has_a_row() -> None:
    heading, first, second = rows(log_csv([session()], {"ines": "Ines"}, {"squat": "Squat"}))
    assert heading == list(HEADINGS)
    assert first == [
        *("2026-05-05", "Ines", "Squat", "squat", "1", "8", "", "", "14.1", "0.4", "8.0", "easy"),
        *("45.0", "7.0", "by the lock"),
    ]
    assert second[2:8] == ["plank", "plank", "2", "", "40.0", ""]


def test_a_session_without_sets_keeps_its_row() -> None:
    (_, only) = rows(log_csv([session(sets=())], {}, {}))
    assert only == ["2026-05-05", "ines", *[""] * 10, "45.0", "7.0", "by the lock"]


def test_a_spreadsheet_is_told_that_it_is_utf_8() -> None:
    made = log_csv([session(note="Größe ż 漢")], {}, {})
    assert made.startswith(b"\xef\xbb\xbf")
    assert rows(made)[1][-1] == "Größe ż 漢"


@given(TEXT, TEXT, TEXT)
def test_no_cell_starts_a_formula(note: str, name: str, exercise: str) -> None:
    made = log_csv([session(note=note)], {"ines": name}, {"squat": exercise})
    for row in rows(made)[1:]:
        assert not any(cell.startswith(DANGEROUS) for cell in row)


@given(TEXT)
def test_a_guarded_text_loses_nothing(text: str) -> None:
    assert guarded(text).removeprefix("'") == text.removeprefix("'")
    assert guarded(text) in (text, f"'{text}")
