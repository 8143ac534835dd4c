"""The week on one page for the fridge door: what to pour before each day, movements with boxes to tick, cautions.

The largest type that fits is taken; cues are left out before the type gets too small to read from a step away.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from core.errors import InputError
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS, WeekWishes
from core.mass.model import Material
from core.paper.lettering import PLAIN, SUBSTITUTED, Lettering
from core.paper.page import Pages, Paper
from core.paper.sheet_layout import Chunk, Line, Placed, fitted, height_of
from core.paper.words import dose_words, load_words, minutes_words, pour_lines
from core.plan.model import KIND_WORDS, Block, DayKind, DayPlan, Week
from core.quantity.display import UnitSystem

MARGIN_MM = 11.0
HEAD_MM = 15.0
GUTTER_MM = 8.0
SMALL_PT = 7.0
SMALL_ROW_MM = 3.1
MOST_BOXES = 6
MOST_CAUTION_LINES = 9
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
GENERAL = (
    "Stop when something hurts sharply, or you feel pain in the chest or faint. With an illness, an injury or in "
    "pregnancy, ask your doctor or physiotherapist before you start."
)
LOADS = (
    "Effort runs to 10; at 8 you could do about two more repetitions. "
    "Loads are estimates; the true value lies within ± about 19 times out of 20."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRequest:
    """What is printed: a planned week of a person; `starts` is its Monday, `note` a line such as “invented example”."""

    week: Week
    house: House
    person: Person
    materials: Mapping[str, Material]
    wishes: WeekWishes = field(default_factory=WeekWishes)
    starts: datetime.date | None = None
    note: str = ""
    system: UnitSystem = UnitSystem.METRIC


def week_sheet(request: SheetRequest, *, paper: Paper = Paper.A4, lettering: Lettering = PLAIN) -> bytes:
    """The page as PDF; `InputError` for a week that could not be planned."""
    if not request.week.days:
        raise InputError("the week", "has no plan to print", "change the wishes that clash first")
    pages = Pages(f"Week of {request.person.name}", paper, lettering)
    cautions = _caution_lines(request, pages)
    foot_mm = len(cautions) * SMALL_ROW_MM
    top_mm = MARGIN_MM + HEAD_MM
    column_mm = (pages.width_mm - 2 * MARGIN_MM - GUTTER_MM) / 2
    room_mm = pages.height_mm - MARGIN_MM - foot_mm - 3.0 - top_mm
    days = [[_day(day, request, cues=cues) for day in request.week.days] for cues in (2, 1, 0)]
    layout = fitted(pages, days, column_mm, room_mm)
    _head(pages, request)
    for placed in layout:
        _draw(pages, placed, MARGIN_MM + placed.column * (column_mm + GUTTER_MM), top_mm)
    _foot(pages, cautions, foot_mm)
    return pages.finished()


def _head(pages: Pages, request: SheetRequest) -> None:
    when = "" if request.starts is None else f", from {_date(request.starts)}"
    pages.text(MARGIN_MM, MARGIN_MM + 6, f"{request.person.name}: the week{when}", size_pt=17, bold=True)
    right_mm = pages.width_mm - MARGIN_MM
    pages.text(right_mm, MARGIN_MM + 3, request.house.name, size_pt=9, align="right")
    pages.text(right_mm, MARGIN_MM + 7, request.note, size_pt=9, align="right")
    pages.line((MARGIN_MM, MARGIN_MM + 9.5), (right_mm, MARGIN_MM + 9.5), width_mm=0.5)


def _date(day: datetime.date) -> str:
    """4 May 2026, in English whatever the system's language."""
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def _day(day: DayPlan, request: SheetRequest, *, cues: int) -> list[Chunk]:
    """A day in pieces that stay together: the head with warm-up and first movement, then movement by movement."""
    head = [Line(text=_day_title(day, request), bold=True, scale=1.15, before=0.7, ruled=True)]
    head.extend(_pours(day, request))
    if day.warm_up:
        head.append(Line(text=_easy_words("Warm up", day.warm_up), before=0.15))
    blocks = [_block(block, day, request, cues=cues) for block in day.blocks]
    first, rest = (blocks[0], blocks[1:]) if blocks else ([], [])
    chunks = [(*head, *first), *map(tuple, rest)]
    if day.cool_down:
        line = Line(text=_easy_words("Cool down", day.cool_down), before=0.25)
        chunks[-1] = (*chunks[-1], line)
    return chunks


def _day_title(day: DayPlan, request: SheetRequest) -> str:
    if day.kind is DayKind.REST:
        return f"{WEEKDAYS[day.weekday]}: rest"
    start = next((wish.start for wish in request.wishes.days if wish.weekday == day.weekday), None)
    place = next((place.name for place in request.house.places if place.id == day.place_id), "")
    efforts = {block.dose.effort for block in day.blocks}
    effort = f"effort {efforts.pop():g}" if len(efforts) == 1 and day.kind is not DayKind.MOBILITY else ""
    when = f"{start:%H:%M}" if start else ""
    parts = [KIND_WORDS[day.kind].lower(), place, when, minutes_words(day.seconds), effort]
    return f"{WEEKDAYS[day.weekday]}: {', '.join(part for part in parts if part)}"


def _pours(day: DayPlan, request: SheetRequest, *, before: str | None = None) -> list[Line]:
    """What to pour before the day starts, or during it `before` a movement."""
    steps = [step for step in request.week.fills if step.weekday == day.weekday]
    asked = [step for step in steps if (step.for_exercise == before if step.during else before is None)]
    verb = "Pour first" if before is None else "Now refill"
    every = pour_lines(asked, request.materials, request.system)
    return [Line(text=f"{verb}: {words}", boxes=1, bold=True, before=0.15) for words in every]


def _easy_words(what: str, blocks: tuple[Block, ...]) -> str:
    names = ", ".join(block.exercise.name.lower() for block in blocks)
    return f"{what}, {minutes_words(sum(block.seconds for block in blocks))}: {names}."


def _block(block: Block, day: DayPlan, request: SheetRequest, *, cues: int) -> list[Line]:
    dose = dose_words(block.exercise, block.dose, request.system)
    lines = _pours(day, request, before=block.exercise.name)
    boxes = block.dose.sets if block.dose.sets <= MOST_BOXES else 1
    lines.append(Line(text=f"{block.exercise.name}  {dose}", bold=True, boxes=boxes, before=0.35))
    told = [load_words(block.binding, request.system), f"rest {block.rest_s} s" if block.rest_s else ""]
    facts = "; ".join(part for part in told if part)
    sentences = (
        [f"{facts[0].upper()}{facts[1:]}.", *block.exercise.cues[:cues]] if facts else block.exercise.cues[:cues]
    )
    lines.extend([Line(text=" ".join(sentences), indent=1.0, scale=0.92)] if sentences else [])
    return lines


def _caution_lines(request: SheetRequest, pages: Pages) -> list[str]:
    """Every caution of the week once, the general one first, as printed lines."""
    found = [GENERAL]
    for day in request.week.days:
        for block in (*day.blocks, *day.warm_up, *day.cool_down):
            found.extend(block.binding.cautions)
    found.append(LOADS)
    every = " ".join(dict.fromkeys(found))
    if any(pages.lettering.drawable(text) != text for text in _own_words(request)):
        every = f"{every} {SUBSTITUTED}"
    lines = pages.wrapped(every, pages.width_mm - 2 * MARGIN_MM, SMALL_PT)
    if len(lines) > MOST_CAUTION_LINES:
        lines = [*lines[: MOST_CAUTION_LINES - 1], "More cautions stand with each movement on the screen."]
    return lines


def _own_words(request: SheetRequest) -> list[str]:
    """What the person named: only that can hold letters our own sentences don't."""
    named = [request.person.name, request.house.name, request.note]
    named.extend(place.name for place in request.house.places)
    named.extend(thing.name for thing in request.house.things)
    return [" ".join(name.split()) for name in named]


def _draw(pages: Pages, placed: Placed, left_mm: float, top_mm: float) -> None:
    line, size_pt = placed.line, placed.size_pt
    y_mm = top_mm + placed.top_mm + height_of(size_pt) * 0.78
    if placed.ruled:
        pages.line((left_mm, y_mm + 1.1), (left_mm + placed.width_mm, y_mm + 1.1), width_mm=0.2, grey=0.5)
    x_mm = left_mm + placed.indent_mm
    edge_mm = height_of(size_pt) * 0.62
    for _ in range(placed.boxes):
        pages.box(x_mm, y_mm - edge_mm, edge_mm, edge_mm)
        x_mm += edge_mm * 1.35
    pages.text(x_mm + (edge_mm * 0.4 if placed.boxes else 0.0), y_mm, placed.text, size_pt=size_pt, bold=line.bold)


def _foot(pages: Pages, lines: list[str], foot_mm: float) -> None:
    top_mm = pages.height_mm - MARGIN_MM - foot_mm
    pages.line((MARGIN_MM, top_mm - 1.5), (pages.width_mm - MARGIN_MM, top_mm - 1.5), width_mm=0.2)
    for row, line in enumerate(lines):
        pages.text(MARGIN_MM, top_mm + SMALL_ROW_MM * (row + 0.75), line, size_pt=SMALL_PT)
