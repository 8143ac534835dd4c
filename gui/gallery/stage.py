"""A real desk over a temporary record, for pictures of whole screens; it goes when the screen goes."""

from __future__ import annotations

import datetime
import tempfile
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from catalog.load import load_catalog
from core.store.paths import DataFolder
from core.store.record import Record
from gui.desk.desk import Desk
from gui.opening.demo import demo_house

LONG_NAME = "the one with the dented corner that stands beside the stove in winter"
NOON = datetime.datetime(2026, 5, 4, 12, 0, tzinfo=datetime.UTC)


class Stage(QObject):
    """`desk` is empty, or holds the invented household; `bear` ties it to the screen that stands on it."""

    def __init__(self, *, demo: bool) -> None:
        super().__init__()
        self._folder = tempfile.TemporaryDirectory(prefix="fillmark-stage-")
        catalog = load_catalog()
        record = Record.open(DataFolder(Path(self._folder.name)), lambda: NOON)
        self.desk = Desk(record, catalog, lambda: demo_house(catalog), self)
        if demo:
            self.desk.load_demo()

    def bear(self, screen: QWidget) -> QWidget:
        """End with `screen`."""
        self.setParent(screen)
        screen.destroyed.connect(self.strike)
        return screen

    def strike(self) -> None:
        """Close the record and remove it."""
        self.desk.close()
        self._folder.cleanup()
