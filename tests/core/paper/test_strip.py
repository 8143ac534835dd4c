"""Fill strips: marks stand where the mass engine says, and millimetres on paper are millimetres."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from core.errors import InputError
from core.loads.filling import filling_of
from core.mass.model import HeightLevel, StraightRound, Tapered
from core.paper.drawn import DrawnBox, DrawnLine
from core.paper.lettering import PLAIN, find_lettering
from core.paper.page import Paper
from core.paper.strip import strip_for, wall_factor
from core.paper.strip_pages import BAND_MM, STRIP_MM, drawn_strips, strip_pages
from core.quantity.display import UnitSystem
from core.things.model import Thing
from tests.core.paper.examples import MATERIALS, WATER, Box, Stroke, drawn, opened
from tests.dipper import bucket, carrier, coal

TRUE_MM = 0.2


def tub() -> Thing:
    """A straight round vessel of 12 cm, so that one litre stands 88.4 mm high."""
    thing = bucket()
    container = thing.facts.container
    assert container is not None
    shape = StraightRound(diameter_cm=12.0, full_height_cm=24.0)
    brimful_l = replace(container.brimful_l, value=shape.full_volume_l)
    nominal_l = replace(container.nominal_l, value=2.2)
    facts = replace(thing.facts, container=replace(container, shape=shape, brimful_l=brimful_l, nominal_l=nominal_l))
    return replace(thing, name="Tub", facts=facts)


def strips_of(boxes: list[Box]) -> list[Box]:
    return [box for box in boxes if box.width == pytest.approx(STRIP_MM, abs=TRUE_MM)]


def rises(strokes: list[Stroke], outline: Box) -> list[float]:
    """Heights of the marks of a strip above its lower edge, mm."""
    inside = (
        stroke
        for stroke in strokes
        if stroke.x1 == pytest.approx(outline.left, abs=0.01)
        and outline.bottom < stroke.y1 < outline.bottom + outline.height
    )
    return sorted(stroke.y1 - outline.bottom for stroke in inside)


@pytest.mark.parametrize("thing", [carrier(), bucket(), tub()])
@pytest.mark.parametrize("material_id", ["water", "sand_dry"])
def test_a_mark_is_where_the_mass_engine_reads_that_mass(thing: Thing, material_id: str) -> None:
    material = MATERIALS[material_id]
    filling = filling_of(thing, material)
    for mark in strip_for(thing, material).marks:
        assert filling.at(HeightLevel(height_cm=mark.height_cm)).mass.value == pytest.approx(mark.mass_kg, rel=1e-6)


def test_marks_rise_and_can_be_told_apart() -> None:
    marks = strip_for(carrier(), WATER).marks
    heights = [mark.height_cm for mark in marks]
    assert all(above - below >= 0.45 for below, above in pairwise(heights))
    assert marks[0].label == "1.5"
    assert marks[-1].label == "26"


def test_us_marks_are_whole_steps_of_pounds() -> None:
    strip = strip_for(bucket(), WATER, system=UnitSystem.US)
    assert strip.unit == "lb"
    assert [mark.mass_kg for mark in strip.marks] == pytest.approx(
        [float(mark.label) * 0.45359237 for mark in strip.marks]
    )


def test_on_a_sloping_wall_marks_follow_the_slope() -> None:
    assert wall_factor(StraightRound(diameter_cm=10, full_height_cm=20)) == 1.0
    assert wall_factor(Tapered(bottom_cm=10, top_cm=40, full_height_cm=20)) == pytest.approx(1.25)
    assert strip_for(bucket(), WATER).along > 1.0


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("lettering", [PLAIN, find_lettering()])
def test_the_bar_to_check_the_printer_is_50_mm_long(paper: Paper, lettering: object) -> None:
    assert lettering in (PLAIN, find_lettering())
    page = opened(strip_pages([strip_for(bucket(), WATER)], paper=paper)).pages[0]
    strokes, _ = drawn(page)
    assert [stroke for stroke in strokes if abs(stroke.length - 50) <= TRUE_MM and stroke.y1 == stroke.y2]
    assert float(page.mediabox.width) / 72 * 25.4 == pytest.approx(paper.size_mm[0], abs=0.01)


def test_100_mm_of_fill_are_100_mm_on_paper() -> None:
    """1.131 L stand 100 mm high in a tube of 12 cm: π · 6² · 10 cm³."""
    strip = strip_for(tub(), WATER)
    assert strip.along == 1.0
    strokes, boxes = drawn(opened(strip_pages([strip])).pages[0])
    (outline,) = strips_of(boxes)
    marks = [mark.height_cm * 10 for mark in strip.marks]
    assert rises(strokes, outline) == pytest.approx(marks, abs=TRUE_MM)
    for mark in strip.marks:
        rise = min(rises(strokes, outline), key=lambda found: abs(found - mark.height_cm * 10))
        assert rise == pytest.approx(mark.volume_l / 1.130973355 * 100, abs=TRUE_MM)


def test_a_tall_strip_is_cut_between_marks_and_goes_on_where_it_ended() -> None:
    strip = strip_for(carrier(), WATER)
    strokes, boxes = drawn(opened(strip_pages([strip])).pages[0])
    lower, upper = sorted(strips_of(boxes), key=lambda box: box.left)
    found = rises(strokes, lower) + [lower.height + rise for rise in rises(strokes, upper)]
    marks = [mark.height_cm * 10 for mark in strip.marks]
    assert found == pytest.approx(marks, abs=TRUE_MM)
    assert all(abs(lower.height - mark) > 1 for mark in marks)
    assert lower.height + upper.height - BAND_MM == pytest.approx(strip.full_height_cm * 10, abs=TRUE_MM)


@pytest.mark.parametrize("paper", Paper)
def test_nothing_is_printed_off_the_page(paper: Paper) -> None:
    strips = [strip_for(thing, WATER) for thing in (carrier(), bucket(), tub(), bucket(), carrier())]
    document = opened(strip_pages(strips, paper=paper))
    assert len(document.pages) > 1
    width, height = paper.size_mm
    for page in document.pages:
        strokes, boxes = drawn(page)
        assert all(box.left >= 0 and box.left + box.width <= width for box in boxes)
        assert all(box.bottom >= 5 and box.bottom + box.height <= height - 5 for box in boxes)
        assert all(0 <= x <= width for stroke in strokes for x in (stroke.x1, stroke.x2))


def test_thing_material_and_the_full_mass_stand_on_the_strip() -> None:
    text = opened(strip_pages([strip_for(bucket(), WATER)])).pages[0].extract_text()
    assert "Mop bucket" in text
    assert "Water" in text
    assert "full: 9.4 kg ± 0.4" in text
    assert "measure the bar" in text


def test_the_same_strips_give_the_same_bytes() -> None:
    strips = [strip_for(carrier(), WATER), strip_for(bucket(), WATER)]
    assert strip_pages(strips, lettering=find_lettering()) == strip_pages(strips, lettering=find_lettering())
    assert b"CreationDate (D:2000" in strip_pages(strips)


@pytest.mark.parametrize("name", ["Бочка 漢字", "a" * 500, "<b>x</b> (\\) %PDF", "שלום", "\U0001f4a7"])
@pytest.mark.parametrize("lettering", [PLAIN, find_lettering()])
def test_any_name_can_be_printed(name: str, lettering: object) -> None:
    chosen = find_lettering() if lettering != PLAIN else PLAIN
    page = opened(strip_pages([strip_for(replace(bucket(), name=name), WATER)], lettering=chosen)).pages[0]
    assert "kg" in page.extract_text()


def test_replaced_letters_are_told() -> None:
    text = opened(strip_pages([strip_for(replace(bucket(), name="漢"), WATER)])).pages[0].extract_text()
    assert "Some letters are not in the fonts here" in text


def test_what_has_no_surface_to_read_is_refused() -> None:
    with pytest.raises(InputError, match="is nothing that can be filled"):
        strip_for(coal(), WATER)
    with pytest.raises(InputError, match="are no print"):
        strip_pages([])


def test_what_is_looked_at_is_what_is_printed() -> None:
    strips = [strip_for(thing, WATER) for thing in (carrier(), bucket(), tub(), bucket(), carrier())]
    made = drawn_strips(strips)
    assert made.content == strip_pages(strips)
    printed = opened(made.content).pages
    assert len(printed) == len(made.pages)
    for sheet, page in zip(printed, made.pages, strict=True):
        strokes, boxes = drawn(sheet)
        lines = [mark for mark in page.marks if isinstance(mark, DrawnLine)]
        outlines = [mark for mark in page.marks if isinstance(mark, DrawnBox)]
        level = [line.x2_mm - line.x1_mm for line in lines if line.y1_mm == line.y2_mm]
        assert [stroke.length for stroke in strokes if stroke.x1 != stroke.x2] == pytest.approx(level, abs=0.01)
        assert [box.height for box in boxes] == pytest.approx([box.height_mm for box in outlines], abs=0.01)
        assert sorted(sheet.extract_text().split()) == sorted(page.words.split())
