"""Which tests a person can do here: the movement must be possible, not spared, and the test meant for the age."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from core.assess.model import Protocol
from core.exercise.model import Demand, Exercise
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.model import Experience, Person

PUSHES = ("push_up", "push_up_knees")
LEGS = ("squat_load", "step_up_3_min")
TRUNK = ("plank",)
RUNS, WALKS = ("mile_jog", "mile_walk"), ("mile_walk",)
LOADED = ("loaded_walk",)
OLDER = ("chair_stand_30",)


@dataclass(frozen=True, slots=True, kw_only=True)
class Possible:
    """A test that can be done and the ids of the places for it, in the order of the house."""

    protocol: Protocol
    place_ids: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A test that can't be done, and why."""

    protocol: Protocol
    why: str


def possible_test(
    protocol: Protocol, exercises: Mapping[str, Exercise], settings: Sequence[Setting], age: int | None
) -> Possible | LeftOut:
    """Whether the test can be done by the person of these settings (one per place)."""
    exercise = exercises[protocol.exercise_id]
    if protocol.ages is not None and (age is None or not protocol.ages[0] <= age <= protocol.ages[1]):
        return LeftOut(protocol=protocol, why=f"it is meant for ages {protocol.ages[0]} and up")
    person = settings[0].person if settings else None
    spared = sorted(exercise.demands & person.spares) if person is not None else []
    if spared:
        return LeftOut(protocol=protocol, why=f"you spare {spared[0].replace('_', ' ')}")
    bound = [(setting.place.id, bind(exercise, setting)) for setting in settings]
    places = tuple(place_id for place_id, found in bound if not isinstance(found, Missing))
    if places:
        return Possible(protocol=protocol, place_ids=places)
    why = next((found.why[0] for _, found in bound if isinstance(found, Missing) and found.why), "no place for it")
    return LeftOut(protocol=protocol, why=why)


def usual_tests(
    protocols: Mapping[str, Protocol],
    exercises: Mapping[str, Exercise],
    settings: Sequence[Setting],
    person: Person,
    *,
    age: int | None,
    loaded_walks: bool,
) -> tuple[Possible, ...]:
    """The tests of a baseline week: one each of push, legs, trunk and mile, a loaded walk where one is planned.

    Of each group the first that can be done. Common practice, no source for the choice.
    """
    impact = Demand.IMPACT in person.spares or person.experience is Experience.NEW
    groups = [PUSHES, LEGS, TRUNK, WALKS if impact else RUNS]
    groups += [LOADED] if loaded_walks else []
    groups.append(OLDER)
    found = []
    for group in groups:
        tried = (possible_test(protocols[one], exercises, settings, age) for one in group if one in protocols)
        first = next((one for one in tried if isinstance(one, Possible)), None)
        if first is not None:
            found.append(first)
    return tuple(found)
