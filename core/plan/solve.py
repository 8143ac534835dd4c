"""The week as a constraint model (OR-tools CP-SAT), solved to proven optimality by one worker, in two steps.

First the kinds of the days (enough of each kind, long sessions for strength, hard days apart) under every hard rule;
then, with those kinds, movements, sets, loads and fills. Each step is proven optimal, so the week is the best in that
order of importance. One Boolean per candidate with its cost in the coefficient, one per kind of each day, one per fill
in use. The same problem gives the same week: one worker, linearization level 2, a deterministic time limit.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import LinearExpr

from core.exercise.model import Family
from core.plan.clock import REFILL_S
from core.plan.frame import FEWEST_BLOCKS, HARD_KINDS, MOST_BLOCKS, SUITING_MINUTES, TARGET_SETS
from core.plan.menu import COSTS, STRENGTH_FAMILIES, Candidate
from core.plan.model import DayKind, DayPlan, FillState, Status
from core.plan.problem import RECOVERY, DayChoice, Problem
from core.plan.rules import fits_alone, is_strength_of, minutes_rule, pieces_of, pin_rule, same

DETERMINISTIC_LIMIT = 20.0
WALL_NET_S = 30.0
DROPPED_LIMIT_S = 300 * 60
EIGHTHS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """What the solver chose: kind and candidates per day (by position), the objective and how it ended."""

    status: Status
    kinds: tuple[DayKind, ...] = ()
    chosen: tuple[tuple[Candidate, ...], ...] = ()
    objective: int = 0
    solver_s: float = 0.0


class _Model:
    """Builds the model; `dropped` names the wishes left out (to find which of them clash).

    `kinds` settles the kind of every day. An `outline` has no movements at all, only days that fit by themselves.
    """

    def __init__(
        self,
        problem: Problem,
        dropped: frozenset[str],
        kinds: tuple[DayKind, ...] | None = None,
        *,
        outline: bool = False,
    ) -> None:
        self.problem = problem
        self.only = kinds
        self.outline = outline
        self.dropped = dropped
        self.model = cp_model.CpModel()
        self.kind: list[dict[DayKind, cp_model.IntVar]] = []
        self.pick: list[list[tuple[Candidate, cp_model.IntVar]]] = []
        self.costs: list[tuple[int, cp_model.IntVar]] = []
        """(cost, variable) in eighths of a point, so that whole points leave room for breaking ties."""
        self.constant = 0
        for position, day in enumerate(problem.days):
            self._day(position, day)
        self._recovery()
        self._pins()

    def _day(self, position: int, day: DayChoice) -> None:
        possible = [kind for kind, menu in day.menus.items() if (fits_alone(day, kind) if self.outline else menu)]
        possible.append(DayKind.REST)
        if self.only is not None:
            possible = [self.only[position]]
        kinds = {kind: self.model.new_bool_var(f"k{position}{kind}") for kind in possible}
        self.model.add_exactly_one(kinds.values())
        picks = []
        for kind, active in kinds.items():
            menu = () if self.outline else day.menus.get(kind, ())
            own = [(candidate, self.model.new_bool_var(f"y{position}{candidate.key}")) for candidate in menu]
            self._shape(kind, active, own)
            picks.extend(own)
        self.kind.append(kinds)
        self.pick.append(picks)
        self._limit(position, day, kinds)

    def _shape(self, kind: DayKind, active: cp_model.IntVar, own: list[tuple[Candidate, cp_model.IntVar]]) -> None:
        """A day of a kind has between its fewest and most blocks, each family (or movement) at most once."""
        if kind is DayKind.REST or self.outline:
            return
        names = list(dict.fromkeys(candidate.exercise.id for candidate, _ in own))
        fewest = min(FEWEST_BLOCKS[kind], len(names))
        variables = [variable for _, variable in own]
        self.model.add(LinearExpr.sum(variables) >= fewest * active)
        self.model.add(LinearExpr.sum(variables) <= MOST_BLOCKS[kind] * active)
        groups: dict[str, list[cp_model.IntVar]] = defaultdict(list)
        for candidate, variable in own:
            strength = kind is DayKind.STRENGTH
            groups[candidate.exercise.family if strength else candidate.exercise.id].append(variable)
        for group in groups.values():
            self.model.add(LinearExpr.sum(group) <= active)

    def _limit(self, position: int, day: DayChoice, kinds: dict[DayKind, cp_model.IntVar]) -> None:
        limit_s = DROPPED_LIMIT_S if minutes_rule(day.weekday) in self.dropped else day.limit_s
        refills = self._fills(position)
        terms = [(candidate.seconds, variable) for candidate, variable in self.pick[position]]
        terms.extend((day.fixed_s, variable) for kind, variable in kinds.items() if kind is not DayKind.REST)
        terms.extend((REFILL_S, extra) for extra in refills)
        self.model.add(LinearExpr.weighted_sum([v for _, v in terms], [s for s, _ in terms]) <= limit_s)

    def _fills(self, position: int) -> list[cp_model.IntVar]:
        """Fill states in use on a day, and the pours needed during it beyond one state a piece."""
        used: dict[FillState, cp_model.IntVar] = {}
        weight: dict[FillState, int] = defaultdict(lambda: 1)
        for candidate, variable in self.pick[position]:
            for state in candidate.states:
                if state not in used:
                    used[state] = self.model.new_bool_var(f"u{position}{state.thing_id}{state.volume_l}")
                    self._pay(COSTS.fill, used[state])
                self.model.add_implication(variable, used[state])
                weight[state] = max(weight[state], pieces_of(candidate, state))
        by_thing: dict[str, list[FillState]] = defaultdict(list)
        for state in used:
            by_thing[state.thing_id].append(state)
        refills = []
        for thing_id in sorted(by_thing):
            states = by_thing[thing_id]
            most = sum(weight[state] for state in states)
            count = self.problem.counts.get(thing_id, 1)
            if most <= count:
                continue
            extra = self.model.new_int_var(0, most, f"r{position}{thing_id}")
            used_pieces = LinearExpr.weighted_sum(
                [used[state] for state in states], [weight[state] for state in states]
            )
            self.model.add(extra >= used_pieces - count)
            self._pay(COSTS.refill, extra)
            refills.append(extra)
        return refills

    def _recovery(self) -> None:
        """At most one hard dose of a family within 48 hours: never on neighbouring days, Sunday and Monday included."""
        if RECOVERY in self.dropped:
            return
        at = {day.weekday: position for position, day in enumerate(self.problem.days)}
        for weekday, position in sorted(at.items()):
            after = at.get((weekday + 1) % 7)
            if after is None or after == position:
                continue
            for family in Family:
                here, there = self._hard(position, family), self._hard(after, family)
                if here and there:
                    self.model.add(LinearExpr.sum(here + there) <= 1)
            hard_kinds = (DayKind.INTERVALS, DayKind.LOADED_WALK)
            for kind in hard_kinds:
                if kind in self.kind[position] and kind in self.kind[after]:
                    self.model.add(self.kind[position][kind] + self.kind[after][kind] <= 1)

    def _hard(self, position: int, family: Family) -> list[cp_model.IntVar]:
        picks = self.pick[position]
        return [v for c, v in picks if c.hard and c.kind is DayKind.STRENGTH and c.exercise.family is family]

    def _pins(self) -> None:
        at = {day.weekday: position for position, day in enumerate(self.problem.days)}
        for index, pin in enumerate(self.problem.request.wishes.pins):
            if pin_rule(index) in self.dropped or (pin.weekday not in at and pin not in self.problem.unmet_pins):
                continue
            if pin in self.problem.unmet_pins:
                self.model.add(sum([self.model.new_constant(0)]) >= 1)
                continue
            self._pin(at[pin.weekday], pin.kind, pin.exercise_id)

    def _pin(self, position: int, kind: str | None, exercise_id: str | None) -> None:
        if kind is not None:
            self.model.add(self.kind[position][DayKind(kind)] == 1)
        if exercise_id is not None:
            mine = [v for c, v in self.pick[position] if c.exercise.id == exercise_id]
            self.model.add(sum(mine) == 1)

    def aim_at_kinds(self) -> None:
        """The first step: what the kinds of the days pay for."""
        self.costs.clear()
        self._aim_at_kinds()
        self._aim_at_places_in_week()
        self._aim_at_keeping_kinds()
        self._minimize()

    def aim_at_movements(self, kinds: tuple[DayKind, ...]) -> None:
        """The second step, with the kinds of the days settled: what the movements pay for."""
        for variables, kind in zip(self.kind, kinds, strict=True):
            self.model.add(variables[kind] == 1)
        for picks in self.pick:
            for order, (candidate, variable) in enumerate(picks):
                self._pay(candidate.cost, variable, ties=(order % 7) * COSTS.place_in_list)
        self._aim_at_sets()
        self._aim_at_full_sessions()
        self._aim_at_keeping()
        self._minimize()

    def _minimize(self) -> None:
        variables = [variable for _, variable in self.costs]
        costs = [cost for cost, _ in self.costs]
        self.model.minimize(LinearExpr.weighted_sum(variables, costs) + self.constant)

    def _pay(self, points: int, variable: cp_model.IntVar, *, ties: int = 0) -> None:
        self.costs.append((EIGHTHS * points + ties, variable))

    def _aim_at_sets(self) -> None:
        low, high = TARGET_SETS[self.problem.person.experience]
        factor = self.problem.request.wave.sets
        low, high = max(1, round(low * factor)), max(1, round(high * factor))
        for family in STRENGTH_FAMILIES:
            mine = [(c.dose.sets, v) for picks in self.pick for c, v in picks if is_strength_of(c, family)]
            if not mine:
                continue
            sets = LinearExpr.weighted_sum([v for _, v in mine], [count for count, _ in mine])
            short = self.model.new_int_var(0, low, f"short{family}")
            none = self.model.new_int_var(0, 2, f"none{family}")
            over = self.model.new_int_var(0, 60, f"over{family}")
            self.model.add(short >= low - sets)
            self.model.add(none >= 2 - sets)
            self.model.add(over >= sets - high)
            self._pay(COSTS.short_set, short)
            self._pay(COSTS.short_set, none)
            self._pay(COSTS.extra_set, over)

    def _aim_at_kinds(self) -> None:
        for kind in DayKind:
            mine = [kinds[kind] for kinds in self.kind if kind in kinds]
            if not mine:
                continue
            wanted = self.problem.wanted.get(kind, 0)
            off = self.model.new_int_var(0, 7, f"off{kind}")
            self.model.add(off >= sum(mine) - wanted)
            self.model.add(off >= wanted - sum(mine))
            self._pay(COSTS.wrong_kind, off)

    def _aim_at_places_in_week(self) -> None:
        """Sessions near the length that suits their kind; hard kinds not on neighbouring days; earlier days first."""
        for position, day in enumerate(self.problem.days):
            for kind, variable in self.kind[position].items():
                low, high = SUITING_MINUTES[kind]
                off = max(0.0, low - day.wish.minutes) + max(0.0, day.wish.minutes - high)
                self._pay(round(COSTS.minute_off * off), variable, ties=position if kind in HARD_KINDS else 0)
        at = {day.weekday: position for position, day in enumerate(self.problem.days)}
        for weekday, position in sorted(at.items()):
            after = at.get((weekday + 1) % 7)
            if after is not None and after != position:
                self._pay_for_neighbours(position, after)

    def _pay_for_neighbours(self, position: int, after: int) -> None:
        both = self.model.new_bool_var(f"both{position}")
        here = [v for kind, v in self.kind[position].items() if kind in HARD_KINDS]
        there = [v for kind, v in self.kind[after].items() if kind in HARD_KINDS]
        self.model.add(sum(here) + sum(there) <= 1 + both)
        self._pay(COSTS.hard_neighbours, both)
        strength = [
            kinds[DayKind.STRENGTH] for kinds in (self.kind[position], self.kind[after]) if DayKind.STRENGTH in kinds
        ]
        if len(strength) == 2:
            twice = self.model.new_bool_var(f"twice{position}")
            self.model.add(sum(strength) <= 1 + twice)
            self._pay(COSTS.strength_neighbours, twice)

    def _aim_at_full_sessions(self) -> None:
        """Interval and mobility days should use their time: every block that would still fit is paid for."""
        for position, day in enumerate(self.problem.days):
            for kind in (DayKind.INTERVALS, DayKind.MOBILITY):
                own = [(c, v) for c, v in self.pick[position] if c.kind is kind]
                if not own or kind not in self.kind[position]:
                    continue
                room_s = day.limit_s - day.fixed_s
                longest_s = max(candidate.seconds for candidate, _ in own)
                fitting = min(MOST_BLOCKS[kind], room_s // longest_s, len({c.exercise.id for c, _ in own}))
                missing = self.model.new_int_var(0, MOST_BLOCKS[kind], f"missing{position}{kind}")
                self.model.add(missing >= fitting * self.kind[position][kind] - sum(v for _, v in own))
                self._pay(COSTS.full_session, missing)

    def _kept_days(self) -> Iterator[tuple[int, DayPlan]]:
        """Days of the plan the person has, with their position, where that kind of day is still possible."""
        keep = self.problem.request.keep
        at = {day.weekday: position for position, day in enumerate(self.problem.days)}
        for old in keep.days if keep is not None else ():
            position = at.get(old.weekday)
            if position is not None and old.kind in self.kind[position]:
                yield position, old

    def _aim_at_keeping_kinds(self) -> None:
        for position, old in self._kept_days():
            self._pay_unless([self.kind[position][old.kind]], COSTS.changed)

    def _aim_at_keeping(self) -> None:
        for position, old in self._kept_days():
            kept = {block.exercise.id for block in old.blocks}
            for block in old.blocks:
                mine = [v for c, v in self.pick[position] if c.exercise.id == block.exercise.id]
                picks = self.pick[position]
                alike = [v for c, v in picks if same(c, block.exercise.id, block.dose.sets, block.states)]
                if mine:
                    self._pay_unless(mine, COSTS.changed)
                if alike and self.problem.request.keep_loads:
                    self._pay_unless(alike, COSTS.changed // 10)
            for candidate, variable in self.pick[position]:
                if candidate.exercise.id not in kept:
                    self._pay(COSTS.changed // 2, variable)

    def _pay_unless(self, variables: list[cp_model.IntVar], cost: int) -> None:
        self.constant += EIGHTHS * cost
        for variable in variables:
            self._pay(-cost, variable)


def _solver() -> cp_model.CpSolver:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2
    solver.parameters.add_lp_constraints_lazily = False  # with these two the same proof takes about half the time
    solver.parameters.cp_model_probing_level = 0
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = DETERMINISTIC_LIMIT
    solver.parameters.max_time_in_seconds = WALL_NET_S
    solver.parameters.catch_sigint_signal = False
    return solver


def can_hold(problem: Problem, dropped: frozenset[str] = frozenset()) -> bool:
    """Whether any week meets every rule once the `dropped` wishes are left out."""
    status = _solver().solve(_Model(problem, dropped).model)
    return status in (cp_model.OPTIMAL, cp_model.FEASIBLE)


def solve(problem: Problem, on_start: Callable[[cp_model.CpSolver], None] | None = None) -> Solution:
    """The best week for the problem. `on_start` receives each running solver, so a caller can stop it."""
    if not problem.request.wishes.pins:
        quick = _in_two_steps(problem, on_start, outline=True)
        if quick.status is not Status.IMPOSSIBLE:
            return quick
    return _in_two_steps(problem, on_start, outline=False)


def _in_two_steps(problem: Problem, on_start: Callable[[cp_model.CpSolver], None] | None, *, outline: bool) -> Solution:
    """Kinds, then movements. With an `outline` the kinds are the best there are whenever the movements then work out:
    an outline leaves rules out and adds none. Where they don't, the kinds are chosen under every rule instead.
    """
    first = _Model(problem, frozenset(), outline=outline)
    first.aim_at_kinds()
    solver = _solver()
    kinds_status = _run(solver, first, on_start)
    if kinds_status is Status.IMPOSSIBLE:
        return Solution(status=Status.IMPOSSIBLE, solver_s=solver.wall_time)
    kinds = tuple(next(kind for kind, v in kinds.items() if solver.boolean_value(v)) for kinds in first.kind)
    spent_s = solver.wall_time
    second = _Model(problem, frozenset(), kinds)
    second.aim_at_movements(kinds)
    solver = _solver()
    status = _run(solver, second, on_start)
    if status is Status.IMPOSSIBLE:
        return Solution(status=Status.IMPOSSIBLE, solver_s=spent_s + solver.wall_time)
    return Solution(
        status=Status.CUT_SHORT if Status.CUT_SHORT in (kinds_status, status) else Status.OPTIMAL,
        kinds=kinds,
        chosen=tuple(tuple(c for c, v in picks if solver.boolean_value(v)) for picks in second.pick),
        objective=round(solver.objective_value),
        solver_s=spent_s + solver.wall_time,
    )


def _run(solver: cp_model.CpSolver, built: _Model, on_start: Callable[[cp_model.CpSolver], None] | None) -> Status:
    if on_start is not None:
        on_start(solver)
    status = solver.solve(built.model)
    if status == cp_model.OPTIMAL:
        return Status.OPTIMAL
    return Status.CUT_SHORT if status == cp_model.FEASIBLE else Status.IMPOSSIBLE
