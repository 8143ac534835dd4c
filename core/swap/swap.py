"""Swap a movement: filter, bind, dose, rank. The same input gives the same answer; ties break by id."""

from __future__ import annotations

from collections.abc import Iterator

from core.effort.dose import FEWEST_REPS
from core.errors import InputError
from core.exercise.model import Exercise, Family
from core.fit.fixtures import place_reasons
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.swap.aim import Aim, aim_of
from core.swap.chain import chain_to
from core.swap.closeness import NEAR_ENOUGH, pattern_closeness
from core.swap.filters import effort_reason, highest_level, noise_reason, reason_to_leave_out, spared
from core.swap.here import done_here
from core.swap.model import Answer, Cause, Ground, LeftOut, Swap, SwapRequest
from core.swap.ranking import by_closeness, closeness_of, other_muscle, spread
from core.swap.reasons import note_on, reasons


def swap(request: SwapRequest, setting: Setting, catalog: Catalog) -> Swap:
    """The nearest movements that can be done here instead of `request.asked`, best first, and all that was left out.

    `InputError` where every answer must use a thing that is not here.
    """
    if request.using and all(thing.id != request.using for thing in setting.things):
        raise InputError(request.using, f"is not in {setting.place.name}", "choose a thing that is, or another place")
    setting = setting.sparing(request.spare)
    aim = aim_of(request, setting.person, catalog)
    answers: list[Answer] = []
    left_out: list[LeftOut] = []
    for exercise in related(request.asked, catalog):
        made = _answer(exercise, request, setting, aim)
        if isinstance(made, LeftOut):
            left_out.append(made)
        else:
            answers.append(made)
    answers = spread(sorted(answers, key=by_closeness))
    return Swap(
        asked=request.asked,
        answers=tuple(answers),
        left_out=tuple(left_out),
        note=note_on(request, setting.person, answers),
        chain=_chain(request, setting, aim, catalog),
    )


def related(asked: Exercise, catalog: Catalog) -> Iterator[Exercise]:
    """The exercises near enough by pattern to stand in at all, by id; warm-ups and the like only for each other."""
    easy = asked.family is Family.MOBILITY
    for exercise in catalog.exercises:
        near = pattern_closeness(asked, exercise) >= NEAR_ENOUGH and (exercise.family is Family.MOBILITY) is easy
        if near and not other_muscle(exercise, asked):
            yield exercise


def _answer(exercise: Exercise, request: SwapRequest, setting: Setting, aim: Aim) -> Answer | LeftOut:
    reason = reason_to_leave_out(exercise, request, setting)
    if reason is not None:
        return _left_out(exercise, *reason)
    done = done_here(exercise, request, setting, aim)
    if isinstance(done, str):
        ground = Ground.PLACE if any(True for _ in place_reasons(exercise, setting)) else Ground.THINGS
        return _left_out(exercise, ground, done)
    bound, dose, kept_light = done.bound, done.dose, done.kept_light
    too_much = effort_reason(exercise, dose, request, aim)
    if too_much:
        return _left_out(exercise, Ground.EFFORT, too_much)
    close = closeness_of(exercise, bound, dose, request, aim)
    return Answer(
        exercise=exercise,
        binding=bound,
        dose=dose,
        closeness=close,
        why=tuple(reasons(exercise, bound, dose, request, kept_light=kept_light, same=close.ahead > 0)),
        cautions=bound.cautions,
    )


def _left_out(exercise: Exercise, ground: Ground, why: str) -> LeftOut:
    return LeftOut(exercise_id=exercise.id, name=exercise.name, why=why, ground=ground)


def _chain(request: SwapRequest, setting: Setting, aim: Aim, catalog: Catalog) -> tuple[Exercise, ...]:
    """Where the movement asked for is too hard, or can't be done now for want of strength or of things at home."""
    asked = request.asked
    if request.cause not in (Cause.TOO_HARD, Cause.NO_GEAR) or asked.needs_gym:
        return ()

    def can_do(exercise: Exercise) -> bool | None:
        return _can_do(exercise, request, setting, aim)

    if request.cause is Cause.NO_GEAR and can_do(asked):
        return ()
    return chain_to(asked, can_do, catalog)


def _can_do(exercise: Exercise, request: SwapRequest, setting: Setting, aim: Aim) -> bool | None:
    """True now, False later (too hard yet for this person), None where things, place or what is spared forbid it."""
    person, place = setting.person, setting.place
    if spared(exercise, person.spares) or noise_reason(exercise, place, request.most_noise):
        return None
    done = done_here(exercise, request, setting, aim)
    if isinstance(done, str):
        return None
    dose = done.dose
    too_heavy = dose.reps is not None and dose.share is not None and sum(dose.reps) / 2 < FEWEST_REPS
    return not too_heavy and exercise.level <= highest_level(person) and not effort_reason(exercise, dose, request, aim)
