"""Dated, checked copies of the record while the window is open: soon after the start, then every hour of changes."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject, QTimer, Signal

from core.errors import FillmarkError
from core.store.backup import Backup, back_up
from core.store.paths import DataFolder
from gui.worker import Errand, Report

FIRST_MS = 5_000
"""The first copy waits until the first screen has been made."""
EVERY_MS = 60 * 60 * 1000


class BackingUp(QObject):
    """`copied` (a `Backup`) after each copy, `failed` (one sentence) when none could be made."""

    copied = Signal(object)
    failed = Signal(str)

    def __init__(self, folder: DataFolder, clock: Callable[[], datetime.datetime], parent: QObject) -> None:
        super().__init__(parent)
        self._folder = folder
        self._clock = clock
        self._errand = Errand(self)
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.copy)
        self._timer.start(FIRST_MS)

    def copy(self) -> None:
        """Make a copy off the GUI thread; when nothing has changed since the last one, that one is the answer."""
        self._timer.start(EVERY_MS)
        self._errand.start(partial(_copy, self._folder, self._clock()), done=self.copied.emit, failed=self._fail)

    def close(self) -> None:
        """Make no more; waits for one that is being made."""
        self._timer.stop()
        self._errand.close()

    def _fail(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.failed.emit(str(error))


def _copy(folder: DataFolder, now: datetime.datetime, report: Report) -> Backup:
    """Runs in the worker."""
    report(0, 1)
    return back_up(folder, now)
