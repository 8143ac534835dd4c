"""The menu a week is chosen from: for each kind of day the movements that can be done, with dose, time and cost.

Costs are whole numbers (0 is the best fit); `COSTS` holds every weight in one place. Bodies of movements are filtered
with the same reasons as swaps, so nothing is planned that a swap would refuse.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from core.effort.capacity import (
    EXPERIENCE_PLACE,
    STARTING_SHARES,
    Prescription,
    ceiling,
)
from core.effort.dose import Dose, default_prescription, equivalent_dose, target_share, wanted_load_kg
from core.exercise.model import DoseKind, Exercise, Family
from core.exercise.strength import carries_over, is_strength
from core.fit.bind import bind
from core.fit.choose_load import Lift
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.plan.clock import block_seconds, rest_seconds
from core.plan.model import USUAL_WAVE, DayKind, FillState, Wave
from core.swap.filters import HARDEST_LEVEL, QUIET_NOISE, spared

STRENGTH_FAMILIES = (
    Family.SQUAT,
    Family.HINGE,
    Family.LUNGE,
    Family.PUSH_LEVEL,
    Family.PULL_LEVEL,
    Family.PUSH_OVERHEAD,
    Family.PULL_OVERHEAD,
    Family.CARRY,
    Family.TRUNK,
)
LONGEST_STRENGTH_HOLD_S = 180
PER_FAMILY = 4
FEWEST_PLANNED = 3
SET_CHOICES = (2, 3, 4)
IDEAL_LEVEL = (2, 3, 4)


@dataclass(frozen=True, slots=True, kw_only=True)
class Costs:
    """What the plan pays for each step away from the ideal; judgement, to be read as relative sizes only."""

    level_step: int = 12
    single_joint: int = 25
    out_of_reach: int = 40
    set_up_per_minute: int = 6
    repeated: int = 4
    other_load: int = 30
    place_in_list: int = 1
    short_set: int = 22
    extra_set: int = 8
    wrong_kind: int = 160
    fill: int = 14
    refill: int = 20
    changed: int = 5000
    minute_off: int = 1
    hard_neighbours: int = 12
    strength_neighbours: int = 60
    full_session: int = 60
    not_against_a_load: int = 30
    no_staple: int = 10


COSTS = Costs()


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """One choice for a kind of day: a movement with its load, dose, seconds and cost. `key` is unique on a menu."""

    key: str
    kind: DayKind
    exercise: Exercise
    binding: Binding
    dose: Dose
    rest_s: int
    seconds: int
    cost: int
    states: tuple[FillState, ...] = ()
    hard: bool = False
    why: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuRequest:
    """What a menu depends on: the setting, exercises to leave out or to hold, quiet, the wave, last week's ids."""

    setting: Setting
    catalog: Catalog
    bans: frozenset[str] = frozenset()
    must: frozenset[str] = frozenset()
    quiet: bool = False
    wave: Wave = USUAL_WAVE
    last: frozenset[str] = frozenset()


def allowed(exercise: Exercise, request: MenuRequest) -> bool:
    """Whether a movement may be planned at all for this person here."""
    person, place = request.setting.person, request.setting.place
    if exercise.id in request.bans or exercise.needs_gym or spared(exercise, person.spares):
        return False
    if exercise.id in request.must:
        return True
    most_noise = QUIET_NOISE if request.quiet or place.neighbours else 3
    level_ok = exercise.level <= HARDEST_LEVEL[EXPERIENCE_PLACE[person.experience]]
    return level_ok and exercise.noise <= most_noise and not (request.quiet and exercise.impact > 1)


def states_of(binding: Binding) -> tuple[FillState, ...]:
    """Fill states a binding needs, sorted."""
    if binding.load is None:
        return ()
    parts = (part for part in binding.load.recipe.parts if part.material_id is not None)
    return tuple(sorted(FillState(part.thing_id, part.material_id or "", part.fill_l) for part in parts))


def strength_menu(request: MenuRequest) -> tuple[Candidate, ...]:
    """For each family the best few movements, with their own load and loads that share a pour, at 2, 3 or 4 sets."""
    chosen: list[Candidate] = []
    for family in STRENGTH_FAMILIES:
        mine = [e for e in request.catalog.exercises_by_family[family] if _is_strength_work(e) and allowed(e, request)]
        chosen.extend(_best_of(mine, request, PER_FAMILY))
    pool = sorted({state for candidate in chosen for state in candidate.states})
    sharing = [other for candidate in chosen for other in _sharing(candidate, pool, request)]
    sets = _set_choices(request.wave)
    return undominated(
        [_with_sets(candidate, count) for candidate in (*chosen, *sharing) for count in sets], request.must
    )


def undominated(candidates: list[Candidate], must: frozenset[str]) -> tuple[Candidate, ...]:
    """The candidates worth offering: none that another of its family with as many sets beats in every way.

    One beats another when it costs no more, takes no longer and needs no fill the other does not need, so no best plan
    is lost. Movements in `must` are kept whatever they cost.
    """
    groups: dict[tuple[Family, int], list[Candidate]] = {}
    for candidate in candidates:
        groups.setdefault((candidate.exercise.family, candidate.dose.sets), []).append(candidate)
    kept: set[str] = set()
    for group in groups.values():
        for candidate in sorted(group, key=lambda one: (one.cost, one.seconds, one.key)):
            beaten = any(other.key in kept and _beats(other, candidate) for other in group)
            if candidate.exercise.id in must or not beaten:
                kept.add(candidate.key)
    return tuple(candidate for candidate in candidates if candidate.key in kept)


def _beats(one: Candidate, other: Candidate) -> bool:
    return one.cost <= other.cost and one.seconds <= other.seconds and set(one.states) <= set(other.states)


def _is_strength_work(exercise: Exercise) -> bool:
    if exercise.dose is DoseKind.TIME:
        return exercise.typical[1] <= LONGEST_STRENGTH_HOLD_S
    if exercise.dose is DoseKind.DISTANCE:
        return exercise.typical[1] <= 200
    return True


def _set_choices(wave: Wave) -> tuple[int, ...]:
    return tuple(sorted({max(1, round(count * wave.sets)) for count in SET_CHOICES}))


def _best_of(exercises: list[Exercise], request: MenuRequest, most: int) -> list[Candidate]:
    """The `most` cheapest movements that can be bound, plus every pinned one."""
    ranked = sorted(exercises, key=lambda e: (early_cost(e, request), e.id))
    found: list[Candidate] = []
    for exercise in ranked:
        wanted = exercise.id in request.must
        if len(found) >= 2 * most and not wanted:
            continue
        candidate = _strength_candidate(exercise, request)
        if candidate is not None:
            found.append(candidate)
    found.sort(key=lambda candidate: (candidate.cost, candidate.exercise.id))
    return [item for place, item in enumerate(found) if place < most or item.exercise.id in request.must]


def early_cost(exercise: Exercise, request: MenuRequest) -> int:
    """The part of the cost known before binding: level and kind of movement."""
    ideal = IDEAL_LEVEL[EXPERIENCE_PLACE[request.setting.person.experience]]
    cost = COSTS.level_step * abs(exercise.level - ideal)
    if is_strength(exercise) and not carries_over(exercise):
        cost += COSTS.single_joint
    if exercise.main_pattern in STARTING_SHARES and not is_strength(exercise):
        cost += COSTS.not_against_a_load
    if not exercise.staple:
        cost += COSTS.no_staple
    return cost + (COSTS.repeated if exercise.id in request.last else 0)


def _prescription(exercise: Exercise, request: MenuRequest) -> Prescription:
    usual = default_prescription(exercise, request.setting.person)
    return replace(usual, effort=min(10.0, max(5.0, usual.effort + request.wave.effort_shift)))


def _strength_candidate(exercise: Exercise, request: MenuRequest) -> Candidate | None:
    person = request.setting.person
    prescription = _prescription(exercise, request)
    top = ceiling(exercise, person)
    wanted = share = None
    if is_strength(exercise):
        share = target_share(prescription, exercise)
        if exercise.load_need is not None:
            wanted = max(0.0, wanted_load_kg(exercise, top, person, share))
    bound = bind(exercise, request.setting, wanted_kg=wanted, proven=top.measured)
    if isinstance(bound, Missing):
        return None
    return _made(exercise, bound, prescription, share, request)


def _made(
    exercise: Exercise, bound: Binding, prescription: Prescription, share: float | None, request: MenuRequest
) -> Candidate | None:
    person = request.setting.person
    dose = equivalent_dose(exercise, bound, person, ceiling(exercise, person), prescription, share)
    too_heavy = dose.share is not None and (
        dose.share >= 1 or (dose.reps is not None and dose.reps[0] < FEWEST_PLANNED)
    )
    if too_heavy and exercise.id not in request.must:
        return None
    rest_s = rest_seconds(exercise, dose)
    cost = early_cost(exercise, request)
    cost += round(COSTS.out_of_reach * (1 - dose.reachable))
    cost += round(COSTS.set_up_per_minute * bound.set_up_s / 60)
    states = states_of(bound)
    key = f"{exercise.id}|" + ",".join(f"{s.thing_id}:{s.material_id}:{s.volume_l:g}" for s in states)
    return Candidate(
        key=key,
        kind=DayKind.STRENGTH,
        exercise=exercise,
        binding=bound,
        dose=dose,
        rest_s=rest_s,
        seconds=block_seconds(exercise, dose, rest_s),
        cost=cost,
        states=states,
        hard=True,
        why=_why(exercise, bound, dose),
    )


def _why(exercise: Exercise, bound: Binding, dose: Dose) -> tuple[str, ...]:
    found = [f"It trains your {exercise.family.value.replace('_', ' ')} at level {exercise.level}."]
    if bound.load is not None:
        found.append(f"{bound.load.mass.value:.1f} kg is the load this house makes nearest to the effort planned.")
    return (*found, *dose.notes)


def _sharing(candidate: Candidate, pool: list[FillState], request: MenuRequest) -> Iterable[Candidate]:
    """The same movement at fills other movements use, where the effort stays near."""
    load = candidate.binding.load
    if load is None or not candidate.states:
        return
    prescription = _prescription(candidate.exercise, request)
    share = target_share(prescription, candidate.exercise) if is_strength(candidate.exercise) else None
    own = candidate.states
    found = []
    for state in pool:
        if (state,) == own or state.thing_id not in {mine.thing_id for mine in own} or len(own) > 1:
            continue
        bound = _bound_at(candidate, state, request)
        made = _made(candidate.exercise, bound, prescription, share, request) if bound is not None else None
        if made is not None and made.states == (state,) and made.dose.reachable > 0.6:
            extra = round(COSTS.other_load * (candidate.dose.reachable - made.dose.reachable))
            found.append(replace(made, cost=made.cost + max(0, extra)))
    found.sort(key=lambda other: (other.cost, other.key))
    yield from found[:2]


def _bound_at(candidate: Candidate, state: FillState, request: MenuRequest) -> Binding | None:
    load, need = candidate.binding.load, candidate.exercise.load_need
    if load is None or need is None:
        return None
    rung = request.setting.ladder(load.use, need.count).at_fill(state.thing_id, state.material_id, state.volume_l)
    person = request.setting.person
    lift = Lift(candidate.exercise, need, request.setting, None, ceiling(candidate.exercise, person).measured)
    if rung is None or not lift.limits_kg[0] <= rung.mass.value <= lift.most_kg(load.use):
        return None
    return replace(candidate.binding, load=rung, set_up_s=candidate.binding.set_up_s - load.set_up_s + rung.set_up_s)


def _with_sets(candidate: Candidate, sets: int) -> Candidate:
    dose = replace(candidate.dose, sets=sets)
    seconds = block_seconds(candidate.exercise, dose, candidate.rest_s)
    return replace(candidate, key=f"{candidate.key}|{sets}", dose=dose, seconds=seconds)
