"""What a planned week adds up to; plain sums that need no solver."""

from __future__ import annotations

from core.exercise.model import Family
from core.plan.model import DayKind, Week


def families_trained(week: Week) -> dict[Family, int]:
    """Hard sets of each family over the week."""
    sets = dict.fromkeys(Family, 0)
    for day in week.days:
        for block in day.blocks:
            if block.hard and day.kind is DayKind.STRENGTH:
                sets[block.family] += block.dose.sets
    return sets
