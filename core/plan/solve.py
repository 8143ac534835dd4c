"""The best week for a problem, in two steps of which each is proven: the kinds of the days, then their movements.

The kinds are chosen from an outline that leaves rules out and adds none, so they are the best there are whenever the
movements then work out. Where they don't, the kinds are chosen under every rule instead.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from core.plan.aims import Aims
from core.plan.hard_rules import RuleModel
from core.plan.menu import Candidate
from core.plan.model import DayKind, Status
from core.plan.pour_order import in_order, least_pours, pours_during
from core.plan.problem import Problem
from core.plan.search import Ending, OnStart, Run, run

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import IntVar

STATUS_OF: dict[Ending, Status] = {
    Ending.PROVEN: Status.OPTIMAL,
    Ending.FOUND: Status.CUT_SHORT,
    Ending.STOPPED: Status.STOPPED,
    Ending.UNDECIDED: Status.CUT_SHORT,
    Ending.NONE: Status.IMPOSSIBLE,
}


Chosen = tuple[Candidate, ...]
Told = set[tuple[int, frozenset[str]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """What the solver chose: kind and candidates per day (by position), the objective and how it ended.

    `kinds` is empty when there is no answer: impossible, or stopped or out of time before the first one.
    """

    status: Status
    kinds: tuple[DayKind, ...] = ()
    chosen: tuple[Chosen, ...] = ()
    objective: int = 0
    solver_s: float = 0.0


def solve(problem: Problem, on_start: OnStart | None = None) -> Solution:
    """The best week for the problem; `on_start` may stop it."""
    if problem.unmet_pins:
        return Solution(status=Status.IMPOSSIBLE)
    quick = _in_two_steps(problem, on_start, outline=True)
    if quick.status is not Status.IMPOSSIBLE:
        return quick
    thorough = _in_two_steps(problem, on_start, outline=False)
    return replace(thorough, solver_s=quick.solver_s + thorough.solver_s)


def holds(problem: Problem, dropped: frozenset[str], on_start: OnStart | None = None) -> Ending:
    """Whether any week meets every rule once the `dropped` wishes are left out (`Ending.NONE`: there is none)."""
    return run(RuleModel(problem, dropped=dropped).model, on_start).ending


def _in_two_steps(problem: Problem, on_start: OnStart | None, *, outline: bool) -> Solution:
    first = RuleModel(problem, outline=outline)
    Aims(first).aim_at_kinds()
    settled = run(first.model, on_start, confirm=not outline)
    if not settled.has_answer or settled.ending is Ending.STOPPED:
        return Solution(status=STATUS_OF[settled.ending], solver_s=settled.solver_s)
    kinds = tuple(next(k for k, v in day.kinds.items() if settled.solver.boolean_value(v)) for day in first.days)
    found = _movements(problem, kinds, on_start)
    proven = settled.ending is Ending.PROVEN or found.status is not Status.OPTIMAL
    status = found.status if proven else Status.CUT_SHORT
    return replace(found, status=status, solver_s=settled.solver_s + found.solver_s)


def _movements(problem: Problem, kinds: tuple[DayKind, ...], on_start: OnStart | None) -> Solution:
    """The movements for days of these kinds. Where no order of a day keeps to the pours counted, they are made to."""
    rules = RuleModel(problem, kinds=kinds)
    Aims(rules).aim_at_movements()
    spent_s = 0.0
    told: Told = set()
    while True:
        done = run(rules.model, on_start, confirm=False)
        spent_s += done.solver_s
        if not done.has_answer:
            return Solution(status=STATUS_OF[done.ending], solver_s=spent_s)
        chosen = tuple(_chosen(day.picks, done) for day in rules.days)
        if not _add_uncounted_pours(rules, chosen, told):
            break
    return Solution(
        status=STATUS_OF[done.ending],
        kinds=kinds,
        chosen=chosen,
        objective=round(done.solver.objective_value),
        solver_s=spent_s,
    )


def _chosen(picks: list[tuple[Candidate, IntVar]], done: Run) -> Chosen:
    return tuple(candidate for candidate, variable in picks if done.solver.boolean_value(variable))


def _add_uncounted_pours(rules: RuleModel, chosen: tuple[Chosen, ...], told: Told) -> bool:
    """Tell the model of days whose fills can't be kept together in any order; whether there were any it wasn't told."""
    counts = rules.problem.counts
    found = False
    for position, candidates in enumerate(chosen):
        pours = sum(1 for _ in pours_during(in_order(candidates, counts), counts))
        keys = frozenset(candidate.key for candidate in candidates)
        if pours > least_pours(candidates, counts) and (position, keys) not in told:
            rules.add_pours(position, candidates, pours)
            told.add((position, keys))
            found = True
    return found
