"""Putting an answer into the week: on which day, in place of what, and the pins that say so."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.exercise.model import Exercise
from core.house.wishes import Pin, WeekWishes
from core.plan.model import DayKind, DayPlan, Week


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """An answer put into the week: what, instead of what, on which weekday, and the wishes before it was."""

    exercise: Exercise
    asked: Exercise
    weekday: int
    before: WeekWishes

    def wishes(self) -> WeekWishes:
        """The wishes with the answer pinned to its day and the movement asked for no longer pinned there."""
        gone = {(self.weekday, self.asked.id), (self.weekday, self.exercise.id)}
        kept = tuple(pin for pin in self.before.pins if (pin.weekday, pin.exercise_id) not in gone)
        return replace(self.before, pins=(*kept, Pin(weekday=self.weekday, exercise_id=self.exercise.id)))


def training_days(week: Week | None, wishes: WeekWishes) -> tuple[int, ...]:
    """The weekdays that can take a movement: those wished for, else those the week trains on."""
    wished = sorted(day.weekday for day in wishes.days)
    trained = sorted(day.weekday for day in (week.days if week is not None else ()) if day.kind is not DayKind.REST)
    return tuple(wished or trained)


def best_day(
    exercise: Exercise, asked: Exercise, week: Week | None, wishes: WeekWishes, came_from: int | None
) -> int | None:
    """The day the movement was swapped from, else one that trains the like, else any training day; None without any.

    The like is the movement asked for itself, then one of the same family, then strength.
    """
    days = training_days(week, wishes)
    if came_from in days:
        return came_from
    planned = [day for day in (week.days if week is not None else ()) if day.weekday in days]
    like = (
        [day for day in planned if _holds(day, asked.id)],
        [day for day in planned if any(block.exercise.family is exercise.family for block in day.blocks)],
        [day for day in planned if day.kind is DayKind.STRENGTH],
    )
    for found in like:
        if found:
            return found[0].weekday
    return next(iter(days), None)


def _holds(day: DayPlan, exercise_id: str) -> bool:
    return any(block.exercise.id == exercise_id for block in day.blocks)
