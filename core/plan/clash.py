"""When no week can meet the wishes: the smallest set that clashes, in words, and what would help.

Each wish is left out in turn; it belongs to the clash only if the rest without it can hold. What remains clashes
together and stops clashing when any one of it is dropped; each "can't hold" is two solves that agree.
"""

from __future__ import annotations

from core.house.wishes import WEEKDAYS, Pin
from core.knowledge import Catalog
from core.plan.model import KIND_WORDS, Clash, DayKind
from core.plan.pinned import dose_words
from core.plan.problem import RECOVERY, Problem
from core.plan.rules import minutes_rule, pin_rule
from core.plan.search import Ending, OnStart
from core.plan.solve import holds


def rules_of(problem: Problem) -> tuple[str, ...]:
    """Every wish that may be left out: minutes of each day, each pin, and the 48 hours."""
    minutes = [minutes_rule(day.weekday) for day in problem.days]
    pins = [pin_rule(index) for index in range(len(problem.request.wishes.pins))]
    return (*minutes, RECOVERY, *pins)


def smallest_clash(problem: Problem, on_start: OnStart | None = None) -> tuple[str, ...]:
    """Rules of an impossible problem that can't hold together, none of them superfluous; empty only when stopped.

    With every rule left out seven days of rest are a week, so at least one rule is always part of the clash. Where
    the solver runs out of time a rule is kept: the set still clashes, though it may then not be the smallest.
    """
    for index, pin in enumerate(problem.request.wishes.pins):
        if pin in problem.unmet_pins:
            return (pin_rule(index),)  # nothing else need give way: it can't be kept by itself
    dropped: set[str] = set()
    for rule in rules_of(problem):
        ending = holds(problem, frozenset(dropped | {rule}), on_start)
        if ending is Ending.STOPPED:
            return ()
        if ending is Ending.NONE:
            dropped.add(rule)
    return tuple(rule for rule in rules_of(problem) if rule not in dropped)


def explain(problem: Problem, catalog: Catalog, on_start: OnStart | None = None) -> Clash | None:
    """The clash in words, with a way out for each wish in it; None when stopped before it was found."""
    rules = smallest_clash(problem, on_start)
    if not rules:
        return None
    wishes, ways = [], []
    for rule in rules:
        wish, way = _words(rule, problem, catalog)
        wishes.append(wish)
        ways.append(way)
    return Clash(wishes=tuple(wishes), ways_out=tuple(ways))


def _words(rule: str, problem: Problem, catalog: Catalog) -> tuple[str, str]:
    if rule == RECOVERY:
        wish = "48 hours between hard work for the same pattern"
        return wish, "move one of the two days apart"
    name, _, number = rule.partition(":")
    if name == "minutes":
        day = next(day for day in problem.days if day.weekday == int(number))
        weekday = WEEKDAYS[day.weekday]
        return f"{day.wish.minutes:g} minutes on {weekday}", f"give {weekday} more minutes"
    pin = problem.request.wishes.pins[int(number)]
    weekday = WEEKDAYS[pin.weekday]
    reason = problem.unmet_pins.get(pin, "")
    what = pin_words(pin, catalog)
    return f"{what} pinned to {weekday}" + (f" ({reason})" if reason else ""), f"take the pin off {what} on {weekday}"


def pin_words(pin: Pin, catalog: Catalog) -> str:
    """What a pin holds, in words."""
    exercise = catalog.exercise_by_id.get(pin.exercise_id or "")
    kind = KIND_WORDS[DayKind(pin.kind)].lower() if pin.kind is not None else ""
    dose = "" if pin.dose is None else f", {dose_words(pin.dose)},"
    if exercise is None:
        return f"{kind or pin.exercise_id}{dose}"
    return f"{exercise.name.lower()} ({kind}){dose}" if kind else f"{exercise.name.lower()}{dose}"
