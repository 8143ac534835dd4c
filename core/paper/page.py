"""Pages measured in millimetres from the top left corner, as PDF. The same input gives the same bytes.

One point is 1/72 inch, so lengths on paper are true when it is printed at 100 %; the page asks the printer for that.
"""

from __future__ import annotations

import io
import re
from enum import StrEnum
from typing import TYPE_CHECKING

from core.paper.drawn import DrawnBox, DrawnLine, DrawnText, Recorder
from core.paper.lettering import Lettering

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

POINTS_PER_MM = 72 / 25.4
# A number stays with its unit, its ± and its ×.
_BREAKS = re.compile(r"(?<![±×]) (?![±×]|(?:kg|g|lb|L|mL|gal|s|min|m|cm)\b)")


class Paper(StrEnum):
    """Paper sizes."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height."""
        return (210.0, 297.0) if self is Paper.A4 else (215.9, 279.4)


class Pages:
    """A document being drawn. `changed` tells whether a letter had to be replaced.

    A `recorder` takes down what is drawn, for a look at it on the screen.
    """

    def __init__(self, title: str, paper: Paper, lettering: Lettering, recorder: Recorder | None = None) -> None:
        from reportlab.pdfgen.canvas import Canvas  # a third of a second, only needed to print

        self.width_mm, self.height_mm = paper.size_mm
        self.lettering = lettering
        self.changed = False
        self._widths: dict[tuple[str, bool], float] = {}
        self._recorder = recorder
        self._buffer = io.BytesIO()
        size = (self.width_mm * POINTS_PER_MM, self.height_mm * POINTS_PER_MM)
        # invariant: no time of making, no random id.
        self._canvas: Canvas = Canvas(self._buffer, pagesize=size, invariant=1, pageCompression=1)
        self._canvas.setTitle(self._drawable(title))
        self._canvas.setAuthor("Fillmark")
        self._canvas.setViewerPreference("PrintScaling", "None")

    def next_page(self) -> None:
        """Go on with an empty page."""
        self._canvas.showPage()
        if self._recorder is not None:
            self._recorder.turn()

    def finished(self) -> bytes:
        """The document."""
        self.next_page()
        self._canvas.save()
        return self._buffer.getvalue()

    def _drawable(self, text: str) -> str:
        drawable = self.lettering.drawable(text)
        self.changed = self.changed or drawable != " ".join(text.split())
        return drawable

    def _font(self, *, bold: bool) -> str:
        return self.lettering.bold if bold else self.lettering.regular

    def text(
        self, x_mm: float, y_mm: float, text: str, *, size_pt: float, bold: bool = False, align: str = "left"
    ) -> None:
        """One line whose base line lies `y_mm` below the top; `align` is left, right or middle of `x_mm`."""
        drawn = self._drawable(text)
        self._canvas.setFont(self._font(bold=bold), size_pt)
        wide_mm = self.text_width_mm(text, size_pt, bold=bold)
        shift_mm = {"left": 0.0, "middle": 0.5, "right": 1.0}[align] * wide_mm
        self._canvas.drawString(self._x(x_mm - shift_mm), self._y(y_mm), drawn)
        if self._recorder is not None:
            size_mm = size_pt / POINTS_PER_MM
            self._recorder.add(DrawnText(x_mm - shift_mm, y_mm, drawn, size_mm, bold, wide_mm))

    def text_width_mm(self, text: str, size_pt: float, *, bold: bool = False) -> float:
        """Width of a line of text."""
        return sum(self._unit_width(word, bold=bold) for word in _words_and_spaces(text)) * size_pt / POINTS_PER_MM

    def _unit_width(self, word: str, *, bold: bool) -> float:
        """Width of a word at one point, worked out once: a page tries several sizes."""
        key = (word, bold)
        if key not in self._widths:
            from reportlab.pdfbase.pdfmetrics import stringWidth

            drawn = self.lettering.drawable(word) or word  # a space alone has a width too
            self._widths[key] = float(stringWidth(drawn, self._font(bold=bold), 1.0))
        return self._widths[key]

    def wrapped(
        self, text: str, width_mm: float, size_pt: float, *, bold: bool = False, first_mm: float | None = None
    ) -> list[str]:
        """`text` in lines no wider than `width_mm` (`first_mm` for the first one); a word too long is broken."""
        scale = size_pt / POINTS_PER_MM
        space = self._unit_width(" ", bold=bold) * scale
        lines, used, room = [""], 0.0, width_mm if first_mm is None else first_mm
        for word in _BREAKS.split(" ".join(text.split())):
            for part in self._parts(word, width_mm, size_pt, bold=bold):
                width = self._unit_width(part, bold=bold) * scale
                gap = space if lines[-1] else 0.0
                if lines[-1] and used + gap + width > room:
                    lines.append("")
                    used, gap, room = 0.0, 0.0, width_mm
                lines[-1] += f" {part}" if lines[-1] else part
                used += gap + width
        return lines

    def _parts(self, word: str, width_mm: float, size_pt: float, *, bold: bool) -> list[str]:
        """The word, in pieces when it is wider than a whole line."""
        if self._unit_width(word, bold=bold) * size_pt / POINTS_PER_MM <= width_mm:
            return [word]
        pieces, used = [""], 0.0
        for character in word:
            width = self._unit_width(character, bold=bold) * size_pt / POINTS_PER_MM
            if pieces[-1] and used + width > width_mm:
                pieces.append("")
                used = 0.0
            pieces[-1] += character
            used += width
        return pieces

    def line(
        self, start_mm: tuple[float, float], end_mm: tuple[float, float], *, width_mm: float = 0.2, grey: float = 0.0
    ) -> None:
        """A straight line; `grey` from 0 (black) to 1."""
        self._canvas.setStrokeGray(grey)
        self._canvas.setLineWidth(width_mm * POINTS_PER_MM)
        (x1, y1), (x2, y2) = start_mm, end_mm
        self._canvas.line(self._x(x1), self._y(y1), self._x(x2), self._y(y2))
        if self._recorder is not None:
            self._recorder.add(DrawnLine(x1, y1, x2, y2, width_mm, grey))

    def box(self, left_mm: float, top_mm: float, width_mm: float, height_mm: float, *, line_mm: float = 0.25) -> None:
        """An empty rectangle."""
        self._canvas.setStrokeGray(0.0)
        self._canvas.setLineWidth(line_mm * POINTS_PER_MM)
        bottom = self._y(top_mm + height_mm)
        self._canvas.rect(self._x(left_mm), bottom, width_mm * POINTS_PER_MM, height_mm * POINTS_PER_MM)
        if self._recorder is not None:
            self._recorder.add(DrawnBox(left_mm, top_mm, width_mm, height_mm, line_mm, 0.0))

    def bar(self, left_mm: float, top_mm: float, width_mm: float, height_mm: float, *, grey: float = 0.0) -> None:
        """A filled rectangle."""
        self._canvas.setFillGray(grey)
        bottom = self._y(top_mm + height_mm)
        self._canvas.rect(
            self._x(left_mm), bottom, width_mm * POINTS_PER_MM, height_mm * POINTS_PER_MM, stroke=0, fill=1
        )
        self._canvas.setFillGray(0.0)
        if self._recorder is not None:
            self._recorder.add(DrawnBox(left_mm, top_mm, width_mm, height_mm, 0.0, grey))

    def _x(self, x_mm: float) -> float:
        return x_mm * POINTS_PER_MM

    def _y(self, y_mm: float) -> float:
        return (self.height_mm - y_mm) * POINTS_PER_MM


def _words_and_spaces(text: str) -> list[str]:
    """The words with the spaces between them; fonts here set each word as wide wherever it stands."""
    words = text.split()
    return [part for word in words for part in (" ", word)][1:]
