"""The command that writes a picture of every screen."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from gui.gallery.pictured import PicturedScreen, pictured_screens
from gui.pictures import SIZES, main, write_pictures
from gui.shell import ScreenName
from gui.states import ShownState
from gui.theme import Theme

BY_NAME = {screen.name: screen for screen in pictured_screens()}


@pytest.mark.parametrize("name", [*ScreenName, *(f"window-{name}" for name in ScreenName)])
def test_every_screen_is_pictured_alone_and_in_the_window(name: str) -> None:
    settings = name.endswith(ScreenName.SETTINGS)
    assert BY_NAME[name].states == ((ShownState.DEMO,) if settings else tuple(ShownState))


def test_screens_have_names_of_their_own() -> None:
    assert len(BY_NAME) == len(pictured_screens())


def test_every_theme_size_and_state_is_written(qapp: QApplication, theme: Theme, tmp_path: Path) -> None:
    settings = BY_NAME["settings"]
    states = (ShownState.DEMO, ShownState.LONG)
    screen = PicturedScreen(name="settings", build=settings.build, states=states)
    many = write_pictures(qapp, tmp_path, [screen], 100)
    files = {file.name for file in tmp_path.glob("*.png")}
    assert many == len(files)
    assert files == {
        f"settings-{state.value}-{theme}-{width}x{height}-100.png"
        for state in states
        for theme in ("light", "dark")
        for width, height in SIZES
    }
    image = QImage(str(tmp_path / "settings-demo-dark-1280x800-100.png"))
    assert (image.width(), image.height()) == (1280, 800)


def test_at_200_per_cent_there_are_twice_the_pixels(tmp_path: Path) -> None:
    assert main([str(tmp_path), "--only", "settings"]) == 0
    plain = QImage(str(tmp_path / "settings-demo-light-1024x700-100.png"))
    double = QImage(str(tmp_path / "settings-demo-light-1024x700-200.png"))
    assert (double.width(), double.height()) == (2 * plain.width(), 2 * plain.height())


def test_a_picture_that_cannot_be_written_is_an_error(qapp: QApplication, theme: Theme, tmp_path: Path) -> None:
    with pytest.raises(OSError, match="could not be written"):
        write_pictures(qapp, tmp_path / "missing", [BY_NAME["settings"]], 100)
