"""A whole Fillmark in a process of its own, for tests that start it twice or kill it.

`python starting.py FOLDER` opens the window on the folder, types "coal bag 10 kg" into the household, prints “typed”
once that is said to be saved, then “called” whenever a second start asks for the window.
"""

from __future__ import annotations

import sys
from pathlib import Path

from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest

from core.store.faults import InUse
from gui.app import Opener, Opening, make_app
from gui.household import HouseholdScreen
from gui.opening import start
from gui.shell import MainWindow, ScreenName
from gui.theme import Theme


class CalledWindow(MainWindow):
    """Says when it is asked to come to the front."""

    def come_to_front(self) -> None:
        say("called")


def say(word: str) -> None:
    sys.stdout.write(f"{word}\n")
    sys.stdout.flush()


def furnish(window: MainWindow, theme: Theme, loaded: start.Loaded | InUse) -> None:
    start.open_window(window, theme, loaded, demo=True)
    page = window.page(ScreenName.HOUSEHOLD)
    if isinstance(page, HouseholdScreen):
        QTest.keyClicks(page.add.field.edit, "coal bag 10 kg")
        QTest.keyClick(page.add.field.edit, Qt.Key.Key_Return)
        say("typed")


def main(folder: Path) -> int:
    app, theme = make_app(["fillmark"])
    window = CalledWindow()
    opening = Opening(load=lambda _report: start.load(folder), furnish=furnish, explain=start.explain)
    opener = Opener(window, theme, opening)
    window.show()
    QTimer.singleShot(60_000, app.quit)
    code = app.exec()
    opener.deleteLater()
    return code


if __name__ == "__main__":
    raise SystemExit(main(Path(sys.argv[1])))
