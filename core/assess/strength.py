"""What a strength test says of a person's capacity, in the form the dose of every movement is worked out from."""

from __future__ import annotations

from collections.abc import Iterable

from core.assess.model import Protocol
from core.effort.capacity import one_rep_from_set
from core.effort.relation import LONGEST_REPS
from core.exercise.model import Exercise
from core.house.log import LoggedTest
from core.house.model import Capacity, Person
from core.quantity import Measured, Origin

LOAD_SHARE_U = 0.02
"""Relative doubt of a load typed beside a result, where no scale is named; assumed."""


def capacity_from_test(
    protocol: Protocol, exercise: Exercise, result: LoggedTest, body_mass_kg: float
) -> Capacity | None:
    """The one-repetition load a test stands for; None where it says nothing of strength.

    That is so for tests of endurance, for no repetition at all, and past 30 repetitions, where the relation of
    repetitions and load says nothing any more.
    """
    reps = result.result
    if not protocol.sets_capacity or not 1 <= reps + protocol.reps_left <= LONGEST_REPS or reps < 1:
        return None
    load_kg = result.beside_value("load_kg") or 0.0
    load = Measured(load_kg, LOAD_SHARE_U * load_kg, Origin.ESTIMATE)
    effort = 10.0 - protocol.reps_left
    one_rep = one_rep_from_set(exercise, load=load, reps=reps, effort=effort, body_mass_kg=body_mass_kg)
    told_by = f"{protocol.name.lower()} on {result.date.isoformat()}"
    return Capacity(
        pattern=exercise.main_pattern, one_rep_kg=one_rep, exercise_id=exercise.id, told_by=f"your test, {told_by}"
    )


def capacities_after(
    protocol: Protocol, exercise: Exercise, result: LoggedTest, person: Person
) -> tuple[Capacity, ...] | None:
    """The person's capacities once this result counts; None where the test says nothing of strength."""
    found = capacity_from_test(protocol, exercise, result, person.body_mass_kg)
    return None if found is None else with_capacities(person, (found,))


def with_capacities(person: Person, found: Iterable[Capacity]) -> tuple[Capacity, ...]:
    """The person's capacities with these (given oldest first) in place of earlier ones of the same movement."""
    new = tuple({one.exercise_id: one for one in found}.values())
    replaced = {one.exercise_id for one in new}
    return (*new, *(one for one in person.capacities if one.exercise_id not in replaced))
