"""A clock that is wrong, summer time and travel change nothing that was kept, and take no copy away."""

from __future__ import annotations

import datetime
import os
import time
from collections.abc import Iterator
from dataclasses import replace
from zoneinfo import ZoneInfo

import pytest
import time_machine

from core.store.backup import back_up, backups
from core.store.commands import AddSession, SaveWeek, SetFill
from core.store.paths import DataFolder
from core.store.values import SavedWeek
from core.things.model import Fill
from tests.core.store.examples import SESSION, open_record

LONDON = ZoneInfo("Europe/London")
ZONES = ("Pacific/Auckland", "America/Los_Angeles", "Asia/Kathmandu", "UTC")


@pytest.fixture
def at_home() -> Iterator[None]:
    """The zone the tests run in, again afterwards."""
    before = os.environ["TZ"]
    yield
    os.environ["TZ"] = before
    time.tzset()


def copy_after_a_change(folder: DataFolder, litres: float, moment: datetime.datetime) -> None:
    with open_record(folder.folder) as record:
        record.do(SetFill("carrier", Fill(material_id="water", volume_l=litres)))
    back_up(folder, moment)


def test_copies_of_the_hour_that_comes_twice_stay_in_order(dipper_folder: DataFolder) -> None:
    first = datetime.datetime(2026, 10, 25, 1, 40, tzinfo=LONDON)
    second = first.replace(minute=10, fold=1)
    copy_after_a_change(dipper_folder, 1, first)
    copy_after_a_change(dipper_folder, 2, second)
    newest, oldest = backups(dipper_folder)
    assert newest.made - oldest.made == datetime.timedelta(minutes=30)


@pytest.mark.parametrize("years", [-10, 10])
def test_a_clock_that_jumps_years_takes_no_copy_away(dipper_folder: DataFolder, years: int) -> None:
    right = datetime.datetime(2026, 5, 4, 12, 0, tzinfo=datetime.UTC)
    moments = [right, right.replace(year=right.year + years), right + datetime.timedelta(hours=1)]
    for litres, moment in enumerate(moments, start=1):
        copy_after_a_change(dipper_folder, litres, moment)
    assert sorted(backup.made for backup in backups(dipper_folder)) == sorted(moments)


@pytest.mark.parametrize("zone", ZONES)
def test_the_days_of_a_plan_and_a_log_are_the_same_in_every_zone(
    dipper_folder: DataFolder, zone: str, at_home: None
) -> None:
    """A day is kept as the day it was, without a zone: who travels finds the same Monday and the same session."""
    new_year = replace(SESSION, id="new_year", date=datetime.date(2026, 1, 1))
    week = SavedWeek(starts=datetime.date(2026, 3, 23), version=1, plan="{}")  # summer time begins in it
    with open_record(dipper_folder.folder) as record:
        record.do(AddSession(new_year))
        record.do(SaveWeek("ines", week))
        kept = record.contents()
    os.environ["TZ"] = zone
    time.tzset()
    later = datetime.datetime(2031, 12, 31, 23, 59, tzinfo=ZoneInfo(zone))
    with time_machine.travel(later), open_record(dipper_folder.folder) as record:
        assert record.contents() == kept
        assert record.sessions(since=datetime.date(2026, 1, 1))[0] == new_year
        assert record.week("ines") == week
