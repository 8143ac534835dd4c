"""A logged session is read as done, partly done, harder or easier than planned."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from core.house.log import LoggedSession, LoggedSet
from core.plan.block_model import What
from core.plan.model import DayPlan
from core.plan.outcome import outcome
from tests.core.plan.block_examples import MONDAY, block_of

STRENGTH = block_of("ines").weeks[1].week.days[1]
WALK = block_of("ines").weeks[1].week.days[6]


def session(*sets: LoggedSet, effort: float | None = None) -> LoggedSession:
    return LoggedSession(id="s1", person_id="ines", date=MONDAY, effort=effort, sets=sets)


def done(day: DayPlan, share: float = 1.0, effort_off: float | None = None) -> Iterator[LoggedSet]:
    """As many of the planned sets as asked for, each this much harder than planned."""
    planned = [block for block in day.blocks for _ in range(block.dose.sets)]
    for block in planned[: round(share * len(planned))]:
        effort = None if effort_off is None else block.dose.effort + effort_off
        yield LoggedSet(exercise_id=block.exercise.id, reps=8, effort=effort)


@pytest.mark.parametrize(
    ("share", "effort_off", "what"),
    [
        (1.0, None, What.DONE),
        (1.0, 0.5, What.DONE),
        (1.0, 1.5, What.HARDER),
        (1.0, -1.5, What.EASIER),
        (0.5, None, What.PARTLY),
        (0.5, 2.0, What.PARTLY),
        (0.0, None, What.PARTLY),
    ],
)
def test_sets_and_effort_say_how_it_went(share: float, effort_off: float | None, what: What) -> None:
    found = outcome(STRENGTH, session(*done(STRENGTH, share, effort_off)), week=1)
    assert found.what is what
    assert found.share == pytest.approx(share, abs=0.05)
    assert (found.week, found.weekday, found.session_id) == (1, 1, "s1")


def test_what_was_done_besides_does_not_count() -> None:
    extra = LoggedSet(exercise_id="burpee", reps=10, effort=10)
    assert outcome(STRENGTH, session(extra), week=1).share == 0
    assert outcome(STRENGTH, session(*done(STRENGTH, effort_off=0.0), extra), week=1).what is What.DONE


def test_without_the_effort_of_sets_that_of_the_session_counts() -> None:
    sets = tuple(done(STRENGTH))
    planned = STRENGTH.blocks[0].dose.effort
    assert outcome(STRENGTH, session(*sets, effort=planned + 2), week=1).what is What.HARDER
    assert outcome(STRENGTH, session(*sets, effort=planned), week=1).what is What.DONE


def test_half_a_walk_is_half_done() -> None:
    walk = WALK.blocks[0]
    half = LoggedSet(exercise_id=walk.exercise.id, time_s=walk.seconds / 2)
    assert outcome(WALK, session(half), week=1).share == pytest.approx(0.5)
    assert outcome(WALK, session(LoggedSet(exercise_id=walk.exercise.id, time_s=9999)), week=1).what is What.DONE
