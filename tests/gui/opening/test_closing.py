"""Opened and closed again and again, nothing is left: no thread, no timer, no widget, no open file, no record."""

from __future__ import annotations

import gc
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QTimer
from PySide6.QtWidgets import QApplication

from core.knowledge import Catalog
from core.store.paths import DataFolder
from core.store.record import Record
from gui.opening.open_record import OpenRecord
from gui.shell import MainWindow, ScreenName
from gui.theme import Theme
from tests.gui.conftest import NOON
from tests.gui.looking import settle


@pytest.fixture
def open_and_close(data_dir: Path, catalog: Catalog, theme: Theme) -> Callable[[tuple[ScreenName, ...]], None]:
    """Opens a window on the folder, visits these screens, closes it."""

    def once(visited: tuple[ScreenName, ...]) -> None:
        window = MainWindow()
        window.show_screen(visited[0])
        record = OpenRecord(DataFolder(data_dir), catalog, window, clock=lambda: NOON, dress=theme.set_mode)
        record.open()
        desk = record.desk()
        assert desk is not None
        if not desk.house().things:
            desk.load_demo()
        window.show()
        for name in visited:
            window.show_screen(name)
            assert window.page(name) is not None
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    return once


def left() -> tuple[int, int, int, int, int]:
    """Widgets, timers, threads, open files and records there are."""
    settle()
    gc.collect()
    records = sum(1 for thing in gc.get_objects() if type(thing) is Record)
    timers = sum(1 for thing in gc.get_objects() if isinstance(thing, QTimer))
    widgets = len(QApplication.allWidgets())
    return widgets, timers, threading.active_count(), len(list(Path("/proc/self/fd").iterdir())), records


def test_fifty_records_opened_and_closed_leave_nothing(
    open_and_close: Callable[[tuple[ScreenName, ...]], None],
) -> None:
    open_and_close((ScreenName.SETTINGS,))
    before = left()
    for _ in range(50):
        open_and_close((ScreenName.SETTINGS,))
    assert all(now <= then for now, then in zip(left(), before, strict=True)), (before, left())


def test_every_screen_goes_with_its_window(open_and_close: Callable[[tuple[ScreenName, ...]], None]) -> None:
    screens = tuple(ScreenName)
    open_and_close(screens)
    before = left()
    for _ in range(3):
        open_and_close(screens)
    assert all(now <= then for now, then in zip(left(), before, strict=True)), (before, left())
