"""What stands before or in place of a screen: the keys, and why the data can't be opened."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from gui.shell import MainWindow, WayOut
from gui.shell.keys import KeyHelp
from gui.states import ShownState

IN_USE = "Fillmark is already open for /home/ines/.local/share/fillmark; use that window, or close it first."
DAMAGED = (
    "/home/ines/.local/share/fillmark/fillmark.sqlite3 is damaged (its pages do not fit together); "
    "it was left as it is. Go back to a backup, or set it aside."
)


def keys(_state: ShownState) -> QWidget:
    """All keys on one card."""
    return KeyHelp()


def in_use(_state: ShownState) -> QWidget:
    """Another window has the data."""
    window = MainWindow()
    window.show_trouble(IN_USE)
    return window


def damaged(_state: ShownState) -> QWidget:
    """The record can't be trusted, and there is a copy to go back to."""
    window = MainWindow()
    kept = "The newest copy that is whole. The damaged file stays in its folder."
    ways = (
        ("Go back to 4 May 2026, 12:05", kept),
        ("Set it aside and start empty", "The file stays in its folder."),
        ("Show the folder", "/home/ines/.local/share/fillmark"),
    )
    window.show_trouble(DAMAGED, tuple(WayOut(label=label, what=what, deed=_nothing) for label, what in ways))
    return window


def _nothing() -> None:
    """A gallery has nothing to go back to."""
