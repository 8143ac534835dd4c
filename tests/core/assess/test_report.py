"""One report on a result: its place, the change since the baseline, the estimate, the strength it shows."""

from __future__ import annotations

from dataclasses import replace

from core.assess.aerobic import Estimate
from core.assess.norms import NoNorm, Place
from core.assess.report import report_on
from core.assess.retest import Verdict
from core.house.model import Sex
from core.knowledge import Catalog
from tests.core.assess.examples import JULY, MAY, result
from tests.dipper import INES, TOMAS

SENIOR = replace(INES, birth_year=1960, sex=Sex.FEMALE)


def test_a_first_result_has_a_place_and_no_change(catalog: Catalog) -> None:
    chair = catalog.protocol_by_id["chair_stand_30"]
    found = report_on(chair, result(chair, 9), (), SENIOR, catalog.norms, catalog.exercise_by_id)
    assert isinstance(found.place, Place)
    assert found.place.band == "below average"
    assert (found.change, found.oxygen, found.capacity) == (None, None, None)


def test_a_retest_is_compared_with_the_first_result_of_the_same_test(catalog: Catalog) -> None:
    chair = catalog.protocol_by_id["chair_stand_30"]
    plank = catalog.protocol_by_id["plank"]
    earlier = (result(plank, 60), result(chair, 11), result(chair, 13, MAY.replace(day=20)))
    found = report_on(chair, result(chair, 14, JULY), earlier, SENIOR, catalog.norms, catalog.exercise_by_id)
    assert found.change is not None
    assert (found.change.amount, found.change.verdict) == (3, Verdict.BETTER)


def test_a_walk_gives_an_estimate_and_a_squat_a_capacity(catalog: Catalog) -> None:
    walk, squat = catalog.protocol_by_id["mile_walk"], catalog.protocol_by_id["squat_load"]
    walker = replace(SENIOR, birth_year=1986)
    told = report_on(walk, result(walk, 15, pulse_bpm=130), (), walker, catalog.norms, catalog.exercise_by_id)
    assert isinstance(told.oxygen, Estimate)
    assert isinstance(told.place, NoNorm)
    held = report_on(squat, result(squat, 12, load_kg=15), (), TOMAS, catalog.norms, catalog.exercise_by_id)
    assert held.capacity is not None
