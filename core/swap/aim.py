"""What a swap aims at: the dose to hold, the share of the maximum it stands for, and what that says of the person."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.effort.capacity import Prescription, ceiling, one_rep_from_set
from core.effort.dose import default_prescription, target_share
from core.effort.load import effective_kg
from core.exercise.model import DoseKind, Exercise
from core.exercise.strength import is_strength
from core.fit.first_load import load_limits_kg
from core.house.model import Person
from core.quantity import Measured, Origin
from core.swap.model import Cause, SwapRequest

EASIER_SHARE, HARDER_SHARE = 0.8, 1.1
"""Too hard asks for about a fifth less effective load, too easy for a tenth more (the 2 to 10 % rule's upper end)."""
LEAST_SHARE = 0.05
LONGEST_HOLD_S = 180


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """The prescription held; the share of the maximum `asked` for and the one `wanted`; the known one-rep load.

    Shares are None where repetitions don't follow a load. `level` is the level looked for.
    """

    prescription: Prescription
    asked: float | None
    wanted: float | None
    known: tuple[Exercise, Measured] | None
    level: int


def aim_of(request: SwapRequest, person: Person) -> Aim:
    """What the request asks for, of this person."""
    exercise = request.asked
    prescription = request.prescription or default_prescription(exercise, person)
    level = exercise.level + {Cause.TOO_HARD: -1, Cause.TOO_EASY: 1}.get(request.cause, 0)
    if not is_strength(exercise):
        return Aim(prescription=prescription, asked=None, wanted=None, known=None, level=level)
    known = _known(request, person)
    asked = _asked_share(exercise, prescription, person, known)
    factor = {Cause.TOO_HARD: EASIER_SHARE, Cause.TOO_EASY: HARDER_SHARE}.get(request.cause, 1.0)
    return Aim(prescription=prescription, asked=asked, wanted=min(asked * factor, 1.0), known=known, level=level)


def _known(request: SwapRequest, person: Person) -> tuple[Exercise, Measured] | None:
    """A written set speaks for the person: at its load, or with the body alone where the movement takes no load."""
    exercise, written = request.asked, request.prescription
    if written is None or written.reps is None:
        return None
    load_kg = written.load_kg
    if load_kg is None:
        if exercise.load_need is not None:
            return None
        load_kg = 0.0
    one_rep = one_rep_from_set(
        exercise,
        load=Measured(load_kg, 0.0, Origin.EXACT),
        reps=written.reps,
        effort=written.effort,
        body_mass_kg=person.body_mass_kg,
    )
    return (exercise, one_rep) if one_rep.value > 0 else None


def _asked_share(
    exercise: Exercise, prescription: Prescription, person: Person, known: tuple[Exercise, Measured] | None
) -> float:
    """With the body alone, what it moves against the person's ceiling; else what the repetitions say."""
    body_kg = effective_kg(exercise, 0.0, person.body_mass_kg)
    if known is None and exercise.load_need is None and body_kg > 0:
        return min(max(body_kg / ceiling(exercise, person).one_rep.value, LEAST_SHARE), 1.0)
    return target_share(prescription, exercise)


def prescription_for(exercise: Exercise, request: SwapRequest, aim: Aim, person: Person) -> Prescription:
    """The asked dose where it is counted alike, else this exercise's usual one with the asked sets and effort."""
    if exercise.dose is request.asked.dose:
        return aim.prescription
    usual = default_prescription(exercise, person)
    long = exercise.dose is DoseKind.TIME and exercise.typical[1] > LONGEST_HOLD_S
    return replace(usual, sets=usual.sets if long else aim.prescription.sets, effort=aim.prescription.effort)


def like_asked_kg(exercise: Exercise, request: SwapRequest, person: Person) -> float | None:
    """For a carry or hold with a written load: the same place in this exercise's own range, kg; None without one."""
    written, there, here = request.prescription, request.asked.load_need, exercise.load_need
    if written is None or written.load_kg is None or there is None or here is None:
        return None
    low_kg, high_kg = load_limits_kg(there, person.body_mass_kg)
    place = (written.load_kg - low_kg) / (high_kg - low_kg) if high_kg > low_kg else 0.5
    own_low_kg, own_high_kg = load_limits_kg(here, person.body_mass_kg)
    return own_low_kg + min(max(place, 0.0), 1.0) * (own_high_kg - own_low_kg)
