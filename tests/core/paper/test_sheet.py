"""The week sheet: one page, whatever the week, with everything to do on it."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from core.errors import InputError
from core.paper.lettering import PLAIN, Lettering, find_lettering
from core.paper.page import Paper
from core.paper.sheet import week_sheet
from core.plan.model import Clash, DayKind, DayPlan, Status, Week
from core.quantity.display import UnitSystem
from tests.core.paper.examples import REPS, SQUAT, block, drawn, movement, opened, sheet_request, week
from tests.dipper import INES, dipper

TEXT = """Ines: the week, from 4 May 2026
Narrowboat Dipper
Invented example
Monday: rest
Tuesday: strength, Towpath, 18:00, 16 min, effort 7.5
Pour first: Water carrier: 13.0 L of water, 14.1 kg ± 0.4 (each of 2)
Warm up, 1 min: arm swings.
Suitcase squat 4 × 9–15
2 × Water carrier (13 L water each), 28.2 kg ± 0.8; rest 90 s. Stand tall. Sit down slowly.
Now refill: Water carrier: 8.00 L of water, 14.1 kg ± 0.4
Split squat 2 × 9–15 a side
Rest 90 s. Stand tall. Sit down slowly.
Cool down, 1 min: arm swings.
Wednesday: rest
Thursday: rest
Friday: rest
Saturday: easy run or walk, Towpath, 31 min, effort 4
Easy walk 30 min
Talk in sentences.
Sunday: rest"""


def words(pdf: bytes) -> str:
    (page,) = opened(pdf).pages
    return " ".join(page.extract_text().split())


def crowded(blocks: int) -> Week:
    """A week of seven days with many movements each."""
    long = movement("A movement with quite a long name", cues=("Do it slowly. " * 4, "And with care. " * 4))
    day = DayPlan(
        weekday=0,
        kind=DayKind.STRENGTH,
        place_id="cabin",
        limit_s=3600,
        seconds=3600,
        blocks=(block(long, REPS),) * blocks,
    )
    return replace(week(), days=tuple(replace(day, weekday=weekday) for weekday in range(7)))


def test_everything_to_do_stands_on_it() -> None:
    request = sheet_request(starts=datetime.date(2026, 5, 4), note="Invented example")
    found = words(week_sheet(request))
    for line in TEXT.splitlines():
        assert " ".join(line.split()) in found, line


def test_cautions_stand_on_it_once_with_the_general_one_first() -> None:
    found = words(week_sheet(sheet_request()))
    assert found.count("Close the caps.") == 1
    assert (
        found.index("Stop when something hurts") < found.index("Close the caps.") < found.index("Loads are estimates")
    )
    assert "ask your doctor or physiotherapist" in found


def test_there_is_a_box_for_each_set_and_each_pour() -> None:
    _, boxes = drawn(opened(week_sheet(sheet_request())).pages[0])
    # 4 and 2 sets, one walk, two pours.
    assert len(boxes) == 4 + 2 + 1 + 2
    assert all(box.width == pytest.approx(box.height) and box.width > 2 for box in boxes)


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("blocks", [1, 4, 8, 14, 40])
def test_it_is_always_one_page_and_nothing_leaves_it(paper: Paper, blocks: int) -> None:
    (page,) = opened(week_sheet(sheet_request(week=crowded(blocks)), paper=paper)).pages
    strokes, boxes = drawn(page)
    width, height = paper.size_mm
    assert all(box.left >= 10 and box.left + box.width <= width - 10 for box in boxes)
    assert all(box.bottom >= 10 and box.bottom + box.height <= height - 10 for box in boxes)
    assert strokes


def test_a_crowded_week_leaves_out_cues_before_it_gets_too_small() -> None:
    assert "And with care." in words(week_sheet(sheet_request(week=crowded(2))))
    fuller = words(week_sheet(sheet_request(week=crowded(14))))
    assert "Do it slowly." not in fuller
    assert "A movement with quite a long name" in fuller


def test_a_week_that_fits_no_page_says_where_the_rest_is() -> None:
    assert "The rest does not fit on one page" in words(week_sheet(sheet_request(week=crowded(60))))


def test_the_same_week_gives_the_same_bytes() -> None:
    request = sheet_request()
    assert week_sheet(request, lettering=find_lettering()) == week_sheet(request, lettering=find_lettering())


@pytest.mark.parametrize("lettering", [PLAIN, find_lettering()])
@pytest.mark.parametrize("name", ["Żółć Ω Жанна", "漢字", "x" * 80, "a\u202eb", "\U0001f4a7 <i>"])
def test_any_name_can_be_printed(name: str, lettering: Lettering) -> None:
    person, house = replace(INES, name=name), replace(dipper(), name=name)
    pdf = week_sheet(sheet_request(person=person, house=house), lettering=lettering)
    assert "Tuesday: strength" in words(pdf)


def test_replaced_letters_are_told() -> None:
    assert "Some letters are not in the fonts here" in words(week_sheet(sheet_request(person=replace(INES, name="漢"))))
    assert "Some letters are not" not in words(week_sheet(sheet_request()))


def test_us_units_are_printed() -> None:
    assert "13.0 L" not in words(week_sheet(sheet_request(system=UnitSystem.US)))
    assert "3.43 gal of water" in words(week_sheet(sheet_request(system=UnitSystem.US)))


def test_a_week_without_a_plan_is_refused() -> None:
    clash = Clash(wishes=("30 minutes on Tuesday",), ways_out=())
    with pytest.raises(InputError, match="has no plan to print"):
        week_sheet(sheet_request(week=Week(status=Status.IMPOSSIBLE, clash=clash)))


def test_squats_with_a_load_name_it() -> None:
    assert SQUAT.name in words(week_sheet(sheet_request()))
