"""The oracle: every week of a small problem, tried out. It shares the costs with the planner, but no line of its model.

A week is the best when its kinds cost least among all that can be filled, and its movements cost least for them.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, permutations, product

from core.exercise.model import Family
from core.plan.aims import BALANCED_WITHIN_SETS, FEWEST_SETS, FULLER_SETS
from core.plan.frame import FEWEST_BLOCKS, HARD_KINDS, MOST_BLOCKS, STRENGTH_FAMILIES, SUITING_MINUTES, TARGET_SETS
from core.plan.menu import COSTS, Candidate, in_grains
from core.plan.model import DayKind
from core.plan.problem import DayChoice, Problem
from core.plan.validate_pours import fewest_pours

Chosen = tuple[Candidate, ...]
Kinds = tuple[DayKind, ...]
Sets = tuple[int, ...]


def best_costs(problem: Problem) -> dict[Kinds, int]:
    """For every choice of kinds that costs least among those with a week: what its best movements cost."""
    found: dict[Kinds, int] = {}
    least: int | None = None
    for kinds in sorted(product(*map(_possible, problem.days)), key=lambda kinds: kinds_cost(problem, kinds)):
        cost = kinds_cost(problem, kinds)
        if least is not None and cost > least:
            break
        own = _Costs(problem)
        costs = [own.of(week) for week in weeks_of(problem, kinds)]
        if costs:
            found[kinds], least = min(costs), cost
    return found


def weeks_of(problem: Problem, kinds: Kinds) -> Iterator[tuple[Chosen, ...]]:
    """Every sound week with these kinds of days."""
    if not _kinds_are_sound(problem, kinds):
        return
    choices = [list(_days_of(problem, day, kind)) for day, kind in zip(problem.days, kinds, strict=True)]
    weekdays = [day.weekday for day in problem.days]
    pairs = [(at, weekdays.index((day + 1) % 7)) for at, day in enumerate(weekdays) if (day + 1) % 7 in weekdays]
    for week in product(*choices):
        if not any(_hard(week[here]) & _hard(week[there]) for here, there in pairs):
            yield week


def _possible(day: DayChoice) -> list[DayKind]:
    return [DayKind.REST, *(kind for kind, menu in day.menus.items() if menu)]


def _kinds_are_sound(problem: Problem, kinds: Kinds) -> bool:
    pins = {pin.weekday: pin.kind for pin in problem.request.wishes.pins if pin.kind is not None}
    return all(pins.get(day.weekday, kind) == kind for day, kind in zip(problem.days, kinds, strict=True))


def _days_of(problem: Problem, day: DayChoice, kind: DayKind) -> Iterator[Chosen]:
    pinned = {p.exercise_id for p in problem.request.wishes.pins if p.exercise_id and p.weekday == day.weekday}
    if kind is DayKind.REST:
        if not pinned:
            yield ()
        return
    menu = day.menus[kind]
    names = [_name(one) for one in menu]
    fewest = min(FEWEST_BLOCKS[kind], len(set(names)))
    for count in range(fewest, min(MOST_BLOCKS[kind], len(set(names))) + 1):
        for chosen in combinations(menu, count):
            if len({_name(one) for one in chosen}) == count and pinned <= {one.exercise.id for one in chosen}:
                seconds = sum(one.seconds for one in chosen) + day.fixed_s + 60 * pours(problem, chosen)
                if seconds <= day.limit_s:
                    yield chosen


def _name(one: Candidate) -> str:
    return one.exercise.family if one.kind is DayKind.STRENGTH else one.exercise.id


def _hard(chosen: Chosen) -> set[Family]:
    return {one.exercise.family for one in chosen if one.hard}


def pours(problem: Problem, chosen: Chosen) -> int:
    """The fewest pours on the way in any order of the blocks."""
    filled = [one for one in chosen if one.states]
    return min(_pours_in(problem, order) for order in permutations(filled))


def _pours_in(problem: Problem, order: Chosen) -> int:
    wanted: dict[str, list[tuple[tuple[str, float], int]]] = {}
    for one in order:
        for part in one.binding.load.recipe.parts if one.binding.load is not None else ():
            level = (part.material_id or "", part.fill_l)
            wanted.setdefault(part.thing_id, []).append((level, part.count))
    return sum(fewest_pours(levels, problem.counts.get(thing_id, 1)) for thing_id, levels in wanted.items())


def kinds_cost(problem: Problem, kinds: Kinds) -> int:
    """Grains for the kinds of the days."""
    cost = 0
    for kind in DayKind:
        if any(kind in _possible(day) for day in problem.days):
            cost += in_grains(COSTS.wrong_kind) * abs(kinds.count(kind) - problem.wanted.get(kind, 0))
    by_weekday = dict(zip((day.weekday for day in problem.days), kinds, strict=True))
    for day, kind in zip(problem.days, kinds, strict=True):
        low, high = SUITING_MINUTES[kind]
        off = max(0.0, low - day.wish.minutes) + max(0.0, day.wish.minutes - high)
        cost += in_grains(round(COSTS.minute_off * off))
        after = by_weekday.get((day.weekday + 1) % 7, DayKind.REST)
        cost += in_grains(COSTS.hard_neighbours) * (kind in HARD_KINDS and after in HARD_KINDS)
        cost += in_grains(COSTS.strength_neighbours) * (kind is after is DayKind.STRENGTH)
        old = _kept(problem, day)
        cost += in_grains(COSTS.changed) * (old is not None and old[0] in _possible(day) and old[0] is not kind)
    return cost


def movements_cost(problem: Problem, week: tuple[Chosen, ...]) -> int:
    """Grains for the movements of a week."""
    return _Costs(problem).of(week)


class _Costs:
    """What weeks of a problem cost; what a day costs by itself is worked out once."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._days: dict[tuple[int, int], tuple[int, Sets, Chosen]] = {}
        self._weeks: dict[tuple[Sets, tuple[bool, ...]], int] = {}

    def of(self, week: tuple[Chosen, ...]) -> int:
        days = [self._day(at, chosen) for at, chosen in enumerate(week)]
        sets = tuple(map(sum, zip(*(own for _, own, _ in days), strict=True)))
        key = (sets, tuple(bool(chosen) and chosen[0].kind is DayKind.STRENGTH for chosen in week))
        if key not in self._weeks:
            self._weeks[key] = _sets_cost(self._problem, week, sets)
        return self._weeks[key] + sum(cost for cost, _, _ in days)

    def _day(self, at: int, chosen: Chosen) -> tuple[int, Sets, Chosen]:
        """What the day costs, its sets by family, and the day itself (held, so that its id stays its own)."""
        key = (at, id(chosen))
        if key not in self._days:
            strength = [one for one in chosen if one.kind is DayKind.STRENGTH]
            sets = tuple(sum(one.dose.sets for one in strength if one.exercise.family is f) for f in STRENGTH_FAMILIES)
            self._days[key] = (_day_cost(self._problem, self._problem.days[at], chosen), sets, chosen)
        return self._days[key]


def _day_cost(problem: Problem, day: DayChoice, chosen: Chosen) -> int:
    pieces: dict[object, int] = {}
    for one in chosen:
        for part in one.binding.load.recipe.parts if one.binding.load is not None else ():
            level = (part.thing_id, part.fill_l)
            pieces[level] = max(pieces.get(level, 0), part.count)
    cost = sum(in_grains(one.cost) for one in chosen)
    cost += in_grains(COSTS.fill) * sum(pieces.values()) + in_grains(COSTS.refill) * pours(problem, chosen)
    return cost + _room_cost(day, chosen) + _change_cost(problem, day, chosen)


def _sets_cost(problem: Problem, week: tuple[Chosen, ...], weekly: Sets) -> int:
    low, high = TARGET_SETS[problem.person.experience]
    sets = dict(zip(STRENGTH_FAMILIES, weekly, strict=True))
    offered = _offered(problem, week)
    cost = 0
    for family in offered:
        own = sets[family]
        cost += in_grains(COSTS.short_set) * (max(0, low - own) + max(0, FEWEST_SETS - own))
        cost += in_grains(COSTS.fuller_set) * max(0, low + FULLER_SETS - own)
        cost += in_grains(COSTS.extra_set) * max(0, own - high)
    pushes = sets[Family.PUSH_LEVEL] + sets[Family.PUSH_OVERHEAD]
    pulls = sets[Family.PULL_LEVEL] + sets[Family.PULL_OVERHEAD]
    knees = sets[Family.SQUAT] + sets[Family.LUNGE]
    uneven = max(0, abs(pushes - pulls) - BALANCED_WITHIN_SETS)
    uneven += max(0, knees - 2 * sets[Family.HINGE] - BALANCED_WITHIN_SETS)
    return cost + in_grains(COSTS.uneven) * uneven


def _offered(problem: Problem, week: tuple[Chosen, ...]) -> set[Family]:
    """Families that a strength day of this week has on its menu."""
    found = set()
    for day, chosen in zip(problem.days, week, strict=True):
        if any(one.kind is DayKind.STRENGTH for one in chosen):
            found |= {one.exercise.family for one in day.menus[DayKind.STRENGTH]}
    return found


def _room_cost(day: DayChoice, chosen: Chosen) -> int:
    if not chosen or chosen[0].kind not in (DayKind.INTERVALS, DayKind.MOBILITY):
        return 0
    menu = day.menus[chosen[0].kind]
    longest_s = max(one.seconds for one in menu)
    fitting = min(MOST_BLOCKS[chosen[0].kind], (day.limit_s - day.fixed_s) // longest_s, len(menu))
    return in_grains(COSTS.full_session) * max(0, fitting - len(chosen))


def _kept(problem: Problem, day: DayChoice) -> tuple[DayKind, list[tuple[str, int, object]]] | None:
    keep = problem.request.keep
    for old in keep.days if keep is not None else ():
        if old.weekday == day.weekday:
            return old.kind, [(block.exercise.id, block.dose.sets, block.states) for block in old.blocks]
    return None


def _change_cost(problem: Problem, day: DayChoice, chosen: Chosen) -> int:
    """Movements taken out, put in, or done with other sets or fills, where the kind of day stayed."""
    old = _kept(problem, day)
    kind = chosen[0].kind if chosen else DayKind.REST
    if old is None or old[0] is not kind:
        return 0
    menu = day.menus.get(kind, ())
    now = {(one.exercise.id, one.dose.sets, one.states) for one in chosen}
    here = {one.exercise.id for one in chosen}
    cost = 0
    for name, sets, states in old[1]:
        offered = {(one.exercise.id, one.dose.sets, one.states) for one in menu}
        cost += in_grains(COSTS.changed) * (name in {one.exercise.id for one in menu} and name not in here)
        cost += in_grains(COSTS.changed // 10) * ((name, sets, states) in offered and (name, sets, states) not in now)
    added = here - {name for name, _, _ in old[1]}
    return cost + in_grains(COSTS.changed // 2) * len(added)
