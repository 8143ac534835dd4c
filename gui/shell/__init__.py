"""The window around the screens: sidebar, lazily made pages, keys, settings."""

from gui.shell.entry import ENTRIES, Makers, ScreenEntry, ScreenName
from gui.shell.sidebar import PersonView
from gui.shell.waiting import WayOut
from gui.shell.window import Deeds, MainWindow

__all__ = ["ENTRIES", "Deeds", "MainWindow", "Makers", "PersonView", "ScreenEntry", "ScreenName", "WayOut"]
