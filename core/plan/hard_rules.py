"""The hard rules of a week as a constraint model (OR-tools CP-SAT): one Boolean per candidate of each day.

Days have one kind, a family (or movement) at most once, their minutes with every pour in them, 48 hours between hard
work for a pattern, and the pins. Bounds are kept tight: what shares a fill in a family is counted in one row, and a
piece at a fill is a Boolean of its own. What a week should aim for is added in `aims`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import LinearExpr

from core.exercise.model import Family
from core.house.wishes import Pin
from core.plan.clock import REFILL_S
from core.plan.frame import FEWEST_BLOCKS, MOST_BLOCKS
from core.plan.menu import Candidate
from core.plan.model import DayKind, FillState
from core.plan.pour_order import pieces_at
from core.plan.problem import RECOVERY, DayChoice, Problem
from core.plan.recovery import near_days
from core.plan.rules import family_of, fits_alone, minutes_rule, pin_rule

DROPPED_LIMIT_S = 300 * 60
HARD_ALL_DAY = (DayKind.INTERVALS, DayKind.LOADED_WALK)
"""Kinds that are hard as a whole: never the same one on neighbouring days."""

Pick = tuple[Candidate, cp_model.IntVar]


@dataclass(slots=True)
class DayVariables:
    """A day in the model: its kinds, its candidates, each piece at a fill, and the pours on the way per thing."""

    kinds: dict[DayKind, cp_model.IntVar]
    picks: list[Pick] = field(default_factory=list)
    filled: list[cp_model.IntVar] = field(default_factory=list)
    refills: list[cp_model.IntVar] = field(default_factory=list)


class RuleModel:
    """Builds the model. `dropped` names the wishes left out (to find which of them clash).

    `kinds` settles the kind of every day. An `outline` has no movements at all, only days that fit by themselves: it
    leaves rules out and adds none.
    """

    def __init__(
        self,
        problem: Problem,
        *,
        dropped: frozenset[str] = frozenset(),
        kinds: Sequence[DayKind] | None = None,
        outline: bool = False,
    ) -> None:
        self.problem = problem
        self.outline = outline
        self.model = cp_model.CpModel()
        self.days: list[DayVariables] = []
        self._dropped = dropped
        for position, day in enumerate(problem.days):
            possible = self._possible(day) if kinds is None else [kinds[position]]
            self.days.append(self._day(position, day, possible))
        if RECOVERY not in dropped:
            self._recovery()
        self._pins()

    def never(self) -> None:
        """Make the model impossible."""
        self.model.add_bool_or([self.model.new_constant(0)])

    def add_pours(self, position: int, chosen: Iterable[Candidate], pours: int) -> None:
        """Say that just these movements of a day need more pours than the bound counts, in any order."""
        keys = {candidate.key for candidate in chosen}
        missing = [1 - variable for candidate, variable in self.days[position].picks if candidate.key in keys]
        self.model.add(LinearExpr.sum(self.days[position].refills) + pours * LinearExpr.sum(missing) >= pours)

    def _possible(self, day: DayChoice) -> list[DayKind]:
        own = [kind for kind, menu in day.menus.items() if (fits_alone(day, kind) if self.outline else menu)]
        return [*own, DayKind.REST]

    def _day(self, position: int, day: DayChoice, possible: list[DayKind]) -> DayVariables:
        found = DayVariables(kinds={kind: self.model.new_bool_var(f"k{position}{kind}") for kind in possible})
        self.model.add_exactly_one(found.kinds.values())
        if self.outline:
            return found
        for kind, active in found.kinds.items():
            own = [(one, self.model.new_bool_var(f"y{position}{one.key}")) for one in day.menus.get(kind, ())]
            if kind is not DayKind.REST:
                self._shape(kind, active, own)
            found.picks.extend(own)
        self._fills(position, found)
        self._limit(day, found)
        return found

    def _shape(self, kind: DayKind, active: cp_model.IntVar, own: list[Pick]) -> None:
        """A day of a kind has between its fewest and most blocks, each family (or movement) at most once."""
        groups: dict[str, list[cp_model.IntVar]] = defaultdict(list)
        for candidate, variable in own:
            groups[family_of(candidate)].append(variable)
        every = LinearExpr.sum([variable for _, variable in own])
        self.model.add(every >= min(FEWEST_BLOCKS[kind], len(groups)) * active)
        self.model.add(every <= MOST_BLOCKS[kind] * active)
        for group in groups.values():
            self.model.add(LinearExpr.sum(group) <= active)

    def _limit(self, day: DayChoice, found: DayVariables) -> None:
        limit_s = DROPPED_LIMIT_S if minutes_rule(day.weekday) in self._dropped else day.limit_s
        terms = [(candidate.seconds, variable) for candidate, variable in found.picks]
        terms.extend((day.fixed_s, variable) for kind, variable in found.kinds.items() if kind is not DayKind.REST)
        terms.extend((REFILL_S, refills) for refills in found.refills)
        self.model.add(LinearExpr.weighted_sum([v for _, v in terms], [s for s, _ in terms]) <= limit_s)

    def _fills(self, position: int, found: DayVariables) -> None:
        """Each piece at a fill that the day uses, and the pours beyond one fill a piece."""
        users: dict[FillState, dict[int, dict[str, list[cp_model.IntVar]]]] = {}
        for candidate, variable in found.picks:
            for state in candidate.states:
                levels = users.setdefault(state, {})
                for level in range(pieces_at(candidate.binding, state)):
                    levels.setdefault(level, {}).setdefault(family_of(candidate), []).append(variable)
        pieces: dict[str, list[cp_model.IntVar]] = {}
        for state in sorted(users):
            for level, groups in users[state].items():
                piece = self.model.new_bool_var(f"u{position}{state.thing_id}{state.volume_l}{level}")
                for group in groups.values():
                    self.model.add(LinearExpr.sum(group) <= piece)
                pieces.setdefault(state.thing_id, []).append(piece)
        for thing_id, own in pieces.items():
            found.filled.extend(own)
            spare = len(own) - self.problem.counts.get(thing_id, 1)
            if spare > 0:
                refills = self.model.new_int_var(0, spare + len(own), f"r{position}{thing_id}")
                self.model.add(LinearExpr.sum(own) - refills <= len(own) - spare)
                found.refills.append(refills)

    def _recovery(self) -> None:
        """At most one hard dose of a family within 48 hours, the turn of the week included."""
        for first, second in near_days([day.wish for day in self.problem.days]):
            for family in Family:
                here, there = self._hard(first, family), self._hard(second, family)
                if here and there:
                    self.model.add(LinearExpr.sum([*here, *there]) <= 1)
            if (self.problem.days[second].weekday - self.problem.days[first].weekday) % 7 in (1, 6):
                self._not_both(first, second)

    def _not_both(self, first: int, second: int) -> None:
        for kind in HARD_ALL_DAY:
            both = [self.days[at].kinds[kind] for at in (first, second) if kind in self.days[at].kinds]
            if len(both) == 2:
                self.model.add(LinearExpr.sum(both) <= 1)

    def _hard(self, position: int, family: Family) -> list[cp_model.IntVar]:
        picks = self.days[position].picks
        return [v for c, v in picks if c.hard and c.kind is DayKind.STRENGTH and c.exercise.family is family]

    def _pins(self) -> None:
        at = {day.weekday: position for position, day in enumerate(self.problem.days)}
        for index, pin in enumerate(self.problem.request.wishes.pins):
            if pin_rule(index) in self._dropped:
                continue
            if pin in self.problem.unmet_pins:
                self.never()
            elif pin.weekday in at:
                self._pin(at[pin.weekday], pin)

    def _pin(self, position: int, pin: Pin) -> None:
        kinds = self.days[position].kinds
        if pin.kind is not None:
            self._need([variable for kind, variable in kinds.items() if kind == pin.kind])
        if pin.exercise_id is None:
            return
        if self.outline:
            menus = self.problem.days[position].menus
            offering = [kind for kind, menu in menus.items() if any(c.exercise.id == pin.exercise_id for c in menu)]
            self._need([variable for kind, variable in kinds.items() if kind in offering])
            return
        self._need([v for c, v in self.days[position].picks if c.exercise.id == pin.exercise_id])

    def _need(self, variables: list[cp_model.IntVar]) -> None:
        if variables:
            self.model.add_exactly_one(variables)
        else:
            self.never()
