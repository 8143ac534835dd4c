"""Swap a movement: filter, bind, dose, rank. The same input gives the same answer; ties break by id."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from core.effort.capacity import (
    Ceiling,
    Prescription,
    carries_over,
    ceiling,
    is_strength,
    one_rep_from_set,
)
from core.effort.dose import Dose, default_prescription, equivalent_dose, target_share, wanted_load_kg
from core.effort.load import effective_kg
from core.exercise.model import DoseKind, Exercise
from core.fit.bind import bind
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.quantity import Measured, Origin
from core.swap.closeness import NEAR_ENOUGH, muscle_closeness, pattern_closeness, set_up_closeness
from core.swap.filters import reason_to_leave_out
from core.swap.model import CAUSE_WEIGHTS, Answer, Cause, Closeness, LeftOut, Swap, SwapRequest, Weights

EASIER_SHARE, HARDER_SHARE = 0.8, 1.1
"""Too hard asks for about a fifth less effective load, too easy for a tenth more (the 2 to 10 % rule's upper end)."""
FEWEST_REPS_OFFERED = 1


@dataclass(frozen=True, slots=True)
class _Aim:
    """The dose held: prescription, share of the maximum, and the known one-rep load with its exercise."""

    prescription: Prescription
    share: float | None
    known: tuple[Exercise, Measured] | None


def swap(request: SwapRequest, setting: Setting, catalog: Catalog) -> Swap:
    """The nearest movements that can be done here instead of `request.asked`, best first, and all that was left out."""
    aim = _aim(request, setting)
    answers: list[Answer] = []
    left_out: list[LeftOut] = []
    for exercise in catalog.exercises:
        if pattern_closeness(request.asked, exercise) < NEAR_ENOUGH:
            continue
        made = _answer(exercise, request, setting, aim)
        if isinstance(made, str):
            left_out.append(LeftOut(exercise_id=exercise.id, name=exercise.name, why=made))
        else:
            answers.append(made)
    answers.sort(key=lambda answer: (-answer.closeness.total, answer.exercise.id))
    return Swap(
        asked=request.asked, answers=tuple(answers), left_out=tuple(left_out), note=_note(request, setting, aim, answers)
    )


def _aim(request: SwapRequest, setting: Setting) -> _Aim:
    asked, person = request.asked, setting.person
    prescription = request.prescription or default_prescription(asked, person)
    if not is_strength(asked):
        return _Aim(prescription, None, None)
    share = target_share(prescription, asked)
    known = None
    if prescription.load_kg is not None and prescription.reps is not None:
        load = Measured(prescription.load_kg, 0.0, Origin.EXACT)
        one_rep = one_rep_from_set(
            asked,
            load=load,
            reps=prescription.reps,
            effort=prescription.effort,
            body_mass_kg=person.body_mass_kg,
        )
        known = (asked, one_rep) if one_rep.value > 0 else None
    factor = {Cause.TOO_HARD: EASIER_SHARE, Cause.TOO_EASY: HARDER_SHARE}.get(request.cause, 1.0)
    return _Aim(prescription, min(share * factor, 1.0), known)


def _answer(exercise: Exercise, request: SwapRequest, setting: Setting, aim: _Aim) -> Answer | str:
    reason = reason_to_leave_out(exercise, request, setting)
    if reason:
        return reason
    top = ceiling(exercise, setting.person, aim.known)
    wanted = None
    if aim.share is not None and is_strength(exercise) and exercise.load_need is not None:
        wanted = max(0.0, wanted_load_kg(exercise, top, setting.person, aim.share))
    bound = bind(exercise, setting, wanted_kg=wanted)
    if isinstance(bound, Missing):
        return "; ".join(bound.why)
    dose = equivalent_dose(exercise, bound, setting.person, top, _prescription_for(exercise, request, aim, setting), aim.share)
    if dose.share is not None and (dose.share >= 1 or (dose.reps is not None and dose.reps[1] <= FEWEST_REPS_OFFERED)):
        return _beyond(exercise, bound, setting, top)
    return _ranked(exercise, bound, dose, request, setting, aim)


def _beyond(exercise: Exercise, bound: Binding, setting: Setting, top: Ceiling) -> str:
    moved = effective_kg(exercise, bound.load_kg, setting.person.body_mass_kg, height_cm=bound.height_cm)
    return f"it moves {moved:.0f} kg a side, about your most in one repetition ({top.one_rep.value:.0f} kg)"


def _prescription_for(exercise: Exercise, request: SwapRequest, aim: _Aim, setting: Setting) -> Prescription:
    """The asked dose where it is counted alike, else this exercise's usual one with the asked sets and effort."""
    if exercise.dose is request.asked.dose:
        return aim.prescription
    usual = default_prescription(exercise, setting.person)
    return Prescription(
        sets=aim.prescription.sets if exercise.dose is not DoseKind.TIME or exercise.typical[1] <= 180 else usual.sets,
        reps=usual.reps,
        seconds=usual.seconds,
        distance_m=usual.distance_m,
        effort=aim.prescription.effort,
    )


def _ranked(
    exercise: Exercise, bound: Binding, dose: Dose, request: SwapRequest, setting: Setting, aim: _Aim
) -> Answer:
    weights = CAUSE_WEIGHTS[request.cause]
    closeness = _closeness(exercise, bound, dose, request, weights)
    return Answer(
        exercise=exercise,
        binding=bound,
        dose=dose,
        closeness=closeness,
        why=tuple(_reasons(exercise, bound, dose, request)),
        cautions=bound.cautions,
    )


def _closeness(exercise: Exercise, bound: Binding, dose: Dose, request: SwapRequest, weights: Weights) -> Closeness:
    pattern = pattern_closeness(request.asked, exercise)
    muscles = muscle_closeness(request.asked, exercise)
    steps = abs(exercise.level - _aimed_level(request))
    effort = max(0.0, dose.reachable - weights.level_step * steps)
    set_up = set_up_closeness(bound.set_up_s)
    total = (
        weights.pattern * pattern + weights.muscles * muscles + weights.effort * effort + weights.set_up * set_up
    )
    return Closeness(total=total, pattern=pattern, muscles=muscles, effort=effort, set_up=set_up)


def _aimed_level(request: SwapRequest) -> int:
    step = {Cause.TOO_HARD: -1, Cause.TOO_EASY: 1}.get(request.cause, 0)
    return request.asked.level + step


def _reasons(exercise: Exercise, bound: Binding, dose: Dose, request: SwapRequest) -> Iterator[str]:
    asked = request.asked
    if exercise.id == asked.id:
        yield "The same movement with what you have."
    elif exercise.main_pattern is asked.main_pattern:
        yield "Same pattern."
    else:
        yield "A neighbouring pattern."
    if bound.load is not None:
        yield f"{bound.load.mass.value:.1f} kg is the nearest load you can make to the effort asked for."
    for held in bound.fixtures:
        if held.thing_id:
            height = f", {held.height_cm:.0f} cm high" if held.height_cm is not None else ""
            yield f"{held.name}{height}: {held.reason}."
    if exercise.side_share >= 0.75 > asked.side_share and carries_over(exercise):
        yield "One side takes the load, so less of it does as much."
    if request.cause is Cause.TOO_LOUD:
        yield "No impact."
    yield from dose.notes


def _note(request: SwapRequest, setting: Setting, aim: _Aim, answers: list[Answer]) -> str:
    """What was asked for as effective load, and whether this house reaches it."""
    asked, person = request.asked, setting.person
    load_kg = request.prescription.load_kg if request.prescription is not None else None
    if load_kg is None or not is_strength(asked):
        return "" if answers else "Nothing you own can stand in here; the left-out list says what each would need."
    moved = 2 * effective_kg(asked, load_kg, person.body_mass_kg) if asked.side_share <= 0.5 else 0.0
    start = f"{load_kg:.0f} kg"
    if moved:
        start = f"{load_kg:.0f} kg plus the part of you that moves is {moved:.0f} kg"
    reached = max((_moved(answer, person.body_mass_kg) for answer in answers), default=0.0)
    aimed = effective_kg(asked, load_kg, person.body_mass_kg)
    if reached >= 0.95 * aimed:
        return f"{start}. You can match that here."
    return f"{start}. Nothing you own reaches that, so the best answers ask more of each side or more reps."


def _moved(answer: Answer, body_mass_kg: float) -> float:
    height = answer.binding.height_cm
    return effective_kg(answer.exercise, answer.binding.load_kg, body_mass_kg, height_cm=height)
