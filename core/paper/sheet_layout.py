"""Fitting the days of a week into the columns of one page: the largest type that holds everything.

A day is a list of chunks, a chunk a tuple of lines that stay together. Lengths in mm, type in points, `indent` and
`before` in heights of a line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from core.paper.page import POINTS_PER_MM, Pages

COLUMNS = 2
LARGEST_PT, SMALLEST_PT, STEP_PT = 12.5, 4.0, 0.25
READABLE_PT = (8.5, 7.5)
"""Type is made no smaller than this before the second cue, then all cues, are left out."""
LEADING = 1.22
CUT = "The rest does not fit on one page; it stands in the plan on the screen."


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One paragraph: its text, boxes to tick before it, and how it is set; `scale` is relative to the page's type."""

    text: str
    bold: bool = False
    scale: float = 1.0
    indent: float = 0.0
    boxes: int = 0
    before: float = 0.0
    ruled: bool = False


Chunk = tuple[Line, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """One printed row of a line: its column, distance from the top of the columns, and type."""

    line: Line
    text: str
    boxes: int
    column: int
    top_mm: float
    indent_mm: float
    width_mm: float
    size_pt: float
    ruled: bool = False


def height_of(size_pt: float) -> float:
    """Height of a row of type."""
    return size_pt * LEADING / POINTS_PER_MM


def fitted(
    pages: Pages, details: Sequence[Sequence[Sequence[Chunk]]], width_mm: float, room_mm: float
) -> tuple[Placed, ...]:
    """The days placed in columns; `details` holds the days with all cues, then with fewer, fullest first."""
    for days, size_pt in _tries(details):
        placed = _placed(pages, days, size_pt, width_mm, room_mm)
        if placed and placed[-1].column < COLUMNS:
            return placed
    return _cut_short(_placed(pages, details[-1], SMALLEST_PT, width_mm, room_mm))


def _tries(details: Sequence[Sequence[Sequence[Chunk]]]) -> Iterator[tuple[Sequence[Sequence[Chunk]], float]]:
    size_pt, level = LARGEST_PT, 0
    while size_pt >= SMALLEST_PT:
        yield details[level], size_pt
        if level < len(READABLE_PT) and size_pt <= READABLE_PT[level]:
            level += 1  # try the same size again with less to say
        else:
            size_pt -= STEP_PT


def _placed(
    pages: Pages, days: Sequence[Sequence[Chunk]], size_pt: float, width_mm: float, room_mm: float
) -> tuple[Placed, ...]:
    """Every row, column after column; columns past the last mean that it does not fit."""
    found: list[Placed] = []
    column, y_mm = 0, 0.0
    for day in days:
        for chunk in day:
            rows = list(_rows(pages, chunk, size_pt, width_mm))
            high_mm = sum(before + height_of(row.size_pt) for before, row in rows)
            if y_mm > 0 and y_mm + high_mm > room_mm:
                column, y_mm = column + 1, 0.0
            for before, row in rows:
                y_mm += before if y_mm > 0 else 0.0
                if y_mm + height_of(row.size_pt) > room_mm:
                    column, y_mm = column + 1, 0.0
                found.append(replace(row, column=column, top_mm=y_mm))
                y_mm += height_of(row.size_pt)
    return tuple(found)


def _rows(pages: Pages, chunk: Chunk, size_pt: float, width_mm: float) -> Iterator[tuple[float, Placed]]:
    """(space before it, row) of every row of a chunk, not yet in its place."""
    for line in chunk:
        own_pt = size_pt * line.scale
        indent_mm = line.indent * height_of(size_pt)
        edge_mm = height_of(own_pt) * 0.62
        taken_mm = edge_mm * (1.35 * line.boxes + 0.4) if line.boxes else 0.0
        room_mm = width_mm - indent_mm
        texts = pages.wrapped(line.text, room_mm, own_pt, bold=line.bold, first_mm=room_mm - taken_mm)
        for number, text in enumerate(texts):
            row = Placed(
                line=line,
                text=text,
                boxes=line.boxes if number == 0 else 0,
                column=0,
                top_mm=0.0,
                indent_mm=indent_mm,
                width_mm=width_mm,
                size_pt=own_pt,
                ruled=line.ruled and number == len(texts) - 1,
            )
            yield (line.before * height_of(size_pt) if number == 0 else 0.0), row


def _cut_short(placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """What fits, and in place of the last row the sentence that more is to be found elsewhere."""
    kept = [row for row in placed if row.column < COLUMNS]
    end = replace(kept[-1], line=Line(text=CUT), text=CUT, boxes=0, indent_mm=0.0, size_pt=SMALLEST_PT)
    return (*kept[:-1], end)
