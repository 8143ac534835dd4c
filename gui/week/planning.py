"""Planning as the worker does it: a week with the block made from it, a session moved, a day marked.

Each is a function of a frozen order and gives what is to be kept, already written as text. The solver is loaded here,
at its first use.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace

from core.house.model import House, Person
from core.house.wishes import WEEKDAYS, Pin, WeekWishes
from core.knowledge import Catalog
from core.plan.block_model import Happening, TrainingBlock
from core.plan.model import Week, WeekRequest
from core.store.values import SavedBlock, SavedWeek
from gui.week.solving import Brake
from gui.worker import Report

USUAL_WEEKS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOrder:
    """What a plan is made from. `old` is the block there is: decoded, as saved, or None; `starts` and `weeks` are those
    of the block wanted.
    """

    request: WeekRequest
    house: House
    person: Person
    catalog: Catalog
    today: datetime.date
    starts: datetime.date
    weeks: int = USUAL_WEEKS
    old: TrainingBlock | SavedBlock | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A block and the texts to keep: the week it is made from, and itself."""

    week: Week
    block: TrainingBlock
    saved_week: SavedWeek
    saved_block: SavedBlock


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What planning brings: a checked week, what is wrong with it, the pins in its clash, and what is to be kept."""

    week: Week
    errors: tuple[str, ...] = ()
    pins: tuple[tuple[Pin, str], ...] = ()
    kept: Kept | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedPlan:
    """A session moved in every week: the wishes that go with it; what it would break, or what is to be kept."""

    week: Week
    wishes: WeekWishes
    errors: tuple[str, ...] = ()
    kept: Kept | None = None


def monday_of(day: datetime.date) -> datetime.date:
    """The Monday of a day's week."""
    return day - datetime.timedelta(days=day.weekday())


def plan(order: PlanOrder, brake: Brake, report: Report) -> Planned:
    """Plan and check a week, and make the block."""
    from core.plan.validate import find_week_errors
    from core.plan.week import plan_week

    report(0, 1)
    week = plan_week(order.request, order.house, order.person, order.catalog, on_start=brake.hold)
    errors = tuple(find_week_errors(week, order.request, order.house, order.person))
    sound = bool(week.days) and not errors
    kept = keep(order, week, brake) if sound else None
    return Planned(week=week, errors=errors, pins=_pins_in(week, order), kept=kept)


def move(order: PlanOrder, week: Week, source: int, target: int, brake: Brake, report: Report) -> MovedPlan:
    """Exchange two days of the week in hand, and of what lies ahead of the block."""
    from core.plan.move import move_session

    report(0, 1)
    found = move_session(week, source, target, order.request.wishes, order.house, order.person)
    moved = replace(order, request=replace(order.request, wishes=found.wishes))
    kept = None if found.errors else keep(moved, found.week, brake)
    return MovedPlan(week=found.week, wishes=found.wishes, errors=found.errors, kept=kept)


def keep(order: PlanOrder, week: Week, brake: Brake) -> Kept:
    """The block made from a week, going on from the block there is, and both as text."""
    from core.plan.block import plan_block
    from core.plan.renew import renewed
    from core.store.codec_week import WEEK_VERSION, week_text

    request = replace(order.request, keep=week)
    given = (request, order.house, order.person, order.catalog)
    new = plan_block(*given, weeks=order.weeks, starts=order.starts, on_start=brake.hold)
    block = renewed(decoded(order.old, order.catalog), new, order.today, *given)
    text = week_text(week, order.catalog)
    saved_week = SavedWeek(starts=monday_of(order.today), version=WEEK_VERSION, plan=text)
    return Kept(week=week, block=block, saved_week=saved_week, saved_block=written(block, order.catalog, order.starts))


def mark(order: PlanOrder, happening: Happening, brake: Brake, report: Report) -> tuple[TrainingBlock, SavedBlock]:
    """Note what happened, and plan what is left of the block again."""
    from core.plan.block import plan_block
    from core.plan.replan import replan

    report(0, 1)
    given = (order.request, order.house, order.person, order.catalog)
    old = decoded(order.old, order.catalog)
    if old is None:
        old = plan_block(*given, weeks=order.weeks, starts=order.starts, on_start=brake.hold)
    block = replan(old, happening, *given, today=order.today)
    return block, written(block, order.catalog, order.starts)


def derive(order: PlanOrder, brake: Brake, report: Report) -> TrainingBlock:
    """The block as saved, or the one that follows from a week that was saved without any."""
    from core.plan.block import plan_block

    report(0, 1)
    old = decoded(order.old, order.catalog)
    if old is not None:
        return old
    given = (order.request, order.house, order.person, order.catalog)
    return plan_block(*given, weeks=order.weeks, starts=order.starts, on_start=brake.hold)


def decoded(block: TrainingBlock | SavedBlock | None, catalog: Catalog) -> TrainingBlock | None:
    """The block itself; None for none, or one written by another version of this program."""
    from core.store.codec_block import BLOCK_VERSION, block_from_text

    if isinstance(block, SavedBlock):
        return block_from_text(block.plan, catalog) if block.version == BLOCK_VERSION else None
    return block


def written(block: TrainingBlock, catalog: Catalog, starts: datetime.date) -> SavedBlock:
    """The block as text."""
    from core.store.codec_block import BLOCK_VERSION, block_text

    return SavedBlock(starts=block.starts or starts, version=BLOCK_VERSION, plan=block_text(block, catalog))


def _pins_in(week: Week, order: PlanOrder) -> tuple[tuple[Pin, str], ...]:
    """The pins that a way out of the clash names."""
    from core.plan.clash import pin_words

    if week.clash is None:
        return ()
    named = [(pin, pin_words(pin, order.catalog)) for pin in order.request.wishes.pins]
    ways = week.clash.ways_out
    return tuple(pair for pair in named if any(pair[1] in way and WEEKDAYS[pair[0].weekday] in way for way in ways))
