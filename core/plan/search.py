"""One run of the solver: its settings, how it can be stopped, and what its answer means.

One worker with linearization level 2 and a deterministic limit: the same model gives the same answer. An "infeasible"
counts only when a second run with other settings agrees, because solvers have been wrong about that before.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum

from ortools.sat.python import cp_model

DETERMINISTIC_LIMIT = 8.0
WALL_NET_S = 30.0

OnStart = Callable[[cp_model.CpSolver], None]
"""Receives each solver before it runs; `stop_search()` on it, from another thread, ends the planning at once."""


class Ending(StrEnum):
    """Proven best; an answer, but not proven; stopped by the caller; out of time with no answer; no answer exists."""

    PROVEN = "proven"
    FOUND = "found"
    STOPPED = "stopped"
    UNDECIDED = "undecided"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Run:
    """How a run ended, the solver, whether it has values to read (a stopped one may), and the seconds it took."""

    ending: Ending
    solver: cp_model.CpSolver
    has_answer: bool = False
    solver_s: float = 0.0


def run(model: cp_model.CpModel, on_start: OnStart | None, *, confirm: bool = True) -> Run:
    """Solve a model. With `confirm`, "no answer exists" is asked again with other settings."""
    first = _once(model, on_start, _usual_settings())
    if first.ending is not Ending.NONE or not confirm:
        return first
    second = _once(model, on_start, _other_settings())
    return replace(second, solver_s=first.solver_s + second.solver_s)


def _usual_settings() -> cp_model.CpSolver:
    """Those that proved a dozen generated weeks in the least time."""
    solver = _settings()
    solver.parameters.linearization_level = 2
    solver.parameters.add_lp_constraints_lazily = False
    solver.parameters.cp_model_probing_level = 0
    solver.parameters.polish_lp_solution = True
    solver.parameters.max_num_cuts = 100
    return solver


def _other_settings() -> cp_model.CpSolver:
    """As unlike the usual ones as can be: no presolve, no linear relaxation, another seed."""
    solver = _settings()
    solver.parameters.cp_model_presolve = False
    solver.parameters.linearization_level = 0
    solver.parameters.random_seed = 7
    return solver


def _settings() -> cp_model.CpSolver:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = DETERMINISTIC_LIMIT
    solver.parameters.max_time_in_seconds = WALL_NET_S
    solver.parameters.catch_sigint_signal = False
    return solver


def _once(model: cp_model.CpModel, on_start: OnStart | None, solver: cp_model.CpSolver) -> Run:
    if on_start is not None:
        on_start(solver)
    status = solver.solve(model)
    endings = {
        cp_model.OPTIMAL: Ending.PROVEN,
        cp_model.FEASIBLE: Ending.FOUND,
        cp_model.INFEASIBLE: Ending.NONE,
        cp_model.UNKNOWN: Ending.UNDECIDED,
    }
    ending = endings[status]
    if ending in (Ending.FOUND, Ending.UNDECIDED) and not _is_out_of_time(solver):
        ending = Ending.STOPPED
    return Run(ending, solver, status in (cp_model.OPTIMAL, cp_model.FEASIBLE), solver.wall_time)


def _is_out_of_time(solver: cp_model.CpSolver) -> bool:
    """Whether a limit ended the search; nothing else but a stop does before the answer is proven."""
    spent = solver.response_proto.deterministic_time
    return (
        spent >= solver.parameters.max_deterministic_time or solver.wall_time >= solver.parameters.max_time_in_seconds
    )
