"""Printing the fill strip: asks where, makes the pages off the GUI thread, and writes the file whole or not at all."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from core.errors import FillmarkError
from core.loads.filling import Filling
from core.quantity.display import UnitSystem
from core.things.model import Thing
from gui.worker import Errand, Report


class StripFlow(QObject):
    """`said` (a sentence) when the strip is there, or why it is not."""

    said = Signal(str)

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._errand = Errand(self)

    def print_strip(self, filling: Filling) -> None:
        """Ask for a file and write the strip of a container, as it is filled, into it."""
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        proposed = str(Path(folder) / _file_name(filling.thing))
        chosen, _ = QFileDialog.getSaveFileName(self._window, "Print the fill strip into", proposed, "PDF (*.pdf)")
        if chosen:
            path = Path(chosen)
            self._errand.start(lambda report: _write(filling, path, report), done=self._done, failed=self._failed)

    def close(self) -> None:
        """Wait until no strip is being made."""
        self._errand.close()

    def _done(self, path: Path) -> None:
        self.said.emit(f"The strip is in {path}. Print it at 100 % and measure its bar.")

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.said.emit(str(error))


def _file_name(thing: Thing) -> str:
    words = "".join(letter if letter.isalnum() else " " for letter in thing.name).split()
    return f"strip-{'-'.join(words).lower()[:40] or 'container'}.pdf"


def _write(filling: Filling, path: Path, report: Report) -> Path:
    """Runs in the worker; the libraries that draw pages load there, at the first strip."""
    from core.paper.lettering import find_lettering
    from core.paper.page import Paper
    from core.paper.strip import strip_of
    from core.paper.strip_pages import strip_pages
    from core.paper.whole_file import write_whole

    paper = Paper.LETTER if filling.system is UnitSystem.US else Paper.A4
    strip = strip_of(filling)
    report(1, 2)
    pages = strip_pages([strip], paper=paper, lettering=find_lettering(), system=filling.system)
    # The dialog has asked already whether a file that is there may be replaced.
    write_whole(path, pages, replace=True)
    return path
