"""Print and To calendar write a whole file where the person says, or say why not."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from gui.week import WeekScreen
from tests.gui import hand


@pytest.fixture
def chosen(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> list[str]:
    """What the save dialogs proposed; each is answered with a file of that name in a folder of the test."""
    proposed: list[str] = []

    def answer(_parent: object, _title: str, name: str, _kind: str) -> tuple[str, str]:
        proposed.append(Path(name).name)
        return str(tmp_path / Path(name).name), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    return proposed


def test_print_writes_a_page(screen: WeekScreen, chosen: list[str], tmp_path: Path, qtbot: QtBot) -> None:
    hand.click(screen.print_button)
    file = tmp_path / "week-ines-2026-05-04.pdf"
    qtbot.waitUntil(lambda: "The week is in" in screen.toast.sentence(), timeout=20_000)
    assert chosen == [file.name]
    assert file.read_bytes().startswith(b"%PDF-")


def test_to_calendar_writes_an_event_a_training_day(
    screen: WeekScreen, chosen: list[str], tmp_path: Path, qtbot: QtBot
) -> None:
    hand.click(screen.calendar_button)
    qtbot.waitUntil(lambda: "The week is in" in screen.toast.sentence(), timeout=20_000)
    text = (tmp_path / "week-ines-2026-05-04.ics").read_text(encoding="utf-8")
    assert text.count("BEGIN:VEVENT") == 3
    assert chosen == ["week-ines-2026-05-04.ics"]


def test_a_file_that_cannot_be_written_is_said(
    screen: WeekScreen, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, qtbot: QtBot
) -> None:
    missing = tmp_path / "nowhere" / "week.ics"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(missing), ""))
    hand.click(screen.calendar_button)
    qtbot.waitUntil(lambda: "cannot be written" in screen.toast.sentence(), timeout=20_000)
    assert not missing.exists()


def test_no_file_without_a_name(screen: WeekScreen, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: ("", ""))
    screen.toast.hide()
    hand.click(screen.print_button)
    assert not screen.toast.isVisible()
