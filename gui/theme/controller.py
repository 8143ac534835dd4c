"""Which theme the window wears: the system's, or the one the person chose."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QApplication

from gui.theme.icons import chevron_file, tick_file
from gui.theme.qt_palette import qt_palette
from gui.theme.stylesheet import stylesheet
from gui.theme.tokens import DARK, LIGHT, Tokens
from gui.theme.typography import body_font


class ThemeMode(StrEnum):
    """The person's choice; `AUTO` follows the system."""

    AUTO = "auto"
    LIGHT = "light"
    DARK = "dark"


class Theme(QObject):
    """Dresses one application. Owns no widget; widgets learn of a change through their palette.

    `changed` fires after the new palette and stylesheet are in place.
    """

    changed = Signal()

    def __init__(self, app: QApplication, mode: ThemeMode = ThemeMode.AUTO) -> None:
        super().__init__(app)
        self._app = app
        self._mode = mode
        self._worn: Tokens | None = None
        app.setStyle("Fusion")
        app.setFont(body_font())
        app.styleHints().colorSchemeChanged.connect(self._wear)
        self._wear()

    @property
    def mode(self) -> ThemeMode:
        """What the person chose."""
        return self._mode

    @property
    def tokens(self) -> Tokens:
        """The colours in use now."""
        return self._worn if self._worn is not None else LIGHT

    def set_mode(self, mode: ThemeMode) -> None:
        """Switch at once; `AUTO` asks the system again."""
        self._mode = mode
        self._wear()

    def _wanted(self) -> Tokens:
        if self._mode is ThemeMode.AUTO:
            return DARK if self._app.styleHints().colorScheme() is Qt.ColorScheme.Dark else LIGHT
        return DARK if self._mode is ThemeMode.DARK else LIGHT

    def _wear(self) -> None:
        wanted = self._wanted()
        if wanted is self._worn:
            return
        self._worn = wanted
        self._app.setPalette(qt_palette(wanted))
        self._app.setStyleSheet(stylesheet(wanted, chevron_file(dark=wanted.dark), tick_file(dark=wanted.dark)))
        self.changed.emit()
