"""Started twice on one folder, the second start brings the first window forward; a dead one is in nobody's way."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from core.store.faults import InUse
from core.store.paths import DataFolder, FolderLock
from gui.opening.first_window import FirstWindow, call_first_window, hand_over
from gui.opening.start import load
from gui.shell import MainWindow
from gui.widgets.text import Text

ROOT = Path(__file__).parents[3]
CALL = """
import sys
from gui.opening.first_window import call_first_window
sys.exit(0 if call_first_window(sys.argv[1], 5000) else 1)
"""


def test_a_second_start_calls_the_first_window(data_dir: Path, qtbot: QtBot) -> None:
    name, holder = DataFolder(data_dir).socket_name, QObject()
    first = FirstWindow(name, holder)
    with qtbot.waitSignal(first.called, timeout=20_000):
        second = subprocess.Popen([sys.executable, "-c", CALL, name], cwd=ROOT)
    qtbot.waitUntil(lambda: second.poll() is not None, timeout=20_000)
    first.close()
    assert second.returncode == 0
    assert not call_first_window(name, 50)


def test_a_folder_in_use_is_noticed_before_anything_slow_is_loaded(data_dir: Path) -> None:
    with FolderLock(DataFolder(data_dir)):
        assert isinstance(load(data_dir), InUse)


def test_where_no_window_answers_the_reason_is_shown(
    data_dir: Path, qtbot: QtBot, capsys: pytest.CaptureFixture[str]
) -> None:
    window = MainWindow()
    qtbot.addWidget(window)
    fault = InUse(data_dir, DataFolder(data_dir).socket_name)
    hand_over(window, fault)
    assert capsys.readouterr().err == f"{fault}\n"
    assert str(fault) in {text.text() for text in window.findChildren(Text)}


def test_what_a_killed_window_left_behind_is_taken_over(data_dir: Path) -> None:
    name, holder = DataFolder(data_dir).socket_name, QObject()
    place = Path(tempfile.gettempdir()) / name
    place.touch()  # a socket nobody listens on any more is in the way of its name just so
    taken_over = FirstWindow(name, holder)
    assert place.is_socket()
    taken_over.close()
    assert not place.exists()
