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
    carries_over,
    ceiling,
    is_strength,
)
from core.effort.dose import Dose, default_prescription, equivalent_dose, target_share, wanted_load_kg
from core.exercise.model import DoseKind, Exercise, Family, Pattern, Use
from core.fit.bind import bind
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.knowledge import Catalog
from core.plan.clock import block_seconds, rest_seconds
from core.plan.intervals import STATIONS
from core.plan.model import DayKind, FillState, Wave
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
INTERVAL_PATTERNS = (Pattern.JUMP, Pattern.QUICK_FEET, Pattern.CLIMB, Pattern.MARCH)
EASY_PATTERNS = (Pattern.WALK, Pattern.RUN)
LONGEST_STRENGTH_HOLD_S = 180
SHORTEST_EASY_S = 600
PER_FAMILY = 4
PER_KIND = 10
FEWEST_PLANNED = 3
SET_CHOICES = (2, 3, 4)
LOADED_WALK_SHARES = (0.07, 0.10, 0.15)
"""Start of loaded walks as a share of body mass: judgement, below the 20 % of military doctrine (FM 21-20)."""
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
    wave: Wave = Wave()
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
    return undominated([_with_sets(candidate, count) for candidate in (*chosen, *sharing) for count in sets], request.must)


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
    ranked = sorted(exercises, key=lambda e: (_early_cost(e, request), e.id))
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


def _early_cost(exercise: Exercise, request: MenuRequest) -> int:
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
    bound = bind(exercise, request.setting, wanted_kg=wanted)
    if isinstance(bound, Missing):
        return None
    return _made(exercise, bound, prescription, share, request)


def _made(
    exercise: Exercise, bound: Binding, prescription: Prescription, share: float | None, request: MenuRequest
) -> Candidate | None:
    person = request.setting.person
    dose = equivalent_dose(exercise, bound, person, ceiling(exercise, person), prescription, share)
    too_heavy = dose.share is not None and (dose.share >= 1 or (dose.reps is not None and dose.reps[0] < FEWEST_PLANNED))
    if too_heavy and exercise.id not in request.must:
        return None
    rest_s = rest_seconds(exercise, dose)
    cost = _early_cost(exercise, request)
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
        per_l = (load.recipe.parts[0].each.value, own[0].volume_l)
        bound = _bound_at(candidate, state, request, per_l)
        made = _made(candidate.exercise, bound, prescription, share, request) if bound is not None else None
        if made is not None and made.states == (state,) and made.dose.reachable > 0.6:
            extra = round(COSTS.other_load * (candidate.dose.reachable - made.dose.reachable))
            found.append(replace(made, cost=made.cost + max(0, extra)))
    found.sort(key=lambda other: (other.cost, other.key))
    yield from found[:2]


def _bound_at(
    candidate: Candidate, state: FillState, request: MenuRequest, known: tuple[float, float]
) -> Binding | None:
    load, need = candidate.binding.load, candidate.exercise.load_need
    if load is None or need is None:
        return None
    rung = request.setting.ladder(load.use, need.count).at_state(state.thing_id, state.material_id, state.volume_l)
    low, high = need.mass_share or (0.0, 1.0)
    mass = request.setting.person.body_mass_kg
    if rung is None or not low * mass <= rung.mass.value <= high * mass:
        return None
    return replace(candidate.binding, load=rung, set_up_s=candidate.binding.set_up_s - load.set_up_s + rung.set_up_s)


def _with_sets(candidate: Candidate, sets: int) -> Candidate:
    dose = replace(candidate.dose, sets=sets)
    seconds = block_seconds(candidate.exercise, dose, candidate.rest_s)
    return replace(candidate, key=f"{candidate.key}|{sets}", dose=dose, seconds=seconds)


def filled_menu(request: MenuRequest, kind: DayKind, seconds: int) -> tuple[Candidate, ...]:
    """Choices for a day of one long block (easy, loaded walk): each movement for all the `seconds` there are."""
    patterns = EASY_PATTERNS if kind is DayKind.EASY else (Pattern.WALK, Pattern.CARRY)
    found = []
    families = (Family.GAIT,) if kind is DayKind.EASY else (Family.GAIT, Family.CARRY)
    for exercise in (e for family in families for e in request.catalog.exercises_by_family[family]):
        if exercise.main_pattern not in patterns or not allowed(exercise, request):
            continue
        if not _is_long(exercise) or (_carries_pack(exercise) != (kind is DayKind.LOADED_WALK)):
            continue
        candidate = _long_candidate(exercise, request, kind, seconds)
        if candidate is not None:
            found.append(candidate)
    found.sort(key=lambda candidate: (candidate.cost, candidate.exercise.id))
    return tuple(item for place, item in enumerate(found) if place < PER_KIND or item.exercise.id in request.must)


def _is_long(exercise: Exercise) -> bool:
    least = SHORTEST_EASY_S if exercise.dose is DoseKind.TIME else 500
    return exercise.dose is not DoseKind.REPS and exercise.typical[1] >= least


def _carries_pack(exercise: Exercise) -> bool:
    need = exercise.load_need
    return need is not None and not need.optional and Use.BACK in need.uses


def _long_candidate(exercise: Exercise, request: MenuRequest, kind: DayKind, seconds: int) -> Candidate | None:
    person = request.setting.person
    place = EXPERIENCE_PLACE[person.experience]
    wanted = LOADED_WALK_SHARES[place] * person.body_mass_kg if kind is DayKind.LOADED_WALK else None
    bound = bind(exercise, request.setting, wanted_kg=wanted)
    if isinstance(bound, Missing):
        return None
    most = exercise.typical[1] if exercise.dose is DoseKind.TIME else seconds
    length = int(min(seconds, max(most, SHORTEST_EASY_S)) // 60 * 60)
    if length < 300:
        return None
    dose = Dose(sets=1, seconds=(length, length), effort=4.0 if kind is DayKind.EASY else 5.0)
    over = abs(bound.load_kg - wanted) / person.body_mass_kg if wanted is not None else 0.0
    cost = _early_cost(exercise, request) + round(400 * over) + round(COSTS.set_up_per_minute * bound.set_up_s / 60)
    return Candidate(
        key=f"{exercise.id}|{kind.value}",
        kind=kind,
        exercise=exercise,
        binding=bound,
        dose=dose,
        rest_s=0,
        seconds=length,
        cost=cost,
        states=states_of(bound),
        hard=kind is DayKind.LOADED_WALK,
        why=(_long_why(kind, bound, person.body_mass_kg),),
    )


def _long_why(kind: DayKind, bound: Binding, body_mass_kg: float) -> str:
    if kind is DayKind.EASY:
        return "Easy means you can talk in whole sentences."
    share = 100 * bound.load_kg / body_mass_kg
    return f"{bound.load_kg:.1f} kg is {share:.0f} % of you: loaded walks start light and grow in one thing at a time."


def short_menu(request: MenuRequest, kind: DayKind) -> tuple[Candidate, ...]:
    """Choices for days of many short blocks: interval stations, mobility positions, warm-up or cool-down moves."""
    patterns = INTERVAL_PATTERNS if kind is DayKind.INTERVALS else (Pattern.MOBILITY,)
    found = []
    family = Family.GAIT if kind is DayKind.INTERVALS else Family.MOBILITY
    for exercise in request.catalog.exercises_by_family[family]:
        if exercise.main_pattern in patterns and allowed(exercise, request):
            candidate = _short_candidate(exercise, request, kind)
            if candidate is not None:
                found.append(candidate)
    found.sort(key=lambda candidate: (candidate.cost, candidate.exercise.id))
    return tuple(item for place, item in enumerate(found) if place < PER_KIND or item.exercise.id in request.must)


def _short_candidate(exercise: Exercise, request: MenuRequest, kind: DayKind) -> Candidate | None:
    need = exercise.load_need
    if need is not None and not need.optional or exercise.outdoors_only:
        return None
    if kind is DayKind.INTERVALS and exercise.dose is DoseKind.DISTANCE:
        return None
    bound = bind(exercise, request.setting, wanted_kg=0.0)
    if isinstance(bound, Missing):
        return None
    if kind is DayKind.INTERVALS:
        dose = Dose(sets=STATIONS.rounds, seconds=(STATIONS.work_s, STATIONS.work_s), effort=8.0)
        return _short(exercise, request, kind, bound, dose, STATIONS.rest_s, STATIONS.seconds)
    dose = short_dose(exercise)
    return _short(exercise, request, kind, bound, dose, 0, block_seconds(exercise, dose, 0))


def short_dose(exercise: Exercise) -> Dose:
    """One easy set in the middle of the exercise's own range."""
    low, high = exercise.typical
    centre = round((low + high) / 2)
    if exercise.dose is DoseKind.TIME:
        return Dose(sets=1, seconds=(centre, centre), effort=3.0)
    if exercise.dose is DoseKind.DISTANCE:
        return Dose(sets=1, distance_m=(centre, centre), effort=3.0)
    return Dose(sets=1, reps=(centre, centre), effort=3.0)


def _short(
    exercise: Exercise, request: MenuRequest, kind: DayKind, bound: Binding, dose: Dose, rest_s: int, seconds: int
) -> Candidate:
    why = "Forty seconds of work, twenty of rest, three rounds." if kind is DayKind.INTERVALS else "It moves one more joint."
    return Candidate(
        key=f"{exercise.id}|{kind.value}",
        kind=kind,
        exercise=exercise,
        binding=bound,
        dose=dose,
        rest_s=rest_s,
        seconds=seconds,
        cost=_early_cost(exercise, request),
        hard=kind is DayKind.INTERVALS,
        why=(why,),
    )
