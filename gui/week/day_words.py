"""The seven days as ready words: kind, minutes, place, warm-up, a card per block."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field

from core.effort.words import amount_words
from core.house.model import House
from core.house.wishes import WEEKDAYS, WeekWishes
from core.plan.model import Block, DayKind, DayPlan, Week
from core.quantity.display import format_measured_mass
from gui.desk.load_words import short_load_words
from gui.desk.names import DAY_KIND_NAMES, FAMILY_COLOURS
from gui.desk.wording import Wording, counted, glued, nb
from gui.widgets import BlockView, DayView

_SEPARATOR = "|"
LETTERS = "ABCDEFG"


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekContext:
    """What the words of a week depend on besides the week; `today` is its weekday, or None in another week.

    `tests` and `marks` are how many tests there are and what happened, by weekday.
    """

    house: House
    wishes: WeekWishes
    wording: Wording
    today: int | None
    tests: Mapping[int, int] = field(default_factory=dict)
    marks: Mapping[int, str] = field(default_factory=dict)


def block_id(weekday: int, exercise_id: str) -> str:
    """Identity of a block on the screen."""
    return f"{weekday}{_SEPARATOR}{exercise_id}"


def parted(shown_id: str) -> tuple[int, str]:
    """Weekday and exercise id of a block on the screen."""
    weekday, _, exercise_id = shown_id.partition(_SEPARATOR)
    return int(weekday), exercise_id


def whole_minutes(seconds: int) -> int:
    """Whole minutes, a begun one counted."""
    return -(-seconds // 60)


def day_views(week: Week, context: WeekContext) -> tuple[DayView, ...]:
    """Seven columns."""
    names = kind_names(week)
    return tuple(_day(day, week, names[day.weekday], context) for day in week.days)


def kind_names(week: Week) -> tuple[str, ...]:
    """What each day is called; several strength days are told apart by a letter."""
    many = sum(day.kind is DayKind.STRENGTH for day in week.days) > 1
    names, strength = [], 0
    for day in week.days:
        name = DAY_KIND_NAMES[day.kind]
        if day.kind is DayKind.STRENGTH and many:
            name = f"{name} {LETTERS[strength]}"
            strength += 1
        names.append(name)
    return tuple(names)


def _day(day: DayPlan, week: Week, kind: str, context: WeekContext) -> DayView:
    if day.kind is DayKind.REST:
        return DayView(
            name=WEEKDAYS[day.weekday][:3],
            minutes_text="",
            kind=kind,
            notes=tuple(note for note in (context.marks.get(day.weekday, ""),) if note),
            rest=True,
            today=day.weekday == context.today,
        )
    same = _one_scheme(day)
    cool_s = sum(block.seconds for block in day.cool_down)
    return DayView(
        name=WEEKDAYS[day.weekday][:3],
        minutes_text=nb(f"{whole_minutes(day.seconds)} of {whole_minutes(day.limit_s)} min"),
        kind=kind,
        notes=_notes(day, _pours(day, week), same, context),
        blocks=tuple(_block(block, day, same, context) for block in day.blocks),
        foot=nb(f"cool-down {whole_minutes(cool_s)} min") if cool_s else "",
        today=day.weekday == context.today,
    )


def _notes(day: DayPlan, pours: str, scheme: str, context: WeekContext) -> tuple[str, ...]:
    place = where(day, context)
    warm_s = sum(block.seconds for block in day.warm_up)
    warm = nb(f"warm-up {whole_minutes(warm_s)} min") if warm_s else ""
    mark = context.marks.get(day.weekday, "")
    tests = context.tests.get(day.weekday, 0)
    return tuple(note for note in (mark, counted(tests, "test") if tests else "", place, pours, warm, scheme) if note)


def _pours(day: DayPlan, week: Week) -> str:
    """How many containers to fill before the day, and on the way."""
    during = [fill.during for fill in week.fills if fill.weekday == day.weekday]
    first, later = during.count(False), during.count(True)
    words = (f"{counted(first, 'fill')} first" if first else "", f"{later} on the way" if later else "")
    return ", ".join(word for word in words if word)


def where(day: DayPlan, context: WeekContext) -> str:
    """Place and start; nothing about a place in a house that lists only one."""
    names = {place.id: place.name for place in context.house.places}
    wish = next((wish for wish in context.wishes.days if wish.weekday == day.weekday), None)
    start = f"{wish.start:%H:%M}" if wish is not None and wish.start is not None else ""
    place = names.get(day.place_id or "", "") if len(names) > 1 else ""
    return ", ".join(part for part in (place, start) if part)


def _one_scheme(day: DayPlan) -> str:
    """What every block of a day has in common, said once: the rounds of intervals, the one set of mobility."""
    if day.kind is DayKind.MOBILITY and {block.dose.sets for block in day.blocks} == {1}:
        return "one set of each"
    doses = {(block.dose.sets, block.dose.seconds, block.rest_s) for block in day.blocks}
    if day.kind is not DayKind.INTERVALS or len(doses) != 1:
        return ""
    sets, seconds, rest_s = doses.pop()
    if seconds is None:
        return ""
    return glued(f"{counted(sets, 'round')}, {seconds[0]} s on, {rest_s} s off")


def _block(block: Block, day: DayPlan, scheme: str, context: WeekContext) -> BlockView:
    return BlockView(
        block_id=block_id(day.weekday, block.exercise.id),
        title=block.exercise.name,
        detail="" if scheme else _detail(block, day, context.wording),
        family=FAMILY_COLOURS[block.family],
        pinned=is_pinned(day.weekday, block.exercise.id, context.wishes),
    )


def is_pinned(weekday: int, exercise_id: str, wishes: WeekWishes) -> bool:
    """Whether the person asked to keep this movement on this day."""
    return any((pin.weekday, pin.exercise_id) == (weekday, exercise_id) for pin in wishes.pins)


def _detail(block: Block, day: DayPlan, wording: Wording) -> str:
    amount = glued(amount_words(block.dose, block.exercise, wording.system))
    load = block.binding.load
    if load is not None:
        mass = nb(format_measured_mass(load.mass, wording.system))
        return f"{amount} · {mass}\n{short_load_words(load, wording.system)}"
    return f"{amount} · effort {block.dose.effort:g}" if day.kind is DayKind.EASY else amount


@dataclass(frozen=True, slots=True, kw_only=True)
class Moves:
    """How a week differs from the one before: movements in all, those not on that day before, those done otherwise."""

    total: int
    days: int
    moved: int
    altered: int


def moves(before: Week | None, after: Week) -> Moves:
    """Count what a new plan changed."""
    had = {} if before is None else _by_place(before)
    now = _by_place(after)
    moved = sum(key not in had for key in now)
    altered = sum(key in had and had[key] != doing for key, doing in now.items())
    days = sum(day.kind is not DayKind.REST for day in after.days)
    return Moves(total=len(now), days=days, moved=moved, altered=altered)


def _by_place(week: Week) -> dict[tuple[int, str], object]:
    return {
        (day.weekday, block.exercise.id): (block.dose.sets, block.dose.reps, block.dose.seconds, block.states)
        for day in week.days
        for block in day.blocks
    }


def moves_sentence(before: Week | None, after: Week) -> str:
    """What planning did, for the undo line."""
    found = moves(before, after)
    movements = counted(found.total, "movement")
    if before is None:
        return f"Planned {movements} on {counted(found.days, 'day')}."
    if not found.moved and not found.altered:
        gone = len(_by_place(before)) - found.total
        return f"{counted(gone, 'movement')} went; the rest stayed." if gone else "Nothing had to move."
    parts = [f"{found.moved} of {movements} moved"] if found.moved else []
    if found.altered:
        parts.append(f"{counted(found.altered, 'movement')} got another load or dose")
    return f"{'; '.join(parts)}. The rest stayed."


def trained_days(week: Week) -> Counter[DayKind]:
    """How many days of each kind."""
    return Counter(day.kind for day in week.days)
