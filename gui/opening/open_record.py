"""The record of one data folder in a window: opened, or what is in the way and the ways out; copied; gone back to."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices

from core.errors import FillmarkError
from core.knowledge import Catalog
from core.store.backup import Backup, back_up, newest_whole, restore, set_aside
from core.store.faults import Damaged, InUse
from core.store.paths import DataFolder
from core.store.record import Record
from gui.desk.desk import Desk
from gui.opening.backing_up import BackingUp
from gui.opening.demo import demo_house
from gui.opening.first_window import FirstWindow, hand_over
from gui.opening.furnishing import Furnishing
from gui.opening.rooms import when
from gui.shell import MainWindow, WayOut
from gui.theme import ThemeMode

Clock = Callable[[], datetime.datetime]


class OpenRecord(QObject):
    """Stands between the folder and the window; closes the record with the window."""

    def __init__(
        self,
        folder: DataFolder,
        catalog: Catalog,
        window: MainWindow,
        *,
        clock: Clock,
        dress: Callable[[ThemeMode], None],
    ) -> None:
        super().__init__(window)
        self._folder = folder
        self._catalog = catalog
        self._window = window
        self._clock = clock
        self._dress = dress
        self._desk: Desk | None = None
        self._parts: tuple[FirstWindow, BackingUp] | None = None
        window.closed.connect(self.close)

    def desk(self) -> Desk | None:
        """The desk on the open record."""
        return self._desk

    def copies(self) -> BackingUp:
        """What copies the open record."""
        if self._parts is None:
            raise LookupError("no record is open")
        return self._parts[1]

    def open(self, told: str = "") -> None:
        """Open the record and furnish the window, then say `told`; or show what is in the way."""
        try:
            record = Record.open(self._folder, self._clock)
        except InUse as error:
            hand_over(self._window, error)
            return
        except FillmarkError as error:
            self._window.show_trouble(str(error), self._ways_out(error))
            return
        desk = Desk(record, self._catalog, partial(demo_house, self._catalog), self)
        first, copies = FirstWindow(self._folder.socket_name, desk), BackingUp(self._folder, self._clock, desk)
        first.called.connect(self._window.come_to_front)
        copies.failed.connect(desk.refused)
        self._desk, self._parts = desk, (first, copies)
        rooms = Furnishing(desk, self._window, self._dress).rooms
        rooms.going_back_wanted.connect(self.go_back)
        copies.copied.connect(rooms.show_copies)
        if told:
            desk.said.emit(told, False)

    def go_back(self, backup: Backup) -> None:
        """Open an earlier copy; what is there now is copied first, so that one can go back to it too."""
        try:
            back_up(self._folder, self._clock())
        except FillmarkError as error:
            if self._desk is not None:
                self._desk.refused.emit(str(error))
            return
        self._leave()
        self._restore(backup)

    def close(self) -> None:
        """Close the record and everything around it."""
        if self._parts is not None:
            for part in self._parts:
                part.close()
            self._parts = None
        if self._desk is not None:
            self._desk.close()

    def _leave(self) -> None:
        """Close the record and let its screens go."""
        self.close()
        self._window.unfurnish()
        if self._desk is not None:
            self._desk.deleteLater()
            self._desk = None

    def _ways_out(self, error: FillmarkError) -> tuple[WayOut, ...]:
        folder = WayOut(label="Show the folder", what=f"{self._folder.folder}", deed=self._show_folder)
        if not isinstance(error, Damaged):
            return (WayOut(label="Try again", what="When that is put right.", deed=self._again), folder)
        aside = WayOut(label="Set it aside and start empty", what="The file stays in its folder.", deed=self._set_aside)
        backup = newest_whole(self._folder)
        if backup is None:
            return (aside, folder)
        back = WayOut(
            label=f"Go back to {when(backup.made)}",
            what="The newest copy that is whole. The damaged file stays in its folder.",
            deed=partial(self._restore, backup),
        )
        return (back, aside, folder)

    def _restore(self, backup: Backup) -> None:
        self._after(partial(restore, self._folder, backup), f"This is {when(backup.made)} again.")

    def _set_aside(self) -> None:
        self._after(partial(set_aside, self._folder), "This is an empty record.")

    def _after(self, work: Callable[[datetime.datetime], Path | None], told: str) -> None:
        """Open the record again after `work` on its file; the present file was kept beside it."""
        try:
            aside = work(self._clock())
        except FillmarkError as error:
            self.open(str(error))
            return
        self.open(told if aside is None else f"{told} The file before is kept as {aside.name}.")

    def _again(self) -> None:
        self.open()

    def _show_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._folder.folder)))
