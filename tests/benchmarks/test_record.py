"""Ten years of log, 60,000 sets: opening the record, looking into it and bringing it in. Household invented."""

from __future__ import annotations

import datetime
import json
from dataclasses import replace
from pathlib import Path

import pytest

from core.house.log import LoggedSet
from core.store.changes import HouseFacts
from core.store.commands import LoadRecord
from core.store.contents import Contents, contents_json
from core.store.paths import DataFolder
from core.store.record import Record
from tests.benchmarks.conftest import Ratio, Within
from tests.core.store.examples import INES, MONDAY, SESSION, clock, open_record

DAYS = 4000
EMPTY = Contents(house=HouseFacts(name="Heron"))


def ten_years() -> Contents:
    """4,000 sessions of 15 sets each, on different days of ten years, of twenty movements in turn."""
    first = MONDAY - datetime.timedelta(days=DAYS * 9 // 10)
    sessions = (
        replace(SESSION, id=f"s{day:04d}", date=first + datetime.timedelta(days=day * 9 // 10), sets=_sets(day))
        for day in range(DAYS)
    )
    return Contents(house=HouseFacts(name="Dipper"), people=(INES,), sessions=tuple(sessions))


def _sets(day: int) -> tuple[LoggedSet, ...]:
    return tuple(
        replace(done, exercise_id=f"movement_{(day + place) % 20}") for place, done in enumerate(SESSION.sets * 5)
    )


@pytest.fixture(scope="module")
def long_record(tmp_path_factory: pytest.TempPathFactory) -> DataFolder:
    folder = DataFolder(tmp_path_factory.mktemp("long"))
    with open_record(folder.folder) as record:
        record.do(LoadRecord(record.contents(), ten_years()))
    return folder


def test_a_record_of_ten_years_opens_at_once(long_record: DataFolder, within: Within) -> None:
    within(lambda: Record.open(long_record, clock).close(), bound_ms=100)


def test_the_look_into_a_long_log_is_quick(long_record: DataFolder, within: Within) -> None:
    with Record.look(long_record, clock) as record:
        within(lambda: record.session_days("ines"), bound_ms=100)
        within(lambda: record.sets_of("ines", "movement_3"), bound_ms=100)


def test_bringing_in_ten_years_takes_a_few_times_what_reading_their_text_takes(tmp_path: Path, ratio: Ratio) -> None:
    contents = ten_years()
    text = json.dumps(contents_json(contents))
    with open_record(tmp_path) as record:

        def bring_in() -> None:
            record.do(LoadRecord(record.contents(), EMPTY))
            record.do(LoadRecord(EMPTY, contents))

        ratio(bring_in, lambda: [json.loads(text) for _ in range(10)], bound=6, rounds=2)
