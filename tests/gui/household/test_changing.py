"""Things, people, places and the household changed in place, taken out, and everything taken back."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from core.errors import InputError
from core.house.model import Person, Sex
from core.store.commands import Command
from core.store.values import ChangeSet
from gui.desk.desk import Desk
from gui.household import HouseholdScreen
from gui.household.line_form import TypedField
from gui.household.people_typed import HouseLine, PersonLine, PlaceLine
from gui.household.thing_typed import ThingLine
from tests.gui import hand
from tests.gui.looking import settle


def write(field: TypedField, text: str) -> None:
    """Write over a line and press Enter."""
    field.edit.setFocus()
    field.edit.selectAll()
    hand.key(field.edit, Qt.Key.Key_Delete)
    hand.type_in(field.edit, text)
    hand.key(field.edit, Qt.Key.Key_Return)


def line(screen: HouseholdScreen, key: ThingLine) -> TypedField:
    return screen.page.things.form.form.field(key)


def open_form(screen: HouseholdScreen, thing_id: str) -> None:
    """As a hand does: the card, then Edit."""
    hand.click(screen.page.cards.card(thing_id))
    hand.click(screen.page.things.card.edit)
    settle()


def test_a_thing_is_corrected_in_place(screen: HouseholdScreen, desk: Desk) -> None:
    open_form(screen, "tins")
    write(line(screen, ThingLine.COUNT), "8")
    write(line(screen, ThingLine.NAME), "Chickpea tin")
    thing = desk.house().thing("tins")
    assert (thing.name, thing.count) == ("Chickpea tin", 8)
    hand.click(screen.page.things.form.finish)
    assert screen.page.things.card.title() == "Chickpea tin × 8"


def test_an_impossible_count_is_one_sentence_below_its_line(screen: HouseholdScreen, desk: Desk) -> None:
    open_form(screen, "tins")
    field = line(screen, ThingLine.COUNT)
    for text in ("nine", "-3", "0", "1e9", "1,5", ""):
        field.edit.setText(text)
        hand.key(field.edit, Qt.Key.Key_Return)
        assert field.fault().endswith("."), text
        assert field.text() == text
    assert desk.house().thing("tins").count == 6


def test_a_card_is_taken_out_by_delete_and_the_next_one_is_in_hand(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.page.cards.card("tins"))
    hand.key(screen.page.cards.card("tins"), Qt.Key.Key_Delete)
    assert "tins" not in {thing.id for thing in desk.house().things}
    assert screen.chosen() in screen.page.cards.order()
    assert screen.page.cards.card(screen.chosen()).hasFocus()
    desk.undo()
    assert desk.house().thing("tins").count == 6


def test_ten_changes_are_taken_back_and_done_again(screen: HouseholdScreen, desk: Desk) -> None:
    before = desk.house()
    open_form(screen, "tins")
    for count in range(10, 20):
        write(line(screen, ThingLine.COUNT), str(count))
    after = desk.house()
    for _ in range(10):
        desk.undo()
    assert desk.house() == before
    for _ in range(10):
        desk.redo()
    assert desk.house() == after


def test_a_person_is_changed_in_place(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.page.people.person("tomas"))
    write(screen.page.person.form.field(PersonLine.BODY_MASS), "79,5 kg")
    assert next(one for one in desk.house().people if one.id == "tomas").body_mass_kg == 79.5
    assert "Tomas · 79.5 kg" in screen.page.people.person("tomas").label()
    hand.click(screen.page.person.spares.chip("kneeling"))
    assert [one.value for one in next(p for p in desk.house().people if p.id == "tomas").spares] == ["kneeling"]


def test_age_and_sex_are_asked_for_only_to_read_tables_and_may_be_left_out(screen: HouseholdScreen, desk: Desk) -> None:
    def tomas() -> Person:
        return next(one for one in desk.house().people if one.id == "tomas")

    hand.click(screen.page.people.person("tomas"))
    form, before = screen.page.person.form, tomas()
    write(form.field(PersonLine.BORN), "86")
    assert form.field(PersonLine.BORN).fault() == (
        "“86” is no year of birth; write all four digits, or leave it empty."
    )
    assert tomas() == before
    write(form.field(PersonLine.BORN), "1986")
    hand.click(screen.page.person.sex.chip(Sex.MALE))
    assert (tomas().birth_year, tomas().sex) == (1986, Sex.MALE)
    write(form.field(PersonLine.BORN), "")
    hand.click(screen.page.person.sex.chip(None))
    assert (tomas().birth_year, tomas().sex) == (None, None)


def test_a_person_is_added_once_every_line_can_be_used(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.page.people.add_person)
    form = screen.page.person.form
    hand.type_in(form.field(PersonLine.NAME).edit, "Guest <i>aboard</i>")
    hand.click(screen.page.person.add)
    assert len(desk.house().people) == 2
    assert form.field(PersonLine.BODY_MASS).fault()
    assert form.field(PersonLine.NAME).text() == "Guest <i>aboard</i>"
    write(form.field(PersonLine.BODY_MASS), "74 kg")
    write(form.field(PersonLine.HEIGHT), "1.78")
    hand.click(screen.page.person.add)
    guest = desk.house().people[-1]
    assert (guest.name, guest.body_mass_kg, guest.height_cm) == ("Guest <i>aboard</i>", 74.0, 178.0)
    hand.click(screen.page.person.remove)
    assert len(desk.house().people) == 2


def test_a_place_is_added_changed_and_taken_out(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.page.people.add_place)
    form = screen.page.place.form
    write(form.field(PlaceLine.NAME), "Foredeck")
    write(form.field(PlaceLine.CEILING), "9 km")
    hand.click(screen.page.place.add)
    assert form.field(PlaceLine.CEILING).fault()
    write(form.field(PlaceLine.CEILING), "")
    hand.key(form.field(PlaceLine.CEILING).edit, Qt.Key.Key_Backspace)
    hand.click(screen.page.place.add)
    place = desk.house().places[-1]
    assert (place.id, place.name, place.ceiling_cm) == ("foredeck", "Foredeck", None)
    hand.click(screen.page.place.traits.chip("outdoors"))
    write(form.field(PlaceLine.QUIET_FROM), "22:00")
    write(form.field(PlaceLine.QUIET_TO), "7")
    quiet = desk.house().places[-1].quiet
    assert desk.house().places[-1].outdoors
    assert quiet is not None
    assert (quiet.start.hour, quiet.end.hour) == (22, 7)
    hand.click(screen.page.place.remove)
    assert [one.id for one in desk.house().places] == ["cabin", "towpath"]


def test_no_name_and_far_too_long_a_name_are_refused_in_one_short_sentence(screen: HouseholdScreen, desk: Desk) -> None:
    before = desk.house().name
    hand.click(screen.rename)
    field = screen.page.house.form.field(HouseLine.NAME)
    for name in ("", "   ", "x" * 10_000):
        field.edit.setText(name)
        hand.key(field.edit, Qt.Key.Key_Return)
        assert 0 < len(field.fault()) < 200
        assert "“”" not in field.fault()
        assert field.text() == name
    assert desk.house().name == before


def test_a_wrong_line_stays_while_another_is_kept(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.page.people.person("tomas"))
    form = screen.page.person.form
    write(form.field(PersonLine.HEIGHT), "9 km")
    write(form.field(PersonLine.NAME), "Tom")
    assert desk.house().people[1].name == "Tom"
    assert form.field(PersonLine.HEIGHT).text() == "9 km"
    assert form.field(PersonLine.HEIGHT).fault()
    hand.click(screen.page.people.person("ines"))
    assert form.field(PersonLine.HEIGHT).text() == "171 cm"
    assert form.field(PersonLine.HEIGHT).fault() == ""


def test_a_fill_is_put_at_hand_and_taken_away(screen: HouseholdScreen, desk: Desk) -> None:
    hand.click(screen.rename)
    before = desk.house().fills
    box = screen.page.house.more.box
    at = next(at for at in range(box.count()) if "sand" in box.itemText(at))
    box.setCurrentIndex(at)
    box.activated.emit(at)
    assert len(desk.house().fills) == len(before) + 1
    desk.undo()
    assert desk.house().fills == before


def test_a_line_that_cannot_be_saved_stays_as_typed_and_can_be_tried_again(
    screen: HouseholdScreen, desk: Desk, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def full(_command: Command) -> ChangeSet:
        raise InputError("the record", "cannot be written (the disk is full)", "make room, then try again")

    hand.click(screen.page.people.person("tomas"))
    field = screen.page.person.form.field(PersonLine.NAME)
    with monkeypatch.context() as full_disk:
        full_disk.setattr(desk.record, "do", full)
        with qtbot.waitSignal(desk.refused):
            write(field, "Tomas the second")
    assert field.text() == "Tomas the second"
    hand.key(field.edit, Qt.Key.Key_Return)
    assert "Tomas the second" in {one.name for one in desk.house().people}
