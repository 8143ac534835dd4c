"""Printing fill strips: makes the pages off the GUI thread, shows them, and writes the file whole or not at all."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from core.errors import FillmarkError
from core.loads.filling import Filling
from core.quantity.display import UnitSystem
from core.things.model import Thing
from gui.desk.desk import Desk
from gui.fill.asked import choices_for, filling_for, first_asked
from gui.fill.strip_page import StripPage
from gui.worker import Errand, Report

if TYPE_CHECKING:
    from core.paper.strip_pages import DrawnStrips

PAPERS = ("A4", "Letter")
MARKS = (UnitSystem.METRIC, UnitSystem.US)
MARK_NAMES = ("kilograms", "pounds")


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """What is printed: the containers as they are filled, the place of the paper in `PAPERS`, the unit of the marks."""

    fillings: tuple[Filling, ...]
    paper: int
    marks: UnitSystem


class StripFlow(QObject):
    """`said` (a sentence) when the strips are saved, or why they are not."""

    said = Signal(str)

    def __init__(self, desk: Desk, page: StripPage, window: QWidget) -> None:
        super().__init__(window)
        self._desk = desk
        self._page = page
        self._window = window
        self._drawing = Errand(self)
        self._writing = Errand(self)
        self._fillings: tuple[Filling, ...] = ()
        self._chosen: frozenset[int] = frozenset()
        self._paper = self._marks = 0
        self._drawn: DrawnStrips | None = None
        page.wanted_changed.connect(self._choose_things)
        page.paper_chosen.connect(self._choose_paper)
        page.marks_chosen.connect(self._choose_marks)
        page.save_wanted.connect(self._save)

    def begin(self, filling: Filling) -> None:
        """The container in hand as it is filled, with all others to choose from, each as it stands in the house."""
        others = (self._filling_of(thing, filling) for thing in self._desk.house().things)
        self._fillings = tuple(one for one in others if one is not None and one.gauge.has_line)
        self._chosen = frozenset(at for at, one in enumerate(self._fillings) if one.thing.id == filling.thing.id)
        self._marks = MARKS.index(self._desk.units())
        self._paper = self._marks
        names = tuple(f"{one.thing.name} · {one.material.name.lower()}" for one in self._fillings)
        self._page.show_choices(names, self._chosen, self._paper, self._marks)
        self._draw()

    def close(self) -> None:
        """Wait until no strip is being made."""
        for errand in (self._drawing, self._writing):
            errand.close()

    def _filling_of(self, thing: Thing, in_hand: Filling) -> Filling | None:
        if thing.id == in_hand.thing.id:
            return in_hand
        if thing.facts.container is None:
            return None
        house, catalog = self._desk.house(), self._desk.catalog
        asked = first_asked(thing, choices_for(thing, house, catalog))
        return None if asked is None else filling_for(thing, asked, house, catalog, self._desk.units())

    def _choose_things(self, chosen: frozenset[int]) -> None:
        if chosen != self._chosen:
            self._chosen = chosen
            self._draw()

    def _choose_paper(self, place: int) -> None:
        self._paper = place
        self._draw()

    def _choose_marks(self, place: int) -> None:
        self._marks = place
        self._draw()

    def _draw(self) -> None:
        fillings = tuple(self._fillings[at] for at in sorted(self._chosen))
        if not fillings:
            self._drawing.stop()
            self._show(None, "Choose a container.")
            return
        order = Order(fillings=fillings, paper=self._paper, marks=MARKS[self._marks])
        self._drawing.start(lambda report: _drawn(order, report), done=self._shown, failed=self._not_drawn)

    def _shown(self, drawn: DrawnStrips) -> None:
        self._show(drawn, "")

    def _not_drawn(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self._show(None, str(error))

    def _show(self, drawn: DrawnStrips | None, fault: str) -> None:
        self._drawn = drawn
        self._page.show_pages(() if drawn is None else drawn.pages, fault)

    def _save(self) -> None:
        drawn = self._drawn
        if drawn is None:
            return
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        proposed = str(Path(folder) / self._file_name())
        chosen, _ = QFileDialog.getSaveFileName(self._window, "Save the fill strips as", proposed, "PDF (*.pdf)")
        if chosen:
            path = Path(chosen)
            self._writing.start(lambda _report: _written(drawn, path), done=self._done, failed=self._failed)

    def _file_name(self) -> str:
        names = [self._fillings[at].thing.name for at in sorted(self._chosen)]
        words = "".join(letter if letter.isalnum() else " " for letter in " ".join(names)).split()
        return f"strip-{'-'.join(words).lower()[:40] or 'container'}.pdf"

    def _done(self, path: Path) -> None:
        self.said.emit(f"The strips are in {path}. Print them at 100 % and measure the bar.")

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.said.emit(str(error))


def _drawn(order: Order, report: Report) -> DrawnStrips:
    """Runs in the worker; the libraries that draw pages load there, at the first strip."""
    from core.paper.lettering import find_lettering
    from core.paper.page import Paper
    from core.paper.strip import strip_of
    from core.paper.strip_pages import drawn_strips

    strips = [strip_of(replace(filling, system=order.marks)) for filling in order.fillings]
    report(1, 2)
    paper = tuple(Paper)[order.paper]
    return drawn_strips(strips, paper=paper, lettering=find_lettering(), system=order.marks)


def _written(drawn: DrawnStrips, path: Path) -> Path:
    """Runs in the worker. The dialog has asked already whether a file that is there may be replaced."""
    from core.paper.whole_file import write_whole

    write_whole(path, drawn.content, replace=True)
    return path
