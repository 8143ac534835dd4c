"""What a swap aims at: the dose to hold, the share of the maximum it stands for, and what that says of the person."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.effort.bout import pace_m_s
from core.effort.capacity import EXPERIENCE_PLACE, Prescription, ceiling, one_rep_from_set, own_range_part
from core.effort.dose import default_prescription, target_share
from core.effort.load import effective_kg
from core.exercise.model import DoseKind, Exercise
from core.exercise.strength import is_strength
from core.fit.first_load import load_limits_kg
from core.house.model import Person
from core.knowledge import Catalog
from core.quantity import Measured, Origin
from core.swap.form import is_loaded
from core.swap.model import Cause, SwapRequest

EASIER_SHARE, HARDER_SHARE = 0.8, 1.1
"""Too hard asks for about a fifth less effective load, too easy for a tenth more (the 2 to 10 % rule's upper end)."""
LEAST_SHARE = 0.05
USUAL_LEVEL = (2, 3, 4)
"""The level that suits someone new, with some experience, trained (judgement)."""
SECOND_STEP = 0.5
LONGEST_HOLD_S = 180


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """The prescription held; the share of the maximum `asked` for and the one `wanted`; the known one-rep load.

    Shares are None where repetitions don't follow a load. `level` is the level looked for, `suits` the highest
    that comes easily. `steps` says of movements
    the catalog names as the next easier (harder) ones how near they are: 1 the very next, 0.5 the one after.
    """

    prescription: Prescription
    asked: float | None
    wanted: float | None
    known: tuple[Exercise, Measured] | None
    level: int
    suits: int
    steps: Mapping[str, float]


def aim_of(request: SwapRequest, person: Person, catalog: Catalog) -> Aim:
    """What the request asks for, of this person."""
    exercise = request.asked
    prescription = _in_its_own_count(request.prescription or default_prescription(exercise, person), exercise)
    level = _level(request, person)
    usual = USUAL_LEVEL[EXPERIENCE_PLACE[person.experience]]
    aim = Aim(
        prescription=prescription,
        asked=None,
        wanted=None,
        known=None,
        level=level,
        suits=level if request.cause is Cause.TOO_HARD else max(level, usual),
        steps=_steps(request, catalog),
    )
    if not is_strength(exercise):
        return aim
    known = _known(request, person)
    asked = _asked_share(request, prescription, person, known)
    return replace(aim, asked=asked, wanted=_wanted_share(request, prescription, asked), known=known)


def _wanted_share(request: SwapRequest, prescription: Prescription, asked: float) -> float:
    """A step down or up where that is asked for; from the body alone as far as the usual repetitions take."""
    if request.cause is Cause.TOO_HARD:
        return min(EASIER_SHARE * asked, target_share(prescription, request.asked))
    if request.cause is not Cause.TOO_EASY:
        return asked
    usual = 0.0 if is_loaded(request.asked) else target_share(prescription, request.asked)
    return min(max(HARDER_SHARE * asked, usual), 1.0)


def _in_its_own_count(written: Prescription, exercise: Exercise) -> Prescription:
    """A distance written for what is timed becomes the time it takes at a usual pace."""
    if written.distance_m is None or exercise.dose is not DoseKind.TIME:
        return written
    return replace(written, seconds=written.distance_m / pace_m_s(exercise), distance_m=None)


def _level(request: SwapRequest, person: Person) -> int:
    """The level of the movement asked for, not above what suits the person, and a step from it as the cause says."""
    asked = request.asked.level
    if request.cause is Cause.TOO_EASY:
        return min(asked + 1, 5)
    suits = min(asked, USUAL_LEVEL[EXPERIENCE_PLACE[person.experience]])
    return max(1, suits - 1) if request.cause is Cause.TOO_HARD and suits == asked else suits


def _steps(request: SwapRequest, catalog: Catalog) -> Mapping[str, float]:
    """The next movements along the easier (harder) links."""
    if request.cause in (Cause.NO_GEAR, Cause.NO_ROOM):
        return {}
    found: dict[str, float] = {}
    for one in _linked(request.asked, request.cause, catalog):
        for after in _linked(one, request.cause, catalog):
            found[after.id] = SECOND_STEP
    return found | {one.id: 1.0 for one in _linked(request.asked, request.cause, catalog)}


def _linked(exercise: Exercise, cause: Cause, catalog: Catalog) -> list[Exercise]:
    ids = exercise.harder if cause is Cause.TOO_EASY else exercise.easier
    return [catalog.exercise_by_id[one] for one in ids if one in catalog.exercise_by_id]


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
    request: SwapRequest, prescription: Prescription, person: Person, known: tuple[Exercise, Measured] | None
) -> float:
    """What the repetitions say; with the body alone what it moves against the person's ceiling, where that is less.

    A load that its own range keeps below the strength of the pattern (a good morning is no deadlift) counts as less.
    What is too hard may well be more than its repetitions say.
    """
    exercise = request.asked
    by_reps = target_share(prescription, exercise)
    body_kg = effective_kg(exercise, 0.0, person.body_mass_kg)
    too_hard = request.cause is Cause.TOO_HARD
    share = min(max(body_kg / ceiling(exercise, person).one_rep.value, LEAST_SHARE), 1.0)
    if known is None and is_loaded(exercise):
        by_reps *= own_range_part(exercise, person)
        return max(by_reps, share) if too_hard else by_reps
    if known is not None or body_kg <= 0:
        return by_reps
    return share if too_hard else min(share, by_reps)


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
