"""The rest of a block from other wishes or things: a new week is planned, and the weeks ahead are made from it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.errors import InputError
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.block_model import DAYS_A_WEEK, TrainingBlock
from core.plan.block_weeks import WeekMaker
from core.plan.left_weeks import Left
from core.plan.model import USUAL_WAVE, Status, WeekRequest
from core.plan.setbacks import order_of

if TYPE_CHECKING:
    from core.plan.search import OnStart


def plan_rest(
    block: TrainingBlock,
    from_week: int,
    request: WeekRequest,
    house: House,
    person: Person,
    catalog: Catalog,
    *,
    on_start: OnStart | None = None,
) -> TrainingBlock:
    """The block with every week from `from_week` on made from a new week; earlier weeks stay as they are.

    The new week stays near the one there was (`request.keep`, else the block's own) and begins with what the person can
    do now, so `person` should hold the newest capacities. `InputError` when the wishes clash or the week is none.
    """
    from core.plan.week import plan_week  # the solver, only when something is planned

    if not 0 <= from_week < len(block.weeks):
        raise InputError(from_week, f"is no week of this block (0 to {len(block.weeks) - 1})", "give a number from it")
    asked = request if request.keep is not None else replace(request, keep=block.pattern, keep_loads=False)
    pattern = plan_week(replace(asked, wave=USUAL_WAVE), house, person, catalog, on_start=on_start)
    if pattern.status is Status.STOPPED:
        return block
    if pattern.status is Status.IMPOSSIBLE:
        wishes = pattern.clash.wishes if pattern.clash is not None else ()
        raise InputError("; ".join(wishes), "can't hold together, so there is no week", "change one of them")
    roomy = WeekMaker(pattern, request, house, person, catalog).roomy()
    changed = replace(block, pattern=roomy, pattern_week=from_week)
    maker = WeekMaker(roomy, request, house, person, catalog)
    left = Left(block=changed, order=order_of(changed), maker=maker, settled_day=DAYS_A_WEEK * from_week - 1)
    return replace(changed, weeks=left.weeks())
