"""Which kind each week of a block is: a baseline, building weeks with an easy week now and then, a retest.

Reported easy weeks come every 5 to 6 weeks and last about a week, with less volume and effort and the same exercises
(survey preprint 2023, 246 people); every fourth week here, which is on the careful side (judgement).
"""

from __future__ import annotations

from core.errors import InputError
from core.plan.block_model import BLOCK_WEEKS
from core.plan.model import Wave

EASY_EVERY = 4
TEST, BUILD, EASY, RETEST = "test", "build", "easy", "retest"
LIGHT_KINDS = (TEST, EASY, RETEST)
LIGHT_WAVE_SETS = 0.5
TEST_WAVE = Wave(name=TEST, sets=LIGHT_WAVE_SETS, effort_shift=-1.0)
EASY_WAVE = Wave(name=EASY, sets=LIGHT_WAVE_SETS, effort_shift=-1.0)
RETEST_WAVE = Wave(name=RETEST, sets=LIGHT_WAVE_SETS, effort_shift=-1.0)
BUILD_WAVES = (
    Wave(name=BUILD),
    Wave(name=BUILD, effort_shift=0.5),
    Wave(name=BUILD, effort_shift=1.0),
)


def waves(weeks: int) -> tuple[Wave, ...]:
    """The wave of each week, the baseline first (so one more than `weeks`).

    No easy week stands right before the retest, which is a light week itself.
    """
    low, high = BLOCK_WEEKS
    if not low <= weeks <= high:
        raise InputError(f"{weeks} weeks", f"is no length for a block ({low} to {high})", "choose one in that range")
    found, build = [TEST_WAVE], 0
    for number in range(1, weeks):
        if number % EASY_EVERY == 0 and number != weeks - 1:
            found.append(EASY_WAVE)
            build = 0
        else:
            found.append(BUILD_WAVES[min(build, len(BUILD_WAVES) - 1)])
            build += 1
    return (*found, RETEST_WAVE)


def steps_at(order: tuple[Wave, ...]) -> tuple[int, ...]:
    """How many steps forward each week stands: one a building week, none in between."""
    found: list[int] = []
    step = -1
    for wave in order:
        step += wave.name == BUILD
        found.append(max(step, 0))
    return tuple(found)
