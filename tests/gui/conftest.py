"""Qt without a screen, one dressed application for all tests, and nothing left running after any of them."""

from __future__ import annotations

import datetime
import os
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from catalog.load import load_catalog
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.store.commands import LoadHouse
from core.store.paths import DataFolder
from core.store.record import Record
from gui.desk.desk import Desk
from gui.theme import Theme, ThemeMode
from tests.dipper import dipper

NOON = datetime.datetime(2026, 5, 4, 12, 0, tzinfo=datetime.UTC)

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The screenless platform warns that it cannot raise windows, grab keys or pass size hints; only that is quiet."""
    for item in items:
        if "/gui/" in item.nodeid:
            item.add_marker(pytest.mark.qt_log_ignore("^This plugin does not support ", extend=True))


@pytest.fixture(scope="session")
def _dressed(qapp: QApplication) -> Theme:
    return Theme(qapp, ThemeMode.LIGHT)


@pytest.fixture
def theme(_dressed: Theme) -> Iterator[Theme]:
    """The application's theme, light before and after each test."""
    yield _dressed
    _dressed.set_mode(ThemeMode.LIGHT)


@pytest.fixture(autouse=True)
def _nothing_left_running(theme: Theme) -> Iterator[None]:
    before = set(threading.enumerate())
    yield
    left = [thread.name for thread in threading.enumerate() if thread not in before]
    assert not left, f"threads left running: {left}"


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    """The shipped catalog."""
    return load_catalog()


@pytest.fixture
def empty_desk(data_dir: Path, catalog: Catalog) -> Iterator[Desk]:
    """A real desk over a record in a temporary folder with nothing in it; its clock stands at noon."""
    holder = QObject()
    record = Record.open(DataFolder(data_dir), lambda: NOON)
    desk = Desk(record, catalog, lambda: LoadHouse(dipper(), wishes=(("ines", WeekWishes()),)), holder)
    yield desk
    desk.close()


@pytest.fixture
def desk(empty_desk: Desk) -> Desk:
    """The same with the small hand-made household of `tests.dipper` in it; Ines trains."""
    assert empty_desk.load_demo()
    return empty_desk
