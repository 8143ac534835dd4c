"""Menus of the days that are not strength: one long walk or run, loaded walks, interval stations, mobility."""

from __future__ import annotations

from core.effort.dose import Dose
from core.exercise.model import DoseKind, Exercise, Family, Pattern, Use
from core.fit.bind import bind
from core.fit.first_load import first_load_kg
from core.fit.model import Binding, Missing
from core.house.wishes import PinnedDose
from core.plan.clock import block_seconds
from core.plan.intervals import STATIONS, Scheme
from core.plan.menu import COSTS, Candidate, MenuRequest, allowed, early_cost, states_of
from core.plan.model import DayKind
from core.plan.pinned import dose_words, kept_to, rest_of, why_pinned
from core.plan.reasons import who_asked, why_short

INTERVAL_PATTERNS = (Pattern.JUMP, Pattern.QUICK_FEET, Pattern.CLIMB, Pattern.MARCH)
EASY_PATTERNS = (Pattern.WALK, Pattern.RUN)
SHORTEST_EASY_S = 600
PER_KIND = 10


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
    need = exercise.load_need
    bound = bind(exercise, request.setting)
    if isinstance(bound, Missing):
        return None
    most = exercise.typical[1] if exercise.dose is DoseKind.TIME else seconds
    length = int(min(seconds, max(most, SHORTEST_EASY_S)) // 60 * 60)
    pinned = request.pins.dose_of(exercise)
    if pinned is not None:
        if pinned.work_s is None or pinned.sets > 1:
            return None
        length = pinned.work_s
    if length < 300:
        return None
    dose = Dose(sets=1, seconds=(length, length), effort=4.0 if kind is DayKind.EASY else 5.0)
    start_kg = first_load_kg(exercise, need, person) if need is not None and bound.load is not None else bound.load_kg
    over = abs(bound.load_kg - start_kg) / person.body_mass_kg
    cost = early_cost(exercise, request) + round(400 * over) + round(COSTS.set_up_per_minute * bound.set_up_s / 60)
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
    own = [e for e in request.catalog.exercises_by_family[family] if e.main_pattern in patterns]
    named = [request.catalog.exercise_by_id[name] for name in sorted(request.pins.named)]
    for exercise in (*own, *(exercise for exercise in named if exercise not in own)):
        if allowed(exercise, request):
            candidate = _short_candidate(exercise, request, kind)
            if candidate is not None:
                found.append(candidate)
    found.sort(key=lambda candidate: (candidate.cost, candidate.exercise.id))
    return tuple(item for place, item in enumerate(found) if place < PER_KIND or item.exercise.id in request.must)


def _short_candidate(exercise: Exercise, request: MenuRequest, kind: DayKind) -> Candidate | None:
    need = exercise.load_need
    if (need is not None and not need.optional) or exercise.outdoors_only:
        return None
    if kind is DayKind.INTERVALS and exercise.dose is DoseKind.DISTANCE:
        return None
    bound = bind(exercise, request.setting, wanted_kg=0.0)
    if isinstance(bound, Missing):
        return None
    pinned = request.pins.dose_of(exercise)
    if kind is DayKind.INTERVALS:
        if pinned is not None and pinned.work_s is None:
            return None
        scheme = _scheme(pinned)
        dose = Dose(sets=scheme.rounds, seconds=(scheme.work_s, scheme.work_s), effort=8.0)
        return _short(exercise, request, kind, bound, dose, scheme.rest_s, scheme.seconds)
    dose, rest_s = short_dose(exercise), 0
    if pinned is not None:
        dose, rest_s = kept_to(pinned, dose), rest_of(pinned, 0)
    return _short(exercise, request, kind, bound, dose, rest_s, block_seconds(exercise, dose, rest_s))


def _scheme(pinned: PinnedDose | None) -> Scheme:
    if pinned is None or pinned.work_s is None:
        return STATIONS
    rest_s = rest_of(pinned, STATIONS.rest_s)
    return Scheme(name=dose_words(pinned), work_s=pinned.work_s, rest_s=rest_s, rounds=pinned.sets)


def short_dose(exercise: Exercise) -> Dose:
    """One easy set in the middle of the exercise's own range, holds in whole fives of seconds."""
    low, high = exercise.typical
    centre = round((low + high) / 2)
    if exercise.dose is DoseKind.TIME:
        whole_s = max(5, 5 * round(centre / 5))
        return Dose(sets=1, seconds=(whole_s, whole_s), effort=3.0)
    if exercise.dose is DoseKind.DISTANCE:
        return Dose(sets=1, distance_m=(centre, centre), effort=3.0)
    return Dose(sets=1, reps=(centre, centre), effort=3.0)


def _short(
    exercise: Exercise, request: MenuRequest, kind: DayKind, bound: Binding, dose: Dose, rest_s: int, seconds: int
) -> Candidate:
    pinned = request.pins.dose_of(exercise)
    asked = who_asked(pinned=exercise.id in request.pins.movements)
    why = (why_short(exercise, hard=kind is DayKind.INTERVALS), *((why_pinned(pinned),) if pinned else asked))
    return Candidate(
        key=f"{exercise.id}|{kind.value}",
        kind=kind,
        exercise=exercise,
        binding=bound,
        dose=dose,
        rest_s=rest_s,
        seconds=seconds,
        cost=early_cost(exercise, request),
        hard=kind is DayKind.INTERVALS,
        why=why,
    )
