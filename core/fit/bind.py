"""Bind an exercise to this house: the best distinct things for its needs and a load near the wanted one, or why not.

Exact: if any choice of distinct things meets every need, one is found. Needs are served in their order, each by the
best offer (use, grade, id) that leaves the later needs something. Deterministic.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator

from core.exercise.model import Exercise, Need, Use
from core.fit.choose_load import ChosenLoad, Lift, chosen_load, why_no_load
from core.fit.fixtures import Fixture, fixed_needs, fixtures_for, place_reasons, why_no_fixture
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.loads.ladder import most_kg
from core.things.affordance import RANK

PLACING_S = 10.0
"""To fetch and place one thing, and again for each step its grade is below good; assumed."""


def bind(
    exercise: Exercise, setting: Setting, *, wanted_kg: float | None = None, proven: bool = False, using: str = ""
) -> Binding | Missing:
    """The best way to do `exercise` here with a load near `wanted_kg`, or every reason why it can't be done.

    `wanted_kg` None takes a light start within the exercise's range for the person's experience. Unless a test, a log
    or a written set has `proven` what the person lifts, no load passes the most of a first set. The thing `using` is
    taken first wherever it serves.
    """
    why = list(place_reasons(exercise, setting))
    lacking: list[Use] = []
    needs = fixed_needs(exercise)
    options = [_first(using, fixtures_for(need, exercise, setting)) for need in needs]
    for need, found in zip(needs, options, strict=True):
        if not found:
            why.append(why_no_fixture(need, exercise, setting))
            lacking.append(need.uses[0])
    need_of_load = exercise.load_need
    lift = None if need_of_load is None else Lift(exercise, need_of_load, setting, wanted_kg, proven, using)
    load = None if lift is None else chosen_load(lift)
    if lift is not None and load is None and not lift.need.optional:
        why.append(why_no_load(lift))
        lacking.append(lift.need.uses[0])
    if why:
        return Missing(exercise_id=exercise.id, why=tuple(why), lacking=tuple(lacking))
    return _assigned(exercise, setting, options, lift, load)


def _first(thing_id: str, found: tuple[Fixture, ...]) -> tuple[Fixture, ...]:
    return tuple(sorted(found, key=lambda fixture: fixture.held.thing_id != thing_id)) if thing_id else found


def _assigned(
    exercise: Exercise, setting: Setting, options: list[tuple[Fixture, ...]], lift: Lift | None, free: ChosenLoad | None
) -> Binding | Missing:
    """The first choice of distinct fixtures that can also bear a load; `free` is the load nothing else limits."""
    needs = fixed_needs(exercise)
    distinct = overloaded = False
    for chosen in distinct_fixtures(needs, options):
        distinct = True
        load = free if lift is None or free is None else _beside(chosen, lift, free)
        if lift is None or lift.need.optional or load is not None:
            return _binding(exercise, setting, chosen, load)
        overloaded = overloaded or chosen_load(lift, used=_used(chosen)) is not None
    why = f"it needs {len(needs)} things at once, and you list too few"
    if distinct:
        why = _why_overloaded(options) if overloaded else "the only load for it is needed to stand, lean or lie on"
    return Missing(exercise_id=exercise.id, why=(why,), lacking=())


def _beside(chosen: tuple[Fixture, ...], lift: Lift, free: ChosenLoad) -> ChosenLoad | None:
    """The load that goes with these fixtures: made of other things, and no more than they may bear."""
    used = _used(chosen)
    spare_kg = min((fixture.spare_kg for fixture in chosen), default=math.inf)
    if used.isdisjoint(free.rung.recipe.thing_ids) and most_kg(free.rung) <= spare_kg:
        return free
    return chosen_load(lift, used=used, bearable_kg=spare_kg)


def bearable_kg(exercise: Exercise, binding: Binding, setting: Setting) -> float:
    """The heaviest load, its u95 included, that the fixtures of a binding may bear beside the body on them."""
    spare_kg = math.inf
    for need, held in zip(fixed_needs(exercise), binding.fixtures, strict=True):
        spares = (fixture.spare_kg for fixture in fixtures_for(need, exercise, setting) if fixture.held == held)
        spare_kg = min(spare_kg, next(spares, 0.0))
    return spare_kg


def _used(chosen: tuple[Fixture, ...]) -> frozenset[str]:
    return frozenset(fixture.held.thing_id for fixture in chosen if fixture.thing is not None)


def distinct_fixtures(needs: tuple[Need, ...], options: list[tuple[Fixture, ...]]) -> Iterator[tuple[Fixture, ...]]:
    """Every choice of one fixture a need that takes no thing more often than there are pieces, best first."""
    taken: Counter[str] = Counter()

    def later(place: int) -> Iterator[tuple[Fixture, ...]]:
        if place == len(needs):
            yield ()
            return
        pieces = needs[place].count
        for fixture in options[place]:
            thing = fixture.thing
            if thing is not None and taken[thing.id] + pieces > thing.count:
                continue
            taken[fixture.held.thing_id] += pieces
            yield from ((fixture, *rest) for rest in later(place + 1))
            taken[fixture.held.thing_id] -= pieces

    return later(0)


def _why_overloaded(options: list[tuple[Fixture, ...]]) -> str:
    """Every choice of fixtures leaves too little for the load: name the one that could bear most."""
    strongest = (max(found, key=lambda fixture: fixture.spare_kg) for found in options)
    tightest = min(strongest, key=lambda fixture: fixture.spare_kg)
    return f"{tightest.held.name} may bear only {tightest.spare_kg:.0f} kg more, less than the lightest load for it"


def _binding(exercise: Exercise, setting: Setting, chosen: tuple[Fixture, ...], load: ChosenLoad | None) -> Binding:
    cautions = list(exercise.cautions)
    placed = [fixture for fixture in chosen if fixture.thing is not None]
    for fixture in placed:
        cautions.extend(fixture.thing.cautions if fixture.thing is not None else ())
    if load is not None:
        for thing_id in load.rung.recipe.thing_ids:
            cautions.extend(setting.thing(thing_id).cautions)
    worse = sum(RANK[fixture.held.grade] for fixture in chosen)
    return Binding(
        exercise_id=exercise.id,
        fixtures=tuple(fixture.held for fixture in chosen),
        load=load.rung if load is not None else None,
        load_grade=load.grade if load is not None else None,
        cautions=tuple(dict.fromkeys(cautions)),
        set_up_s=(load.rung.set_up_s if load is not None else 0.0) + PLACING_S * (len(placed) + worse),
    )
