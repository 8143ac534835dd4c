"""The command that writes a picture of every screen."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from gui.pictures import SIZES, main, pictured_screens, write_pictures
from gui.states import ShownState
from gui.theme import Theme


def test_every_theme_size_and_state_is_written(qapp: QApplication, theme: Theme, tmp_path: Path) -> None:
    screens = [screen for screen in pictured_screens() if screen.name == "gallery-pictures"]
    many = write_pictures(qapp, tmp_path, screens, 100)
    files = sorted(tmp_path.glob("*.png"))
    assert many == len(files) == 2 * len(SIZES) * len(ShownState)
    image = QImage(str(tmp_path / "gallery-pictures-demo-dark-1280x800-100.png"))
    assert (image.width(), image.height()) == (1280, 800)


def test_screens_have_names_of_their_own() -> None:
    names = [screen.name for screen in pictured_screens()]
    assert len(set(names)) == len(names)


def test_at_200_per_cent_there_are_twice_the_pixels(tmp_path: Path) -> None:
    assert main([str(tmp_path), "--only", "gallery-week"]) == 0
    plain = QImage(str(tmp_path / "gallery-week-demo-light-1024x700-100.png"))
    double = QImage(str(tmp_path / "gallery-week-demo-light-1024x700-200.png"))
    assert (double.width(), double.height()) == (2 * plain.width(), 2 * plain.height())


def test_a_picture_that_cannot_be_written_is_an_error(qapp: QApplication, theme: Theme, tmp_path: Path) -> None:
    with pytest.raises(OSError, match="could not be written"):
        write_pictures(qapp, tmp_path / "missing", pictured_screens()[:1], 100)
