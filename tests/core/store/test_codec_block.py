"""A block of weeks reads back as it was written, in a few times the space of one week."""

from __future__ import annotations

import json
from typing import Any

import pytest

from core.errors import InputError
from core.plan.block_model import Happening, What
from core.plan.replan import replan
from core.store.codec_block import BLOCK_VERSION, block_from_text, block_text
from core.store.codec_week import week_text
from core.store.commands import SaveBlock
from core.store.record import Record
from core.store.values import SavedBlock
from tests.core.plan.block_examples import HOUSE, MONDAY, REQUEST, block_of, shipped
from tests.dipper import INES


def document() -> Any:
    return json.loads(block_text(block_of("ines"), shipped()))


def test_a_block_reads_back_equal() -> None:
    block = block_of("ines")
    written = block_text(block, shipped())
    assert block_from_text(written, shipped()) == block
    assert block_text(block_from_text(written, shipped()), shipped()) == written


def test_a_block_with_a_past_reads_back_equal() -> None:
    happening = Happening(what=What.ILL, week=2, weekday=1, days=4, note="A cold.")
    block = replan(block_of("ines"), happening, REQUEST, HOUSE, INES, shipped())
    found = block_from_text(block_text(block, shipped()), shipped())
    assert found == block
    assert found.happened == (happening,)
    assert any(week.predicted for week in found.weeks)


def test_what_repeats_is_written_once() -> None:
    block = block_of("ines")
    one_by_one = sum(len(week_text(week.week, shipped())) for week in block.weeks)
    assert len(block_text(block, shipped())) < 0.7 * one_by_one


def test_a_block_is_kept_in_the_record_and_one_undo_takes_it_back(dipper: Record) -> None:
    text = block_text(block_of("ines"), shipped())
    before = dipper.block("ines")
    dipper.do(SaveBlock("ines", SavedBlock(starts=MONDAY, version=BLOCK_VERSION, plan=text), "Planned eight weeks"))
    kept = dipper.block("ines")
    assert kept is not None
    assert block_from_text(kept.plan, shipped()) == block_of("ines")
    assert dipper.undo_text == "Planned eight weeks"
    dipper.undo()
    assert dipper.block("ines") == before


def _with(path: tuple[str | int, ...], value: object) -> str:
    changed = document()
    place = changed
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    return json.dumps(changed)


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        (("movements", 0, "exercise"), "moon_walk", "“moon_walk” is no movement of this catalog any more"),
        (("block", "tests", 0), "hop", "“hop” is no test of this catalog any more; plan the block again"),
        (("block", "weeks", 0, "kind"), "hard", "is none of test, build, easy, retest"),
        (("block", "weeks", 0, "week", "days", 1, "blocks", 0), 99_999, "99999"),
        (("block", "weeks", 0, "week", "days", 1, "blocks", 0), 9_999, "is no number of a movement"),
        (("block", "happened"), [{"is": "happening"}], "is missing"),
        (("block", "starts"), "2026-05-05T", "is not a date"),
        (("is",), "week", "is not a block of weeks"),
    ],
)
def test_what_does_not_fit_is_named(path: tuple[str | int, ...], value: object, words: str) -> None:
    with pytest.raises(InputError, match=words):
        block_from_text(_with(path, value), shipped())
