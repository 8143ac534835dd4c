"""The log as a table for a spreadsheet: one row a set. No cell can start a formula.

A text that begins like a formula (= + - @, a tab or a line end, also in their wide forms) gets an apostrophe in front.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping

from core.house.log import LoggedSession, LoggedSet

HEADINGS = (
    "date",
    "person",
    "exercise",
    "exercise_id",
    "set",
    "reps",
    "time_s",
    "distance_m",
    "load_kg",
    "load_u95_kg",
    "effort",
    "set_note",
    "session_minutes",
    "session_effort",
    "session_note",
)
STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
GUARD = "'"


def log_csv(sessions: Iterable[LoggedSession], people: Mapping[str, str], exercises: Mapping[str, str]) -> bytes:
    """The sessions as UTF-8 with a byte order mark, so that a spreadsheet reads the letters; names by id."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(HEADINGS)
    for session in sessions:
        writer.writerows(_rows(session, people, exercises))
    return text.getvalue().encode("utf-8-sig")


def _rows(
    session: LoggedSession, people: Mapping[str, str], exercises: Mapping[str, str]
) -> Iterator[tuple[str | float | None, ...]]:
    """A row a set; a session without sets still gets one."""
    sets: tuple[LoggedSet | None, ...] = session.sets or (None,)
    person = guarded(people.get(session.person_id, session.person_id))
    whole = (session.minutes, session.effort, guarded(session.note))
    for number, one in enumerate(sets, start=1):
        if one is None:
            yield (session.date.isoformat(), person, *("",) * 10, *whole)
            continue
        name = guarded(exercises.get(one.exercise_id, one.exercise_id))
        amounts = (one.reps, one.time_s, one.distance_m, one.load_kg, one.u95_kg, one.effort)
        facts = (name, guarded(one.exercise_id), number, *amounts, guarded(one.note))
        yield (session.date.isoformat(), person, *facts, *whole)


def guarded(text: str) -> str:
    """`text` as a cell that no spreadsheet takes for a formula."""
    return GUARD + text if text.startswith(STARTS_A_FORMULA) else text
