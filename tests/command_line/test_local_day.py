"""The day a command works with is the day where the person is."""

from __future__ import annotations

import datetime

import time_machine

from gui.command_line.main import now


def test_the_local_day_counts_when_universal_time_is_a_day_behind() -> None:
    moment = datetime.datetime(2026, 6, 28, 23, 30, tzinfo=datetime.UTC)
    with time_machine.travel(moment.timestamp()):  # a moment with a zone would move the tests to that zone
        assert now().date() == datetime.date(2026, 6, 29)  # a Monday: a week planned now begins today
        assert now().utcoffset() == datetime.timedelta(hours=1)
