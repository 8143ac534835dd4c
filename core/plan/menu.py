"""The menu a week is chosen from: for each kind of day the movements that can be done, with dose, time and cost.

Costs are whole numbers (0 is the best fit); `COSTS` holds every weight in one place. Bodies of movements are filtered
with the same reasons as swaps, so nothing is planned that a swap would refuse.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from core.effort.capacity import (
    EXPERIENCE_PLACE,
    STARTING_SHARES,
    Prescription,
    ceiling,
)
from core.effort.dose import Dose, default_prescription, equivalent_dose, target_share, wanted_load_kg
from core.exercise.model import DoseKind, Exercise, Family, Pattern
from core.exercise.strength import carries_over, is_strength
from core.fit.bind import bearable_kg, bind
from core.fit.choose_load import Lift
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.house.model import Experience
from core.knowledge import Catalog
from core.loads.ladder import most_kg
from core.plan.clock import block_seconds, rest_seconds
from core.plan.frame import IDEAL_LEVEL, STRENGTH_FAMILIES
from core.plan.model import USUAL_WAVE, DayKind, FillState, Wave
from core.plan.pinned import NO_PINS, DayPins, kept_to, rest_of, why_pinned
from core.plan.pour_order import pieces_at
from core.plan.reasons import who_asked, why_strength
from core.swap.filters import highest_level, loudest_in, spared

LONGEST_STRENGTH_HOLD_S = 180
PER_FAMILY = 4
FEWEST_PLANNED = 3
USUAL_BLOCK_S = 360
"""A movement that takes longer leaves little of a session for the others (judgement)."""
QUIET_IMPACT = 1
"""The hardest landing in quiet hours (0 none to 3)."""
SET_CHOICES: dict[Experience, tuple[int, int]] = {
    Experience.NEW: (2, 3),
    Experience.SOME: (2, 3),
    Experience.TRAINED: (3, 4),
}
"""Sets of a movement in one session (ACSM 2009: 1 to 3 for novices, multiple sets later). Two neighbouring numbers:
with a third to choose from, most patterns get none on some weeks, and the proof takes fifty times as long."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Costs:
    """What the plan pays for each step away from the ideal; judgement, to be read as relative sizes only."""

    level_step: int = 10
    single_joint: int = 25
    out_of_reach: int = 30
    set_up_per_minute: int = 6
    drawn_out_per_minute: int = 6
    repeated: int = 4
    other_load: int = 30
    short_set: int = 20
    fuller_set: int = 5
    extra_set: int = 10
    uneven: int = 5
    wrong_kind: int = 160
    fill: int = 10
    refill: int = 20
    changed: int = 5000
    minute_off: int = 1
    hard_neighbours: int = 10
    strength_neighbours: int = 60
    full_session: int = 60
    not_against_a_load: int = 30
    no_staple: int = 20
    not_its_own_pattern: int = 20


COSTS = Costs()
POINTS_IN_A_GRAIN = 5


def in_grains(points: int) -> int:
    """Points as the week counts them, in grains of five: less says nothing."""
    return round(points / POINTS_IN_A_GRAIN)


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
    """What a menu depends on: the setting, exercises to leave out, quiet, the wave, last week's ids.

    Pinned movements are offered at any level and banned or not; what spares, noise and things rule out stays out.
    `kept` ones (in the plan the person has) stay on the menu wherever they rank.
    """

    setting: Setting
    catalog: Catalog
    bans: frozenset[str] = frozenset()
    pins: DayPins = NO_PINS
    kept: frozenset[str] = frozenset()
    quiet: bool = False
    wave: Wave = USUAL_WAVE
    last: frozenset[str] = frozenset()

    @property
    def must(self) -> frozenset[str]:
        """Movements that stay on the menu wherever they rank."""
        return self.pins.movements | self.kept


def refusal(exercise: Exercise, request: MenuRequest) -> str:
    """Why a movement may not be planned for this person here, before looking for things; empty when it may."""
    person, place = request.setting.person, request.setting.place
    if exercise.needs_gym:
        return "it needs gym gear"
    loud = exercise.noise > loudest_in(place, quiet=request.quiet) or (request.quiet and exercise.impact > QUIET_IMPACT)
    if loud:
        return f"it is too loud for {'quiet hours' if request.quiet else 'the neighbours'}"
    if exercise.id in request.pins.movements:
        return spared(exercise, person.spares)
    if exercise.id in request.bans:
        return "you banned it"
    if exercise.level > highest_level(person):
        return f"it is a level {exercise.level} movement: work up to it"
    return spared(exercise, person.spares)


def allowed(exercise: Exercise, request: MenuRequest) -> bool:
    """Whether a movement may be planned at all for this person here."""
    return not refusal(exercise, request)


def states_of(binding: Binding) -> tuple[FillState, ...]:
    """Fill states a binding needs, sorted."""
    if binding.load is None:
        return ()
    parts = (part for part in binding.load.recipe.parts if part.material_id is not None)
    return tuple(sorted(FillState(part.thing_id, part.material_id or "", part.fill_l) for part in parts))


def strength_menu(request: MenuRequest) -> tuple[Candidate, ...]:
    """Of each family the best few movements, with their own load and loads that share a pour, by number of sets."""
    chosen: list[Candidate] = []
    for family in STRENGTH_FAMILIES:
        mine = [e for e in request.catalog.exercises_by_family[family] if _is_strength_work(e) and allowed(e, request)]
        chosen.extend(_best_of(mine, request, PER_FAMILY))
    pool = sorted({state for candidate in chosen for state in candidate.states})
    sharing = [other for candidate in chosen for other in _sharing(candidate, pool, request)]
    by_sets = [
        _with_sets(candidate, count)
        for candidate in (*chosen, *sharing)
        for count in _set_choices(candidate.exercise, request)
    ]
    return undominated(by_sets, request.must)


def undominated(candidates: list[Candidate], must: frozenset[str]) -> tuple[Candidate, ...]:
    """The candidates worth offering: none that another of its family with as many sets beats in every way.

    One beats another when it costs no more grains, takes no longer and needs no fill the other does not need, so no
    best plan is lost. Movements in `must` are kept whatever they cost.
    """
    groups: dict[tuple[Family, int], list[Candidate]] = {}
    for candidate in candidates:
        groups.setdefault((candidate.exercise.family, candidate.dose.sets), []).append(candidate)
    kept: set[str] = set()
    for group in groups.values():
        better: list[Candidate] = []
        for candidate in sorted(group, key=_best_first):
            if candidate.exercise.id in must or not any(_beats(other, candidate) for other in better):
                better.append(candidate)
        kept.update(candidate.key for candidate in better)
    return tuple(candidate for candidate in candidates if candidate.key in kept)


def _best_first(one: Candidate) -> tuple[int, int, int, int, str]:
    return in_grains(one.cost), one.seconds, len(one.states), one.cost, one.key


def _beats(one: Candidate, other: Candidate) -> bool:
    cheaper = in_grains(one.cost) <= in_grains(other.cost) and one.seconds <= other.seconds
    return cheaper and all(_needs(other, state) >= _needs(one, state) for state in one.states)


def _needs(candidate: Candidate, state: FillState) -> int:
    return pieces_at(candidate.binding, state) if state in candidate.states else 0


def _is_strength_work(exercise: Exercise) -> bool:
    if exercise.dose is DoseKind.TIME:
        return exercise.typical[1] <= LONGEST_STRENGTH_HOLD_S
    if exercise.dose is DoseKind.DISTANCE:
        return exercise.typical[1] <= 200
    return True


def _set_choices(exercise: Exercise, request: MenuRequest) -> tuple[int, ...]:
    pinned = request.pins.dose_of(exercise)
    if pinned is not None:
        return (pinned.sets,)
    usual = SET_CHOICES[request.setting.person.experience]
    return tuple(sorted({max(1, math.floor(count * request.wave.sets + 0.5)) for count in usual}))


def _best_of(exercises: list[Exercise], request: MenuRequest, most: int) -> list[Candidate]:
    """The `most` cheapest movements that can be bound, plus every pinned one."""
    ranked = sorted(((early_cost(e, request), e.id, e) for e in exercises), key=lambda ranked: ranked[:2])
    found: list[Candidate] = []
    for early, _, exercise in ranked:
        wanted = exercise.id in request.must
        beaten = sum(candidate.cost <= early for candidate in found) >= most
        if not wanted and (beaten or len(found) >= 2 * most):
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
    if exercise.main_pattern is Pattern.GROUND_TO_OVERHEAD:
        cost += COSTS.not_its_own_pattern  # it counts as a hinge, but a plain hinge is the better one
    return cost + (COSTS.repeated if exercise.id in request.last else 0)


def _prescription(exercise: Exercise, request: MenuRequest) -> Prescription:
    usual = default_prescription(exercise, request.setting.person)
    pinned = request.pins.dose_of(exercise)
    if pinned is not None and pinned.reps is not None:
        usual = replace(usual, sets=pinned.sets, reps=sum(pinned.reps) / 2)
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
    if too_heavy and exercise.id not in request.pins.movements:
        return None
    rest_s = rest_seconds(exercise, dose)
    pinned = request.pins.dose_of(exercise)
    if pinned is not None:
        dose, rest_s = kept_to(pinned, dose), rest_of(pinned, rest_s)
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
        why=_why(exercise, bound, dose, request),
    )


def _why(exercise: Exercise, bound: Binding, dose: Dose, request: MenuRequest) -> tuple[str, ...]:
    pinned = request.pins.dose_of(exercise)
    asked = who_asked(pinned=exercise.id in request.pins.movements)
    first, *rest = why_strength(exercise, bound, dose, request.setting.person.experience)
    return first, *((why_pinned(pinned),) if pinned is not None else asked), *rest


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
    exercise, setting = candidate.exercise, request.setting
    placed = frozenset(held.thing_id for held in candidate.binding.fixtures if held.thing_id)
    ladder = setting.ladder(load.use, need.count, exercise.posture, placed)
    rung = ladder.at_fill(state.thing_id, state.material_id, state.volume_l)
    lift = Lift(exercise, need, setting, None, ceiling(exercise, setting.person).measured)
    if rung is None or not lift.limits_kg[0] <= rung.mass.value <= lift.most_kg(load.use):
        return None
    if rung.mass.value > candidate.binding.load_kg and not is_strength(exercise):
        return None  # without an effort to aim at, a load begins light and is never raised for the sake of a pour
    if most_kg(rung) > bearable_kg(exercise, candidate.binding, setting):
        return None
    return replace(candidate.binding, load=rung, set_up_s=candidate.binding.set_up_s - load.set_up_s + rung.set_up_s)


def _with_sets(candidate: Candidate, sets: int) -> Candidate:
    dose = replace(candidate.dose, sets=sets)
    seconds = block_seconds(candidate.exercise, dose, candidate.rest_s)
    drawn_out = round(COSTS.drawn_out_per_minute * max(0, seconds - USUAL_BLOCK_S) / 60)
    return replace(
        candidate, key=f"{candidate.key}|{sets}", dose=dose, seconds=seconds, cost=candidate.cost + drawn_out
    )
