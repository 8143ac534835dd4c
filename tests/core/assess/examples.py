"""Tests and results made by hand, for the tests of tests."""

from __future__ import annotations

import datetime

from core.assess.model import Beside, Counted, Protocol, RealChange
from core.house.log import LoggedTest

MAY = datetime.date(2026, 5, 4)
JULY = datetime.date(2026, 7, 6)
SQUATS = Protocol(
    id="squat_load",
    name="Squats holding a load",
    counted=Counted.REPS,
    low=0,
    high=100,
    exercise_id="hug_squat",
    minutes=6,
    steps=("Hold the load.", "Sit down and stand up."),
    stop_rules=("Any sharp pain.",),
    beside=(
        Beside(key="load_kg", name="Load held", unit="kg", low=0.5, high=100),
        Beside(key="pulse_bpm", name="Pulse right after", unit="bpm", low=40, high=220, needed=False),
    ),
    same_beside=("load_kg",),
    sets_capacity=True,
    reps_left=2,
)
MILE = Protocol(
    id="mile_walk",
    name="One mile walk",
    counted=Counted.MINUTES,
    more_is_better=False,
    low=8,
    high=40,
    exercise_id="brisk_walk",
    minutes=22,
    steps=("Walk a mile.", "Take your pulse."),
    stop_rules=("You feel faint.",),
    beside=(Beside(key="pulse_bpm", name="Pulse at the end", unit="bpm", low=50, high=220),),
)
CHAIR = Protocol(
    id="chair_stand_30",
    name="Chair stands in 30 seconds",
    counted=Counted.REPS,
    low=0,
    high=60,
    exercise_id="chair_stand",
    minutes=4,
    steps=("Sit.", "Stand up."),
    stop_rules=("You feel faint.",),
    ages=(60, 110),
    change=RealChange(amount=2.5, told_by="an invented study", source_ids=("x",)),
)


def result(protocol: Protocol, value: float, day: datetime.date = MAY, **beside: float) -> LoggedTest:
    """A result of Ines."""
    return LoggedTest(
        id=f"{protocol.id}-{day}",
        person_id="ines",
        test_id=protocol.id,
        date=day,
        result=value,
        beside=tuple(beside.items()),
    )
