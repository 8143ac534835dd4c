"""What the week screen shows, as ready words: days and blocks, what the week trains, pours and checks."""

from __future__ import annotations

from dataclasses import dataclass

from core.effort.words import amount_words
from core.house.model import Experience
from core.house.wishes import WEEKDAYS, Pin
from core.plan.block import TrainingBlock
from core.plan.frame import TARGET_SETS
from core.plan.menu import STRENGTH_FAMILIES
from core.plan.model import Block, DayKind, DayPlan, Week
from core.plan.tally import families_trained
from core.quantity.display import UnitSystem, format_mass, format_measured_mass, format_volume
from gui.desk.names import DAY_KIND_NAMES, FAMILY_COLOURS, FAMILY_NAMES
from gui.swap.present import load_words
from gui.widgets import BarRow, BlockView, DayView, Tone, WeekMark

MOST_FILLS = 4
_SEPARATOR = "|"


@dataclass(frozen=True, slots=True, kw_only=True)
class FillLine:
    """One pour: container, volume, mass, and when it is during the session, before which movement."""

    thing: str
    volume: str
    mass: str
    when: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FillsView:
    """The pours before the next day that needs any."""

    heading: str
    lines: tuple[FillLine, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckLine:
    """A rule, whether it is met, and its note."""

    mark: str
    tone: Tone
    rule: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockDetail:
    """Everything about one block, to open in place."""

    title: str
    dose: str
    things: str
    why: tuple[str, ...]
    cues: tuple[str, ...]
    cautions: tuple[str, ...]
    pinned: bool


def block_id(weekday: int, exercise_id: str) -> str:
    """Identity of a block on the screen."""
    return f"{weekday}{_SEPARATOR}{exercise_id}"


def parted(shown_id: str) -> tuple[int, str]:
    """Weekday and exercise id of a block on the screen."""
    weekday, _, exercise_id = shown_id.partition(_SEPARATOR)
    return int(weekday), exercise_id


def day_views(week: Week, system: UnitSystem, pins: tuple[Pin, ...], today: int) -> tuple[DayView, ...]:
    """Seven columns."""
    pinned = {(pin.weekday, pin.exercise_id) for pin in pins}
    return tuple(_day(day, system, pinned, today) for day in week.days)


def _day(day: DayPlan, system: UnitSystem, pinned: set[tuple[int, str | None]], today: int) -> DayView:
    rest = day.kind is DayKind.REST
    blocks = tuple(
        BlockView(
            block_id=block_id(day.weekday, block.exercise.id),
            title=block.exercise.name,
            detail=_detail(block, system),
            family=FAMILY_COLOURS[block.family],
            pinned=(day.weekday, block.exercise.id) in pinned,
        )
        for block in day.blocks
    )
    warm = sum(block.seconds for block in day.warm_up)
    cool = sum(block.seconds for block in day.cool_down)
    notes = (f"warm-up {warm // 60} min, cool-down {cool // 60} min",) if not rest else ()
    return DayView(
        name=WEEKDAYS[day.weekday][:3],
        minutes_text="" if rest else f"{minutes(day.seconds)} of {minutes(day.limit_s)} min",
        kind=DAY_KIND_NAMES[day.kind],
        notes=notes,
        blocks=blocks,
        rest=rest,
        today=day.weekday == today,
    )


def minutes(seconds: int) -> int:
    """Whole minutes, a begun one counted."""
    return -(-seconds // 60)


def _detail(block: Block, system: UnitSystem) -> str:
    amount = amount_words(block.dose, block.exercise, system)
    if block.binding.load is not None:
        return f"{amount} · {format_mass(block.binding.load_kg, system)}".replace(" kg", "\u00a0kg")
    return amount


def trained_rows(week: Week, experience_low: int) -> tuple[BarRow, ...]:
    """Hard sets of each family against the low end of the range for the level."""
    sets = families_trained(week)
    return tuple(
        BarRow(
            label=FAMILY_NAMES[family],
            share=min(1.0, sets[family] / experience_low) if experience_low else 0.0,
            value_text=_sets(sets[family]),
            family=FAMILY_COLOURS[family],
        )
        for family in STRENGTH_FAMILIES
    )


def _sets(count: int) -> str:
    if count == 0:
        return "none"
    return "1 set" if count == 1 else f"{count} sets"


def low_target(experience: Experience) -> int:
    """The low end of the weekly sets for this level."""
    return TARGET_SETS[experience][0]


def fills_view(week: Week, today: int, system: UnitSystem) -> FillsView:
    """The pours of the next day (from today on, round the week) that has any."""
    for step in range(7):
        weekday = (today + step) % 7
        mine = [fill for fill in week.fills if fill.weekday == weekday]
        if mine:
            lines = tuple(
                FillLine(
                    thing=fill.name,
                    volume=format_volume(fill.volume_l, system),
                    mass=format_measured_mass(fill.mass, system),
                    when=f"before {fill.for_exercise.lower()}" if fill.during else "",
                )
                for fill in mine
            )
            count = len(lines)
            heading = f"Before {WEEKDAYS[weekday]}: {'one fill' if count == 1 else f'{count} fills'}"
            during = sum(fill.during for fill in mine)
            return FillsView(heading=heading, lines=lines, note=_pour_note(during))
    return FillsView(heading="Nothing to fill", lines=(), note="This week needs no pouring at all.")


def _pour_note(during: int) -> str:
    if during == 0:
        return "No pour during the session. The plan picks loads so you refill as little as possible."
    pours = "One pour" if during == 1 else f"{during} pours"
    return f"{pours} during the session. The plan picks loads so you refill as little as possible."


def check_lines(week: Week) -> tuple[CheckLine, ...]:
    """Every check with its mark."""
    found = []
    for check in week.checks:
        mark, tone = ("met", Tone.GOOD) if check.met else ("not met", Tone.FAIR)
        note = f": {check.note}" if check.note else ""
        found.append(CheckLine(mark=mark, tone=tone, rule=f"{check.rule}{note}"))
    return tuple(found)


def block_detail(week: Week, shown_id: str, system: UnitSystem, pins: tuple[Pin, ...]) -> BlockDetail | None:
    """What opens when a block is chosen; None when the week no longer has it."""
    weekday, exercise_id = parted(shown_id)
    for block in week.days[weekday].blocks:
        if block.exercise.id == exercise_id:
            return _block_detail(block, weekday, system, pins)
    return None


def _block_detail(block: Block, weekday: int, system: UnitSystem, pins: tuple[Pin, ...]) -> BlockDetail:
    load = block.binding.load
    amount = amount_words(block.dose, block.exercise, system)
    mass = f" at {format_measured_mass(load.mass, system)}" if load is not None else ""
    rest = f", {block.rest_s} s rest" if block.rest_s else ""
    things = [load_words(load, system)] if load is not None else []
    things += [held.name for held in block.binding.fixtures if held.thing_id]
    return BlockDetail(
        title=f"{block.exercise.name}, {WEEKDAYS[weekday]}",
        dose=f"{amount}{mass}, effort {block.dose.effort:g} of 10{rest}",
        things=" · ".join(things) or "Your body alone",
        why=block.why,
        cues=block.exercise.cues,
        cautions=block.binding.cautions,
        pinned=any(pin.weekday == weekday and pin.exercise_id == block.exercise.id for pin in pins),
    )


def ribbon(block: TrainingBlock, shown: int) -> tuple[WeekMark, ...]:
    """One bar a week; the height is hard sets times effort, a relative size."""
    most = max((week.load for week in block.weeks), default=0) or 1
    return tuple(
        WeekMark(
            label=_week_label(week.number, week.kind),
            share=week.load / most,
            spoken=f"week {week.number}, {week.kind}",
            current=week.number == shown,
        )
        for week in block.weeks
    )


def _week_label(number: int, kind: str) -> str:
    if kind == "test":
        return "test"
    return f"{number}" if kind == "build" else f"{number} {kind}"
