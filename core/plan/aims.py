"""What a week aims for, as costs on top of the hard rules: first the kinds of the days, then their movements.

Costs are counted in grains of five points. They are judgement, so a point more or less says nothing; and a finer scale
makes the proof that nothing is better take a hundred times as long.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from ortools.sat.python.cp_model import LinearExpr

from core.exercise.model import Family
from core.plan.frame import HARD_KINDS, MOST_BLOCKS, STRENGTH_FAMILIES, SUITING_MINUTES, TARGET_SETS
from core.plan.hard_rules import RuleModel
from core.plan.menu import COSTS, in_grains
from core.plan.model import DayKind, DayPlan
from core.plan.rules import is_strength_of, same

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import IntVar

PUSHES = (Family.PUSH_LEVEL, Family.PUSH_OVERHEAD)
PULLS = (Family.PULL_LEVEL, Family.PULL_OVERHEAD)
KNEES = (Family.SQUAT, Family.LUNGE)
BALANCED_WITHIN_SETS = 2
FULLER_SETS = 2
"""Where there is time a pattern gets so many sets beyond the low end of its range."""
FEWEST_SETS = 2
"""A pattern trained at all gets at least this many sets a week."""


class Aims:
    """Collects the costs of a model and sets them as what is minimised."""

    def __init__(self, rules: RuleModel) -> None:
        self._rules = rules
        self._problem = rules.problem
        self._terms: list[tuple[int, IntVar]] = []
        self._constant = 0

    def aim_at_kinds(self) -> None:
        """What the kinds of the days pay for."""
        self._kinds_wanted()
        self._places_in_week()
        for position, old in self._kept_days():
            self._pay_unless([self._rules.days[position].kinds[old.kind]], COSTS.changed)
        self._minimize()

    def aim_at_movements(self) -> None:
        """What the movements pay for, once the kinds of the days are settled."""
        for day in self._rules.days:
            for candidate, variable in day.picks:
                self._pay(candidate.cost, variable)
            for piece in day.filled:
                self._pay(COSTS.fill, piece)
            for refills in day.refills:
                self._pay(COSTS.refill, refills)
        self._sets()
        self._full_sessions()
        self._keeping()
        self._minimize()

    def _minimize(self) -> None:
        costs = [cost for cost, _ in self._terms]
        variables = [variable for _, variable in self._terms]
        self._rules.model.minimize(LinearExpr.weighted_sum(variables, costs) + self._constant)

    def _pay(self, points: int, variable: IntVar) -> None:
        grains = in_grains(points)
        if grains:
            self._terms.append((grains, variable))

    def _pay_unless(self, variables: list[IntVar], points: int) -> None:
        """Pay when none of these, of which at most one can be, is chosen."""
        self._constant += in_grains(points)
        for variable in variables:
            self._pay(-points, variable)

    def _at_least(self, value: LinearExpr, most: int, points: int, name: str) -> None:
        """Pay for each unit of `value` above 0."""
        unit = self._rules.model.new_int_var(0, most, name)
        self._rules.model.add(unit >= value)
        self._pay(points, unit)

    def _kinds_wanted(self) -> None:
        for kind in DayKind:
            mine = [day.kinds[kind] for day in self._rules.days if kind in day.kinds]
            if mine:
                off = self._rules.model.new_int_var(0, 7, f"off{kind}")
                wanted = self._problem.wanted.get(kind, 0)
                self._rules.model.add(off >= LinearExpr.sum(mine) - wanted)
                self._rules.model.add(off >= wanted - LinearExpr.sum(mine))
                self._pay(COSTS.wrong_kind, off)

    def _places_in_week(self) -> None:
        """Sessions near the length that suits their kind; hard kinds not on neighbouring days."""
        for wish, day in zip(self._problem.days, self._rules.days, strict=True):
            for kind, variable in day.kinds.items():
                low, high = SUITING_MINUTES[kind]
                off = max(0.0, low - wish.wish.minutes) + max(0.0, wish.wish.minutes - high)
                self._pay(round(COSTS.minute_off * off), variable)
        at = {day.weekday: position for position, day in enumerate(self._problem.days)}
        for weekday, position in sorted(at.items()):
            after = at.get((weekday + 1) % 7)
            if after is not None and after != position:
                self._neighbours(position, after, HARD_KINDS, COSTS.hard_neighbours)
                self._neighbours(position, after, (DayKind.STRENGTH,), COSTS.strength_neighbours)

    def _neighbours(self, here: int, there: int, kinds: tuple[DayKind, ...], points: int) -> None:
        days = self._rules.days
        both = [variable for at in (here, there) for kind, variable in days[at].kinds.items() if kind in kinds]
        self._at_least(LinearExpr.sum(both) - 1, 1, points, f"both{here}{kinds[0]}")

    def _sets(self) -> None:
        """Weekly sets of each family in their range; pushes and pulls even, hinges half of squats and lunges."""
        low, high = TARGET_SETS[self._problem.person.experience]
        factor = self._problem.request.wave.sets
        low, high = max(1, round(low * factor)), max(1, round(high * factor))
        sets: dict[Family, LinearExpr] = {}
        for family in STRENGTH_FAMILIES:
            mine = [(c.dose.sets, v) for day in self._rules.days for c, v in day.picks if is_strength_of(c, family)]
            if mine:
                sets[family] = LinearExpr.weighted_sum([v for _, v in mine], [count for count, _ in mine])
                self._at_least(low - sets[family], low, COSTS.short_set, f"short{family}")
                self._at_least(low + FULLER_SETS - sets[family], low + FULLER_SETS, COSTS.fuller_set, f"few{family}")
                self._at_least(FEWEST_SETS - sets[family], FEWEST_SETS, COSTS.short_set, f"none{family}")
                self._at_least(sets[family] - high, 60, COSTS.extra_set, f"over{family}")
        pushes = LinearExpr.sum([sets[family] for family in PUSHES if family in sets])
        pulls = LinearExpr.sum([sets[family] for family in PULLS if family in sets])
        knees = LinearExpr.sum([sets[family] for family in KNEES if family in sets])
        if sets:
            self._at_least(knees - 2 * sets.get(Family.HINGE, 0) - BALANCED_WITHIN_SETS, 60, COSTS.uneven, "knees")
            self._at_least(pushes - pulls - BALANCED_WITHIN_SETS, 60, COSTS.uneven, "pushes")
            self._at_least(pulls - pushes - BALANCED_WITHIN_SETS, 60, COSTS.uneven, "pulls")

    def _full_sessions(self) -> None:
        """Interval and mobility days should use their time: every block that would still fit is paid for."""
        for position, (wish, day) in enumerate(zip(self._problem.days, self._rules.days, strict=True)):
            for kind in (DayKind.INTERVALS, DayKind.MOBILITY):
                own = [(candidate, variable) for candidate, variable in day.picks if candidate.kind is kind]
                if not own:
                    continue
                longest_s = max(candidate.seconds for candidate, _ in own)
                fitting = min(MOST_BLOCKS[kind], (wish.limit_s - wish.fixed_s) // longest_s, len(own))
                missing = fitting - LinearExpr.sum([variable for _, variable in own])
                self._at_least(missing, MOST_BLOCKS[kind], COSTS.full_session, f"missing{position}{kind}")

    def _kept_days(self) -> Iterator[tuple[int, DayPlan]]:
        """Days of the plan the person has, with their position, where that kind of day is still possible."""
        keep = self._problem.request.keep
        at = {day.weekday: position for position, day in enumerate(self._problem.days)}
        for old in keep.days if keep is not None else ():
            position = at.get(old.weekday)
            if position is not None and old.kind in self._rules.days[position].kinds:
                yield position, old

    def _keeping(self) -> None:
        """A movement taken out costs most, one put in half of that, other sets or another fill little."""
        for position, old in self._kept_days():
            picks = self._rules.days[position].picks
            kept = {block.exercise.id for block in old.blocks}
            for block in old.blocks:
                mine = [v for c, v in picks if c.exercise.id == block.exercise.id]
                alike = [v for c, v in picks if same(c, block.exercise.id, block.dose.sets, block.states)]
                if mine:
                    self._pay_unless(mine, COSTS.changed)
                if alike and self._problem.request.keep_loads:
                    self._pay_unless(alike, COSTS.changed // 10)
            for candidate, variable in picks:
                if candidate.exercise.id not in kept:
                    self._pay(COSTS.changed // 2, variable)
