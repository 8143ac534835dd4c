"""Why a week has no set for a pattern: spared, left out by wish, nothing to do it with, too hard yet, or no time."""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum

from core.effort.capacity import EXPERIENCE_PLACE
from core.exercise.model import Exercise, Family
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.swap.filters import HARDEST_LEVEL, spared


class Untrained(StrEnum):
    """The reason, in two or three words."""

    SPARED = "you spare it"
    BANNED = "left out by you"
    NO_GEAR = "no gear"
    TOO_HARD = "too hard yet"
    NO_TIME = "no time"


def why_untrained(family: Family, wishes: WeekWishes, settings: Iterable[Setting], catalog: Catalog) -> Untrained:
    """The reason for a family without a set; `settings` are the places of the week, all of one person."""
    here = tuple(settings)
    person = here[0].person
    able = [exercise for exercise in catalog.exercises_by_family[family] if not exercise.needs_gym]
    able = [exercise for exercise in able if not spared(exercise, person.spares)]
    if not able:
        return Untrained.SPARED
    able = [exercise for exercise in able if exercise.id not in wishes.bans]
    if not able:
        return Untrained.BANNED
    possible = [exercise for exercise in able if _can_be_done(exercise, here)]
    if not possible:
        return Untrained.NO_GEAR
    hardest = HARDEST_LEVEL[EXPERIENCE_PLACE[person.experience]]
    return Untrained.NO_TIME if any(exercise.level <= hardest for exercise in possible) else Untrained.TOO_HARD


def _can_be_done(exercise: Exercise, settings: tuple[Setting, ...]) -> bool:
    return any(not isinstance(bind(exercise, setting), Missing) for setting in settings)
