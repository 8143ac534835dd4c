"""From a logged session to what it means for the plan: done, partly done, harder or easier than planned."""

from __future__ import annotations

from core.house.log import LoggedSession
from core.plan.block_model import Happening, What
from core.plan.model import Block, DayPlan

WHOLE = 0.9
"""From this share of the sets on, a session counts as done."""
CLEARLY = 1.5
"""Points of effort by which sets must differ from what was planned to count as harder or easier: judgement."""


def outcome(day: DayPlan, session: LoggedSession, week: int) -> Happening:
    """What happened on a planned day, by the sets that were logged for it.

    The planned movements count, in any order; what was done besides is left out. Effort is compared only over sets
    that say how hard they felt, or by the session's own effort where none does.
    """
    share = _share_done(day, session)
    what = What.DONE if share >= WHOLE else What.PARTLY
    felt = _difference(day, session)
    if what is What.DONE and felt is not None and abs(felt) >= CLEARLY:
        what = What.HARDER if felt > 0 else What.EASIER
    return Happening(what=what, week=week, weekday=day.weekday, share=share, session_id=session.id)


def _share_done(day: DayPlan, session: LoggedSession) -> float:
    total = sum(block.dose.sets for block in day.blocks)
    return sum(_sets_done(block, session) for block in day.blocks) / total if total else 1.0


def _sets_done(block: Block, session: LoggedSession) -> float:
    """Sets done of those planned; of one long walk or run the part of its time."""
    mine = [one for one in session.sets if one.exercise_id == block.exercise.id]
    seconds = block.dose.seconds
    if block.dose.sets == 1 and seconds is not None and any(one.time_s is not None for one in mine):
        return min(1.0, sum(one.time_s or 0.0 for one in mine) / seconds[0])
    return min(block.dose.sets, len(mine))


def _difference(day: DayPlan, session: LoggedSession) -> float | None:
    """Felt less planned effort, the mean over the sets; None where nothing says how it felt."""
    planned = {block.exercise.id: block.dose.effort for block in day.blocks}
    gaps = [
        one.effort - planned[one.exercise_id]
        for one in session.sets
        if one.effort is not None and one.exercise_id in planned
    ]
    if gaps:
        return sum(gaps) / len(gaps)
    if session.effort is None or not planned:
        return None
    return session.effort - _mean_effort(day.blocks)


def _mean_effort(blocks: tuple[Block, ...]) -> float:
    sets = sum(block.dose.sets for block in blocks)
    return sum(block.dose.sets * block.dose.effort for block in blocks) / sets
