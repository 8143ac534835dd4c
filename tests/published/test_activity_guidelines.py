"""The amounts a week is measured against: WHO 2020 guidelines and US HHS Physical Activity Guidelines 2018.

Both ask adults for 150 to 300 minutes of moderate or 75 to 150 of vigorous movement a week, and for strength work of
all major muscles on two days or more. That a vigorous minute counts as two moderate ones is remembered (memory).
"""

from __future__ import annotations

from core.plan.checks import AEROBIC_KINDS, MODERATE_MINUTES, STRENGTH_DAYS
from core.plan.model import DayKind


def test_a_week_asks_for_150_minutes_of_moderate_movement() -> None:
    assert MODERATE_MINUTES == 150


def test_a_week_asks_for_strength_on_two_days() -> None:
    assert STRENGTH_DAYS == 2


def test_intervals_count_twice_and_strength_not_at_all() -> None:
    assert AEROBIC_KINDS[DayKind.INTERVALS] == 2
    assert AEROBIC_KINDS[DayKind.EASY] == AEROBIC_KINDS[DayKind.LOADED_WALK] == 1
    assert DayKind.STRENGTH not in AEROBIC_KINDS
