"""What stands before or in place of a screen: the keys, and why the data can't be opened."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from gui.shell import MainWindow
from gui.shell.keys import KeyHelp
from gui.states import ShownState


def keys(_state: ShownState) -> QWidget:
    """All keys on one card."""
    return KeyHelp()


def in_use(_state: ShownState) -> QWidget:
    """Another window has the data."""
    window = MainWindow()
    window.show_trouble("The data folder is used by another Fillmark window; close that one first.")
    return window
