"""What a command gives back, and how it is printed: lines to read, or one JSON document."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

Document = dict[str, Any]
MOST_COLUMN = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The JSON document and the lines that say the same; a `fault` is one sentence for stderr, with exit code 2."""

    document: Document
    lines: tuple[str, ...]
    fault: str = ""


@dataclass(frozen=True, slots=True)
class Column:
    """A heading; numbers stand to the right."""

    heading: str
    right: bool = False


def table(columns: Sequence[Column], rows: Iterable[Sequence[str]]) -> list[str]:
    """Rows under their headings, columns two spaces apart; a long cell is cut off."""
    cells = [[_cut(cell) for cell in row] for row in rows]
    widths = [
        max(len(column.heading), *(len(row[at]) for row in cells)) if cells else len(column.heading)
        for at, column in enumerate(columns)
    ]
    headings = [column.heading for column in columns]
    return [_row(line, columns, widths) for line in (headings, *cells)]


def _row(cells: Sequence[str], columns: Sequence[Column], widths: Sequence[int]) -> str:
    parts = (
        cell.rjust(width) if column.right else cell.ljust(width)
        for cell, column, width in zip(cells, columns, widths, strict=True)
    )
    return "  ".join(parts).rstrip()


def _cut(cell: str) -> str:
    line = " ".join(cell.split())
    return line if len(line) <= MOST_COLUMN else line[: MOST_COLUMN - 1] + "…"


def as_json(document: Document, *, ascii_only: bool) -> str:
    """The document as text; numbers as they are, never NaN."""
    return json.dumps(document, ensure_ascii=ascii_only, allow_nan=False, indent=2)


def counted(count: int, word: str, plural: str = "") -> str:
    """1 movement, 2 movements."""
    return f"{count} {word if count == 1 else plural or f'{word}s'}"
