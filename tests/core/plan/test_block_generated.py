"""Blocks of generated households: every week sound, whatever happens, and written down without loss."""

from __future__ import annotations

import random
from contextlib import suppress
from dataclasses import replace

import pytest

from core.errors import InputError
from core.plan.block import plan_block
from core.plan.block_model import Happening, TrainingBlock, What
from core.plan.model import DayKind
from core.plan.moving import wishes_with
from core.plan.replan import replan
from core.plan.validate import find_week_errors
from core.store.codec_block import block_from_text, block_text
from tests.core.plan.block_examples import MONDAY, shipped
from tests.core.plan.households import Case, household


def errors(block: TrainingBlock, case: Case) -> list[str]:
    found = []
    for week in block.weeks:
        request = replace(case.request, wishes=wishes_with(week.week.days, case.request.wishes))
        found += list(find_week_errors(week.week, request, case.house, case.person))
    return found


def something_happens(block: TrainingBlock, case: Case, draw: random.Random) -> TrainingBlock:
    """The block after some days of this or that; what can't have happened is left out."""
    for _ in range(4):
        week = draw.randrange(len(block.weeks))
        days = [day.weekday for day in block.weeks[week].week.days if day.kind is not DayKind.REST]
        what = draw.choice(list(What))
        happening = Happening(
            what=what,
            week=week,
            weekday=draw.choice(days or [0]),
            to_weekday=draw.randrange(7) if what is What.MOVED else None,
            days=draw.choice((1, 3, 10)) if what in (What.ILL, What.AWAY) else 1,
            share=draw.random(),
        )
        with suppress(InputError):  # that can't have happened
            block = replan(block, happening, case.request, case.house, case.person, shipped())
    return block


@pytest.mark.parametrize("number", range(24))
def test_every_week_of_every_block_obeys_every_hard_rule(number: int) -> None:
    case, draw = household(number), random.Random(number)
    length = draw.randint(4, 16)
    block = plan_block(case.request, case.house, case.person, shipped(), weeks=length, starts=MONDAY)
    assert errors(block, case) == []
    if block.pattern is None:
        assert block.weeks[0].week.clash is not None
        return
    assert len(block.weeks) == length + 1
    later = something_happens(block, case, draw)
    assert errors(later, case) == []
    assert block_from_text(block_text(later, shipped()), shipped()) == later
