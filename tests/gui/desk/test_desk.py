"""The desk: says what changed, refuses in one sentence, keeps a setting until something of it changes."""

from __future__ import annotations

import datetime
from dataclasses import replace

from pytestqt.qtbot import QtBot

from core.store.commands import ChangePerson, ChangeSettings, RemoveThing, SaveWeek
from core.store.values import ChangeSet, Kind, SavedWeek, Units
from gui.desk.desk import Desk


def test_a_change_is_told_with_its_kinds_and_sentence(desk: Desk) -> None:
    told: list[object] = []
    desk.changed.connect(told.append)
    desk.said.connect(lambda sentence, undoable: told.append((sentence, undoable)))
    assert desk.do(RemoveThing("coal"))
    change, said = told
    assert isinstance(change, ChangeSet)
    assert Kind.THINGS in change.kinds
    assert said == ("Removed Coal bag", True)


def test_what_is_taken_back_offers_no_second_undo(desk: Desk, qtbot: QtBot) -> None:
    desk.do(RemoveThing("coal"))
    with qtbot.waitSignal(desk.said) as told:
        desk.undo()
    assert told.args is not None
    assert told.args[1] is False


def test_what_cannot_be_done_is_refused_in_one_sentence(desk: Desk, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(desk.changed), qtbot.waitSignal(desk.refused) as told:
        assert not desk.do(RemoveThing("anchor"))
    assert told.args is not None
    assert "anchor" in told.args[0]


def test_nothing_to_take_back_is_refused(empty_desk: Desk, qtbot: QtBot) -> None:
    with qtbot.waitSignal(empty_desk.refused):
        empty_desk.undo()


def test_a_setting_is_kept_until_something_of_it_changes(desk: Desk) -> None:
    before = desk.setting("cabin")
    assert desk.do(ChangeSettings(replace(desk.settings(), units=Units.US)))
    assert desk.setting("cabin") is before
    assert desk.do(ChangePerson(replace(desk.house().people[0], body_mass_kg=70.0)))
    after = desk.setting("cabin")
    assert after is not before
    assert after is not None
    assert after.person.body_mass_kg == 70.0


def test_somebody_else_trains(desk: Desk) -> None:
    desk.choose_person("tomas")
    person, setting = desk.person(), desk.setting()
    assert person is not None
    assert setting is not None
    assert (person.id, setting.person.id) == ("tomas", "tomas")


def test_while_nobody_trains_there_is_no_setting_and_no_week(empty_desk: Desk) -> None:
    assert empty_desk.person() is None
    assert empty_desk.setting() is None
    assert empty_desk.week() is None


def test_a_week_that_cannot_be_read_is_no_week(desk: Desk, qtbot: QtBot) -> None:
    monday = datetime.date(2026, 5, 4)
    assert desk.do(SaveWeek("ines", SavedWeek(starts=monday, version=999, plan="{}")))
    assert desk.week() is None


def test_the_demo_goes_with_one_undo(empty_desk: Desk) -> None:
    before = empty_desk.record.contents()
    assert empty_desk.load_demo()
    empty_desk.undo()
    assert empty_desk.record.contents() == before
