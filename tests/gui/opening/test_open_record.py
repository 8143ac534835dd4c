"""Opening a record: what is in the way is one sentence with ways out, and the file in the way is never lost."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from core.house.model import House
from core.store.backup import back_up, backups, digest_of
from core.store.commands import ChangeThing, RemoveThing
from core.store.paths import DataFolder
from gui.desk.desk import Desk
from gui.household import HouseholdScreen
from gui.opening.open_record import OpenRecord
from gui.shell import MainWindow, ScreenName
from gui.shell.settings_page import SettingsPage
from gui.widgets import Page
from tests.gui import hand
from tests.gui.conftest import NOON
from tests.gui.looking import settle

Open = Callable[[], tuple[MainWindow, OpenRecord]]


def desk_of(record: OpenRecord) -> Desk:
    desk = record.desk()
    assert desk is not None
    return desk


def filled(open_window: Open, folder: DataFolder, *, copied: bool) -> House:
    """A record with the invented household, closed again, with a copy of it if wanted; what it holds."""
    window, record = open_window()
    desk_of(record).load_demo()
    house = desk_of(record).house()
    window.close()
    if copied:
        back_up(folder, NOON)
    return house


def labels(window: MainWindow) -> list[str]:
    return [button.text() for button in window.waiting().buttons()]


def said(window: MainWindow) -> str:
    page = window.page(window.current_screen())
    assert isinstance(page, Page)
    return page.toast.sentence()


def test_a_first_start_makes_a_record_and_shows_the_first_run(open_window: Open, folder: DataFolder) -> None:
    window, _ = open_window()
    assert folder.database.exists()
    page = window.page(ScreenName.HOUSEHOLD)
    assert isinstance(page, HouseholdScreen)
    assert page.is_first_run()


def test_a_damaged_record_stays_and_its_newest_whole_copy_is_offered(open_window: Open, folder: DataFolder) -> None:
    house = filled(open_window, folder, copied=True)
    damaged = b"\xff\xd8\xff\xe0 a picture, renamed"
    folder.database.write_bytes(damaged)
    window, record = open_window()
    assert record.desk() is None
    assert "is damaged" in window.waiting().sentence()
    assert folder.database.read_bytes() == damaged
    assert labels(window) == ["Go back to 4 May 2026, 13:00", "Set it aside and start empty", "Show the folder"]
    hand.click(window.waiting().buttons()[0])
    settle()
    assert desk_of(record).house() == house
    kept = list(folder.folder.glob("set-aside-*"))
    assert [file.read_bytes() for file in kept] == [damaged]
    assert said(window) == f"This is 4 May 2026, 13:00 again. The file before is kept as {kept[0].name}."


def test_without_a_copy_a_damaged_record_can_be_set_aside(open_window: Open, folder: DataFolder) -> None:
    filled(open_window, folder, copied=False)
    folder.database.write_bytes(b"")
    window, record = open_window()
    assert labels(window) == ["Set it aside and start empty", "Show the folder"]
    hand.click(window.waiting().buttons()[0])
    settle()
    assert desk_of(record).house().things == ()
    assert [file.read_bytes() for file in folder.folder.glob("set-aside-*")] == [b""]


def test_a_damaged_copy_is_passed_over(open_window: Open, folder: DataFolder) -> None:
    filled(open_window, folder, copied=True)
    copy = backups(folder)[0].path
    copy.write_bytes(copy.read_bytes()[:4096])
    folder.database.write_bytes(b"nothing of ours")
    window, _ = open_window()
    assert labels(window)[0] == "Set it aside and start empty"


def test_a_newer_record_is_left_alone_and_tried_again(open_window: Open, folder: DataFolder) -> None:
    house = filled(open_window, folder, copied=False)
    with closing(sqlite3.connect(folder.database)) as connection:
        connection.execute("PRAGMA user_version = 999")
    digest = digest_of(folder.database)
    window, record = open_window()
    assert "newer Fillmark" in window.waiting().sentence()
    assert labels(window) == ["Try again", "Show the folder"]
    hand.click(window.waiting().buttons()[0])
    assert digest_of(folder.database) == digest
    with closing(sqlite3.connect(folder.database)) as connection:
        connection.execute("PRAGMA user_version = 1")
    hand.click(window.waiting().buttons()[0])
    assert desk_of(record).house() == house


def test_a_folder_in_use_is_one_sentence(open_window: Open, capsys: pytest.CaptureFixture[str]) -> None:
    open_window()
    second, record = open_window()
    assert record.desk() is None
    assert "already open" in second.waiting().sentence()
    assert "already open" in capsys.readouterr().err


def test_settings_go_back_to_a_copy_and_forth_again(open_window: Open, folder: DataFolder, qtbot: QtBot) -> None:
    house = filled(open_window, folder, copied=True)
    window, record = open_window()
    desk = desk_of(record)
    assert desk.do(RemoveThing(house.things[0].id))
    assert desk.do(ChangeThing(replace(house.things[1], name="Other")))
    without = desk.house()
    window.show_screen(ScreenName.SETTINGS)
    page = window.page(ScreenName.SETTINGS)
    assert isinstance(page, SettingsPage)
    with qtbot.waitSignal(desk.destroyed):
        hand.click(page.back)
    assert desk_of(record).house() == house
    assert window.current_screen() is ScreenName.SETTINGS
    again = window.page(ScreenName.SETTINGS)
    assert isinstance(again, SettingsPage)
    assert again is not page
    made_before_going_back = backups(folder)[0]
    record.go_back(made_before_going_back)
    assert desk_of(record).house() == without


def test_a_copy_is_made_while_the_window_is_open(open_window: Open, folder: DataFolder, qtbot: QtBot) -> None:
    window, record = open_window()
    window.show_screen(ScreenName.SETTINGS)
    page = window.page(ScreenName.SETTINGS)
    assert isinstance(page, SettingsPage)
    assert page.back.isHidden()
    with qtbot.waitSignal(record.copies().copied):
        record.copies().copy()
    assert len(backups(folder)) == 1
    assert not page.back.isHidden()
    assert page.copies.box.currentText().startswith("4 May 2026, 13:")


def test_a_copy_that_cannot_be_made_is_one_sentence(open_window: Open, folder: DataFolder, qtbot: QtBot) -> None:
    window, record = open_window()
    folder.backups.write_bytes(b"a file where the folder should be")
    with qtbot.waitSignal(record.copies().failed):
        record.copies().copy()
    assert said(window).startswith("No backup could be made in ")
