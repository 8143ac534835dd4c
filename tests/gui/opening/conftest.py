"""A window that opens the record of a temporary folder, its clock a minute later at every look."""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from core.knowledge import Catalog
from core.store.paths import DataFolder
from gui.household.possible import Possible
from gui.opening.open_record import OpenRecord
from gui.shell import MainWindow
from gui.theme import Theme
from tests.gui.conftest import NOON

Opened = tuple[MainWindow, OpenRecord]


@pytest.fixture
def folder(data_dir: Path) -> DataFolder:
    """The folder."""
    return DataFolder(data_dir)


@pytest.fixture
def open_window(
    folder: DataFolder, catalog: Catalog, theme: Theme, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Callable[[], Opened]]:
    """Opens another window on the folder; all are closed at the end."""
    monkeypatch.setattr(Possible, "refresh", lambda _possible: None)
    made: list[Opened] = []
    minutes = itertools.count(1)

    def clock() -> datetime.datetime:
        return NOON + datetime.timedelta(minutes=next(minutes))

    def opened() -> Opened:
        window = MainWindow()
        qtbot.addWidget(window)
        record = OpenRecord(
            folder,
            catalog,
            window,
            clock=lambda: NOON + datetime.timedelta(minutes=next(minutes)),
            dress=theme.set_mode,
        )
        record.open()
        window.show()
        made.append((window, record))
        return window, record

    yield opened
    for window, _ in made:
        window.close()
