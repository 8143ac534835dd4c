"""Fill strips on paper, at true scale: several to a page, tall ones in parts that are joined where they are cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.paper.drawn import DrawnPage, Recorder
from core.paper.lettering import PLAIN, SUBSTITUTED, Lettering
from core.paper.page import Pages, Paper
from core.paper.strip import Mark, Strip
from core.quantity.display import UnitSystem, format_measured_mass, format_volume

MARGIN_MM = 12.0
TOP_MM = 43.0
BOTTOM_MM = 13.0
STRIP_MM = 32.0
COLUMN_MM = 44.0
BAND_MM = 17.0
"""Height of the band above the highest mark that names thing and material."""
CHECK_MM = 50.0
MOST_PARTS = 40
HOW = (
    "Print at 100 % (actual size) and measure the bar: it must be 50 mm long.",
    "Cut out a strip and tape it upright to the outside, its 0 level with the inner base of the container.",
    "The numbers are the mass of the whole, container included. Check one fill on a scale where you can.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A piece of a strip from `low_mm` to `high_mm` above its 0, and which of how many it is."""

    strip: Strip
    number: int
    count: int
    low_mm: float
    high_mm: float

    @property
    def is_last(self) -> bool:
        """Whether it bears the band with the names."""
        return self.number == self.count


def strip_pages(
    strips: Sequence[Strip],
    *,
    paper: Paper = Paper.A4,
    lettering: Lettering = PLAIN,
    system: UnitSystem = UnitSystem.METRIC,
) -> bytes:
    """The PDF of the strips; `InputError` when there is nothing to print or it would be a book."""
    return drawn_strips(strips, paper=paper, lettering=lettering, system=system).content


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnStrips:
    """The PDF, and its pages to look at."""

    content: bytes
    pages: tuple[DrawnPage, ...]


def drawn_strips(
    strips: Sequence[Strip],
    *,
    paper: Paper = Paper.A4,
    lettering: Lettering = PLAIN,
    system: UnitSystem = UnitSystem.METRIC,
) -> DrawnStrips:
    """The strips as PDF and as pages to look at; `InputError` as for `strip_pages`."""
    room_mm = paper.size_mm[1] - TOP_MM - BOTTOM_MM
    parts = [part for strip in strips for part in _parts(strip, room_mm)]
    if not 0 < len(parts) <= MOST_PARTS:
        way_out = "choose fewer or smaller things"
        raise InputError(f"{len(strips)} strips", f"are no print of 1 to {MOST_PARTS} pieces", way_out)
    recorder = Recorder(*paper.size_mm)
    pages = Pages("Fill strips", paper, lettering, recorder)
    columns = int((pages.width_mm - 2 * MARGIN_MM) // COLUMN_MM)
    for first in range(0, len(parts), columns):
        if first:
            pages.next_page()
        for place, part in enumerate(parts[first : first + columns]):
            _draw_part(pages, part, MARGIN_MM + place * COLUMN_MM, system)
        _head(pages, parts[first : first + columns])
    content = pages.finished()
    return DrawnStrips(content=content, pages=tuple(recorder.done))


def _parts(strip: Strip, room_mm: float) -> tuple[Part, ...]:
    """Pieces no taller than `room_mm`, cut midway between two marks; the last leaves room for the band."""
    heights = [strip.on_paper_mm(mark.height_cm) for mark in strip.marks]
    top_mm = strip.on_paper_mm(strip.full_height_cm)
    cuts = [0.0]
    while top_mm + BAND_MM - cuts[-1] > room_mm:
        # A cut in the last few mm would leave a piece too short to hold.
        limit = min(cuts[-1] + room_mm, top_mm - 20.0)
        between = [(low + high) / 2 for low, high in zip([cuts[-1], *heights], heights, strict=False)]
        cuts.append(max((cut for cut in between if cuts[-1] < cut <= limit), default=limit))
    edges = [*cuts, top_mm]
    count = len(cuts)
    return tuple(
        Part(strip=strip, number=index + 1, count=count, low_mm=edges[index], high_mm=edges[index + 1])
        for index in range(count)
    )


def _head(pages: Pages, parts: Sequence[Part]) -> None:
    pages.text(MARGIN_MM, 14.0, "Fill strips", size_pt=16, bold=True)
    for row, sentence in enumerate(HOW):
        pages.text(MARGIN_MM, 19.5 + 4.0 * row, sentence, size_pt=8.5)
    bar_mm = 34.5
    pages.line((MARGIN_MM, bar_mm), (MARGIN_MM + CHECK_MM, bar_mm), width_mm=0.4)
    for end_mm in (MARGIN_MM, MARGIN_MM + CHECK_MM):
        pages.line((end_mm, bar_mm - 1.5), (end_mm, bar_mm + 1.5), width_mm=0.4)
    pages.text(MARGIN_MM + CHECK_MM + 3, bar_mm + 1, "50 mm", size_pt=8.5)
    notes = list(dict.fromkeys(sentence for part in parts for sentence in part.strip.cautions))
    if pages.changed:
        notes.append(SUBSTITUTED)
    line = pages.wrapped(" ".join(notes), pages.width_mm - 2 * MARGIN_MM, 7)
    for row, sentence in enumerate(line[:2]):
        pages.text(MARGIN_MM, pages.height_mm - 8.0 + 3 * row, sentence, size_pt=7)


def _draw_part(pages: Pages, part: Part, left_mm: float, system: UnitSystem) -> None:
    """One piece, its lower edge on the common base line of the page."""
    base_mm = pages.height_mm - BOTTOM_MM
    height_mm = part.high_mm - part.low_mm + (BAND_MM if part.is_last else 0.0)
    pages.box(left_mm, base_mm - height_mm, STRIP_MM, height_mm)
    for mark in _within(part):
        y_mm = base_mm - (part.strip.on_paper_mm(mark.height_cm) - part.low_mm)
        _draw_mark(pages, part.strip, mark, (left_mm, y_mm), system)
    if part.number == 1:
        pages.text(left_mm + 1, base_mm - 1, "0 inner base", size_pt=6)
    else:
        pages.text(left_mm + 1, base_mm + 3, f"join to part {part.number - 1}", size_pt=6)
    if part.is_last:
        _band(pages, part, (left_mm, base_mm - height_mm), system)
    else:
        words = f"{part.strip.thing}: part {part.number} of {part.count}, part {part.number + 1} goes on here"
        for row, line in enumerate(pages.wrapped(words, STRIP_MM, 6)[:2]):
            pages.text(left_mm, base_mm - height_mm - 4 + 2.4 * row, line, size_pt=6)


def _within(part: Part) -> Iterator[Mark]:
    for mark in part.strip.marks:
        height_mm = part.strip.on_paper_mm(mark.height_cm)
        if part.low_mm < height_mm <= part.high_mm:
            yield mark


def _draw_mark(pages: Pages, strip: Strip, mark: Mark, at_mm: tuple[float, float], system: UnitSystem) -> None:
    left_mm, y_mm = at_mm
    pages.line((left_mm, y_mm), (left_mm + (9.0 if mark.whole else 6.0), y_mm), width_mm=0.5 if mark.whole else 0.25)
    pages.text(left_mm + 10, y_mm + 1.1, f"{mark.label} {strip.unit}", size_pt=8.5, bold=mark.whole)
    volume = format_volume(mark.volume_l, system)
    pages.text(left_mm + STRIP_MM - 1, y_mm + 0.9, volume, size_pt=6, align="right")


def _band(pages: Pages, part: Part, corner_mm: tuple[float, float], system: UnitSystem) -> None:
    left_mm, top_mm = corner_mm
    strip = part.strip
    room_mm = STRIP_MM - 2
    names = pages.wrapped(strip.thing, room_mm, 7.5, bold=True)[:2]
    y_mm = top_mm + 3.5
    for line in names:
        pages.text(left_mm + 1, y_mm, line, size_pt=7.5, bold=True)
        y_mm += 3.1
    full = f"full: {format_measured_mass(strip.full, system)}"
    slope = ["along the sloping side"] if strip.along > 1.0 else []
    for line in (pages.wrapped(strip.material, room_mm, 6.5)[0], full, *slope):
        pages.text(left_mm + 1, y_mm, line, size_pt=6.5)
        y_mm += 2.8
