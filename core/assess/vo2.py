"""From a test result to an estimate of oxygen uptake, by the one equation that belongs to the test."""

from __future__ import annotations

from core.assess.aerobic import Answer, NoEstimate, Runner, cureton_1995, george_1993, kline_1987, larsen_2002
from core.assess.model import Protocol
from core.house.log import LoggedTest
from core.house.model import Person

WALK, JOG, RUN, STEADY = "mile_walk", "mile_jog", "mile_run", "mile_and_half_steady"


def oxygen_uptake(protocol: Protocol, result: LoggedTest, person: Person) -> Answer | None:
    """The estimate or why there is none; None for a test that says nothing of oxygen uptake."""
    runner = Runner(body_mass_kg=person.body_mass_kg, age=person.age_on(result.date), sex=person.sex)
    pulse = result.beside_value("pulse_bpm")
    time_min = result.result
    if protocol.id == RUN:
        return cureton_1995(runner, person.height_cm, time_min)
    if protocol.id == STEADY:
        return larsen_2002(runner, time_min, pulse)
    if protocol.id not in (WALK, JOG):
        return None
    if pulse is None:
        return NoEstimate(why="The equation needs the pulse at the end.")
    return kline_1987(runner, time_min, pulse) if protocol.id == WALK else george_1993(runner, time_min, pulse)
