"""The order for the worker, from what the desk and the ribbon hold now."""

from __future__ import annotations

from core.plan.model import WeekRequest
from gui.desk.desk import Desk
from gui.week.block_panel import BlockWish
from gui.week.planning import USUAL_WEEKS, PlanOrder, monday_of
from gui.week.ribbon import Ribbon


def plan_order(desk: Desk, ribbon: Ribbon, wish: BlockWish | None) -> PlanOrder | None:
    """What to plan from; None while nobody trains. Without a wish a block goes on, or begins this week."""
    person, today = desk.person(), ribbon.today()
    if person is None:
        return None
    block = ribbon.block()
    old = block if block is not None else desk.record.block(person.id)
    starts, weeks = monday_of(today), USUAL_WEEKS
    if block is not None and block.starts is not None and (ribbon.is_running() or block.starts > today):
        starts, weeks = block.starts, len(block.weeks) - 1
    if wish is not None:
        starts, weeks = wish.starts, wish.weeks
    return PlanOrder(
        request=WeekRequest(wishes=desk.wishes(), keep=desk.week()),
        house=desk.house(),
        person=person,
        catalog=desk.catalog,
        today=today,
        starts=starts,
        weeks=weeks,
        old=old,
    )
