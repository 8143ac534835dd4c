"""What stands on a page as plain values, so that it can be looked at before it is printed.

Recorded from the very calls that write the PDF. Lengths in mm from the top left corner; a text stands on its base line.
"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class DrawnText:
    """One line of text from `x_mm` on, `width_mm` wide as printed."""

    x_mm: float
    y_mm: float
    text: str
    size_mm: float
    bold: bool
    width_mm: float


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A straight line; `grey` from 0 (black) to 1."""

    x1_mm: float
    y1_mm: float
    x2_mm: float
    y2_mm: float
    thick_mm: float
    grey: float


@dataclass(frozen=True, slots=True)
class DrawnBox:
    """A rectangle: an outline `thick_mm` wide, or filled where that is 0."""

    left_mm: float
    top_mm: float
    width_mm: float
    height_mm: float
    thick_mm: float
    grey: float


Drawn = DrawnText | DrawnLine | DrawnBox


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnPage:
    """One page: its size and what stands on it, in the order it was drawn."""

    width_mm: float
    height_mm: float
    marks: tuple[Drawn, ...]

    @property
    def words(self) -> str:
        """All texts, in the order they were drawn."""
        return " ".join(mark.text for mark in self.marks if isinstance(mark, DrawnText))


@dataclass(slots=True)
class Recorder:
    """Collects the marks of a document page by page; a working value while it is drawn."""

    width_mm: float
    height_mm: float
    done: list[DrawnPage] = field(default_factory=list)
    marks: list[Drawn] = field(default_factory=list)

    def add(self, mark: Drawn) -> None:
        """One more mark on the page."""
        self.marks.append(mark)

    def turn(self) -> None:
        """The page is done."""
        self.done.append(DrawnPage(width_mm=self.width_mm, height_mm=self.height_mm, marks=tuple(self.marks)))
        self.marks.clear()
