"""The catalog, once, and the Dipper's own week, planned once."""

from __future__ import annotations

import datetime

import pytest

from catalog.load import load_catalog
from core.house.wishes import DayWish, Goals, WeekWishes
from core.knowledge import Catalog
from core.plan.model import Week, WeekRequest
from core.plan.week import plan_week
from tests.dipper import INES, dipper

EVENING, MORNING = datetime.time(18), datetime.time(10)


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    return load_catalog()


@pytest.fixture(scope="session")
def asked() -> WeekRequest:
    """What Ines wishes: six days, mostly on the towpath."""
    days = (
        DayWish(weekday=0, minutes=40, place_id="towpath", start=EVENING),
        DayWish(weekday=1, minutes=50, place_id="towpath", start=EVENING),
        DayWish(weekday=2, minutes=30, place_id="cabin"),
        DayWish(weekday=4, minutes=30, place_id="towpath", start=EVENING),
        DayWish(weekday=5, minutes=50, place_id="towpath", start=MORNING),
        DayWish(weekday=6, minutes=60, place_id="towpath", start=MORNING),
    )
    return WeekRequest(
        wishes=WeekWishes(days=days, goals=Goals(strength=1.0, run_walk=0.6, loaded_walk=0.4, mobility=0.4))
    )


@pytest.fixture(scope="session")
def week(catalog: Catalog, asked: WeekRequest) -> Week:
    """Ines's week."""
    return plan_week(asked, dipper(), INES, catalog)
