"""Pictures: each name has a file that draws something, in the colours asked for and sharp."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest
from PySide6.QtGui import QImage

from core.exercise.model import Pattern, Use
from gui.desk.names import MOVE_PICTURES, USE_PICTURES
from gui.theme import AnyPicture, Icon, MovePicture, ThingPicture, UsePicture, icon, pixmap
from gui.theme.icons import chevron_file, picture_path, tick_file
from tests.gui.looking import colours_of

ALL: tuple[AnyPicture, ...] = (*Icon, *ThingPicture, *MovePicture, *UsePicture)


def opaque_pixels(image: QImage) -> int:
    return sum(image.pixelColor(x, y).alpha() > 40 for x in range(image.width()) for y in range(image.height()))


@pytest.mark.parametrize("name", ALL)
def test_every_named_picture_draws_something(name: AnyPicture) -> None:
    assert opaque_pixels(pixmap(name, 48, "#16211f").toImage()) > 60


@pytest.mark.parametrize("name", ALL)
def test_a_picture_stays_inside_its_square(name: AnyPicture) -> None:
    image = pixmap(name, 48, "#16211f").toImage()
    edge = [image.pixelColor(at, side).alpha() for at in range(48) for side in (0, 47)]
    edge += [image.pixelColor(side, at).alpha() for at in range(48) for side in (0, 47)]
    assert max(edge) < 128


def test_every_file_has_a_name() -> None:
    named = {picture_path(name).name for name in ALL} | {
        f"{sign}-{theme}.svg" for sign in ("arrow", "tick") for theme in ("light", "dark")
    }
    assert {file.name for file in picture_path(Icon.MARK).parent.glob("*.svg")} == named


@pytest.mark.parametrize("name", ALL)
def test_a_picture_holds_strokes_only(name: AnyPicture) -> None:
    allowed = {"svg", "path", "circle", "ellipse", "rect"}
    tags = {element.tag.rsplit("}", 1)[-1] for element in ET.fromstring(picture_path(name).read_text())}  # noqa: S314  our own file
    assert tags <= allowed


def test_every_use_and_every_pattern_has_a_picture_of_its_own() -> None:
    assert sorted(USE_PICTURES) == sorted(Use)
    assert sorted(MOVE_PICTURES) == sorted(Pattern)
    for pictures in (tuple(USE_PICTURES.values()), tuple(MOVE_PICTURES.values())):
        assert len({picture_path(picture).read_text() for picture in pictures}) == len(pictures)


def test_ink_and_accent_are_the_ones_asked_for() -> None:
    colours = colours_of(pixmap(MovePicture.SQUAT, 128, "#112233", accent="#cc5500").toImage())
    assert {"#112233", "#cc5500"} <= colours


def test_without_an_accent_everything_is_ink() -> None:
    assert "#112233" in colours_of(pixmap(MovePicture.CARRY, 128, "#112233").toImage())


def test_at_double_density_a_picture_has_twice_the_pixels() -> None:
    double = pixmap(Icon.HOUSE, 20, "#112233", ratio=2.0)
    assert (double.width(), double.devicePixelRatio(), double.deviceIndependentSize().width()) == (40, 2.0, 20.0)


def test_the_same_picture_is_drawn_once() -> None:
    assert pixmap(Icon.GEAR, 33, "#010203").cacheKey() == pixmap(Icon.GEAR, 33, "#010203").cacheKey()


def test_an_icon_holds_both_densities() -> None:
    assert {size.width() for size in icon(Icon.UNDO, 16, "#112233").availableSizes()} == {16, 32}


@pytest.mark.parametrize("dark", [True, False])
def test_the_combo_arrow_and_the_tick_are_files(dark: bool) -> None:
    for file in (chevron_file(dark=dark), tick_file(dark=dark)):
        assert file.endswith(".svg")
        assert opaque_pixels(QImage(file)) > 10
