"""The coverage report counts entries by pattern, level, use and demand."""

from __future__ import annotations

from catalog.coverage import STRENGTH_PATTERNS, coverage, needs_common_things_only
from catalog.exercises import load_exercises
from core.exercise.model import FAMILY_OF, Demand, Family, Need, Pattern, Use
from tests.catalog.test_check_exercises import one


def test_a_pattern_row_counts_entries_home_entries_and_levels() -> None:
    squat = ((Pattern.SQUAT, 1.0), (Pattern.HINGE, 0.5))
    report = coverage(
        [
            one("a_plain", patterns=squat, level=1),
            one("b_band", patterns=squat, level=3, needs=(Need(uses=(Use.BAND,)),)),
            one("c_gym", patterns=squat, level=4, needs=(Need(uses=(Use.BARBELL,)),)),
            one("d_spare", patterns=squat, level=5, demands=frozenset({Demand.KNEELING})),
        ]
    )
    row = next(row for row in report.patterns if row.pattern is Pattern.SQUAT)
    assert (row.entries, row.home, row.common_only) == (4, 3, 2)
    assert row.levels == {1: 1, 2: 0, 3: 0, 4: 0, 5: 1}
    assert row.bands == {"1-2": 1, "3": 0, "4-5": 1}
    assert next(row for row in report.patterns if row.pattern is Pattern.HINGE).entries == 0
    assert (report.exercises, report.gym_ids) == (4, ("c_gym",))
    assert (report.uses[Use.BAND], report.uses[Use.BARBELL], report.uses[Use.HUG]) == (1, 1, 0)
    assert report.demands[Demand.KNEELING] == 1


def test_the_report_reads_as_lines() -> None:
    lines = list(coverage([one("a_plain", patterns=((Pattern.SQUAT, 1.0),), level=2)]).lines())
    assert lines[0] == "1 exercises, 0 of them gym movements to ask about"
    assert lines[1] == "squat: 1 entries, 1 at home, 1 with common things (level 1-2: 1, level 3: 0, level 4-5: 0)"


def test_a_need_is_common_when_one_of_its_uses_is() -> None:
    assert needs_common_things_only(one("hang_or_wall", needs=(Need(uses=(Use.HANG_BAR, Use.WALL)),)))
    assert not needs_common_things_only(one("hang", needs=(Need(uses=(Use.HANG_BAR,)),)))


def test_every_family_is_covered_and_every_strength_pattern_reaches_chair_level() -> None:
    report = coverage(load_exercises())
    covered = {FAMILY_OF[row.pattern] for row in report.patterns if row.home}
    assert covered == set(Family)
    for row in report.patterns:
        if row.pattern in STRENGTH_PATTERNS:
            assert row.levels[1] >= 1, row.pattern
    assert len(report.gym_ids) >= 50
    assert all(report.uses[use] for use in Use)
    assert all(report.demands[demand] for demand in Demand)
