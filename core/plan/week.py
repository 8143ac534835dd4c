"""Plan a week: lay out the choice, solve it, and turn the solution into days, pours and checks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from core.errors import FillmarkError, InputError
from core.exercise.model import Pattern
from core.fit.setting import Setting
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.checks import week_checks
from core.plan.clash import explain
from core.plan.clock import REFILL_S
from core.plan.easy_moves import easy_moves
from core.plan.frame import cool_down_seconds, warm_up_seconds
from core.plan.menu import Candidate, MenuRequest
from core.plan.model import Block, DayKind, DayPlan, Status, Week, WeekRequest
from core.plan.pinned import check_one_dose_each, check_pinned_dose
from core.plan.pour_order import in_order, pours_during
from core.plan.pours import fill_steps, with_shared_pours
from core.plan.problem import DayChoice, Problem, build_problem, is_quiet
from core.plan.search import OnStart
from core.plan.solve import Solution, solve


class PlanUnfinished(FillmarkError):
    """The time allowed passed before any week was found."""


def plan_week(
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    *,
    on_start: OnStart | None = None,
) -> Week:
    """The best week for these wishes, or the smallest clash. Raises InputError when there is no day to plan.

    `on_start` receives each solver before it runs; `stop_search()` on it ends the planning. The week is then
    `Status.STOPPED`, with the best days found so far or none. `PlanUnfinished` when the time allowed passed without a
    week.
    """
    if not request.wishes.days:
        raise InputError("no days", "leave nothing to plan", "give at least one day with its minutes")
    check_pins(request, catalog)
    problem = build_problem(request, house, person, catalog)
    solution = solve(problem, on_start)
    if solution.status is Status.IMPOSSIBLE:
        clash = explain(problem, catalog, on_start)
        return Week(status=Status.STOPPED) if clash is None else Week(status=Status.IMPOSSIBLE, clash=clash)
    if not solution.kinds:
        if solution.status is Status.STOPPED:
            return Week(status=Status.STOPPED)
        raise PlanUnfinished("No week was found in the time allowed. Give fewer days or pins, or try again.")
    return _assembled(problem, solution, house, person, catalog)


def check_pins(request: WeekRequest, catalog: Catalog) -> None:
    """Pins and bans must name what exists; InputError otherwise."""
    for exercise_id in (*request.wishes.bans, *(pin.exercise_id for pin in request.wishes.pins if pin.exercise_id)):
        if exercise_id not in catalog.exercise_by_id:
            raise InputError(exercise_id, "is no movement in the catalog", "choose one from the list of movements")
    check_one_dose_each(request.wishes.pins)
    for pin in request.wishes.pins:
        if pin.kind is not None and pin.kind not in tuple(DayKind):
            kinds = ", ".join(DayKind)
            raise InputError(pin.kind, "is no kind of day", f"use one of {kinds}")
        check_pinned_dose(pin)


def _assembled(problem: Problem, solution: Solution, house: House, person: Person, catalog: Catalog) -> Week:
    planned = {}
    settings: dict[str, Setting] = {}
    for day, kind, chosen in zip(problem.days, solution.kinds, solution.chosen, strict=True):
        if kind is DayKind.REST:
            planned[day.weekday] = DayPlan(weekday=day.weekday, kind=kind, limit_s=day.limit_s)
            continue
        place = day.places[kind]
        setting = settings.setdefault(place.id, Setting(house, person, catalog.material_by_id, place))
        bans, quiet = frozenset(problem.request.wishes.bans), is_quiet(place.quiet, day.wish)
        order = MenuRequest(setting=setting, catalog=catalog, bans=bans, quiet=quiet)
        planned[day.weekday] = _day(day, kind, in_order(chosen, problem.counts), order, problem.counts)
    days = tuple(planned.get(weekday, DayPlan(weekday=weekday, kind=DayKind.REST)) for weekday in range(7))
    days = with_shared_pours(days)
    fills = tuple(fill_steps(days, house))
    week = Week(status=solution.status, days=days, fills=fills, objective=solution.objective)
    return replace(week, checks=week_checks(week, house, person, request=problem.request))


def _day(
    day: DayChoice, kind: DayKind, chosen: tuple[Candidate, ...], order: MenuRequest, counts: Mapping[str, int]
) -> DayPlan:
    blocks = tuple(_block(candidate) for candidate in chosen)
    warm_up = easy_moves(order, Pattern.WARM_UP, warm_up_seconds(day.limit_s), kind, blocks)
    cool_down = easy_moves(order, Pattern.COOL_DOWN, cool_down_seconds(day.limit_s), kind, blocks)
    pour_s = REFILL_S * sum(1 for _ in pours_during(blocks, counts))
    every = (*warm_up, *blocks, *cool_down)
    return DayPlan(
        weekday=day.weekday,
        kind=kind,
        place_id=order.setting.place.id,
        limit_s=day.limit_s,
        seconds=sum(block.seconds for block in every) + pour_s,
        warm_up=warm_up,
        blocks=blocks,
        cool_down=cool_down,
        pour_s=pour_s,
    )


def _block(candidate: Candidate) -> Block:
    return Block(
        exercise=candidate.exercise,
        binding=candidate.binding,
        dose=candidate.dose,
        rest_s=candidate.rest_s,
        seconds=candidate.seconds,
        hard=candidate.hard,
        states=candidate.states,
        why=candidate.why,
    )
