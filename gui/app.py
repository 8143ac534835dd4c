"""Opening the window: paint first, load afterwards, close cleanly.

Before the first paint only Qt's widgets, the theme and the shell are imported. `Opening.load` then runs off the GUI
thread, may import whatever it needs, and `Opening.furnish` hands its result to the window on the GUI thread.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from gui.shell.window import MainWindow
from gui.theme import Icon, Theme, ThemeMode, icon
from gui.worker import Errand, Report

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening(Generic[T]):
    """What the window is opened with.

    `load` makes everything the screens need, off the GUI thread, and makes no Qt object; `furnish` wires it to the
    window; `explain` turns what `load` raised into one sentence, or raises it again when it is a bug of ours.
    """

    load: Callable[[Report], T]
    furnish: Callable[[MainWindow, Theme, T], None]
    explain: Callable[[Exception], str]


def make_app(words: Sequence[str], mode: ThemeMode = ThemeMode.AUTO) -> tuple[QApplication, Theme]:
    """The application in its theme; an application that is already there is dressed again."""
    there = QApplication.instance()
    app = there if isinstance(there, QApplication) else QApplication(list(words))
    app.setApplicationName("fillmark")
    app.setApplicationDisplayName("Fillmark")
    theme = Theme(app, mode)
    app.setWindowIcon(icon(Icon.MARK, 64, theme.tokens.accent, accent=theme.tokens.amber))
    return app, theme


class Opener(QObject, Generic[T]):
    """Loads once the window has painted, then furnishes it."""

    def __init__(self, window: MainWindow, theme: Theme, opening: Opening[T]) -> None:
        super().__init__(window)
        self._window = window
        self._theme = theme
        self._opening = opening
        self._errand = Errand(self)
        window.painted.connect(self._load)
        window.closed.connect(self._errand.close)

    def _load(self) -> None:
        self._errand.start(self._opening.load, done=self._furnish, failed=self._explain)

    def _furnish(self, loaded: T) -> None:
        self._opening.furnish(self._window, self._theme, loaded)

    def _explain(self, error: Exception) -> None:
        self._window.show_trouble(self._opening.explain(error))


def start(words: Sequence[str], opening: Opening[T]) -> int:
    """Open the window and stay until it is closed; the exit code."""
    app, theme = make_app(words or sys.argv)
    window = MainWindow()
    Opener(window, theme, opening)
    window.show()
    return app.exec()
