"""Qt without a screen, one dressed application for all tests, and nothing left running after any of them."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from gui.theme import Theme, ThemeMode

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
