"""How a run ends: proven, cut short, stopped at once, or impossible only when two runs agree."""

from __future__ import annotations

import random
import threading
import time

import pytest
from ortools.sat.python import cp_model

import core.plan.search
from core.knowledge import Catalog
from core.plan.model import Status, Week, WeekRequest
from core.plan.search import Ending, run
from core.plan.week import PlanUnfinished, plan_week
from tests.dipper import INES, dipper


def hard_model() -> cp_model.CpModel:
    """A packing that takes very long to prove."""
    draw = random.Random(3)
    model = cp_model.CpModel()
    items = [model.new_bool_var(f"x{number}") for number in range(120)]
    for _ in range(12):
        model.add(sum(draw.randrange(900, 1100) * item for item in items) <= 40_000)
    model.maximize(sum(draw.randrange(990, 1010) * item for item in items))
    return model


def never_model() -> cp_model.CpModel:
    model = cp_model.CpModel()
    one = model.new_bool_var("one")
    model.add(one == 1)
    model.add(one == 0)
    return model


def test_a_stop_ends_the_search_within_200_ms_and_is_told_from_a_limit() -> None:
    lags = []
    for _ in range(3):
        stopped_at: list[float] = []

        def stop(solver: cp_model.CpSolver, stopped_at: list[float] = stopped_at) -> None:
            def pull() -> None:
                stopped_at.append(time.perf_counter())
                solver.stop_search()

            threading.Timer(0.3, pull).start()

        done = run(hard_model(), stop)
        lags.append(time.perf_counter() - stopped_at[0])
        assert done.ending is Ending.STOPPED
    assert min(lags) < 0.2


def test_a_limit_is_no_stop(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(core.plan.search, "DETERMINISTIC_LIMIT", 0.05)
    done = run(hard_model(), None)
    assert done.ending is Ending.FOUND
    assert done.has_answer


def test_impossible_needs_two_runs_that_agree() -> None:
    started: list[cp_model.CpSolver] = []
    done = run(never_model(), started.append)
    assert done.ending is Ending.NONE
    assert len(started) == 2
    first, second = (solver.parameters for solver in started)
    assert (first.cp_model_presolve, first.linearization_level) != (
        second.cp_model_presolve,
        second.linearization_level,
    )


def test_a_false_impossible_is_overruled_by_the_second_run(monkeypatch: pytest.MonkeyPatch) -> None:
    """The first run is given a model that can't be; the second sees the true one and its answer counts."""
    true_model = cp_model.CpModel()
    true_model.new_bool_var("free")
    once = core.plan.search._once
    models = iter((never_model(), true_model))
    monkeypatch.setattr(core.plan.search, "_once", lambda _, on_start, solver: once(next(models), on_start, solver))
    done = run(true_model, None)
    assert done.ending is Ending.PROVEN
    assert done.has_answer


def test_a_week_out_of_time_is_told_and_never_called_impossible(
    catalog: Catalog, asked: WeekRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(core.plan.search, "DETERMINISTIC_LIMIT", 0.0)
    with pytest.raises(PlanUnfinished, match="No week was found in the time allowed"):
        plan_week(asked, dipper(), INES, catalog)


def test_a_stopped_week_has_no_clash(catalog: Catalog, asked: WeekRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(core.plan.search, "DETERMINISTIC_LIMIT", 0.0)
    monkeypatch.setattr(core.plan.search, "_is_out_of_time", lambda _: False)
    assert plan_week(asked, dipper(), INES, catalog) == Week(status=Status.STOPPED)
