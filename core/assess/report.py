"""Everything one result says, for a screen: its place in a norm, the change since, an estimate, strength."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from core.assess.aerobic import Answer
from core.assess.model import NormTable, Protocol
from core.assess.norms import NoNorm, Place, place_of
from core.assess.retest import Change, change_between
from core.assess.strength import capacity_from_test
from core.assess.vo2 import oxygen_uptake
from core.exercise.model import Exercise
from core.house.log import LoggedTest
from core.house.model import Capacity, Person


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """What a result says. `change` is None for a first result, the others where the test has nothing of the kind."""

    protocol: Protocol
    result: LoggedTest
    place: Place | NoNorm
    change: Change | None = None
    oxygen: Answer | None = None
    capacity: Capacity | None = None


def report_on(
    protocol: Protocol,
    result: LoggedTest,
    earlier: Iterable[LoggedTest],
    person: Person,
    norms: tuple[NormTable, ...],
    exercises: Mapping[str, Exercise],
) -> Report:
    """The report on a result; it is compared with the first earlier one of the same test, usually the baseline."""
    before = [one for one in earlier if one.test_id == protocol.id and one.date <= result.date and one.id != result.id]
    before.sort(key=lambda one: (one.date, one.id))
    return Report(
        protocol=protocol,
        result=result,
        place=place_of(norms, protocol, result.result, age=person.age_on(result.date), sex=person.sex),
        change=change_between(protocol, before[0], result) if before else None,
        oxygen=oxygen_uptake(protocol, result, person),
        capacity=capacity_from_test(protocol, exercises[protocol.exercise_id], result, person.body_mass_kg),
    )
