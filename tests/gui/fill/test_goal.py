"""Filling it to a wanted mass, and what is said when it can't be."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from core.quantity import Measured
from core.store.commands import AddThing, ChangeThing
from core.things.model import Facts
from gui.desk.desk import Desk
from gui.fill import FillScreen
from tests.dipper import bucket
from tests.gui import hand
from tests.gui.fill.eyes import goal, kg, mass, plain


def pot() -> Facts:
    """A pot of three litres."""
    facts = bucket().facts
    assert facts.container is not None
    container = replace(facts.container, nominal_l=Measured(3.0), brimful_l=Measured(3.2))
    return replace(facts, container=container)


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
    assert [plain(way.label()) for way in screen.side.goal.ways()] == [
        "Water carrier with 10.9 L water",
        "1.35 L water in this one, and add Coal bag",
        "8.74 L water in this one, and add 6 × Bean tin",
    ]


def test_a_fill_that_would_reach_is_named_even_if_it_is_not_at_hand(screen: FillScreen, desk: Desk) -> None:
    bucket = desk.house().thing("bucket")
    desk.do(ChangeThing(replace(bucket, fills=("water", "sand_dry"))))
    screen.show_thing("bucket")
    want(screen, "12 kg")
    assert "Full of dry sand it would be about 14.8 kg." in goal(screen)


def test_adding_a_thing_sets_the_line_for_the_rest(screen: FillScreen) -> None:
    screen.show_thing("bucket")
    want(screen, "12 kg")
    hand.click(screen.side.goal.ways()[2])
    assert mass(screen).startswith("9.2 kg")


def test_one_may_pour_with_a_ladle_or_a_bottle_of_the_house(screen: FillScreen, desk: Desk) -> None:
    want(screen, "12 kg")
    measure = screen.side.goal.measure
    assert measure.edit.placeholderText().replace("\u00a0", " ") == "250 mL cup"
    hand.type_in(measure.edit, "ladle 120 mL")
    assert "about 91 × ladle" in goal(screen)
    assert "One ladle more adds 0.12 kg" in goal(screen)
    desk.do(AddThing(replace(desk.house().thing("bucket"), id="pot", name="Small pot", facts=pot())))
    measure.edit.selectAll()
    hand.type_in(measure.edit, "small pot")
    assert "about 3 × Small pot and 8 × 250 mL" in goal(screen)


def test_what_is_nothing_to_pour_with_is_said(screen: FillScreen) -> None:
    want(screen, "12 kg")
    hand.type_in(screen.side.goal.measure.edit, "shoe")
    assert "is nothing to pour with here" in screen.side.goal.measure.fault()
    assert "about 44 × 250 mL" in goal(screen)


def test_the_line_is_told_from_the_base_and_from_the_brim(screen: FillScreen) -> None:
    want(screen, "12 kg")
    assert "from the base, 2" in goal(screen)
    assert "cm below the brim" in goal(screen)


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
