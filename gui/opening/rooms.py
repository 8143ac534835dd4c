"""The screens of the window, each made at its first visit and wired to the desk."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace
from typing import Protocol, cast

from PySide6.QtCore import QObject, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget

from core.store.backup import Backup, backups
from core.store.commands import ChangeSettings
from core.store.paths import DataFolder
from core.store.values import Theme as ThemeChoice
from core.store.values import Units
from gui.desk.desk import Desk, Jump
from gui.shell import MainWindow, ScreenName
from gui.shell.settings_page import SettingsPage, SettingsView, UnitChoice
from gui.theme import ThemeMode
from gui.widgets.page import Page

THEMES = {ThemeChoice.SYSTEM: ThemeMode.AUTO, ThemeChoice.LIGHT: ThemeMode.LIGHT, ThemeChoice.DARK: ThemeMode.DARK}


class Room(Protocol):
    """What a screen can do beyond being a page: go to a thing, a movement or a day."""

    def show_jump(self, jump: Jump) -> None:
        """Show what the jump names."""


class Rooms(QObject):
    """Makes the screens; puts what the desk says on the screen that is shown; carries jumps out.

    `going_back_wanted` (a `Backup`) when somebody wants an earlier copy of everything.
    """

    going_back_wanted = Signal(object)

    def __init__(self, desk: Desk, window: MainWindow) -> None:
        super().__init__(desk)
        self._desk = desk
        self._window = window
        self._copies: tuple[Backup, ...] = ()
        desk.said.connect(self._say)
        desk.refused.connect(self._refuse)

    def makers(self) -> dict[ScreenName, Callable[[], QWidget]]:
        """How to make each screen; the screens' modules load at their first visit."""
        return {
            ScreenName.HOUSEHOLD: self._household,
            ScreenName.FILL: self._fill,
            ScreenName.SWAP: self._swap,
            ScreenName.WEEK: self._week,
            ScreenName.SETTINGS: self._settings,
            ScreenName.OWN: self._own,
        }

    def go(self, jump: Jump) -> None:
        """Show a screen and what the jump names on it."""
        self._window.show_screen(jump.screen)
        page = self._window.page(jump.screen)
        if page is not None and hasattr(page, "show_jump"):
            cast("Room", page).show_jump(jump)

    def _household(self) -> QWidget:
        from gui.household import HouseholdScreen

        return self._wired(HouseholdScreen(self._desk))

    def _fill(self) -> QWidget:
        from gui.fill import FillScreen

        return self._wired(FillScreen(self._desk))

    def _swap(self) -> QWidget:
        from gui.swap import SwapScreen

        screen = SwapScreen(self._desk)
        self._window.closed.connect(screen.close_work)
        return self._wired(screen)

    def _week(self) -> QWidget:
        from gui.week import WeekScreen

        screen = WeekScreen(self._desk)
        self._window.closed.connect(screen.close_work)
        return self._wired(screen)

    def _own(self) -> QWidget:
        from gui.own import OwnScreen

        screen = OwnScreen(self._desk)
        self._window.closed.connect(screen.close_work)
        return self._wired(screen)

    def _settings(self) -> QWidget:
        page = SettingsPage(self._settings_view())
        page.units_chosen.connect(self._choose_units)
        page.theme_chosen.connect(self._choose_theme)
        page.folder_wanted.connect(self._open_folder)
        page.copy_wanted.connect(self._go_back)
        self._desk.changed.connect(self._show_settings)
        return self._wired(page)

    def _wired(self, page: Page) -> Page:
        page.toast.undo_wanted.connect(self._desk.undo)
        return page

    def show_copies(self) -> None:
        """Another copy was made: one can go back to it too."""
        self._show_settings(None)

    def _settings_view(self) -> SettingsView:
        settings = self._desk.settings()
        self._copies = backups(DataFolder(self._desk.record.path.parent))
        return SettingsView(
            units=UnitChoice(settings.units.value),
            theme=THEMES[settings.theme],
            data_folder=str(self._desk.record.path.parent),
            copies=tuple(when(copy.made) for copy in self._copies),
        )

    def _go_back(self, at: int) -> None:
        self.going_back_wanted.emit(self._copies[at])

    def _show_settings(self, _change: object) -> None:
        page = self._window.page(ScreenName.SETTINGS)
        if isinstance(page, SettingsPage):
            page.show_settings(self._settings_view())

    def _choose_units(self, units: UnitChoice) -> None:
        self._desk.do(ChangeSettings(replace(self._desk.settings(), units=Units(units.value))))

    def _choose_theme(self, mode: ThemeMode) -> None:
        theme = next(choice for choice, shown in THEMES.items() if shown is mode)
        self._desk.do(ChangeSettings(replace(self._desk.settings(), theme=theme)))

    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._desk.record.path.parent)))

    def _say(self, sentence: str, undoable: bool) -> None:
        page = self._shown()
        if page is not None:
            page.toast.say(sentence, undo=undoable)

    def _refuse(self, sentence: str) -> None:
        page = self._shown()
        if page is not None:
            page.toast.say(sentence)

    def _shown(self) -> Page | None:
        page = self._window.page(self._window.current_screen())
        return page if isinstance(page, Page) else None


def when(made: datetime.datetime) -> str:
    """“4 May 2026, 12:05”, on the clock of this place."""
    local = made.astimezone()
    return f"{local.day} {local:%B %Y, %H:%M}"
