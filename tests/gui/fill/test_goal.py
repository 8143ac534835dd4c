"""Filling it to a wanted mass, and what is said when it can't be."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from gui.fill import FillScreen
from tests.gui import hand
from tests.gui.fill.eyes import goal, kg, mass, plain


def want(screen: FillScreen, text: str) -> None:
    edit = screen.side.goal.field.edit
    edit.selectAll()
    hand.type_in(edit, text)


def test_a_wanted_mass_tells_volume_height_cups_and_one_cup_more(screen: FillScreen) -> None:
    want(screen, "12 kg")
    said = goal(screen)
    assert said.startswith("Pour in 10.9 L, up to 16.")
    assert "about 44 × 250 mL" in said
    assert "One cup more adds 0.25 kg" in said
    assert kg(screen) != pytest.approx(12.0)


def test_enter_sets_the_line_there(screen: FillScreen) -> None:
    want(screen, "12 kg")
    hand.key(screen.side.goal.field.edit, Qt.Key.Key_Return)
    assert mass(screen).startswith("12.0 kg")


def test_a_bare_number_is_in_the_persons_unit(screen: FillScreen) -> None:
    want(screen, "12")
    assert goal(screen).startswith("Pour in 10.9 L")


def test_more_than_full_is_refused_with_what_full_is(screen: FillScreen) -> None:
    screen.show_thing("bucket")
    want(screen, "12 kg")
    assert goal(screen).startswith("12.0 kg is not reachable: full of water it is 9.4 kg")
    assert [plain(way.label()) for way in screen.side.goal.ways()] == ["Water carrier with 10.9 L water"]


def test_another_container_that_reaches_it_is_one_press_away(screen: FillScreen) -> None:
    screen.show_thing("bucket")
    want(screen, "12 kg")
    hand.click(screen.side.goal.ways()[0])
    thing = screen.thing()
    assert thing is not None
    assert thing.id == "carrier"
    assert mass(screen).startswith("12.0 kg")
    assert goal(screen).startswith("Pour in 10.9 L")


def test_when_nothing_reaches_it_that_is_said(screen: FillScreen) -> None:
    want(screen, "90 kg")
    assert goal(screen).endswith("Nothing else you list reaches it either.")
    assert screen.side.goal.ways() == ()


def test_lighter_than_empty_is_refused(screen: FillScreen) -> None:
    want(screen, "0.5 kg")
    assert "empty it already weighs 1.1 kg" in goal(screen)


def test_what_is_no_mass_is_said_below_the_field(screen: FillScreen) -> None:
    want(screen, "12 cm")
    assert "is a length, not a mass" in screen.side.goal.field.fault()
    want(screen, "")
    hand.key(screen.side.goal.field.edit, Qt.Key.Key_Backspace)
    assert screen.side.goal.field.fault() == ""
    assert goal(screen) == ""
