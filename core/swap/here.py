"""A movement done here: bound to the things of the house and dosed as asked, or why it can't be."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from core.effort.bout import bout_s, dose_bout_s
from core.effort.capacity import Ceiling, ceiling
from core.effort.dose import Dose, equivalent_dose, wanted_load_kg
from core.exercise.model import Exercise
from core.exercise.strength import is_strength
from core.fit.bind import bind
from core.fit.choose_load import Lift, chosen_load
from core.fit.first_load import most_at_first_kg
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.house.model import Person
from core.loads.model import Rung
from core.loads.pieces import GRAIN_KG
from core.swap.aim import Aim, like_asked_kg, prescription_for
from core.swap.closeness import bout_closeness
from core.swap.model import SwapRequest

OFF_LOAD_COST = 0.5
"""How much of the effort a carry or hold at half or double the load asked for misses (judgement)."""


@dataclass(frozen=True, slots=True)
class Done:
    """An exercise bound and dosed; `kept_light` where the load stays below the wanted one because it is a first one."""

    bound: Binding
    dose: Dose
    kept_light: bool


@dataclass(frozen=True, slots=True)
class _Wanted:
    """The load aimed at, what it is like (for carries and holds), and whether the person has proven it."""

    kg: float | None
    like_kg: float | None
    proven: bool


def done_here(exercise: Exercise, request: SwapRequest, setting: Setting, aim: Aim) -> Done | str:
    """The exercise bound here and dosed as asked, or why it can't be bound."""
    person = setting.person
    top = ceiling(exercise, person, aim.known)
    wanted = _wanted(exercise, request, aim, top, person)
    bound = bind(exercise, setting, wanted_kg=wanted.kg, proven=wanted.proven, using=request.using)
    if isinstance(bound, Missing):
        return "; ".join(bound.why)
    if request.using and request.using not in bound.thing_ids:
        return f"it does not use {setting.thing(request.using).name.lower()} here"
    prescription = prescription_for(exercise, request, aim, person)
    dose = equivalent_dose(exercise, bound, person, top, prescription, aim.wanted)
    later = None if wanted.proven else _later_load(exercise, setting, bound, wanted, request.using)
    kept_light = later is not None and later.mass.value > bound.load_kg + GRAIN_KG
    best = dose
    if kept_light:
        best = equivalent_dose(exercise, replace(bound, load=later), person, top, prescription, aim.wanted)
        dose = replace(dose, options=best.options, notes=best.notes)  # what a first load is too light for will pass
    reachable = best.reachable * _alike(exercise, request, aim, bound, dose, wanted)
    return Done(bound, replace(dose, reachable=reachable), kept_light)


def _wanted(exercise: Exercise, request: SwapRequest, aim: Aim, top: Ceiling, person: Person) -> _Wanted:
    if exercise.load_need is None:
        return _Wanted(None, None, top.measured)
    if aim.wanted is not None and is_strength(exercise):
        return _Wanted(max(0.0, wanted_load_kg(exercise, top, person, aim.wanted)), None, top.measured)
    like_kg = like_asked_kg(exercise, request, person)
    return _Wanted(like_kg, like_kg, like_kg is not None)


def _later_load(exercise: Exercise, setting: Setting, bound: Binding, wanted: _Wanted, using: str) -> Rung | None:
    """The load it will be once the person has logged a set: what the house can make, not what one begins with."""
    need, load = exercise.load_need, bound.load
    if need is None or load is None or wanted.kg is None or load.mass.value >= wanted.kg:
        return None
    most_kg = most_at_first_kg(exercise, load.use, need.count, setting.person)
    if most_kg - wanted.kg > wanted.kg - load.mass.value:
        return None  # nothing past the most of a first load comes as near
    lift = Lift(exercise, need, setting, wanted.kg, proven=True, using=using)
    later = chosen_load(lift)
    used = frozenset(held.thing_id for held in bound.fixtures if held.thing_id)
    if later is not None and not used.isdisjoint(later.rung.recipe.thing_ids):
        later = chosen_load(lift, used=used)
    return None if later is None else later.rung


def _alike(exercise: Exercise, request: SwapRequest, aim: Aim, bound: Binding, dose: Dose, wanted: _Wanted) -> float:
    """How much of the effort a load or a length of bout unlike the one asked for leaves, 0 to 1."""
    left = 1.0
    if wanted.like_kg and bound.load is not None:
        left -= OFF_LOAD_COST * min(1.0, abs(math.log(bound.load_kg / wanted.like_kg)) / math.log(2))
    if aim.wanted is None or not is_strength(exercise):
        left *= bout_closeness(bout_s(request.asked, aim.prescription), dose_bout_s(exercise, dose))
    return left
