"""The weeks of a block that lie ahead, made again; what is past, moved by hand or planned for elsewhere stays."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.effort.capacity import ceiling
from core.exercise.strength import is_strength
from core.plan.block import made_week
from core.plan.block_model import DAYS_A_WEEK, BlockWeek, PlannedTest, TrainingBlock, What
from core.plan.block_weeks import WeekMaker
from core.plan.model import Block, DayKind, DayPlan, Wave, Week
from core.plan.setbacks import days_in, steps_back
from core.plan.testing_days import held
from core.plan.waves import steps_at


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is made again: the block with all that happened, the wave of each week, and the last day that is settled.

    `settled_day` counts from the Monday of week 0.
    """

    block: TrainingBlock
    order: tuple[Wave, ...]
    maker: WeekMaker
    settled_day: int

    def weeks(self) -> tuple[BlockWeek, ...]:
        """Every week, those ahead made again."""
        return tuple(self._again(week) for week in self.block.weeks)

    def _again(self, week: BlockWeek) -> BlockWeek:
        settled = self.settled_day - DAYS_A_WEEK * week.number
        if settled >= DAYS_A_WEEK - 1:
            return week
        wave = self.order[week.number]
        made = made_week(self.maker, week.number, wave, self._step_of(week.number))
        stay = _settled_by_hand(self.block, week.number) | set(range(settled + 1))
        made = held(made, _still_on(week, made, stay), self.block.tests, self.maker)
        elsewhere = _elsewhere(self.block, week.number)
        rest = {weekday: DayPlan(weekday=weekday, kind=DayKind.REST) for weekday in elsewhere}
        own = tuple(
            rest.get(new.weekday, old if new.weekday in stay else new)
            for old, new in zip(week.week.days, made.week.days, strict=True)
        )
        planned = merged(self.maker.finished(own, wave), week.week, elsewhere)
        return kept(week, replace(made, week=planned))

    def _step_of(self, number: int) -> _StepOf:
        return _StepOf(self, number, steps_at(self.order))


@dataclass(frozen=True, slots=True)
class _StepOf:
    """The step of each block of a week: the usual one, less what happened took away.

    Where the person's strength was measured, the pattern's own dose is that of `pattern_week` and steps count from
    there; a dose from a guess is that of the first week, however late the pattern was made.
    """

    left: Left
    number: int
    usual: tuple[int, ...]

    def __call__(self, weekday: int, one: Block) -> int:
        block, order = self.left.block, self.left.order
        since = block.pattern_week if self._measured(one) else 0
        moved = steps_back(block, order, self.number, weekday, one, since=since)
        return self.usual[self.number] - self.usual[since] + moved

    def _measured(self, one: Block) -> bool:
        return is_strength(one.exercise) and ceiling(one.exercise, self.left.maker.person).measured


def _still_on(before: BlockWeek, made: BlockWeek, stay: set[int]) -> tuple[PlannedTest, ...]:
    """The tests of the week; one whose day became a day of rest has none any more."""
    resting = {day.weekday for day in made.week.days if day.kind is DayKind.REST} - stay
    return tuple(replace(test, weekday=None) if test.weekday in resting else test for test in before.tests)


def _settled_by_hand(block: TrainingBlock, number: int) -> set[int]:
    """Weekdays of a week that were exchanged."""
    mine = (one for one in block.happened if one.what is What.MOVED and one.week == number)
    return {weekday for one in mine for weekday in (one.weekday, one.to_weekday) if weekday is not None}


def _elsewhere(block: TrainingBlock, number: int) -> set[int]:
    """Weekdays of a week that are planned for another place."""
    mine = (one for one in block.happened if one.what is What.AWAY and one.share > 0)
    return {weekday for one in mine for weekday in days_in(one, number)}


def kept(before: BlockWeek, after: BlockWeek) -> BlockWeek:
    """The week as planned now, with what was predicted first; the one before if nothing changed."""
    if after.week.days == before.week.days and after.kind == before.kind:
        return before
    predicted = before.predicted if before.predicted is not None else before.week
    return replace(after, predicted=predicted)


def merged(own: Week, other: Week, weekdays: set[int]) -> Week:
    """The week with some days, and their pours, taken from another one."""
    if not weekdays:
        return own
    pairs = zip(own.days, other.days, strict=True)
    days = tuple(theirs if mine.weekday in weekdays else mine for mine, theirs in pairs)
    fills = [fill for fill in own.fills if fill.weekday not in weekdays]
    fills += [fill for fill in other.fills if fill.weekday in weekdays]
    return replace(own, days=days, fills=tuple(sorted(fills, key=lambda fill: fill.weekday)))
