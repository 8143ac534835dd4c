"""Opening: paint first, then load off the GUI thread, then furnish; trouble is one sentence."""

from __future__ import annotations

import subprocess
import sys
import threading
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from gui.app import Opener, Opening, make_app
from gui.shell import Deeds, MainWindow, ScreenName
from gui.theme import Theme
from gui.worker import Report
from tests.gui.looking import settle

ROOT = Path(__file__).parents[2]

HEAVY = ("ortools", "pandas", "numpy", "scipy", "alembic", "sqlalchemy", "pydantic", "pint", "icalendar", "rapidfuzz")

FIRST_PAINT = """
import sys
from PySide6.QtCore import QTimer
from gui.app import make_app
from gui.shell.window import MainWindow

app, theme = make_app(["fillmark"])
window = MainWindow()
window.painted.connect(app.quit)
window.show()
QTimer.singleShot(20_000, app.quit)
app.exec()
print(" ".join(sorted({name.partition(".")[0] for name in sys.modules})))
"""


def nothing() -> None:
    """No deed."""


def furnish(window: MainWindow, theme: Theme, loaded: str) -> None:
    window.furnish({ScreenName.HOUSEHOLD: lambda: QLabel(loaded)}, Deeds(undo=nothing, redo=nothing))


def explain(error: Exception) -> str:
    return f"It can’t be opened: {error}."


def open_with(opening: Opening[str], theme: Theme, qtbot: QtBot) -> MainWindow:
    window = MainWindow()
    qtbot.addWidget(window)
    Opener(window, theme, opening)
    window.show()
    return window


def test_nothing_heavy_is_imported_before_the_first_paint() -> None:
    done = subprocess.run([sys.executable, "-c", FIRST_PAINT], cwd=ROOT, capture_output=True, text=True, check=True)
    imported = set(done.stdout.split())
    assert "PySide6" in imported
    assert not imported & set(HEAVY)


def test_loading_starts_after_the_first_paint_and_off_the_gui_thread(theme: Theme, qtbot: QtBot) -> None:
    threads: list[int] = []

    def load(_report: Report) -> str:
        threads.append(threading.get_ident())
        return "what you own"

    window = open_with(Opening(load=load, furnish=furnish, explain=explain), theme, qtbot)
    assert threads == []
    qtbot.waitUntil(lambda: window.page(ScreenName.HOUSEHOLD) is not None)
    assert threads
    assert threads[0] != threading.get_ident()
    page = window.page(ScreenName.HOUSEHOLD)
    assert isinstance(page, QLabel)
    assert page.text() == "what you own"
    window.close()


def test_a_failure_to_load_is_explained_in_the_window(theme: Theme, qtbot: QtBot) -> None:
    def load(_report: Report) -> str:
        raise OSError("the disk is full")

    window = open_with(Opening(load=load, furnish=furnish, explain=explain), theme, qtbot)
    said = "It can’t be opened: the disk is full."
    qtbot.waitUntil(lambda: any(label.text() == said for label in window.findChildren(QLabel)))
    window.close()


def test_closing_while_it_loads_waits_for_the_work_to_stop(theme: Theme, qtbot: QtBot) -> None:
    begun = threading.Event()

    def load(report: Report) -> str:
        begun.set()
        while report(0, 1):
            threading.Event().wait(0.005)
        return "too late"

    window = open_with(Opening(load=load, furnish=furnish, explain=explain), theme, qtbot)
    qtbot.waitUntil(begun.is_set)
    window.close()
    settle()
    assert window.page(ScreenName.HOUSEHOLD) is None


@pytest.mark.usefixtures("theme")
def test_making_the_application_again_dresses_the_same_one(qapp: QApplication) -> None:
    app, theme = make_app(["fillmark"])
    assert app is qapp
    assert app.applicationDisplayName() == "Fillmark"
    theme.deleteLater()
