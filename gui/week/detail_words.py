"""What opens when a block or a day is pressed, as ready words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.effort.words import amount_words
from core.house.wishes import WEEKDAYS, Pin
from core.plan.model import Block, DayPlan, Week
from core.quantity.display import format_measured_mass
from gui.desk.load_words import load_words
from gui.desk.wording import glued, nb
from gui.week.day_reasons import why_this_day
from gui.week.day_words import WeekContext, is_pinned, kind_names, parted, where, whole_minutes
from gui.week.part_words import fill_lines

BODY_ALONE = "Your body alone"


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailView:
    """A card of three or four columns (heading, lines), cautions, and what its button pins.

    `exercise_id` is empty for a day.
    """

    title: str
    columns: tuple[tuple[str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]
    pin: Pin
    pin_label: str
    exercise_id: str = ""


def block_detail(week: Week, shown_id: str, context: WeekContext) -> DetailView | None:
    """The block with this id; None when the week no longer has it."""
    weekday, exercise_id = parted(shown_id)
    day = week.days[weekday]
    for block in day.blocks:
        if block.exercise.id == exercise_id:
            return _block(block, day, context)
    return None


def _block(block: Block, day: DayPlan, context: WeekContext) -> DetailView:
    wording = context.wording
    pinned = is_pinned(day.weekday, block.exercise.id, context.wishes)
    return DetailView(
        title=f"{block.exercise.name}, {WEEKDAYS[day.weekday]}",
        columns=(
            ("What", _what(block, context)),
            ("Why this?", wording.sentences(block.why)),
            ("How", wording.sentences(block.exercise.cues)),
        ),
        cautions=wording.sentences(block.binding.cautions),
        pin=Pin(weekday=day.weekday, exercise_id=block.exercise.id),
        pin_label="Let it move again" if pinned else "Keep it on this day",
        exercise_id=block.exercise.id,
    )


def _what(block: Block, context: WeekContext) -> tuple[str, ...]:
    """Dose, things, effort and rest, a line each."""
    system = context.wording.system
    load = block.binding.load
    dose = glued(amount_words(block.dose, block.exercise, system))
    if load is not None:
        dose = f"{dose} at {nb(format_measured_mass(load.mass, system))}"
    things = [load_words(load, system)] if load is not None else []
    things += [held.name for held in block.binding.fixtures if held.thing_id]
    rest = f", {glued(f'{block.rest_s} s')} rest" if block.rest_s else ""
    return (dose, " · ".join(things) or BODY_ALONE, f"Effort {block.dose.effort:g} of 10{rest}")


def day_detail(week: Week, weekday: int, context: WeekContext) -> DetailView:
    """A whole day: warm-up, cool-down, what to pour, why it is of its kind, cautions."""
    day = week.days[weekday]
    kind = kind_names(week)[weekday]
    pin = Pin(weekday=weekday, kind=day.kind.value)
    pinned = any(replace(one, exercise_id=None) == pin for one in context.wishes.pins if one.kind)
    return DetailView(
        title=f"{WEEKDAYS[weekday]}: {kind[:1].lower()}{kind[1:]}",
        columns=(
            (_easy_heading("Warm-up", day.warm_up), _easy_lines(day.warm_up)),
            (_easy_heading("Cool-down", day.cool_down), _easy_lines(day.cool_down)),
            ("Time and pours", _time_and_pours(week, day, context)),
            ("Why this day?", why_this_day(week, weekday, context.wishes)),
        ),
        cautions=_cautions(day, context),
        pin=pin,
        pin_label="Let this day change again" if pinned else "Keep this kind of day",
    )


def _easy_heading(name: str, blocks: tuple[Block, ...]) -> str:
    return nb(f"{name}, {whole_minutes(sum(block.seconds for block in blocks))} min")


def _easy_lines(blocks: tuple[Block, ...]) -> tuple[str, ...]:
    return tuple(f"{block.exercise.name}, {glued(_clock(block.seconds))}" for block in blocks) or ("None.",)


def _clock(seconds: int) -> str:
    return f"{seconds // 60} min" if seconds % 60 == 0 else f"{seconds} s"


def _time_and_pours(week: Week, day: DayPlan, context: WeekContext) -> tuple[str, ...]:
    minutes = f"{whole_minutes(day.seconds)} of {whole_minutes(day.limit_s)} min"
    pours = fill_lines([fill for fill in week.fills if fill.weekday == day.weekday], context.wording.system)
    lines = [f"{line.thing} at {line.volume}, {line.mass}{f', {line.when}' if line.when else ''}" for line in pours]
    head = ", ".join(part for part in (where(day, context), nb(minutes)) if part)
    return (head, *(lines or ["Nothing to pour."]))


def _cautions(day: DayPlan, context: WeekContext) -> tuple[str, ...]:
    """Every caution of the day once, in order."""
    every = (*day.warm_up, *day.blocks, *day.cool_down)
    found = dict.fromkeys(caution for block in every for caution in block.binding.cautions)
    return context.wording.sentences(found)
