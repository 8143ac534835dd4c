"""The fill strips before they are printed: which, on what, how they look; the file is written whole or not at all."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from core.paper.drawn import DrawnBox, DrawnLine
from gui.fill import FillScreen
from gui.fill.strip_page import StripPage
from gui.widgets.paper_view import PAPER
from tests.gui import hand
from tests.gui.looking import clipped_labels, colours_in, nameless, settle, show_at

LETTER, POUNDS = 1, 1


@pytest.fixture
def page(screen: FillScreen, qtbot: QtBot) -> Iterator[StripPage]:
    hand.click(screen.print)
    shown = screen.fronts.strip_page
    qtbot.waitUntil(lambda: bool(shown.pages()), timeout=10_000)
    yield shown
    screen.fronts.strips.close()


def bars(page: StripPage) -> list[float]:
    """Lengths of the level lines of the first page, mm."""
    marks = (mark for mark in page.pages()[0].marks if isinstance(mark, DrawnLine))
    return [line.x2_mm - line.x1_mm for line in marks if line.y1_mm == line.y2_mm]


def strips(page: StripPage) -> int:
    """How many outlines stand on all pages."""
    return sum(isinstance(mark, DrawnBox) for one in page.pages() for mark in one.marks)


def test_the_strip_in_hand_is_shown_before_it_is_printed(screen: FillScreen, page: StripPage) -> None:
    assert screen.bar.title() == "Fill strips"
    assert [chip.label() for chip in page.chips() if chip.isChecked()] == ["Water carrier · water"]
    assert "Water carrier" in page.pages()[0].words
    assert "inner base" in page.paper.accessibleDescription()
    assert PAPER in colours_in(page.paper)
    assert any(length == pytest.approx(50.0) for length in bars(page))
    hand.click(screen.one)
    assert screen.bar.title() == "Fill & weigh"


def test_several_strips_go_on_one_page(page: StripPage, qtbot: QtBot) -> None:
    before = strips(page)
    hand.click(next(chip for chip in page.chips() if "bucket" in chip.label()))
    qtbot.waitUntil(lambda: strips(page) > before, timeout=10_000)
    assert "Mop bucket" in page.pages()[0].words
    assert len(page.pages()) == 1


def test_paper_and_marks_can_be_chosen(page: StripPage, qtbot: QtBot) -> None:
    assert page.pages()[0].width_mm == 210.0
    hand.click(page.paper_chip(LETTER))
    qtbot.waitUntil(lambda: bool(page.pages()) and page.pages()[0].width_mm == pytest.approx(215.9), timeout=10_000)
    assert " kg" in page.pages()[0].words
    hand.click(page.marks_chip(POUNDS))
    qtbot.waitUntil(lambda: " lb" in page.pages()[0].words, timeout=10_000)


def test_without_a_container_there_is_nothing_to_save(page: StripPage) -> None:
    hand.click(next(chip for chip in page.chips() if chip.isChecked()))
    assert page.fault() == "Choose a container."
    assert not page.save.isEnabled()
    assert page.paper.accessibleName() == "No page yet"


def test_it_can_be_looked_at_twice_as_large(page: StripPage) -> None:
    settle()
    before = page.paper.height()
    hand.click(page.larger)
    settle()
    assert page.paper.height() > 1.5 * before
    assert page.larger.label() == "Whole page"
    hand.click(page.larger)
    settle()
    assert page.paper.height() == before


def test_what_was_shown_is_what_is_written(
    screen: FillScreen, page: StripPage, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "strip.pdf"
    asked: list[str] = []

    def choose(_parent: object, _title: str, proposed: str, _filter: str) -> tuple[str, str]:
        asked.append(Path(proposed).name)
        return str(target), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", choose)
    hand.key(page.save, Qt.Key.Key_Space)
    qtbot.waitUntil(screen.toast.isVisible, timeout=10_000)
    assert asked == ["strip-water-carrier.pdf"]
    assert str(target) in screen.toast.sentence()
    written = pypdf.PdfReader(target).pages
    assert len(written) == len(page.pages())
    assert sorted(written[0].extract_text().split()) == sorted(page.pages()[0].words.split())


def test_a_strip_that_can_not_be_written_is_said(
    screen: FillScreen, page: StripPage, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    missing = tmp_path / "missing" / "strip.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(missing), ""))
    hand.click(page.save)
    qtbot.waitUntil(screen.toast.isVisible, timeout=10_000)
    assert "cannot be written" in screen.toast.sentence()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: ("", ""))
    screen.toast.hide()
    hand.click(page.save)
    settle()
    assert not screen.toast.isVisible()


def test_no_word_is_cut_and_every_place_has_a_name(screen: FillScreen, page: StripPage) -> None:
    assert page.isVisible()
    for width, height in ((840, 700), (1736, 1200)):
        show_at(screen, width, height)
        assert clipped_labels(screen) == []
        assert nameless(screen) == []
