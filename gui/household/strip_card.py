"""The strip of patterns: worked out off the GUI thread, the biggest gap below it, what would help opens in place."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from core.house.model import House, Person
from core.knowledge import Catalog
from core.swap.gaps import Gaps, gaps
from gui.desk.desk import Desk
from gui.household.gap_words import ADD_PERSON, SHOW_HELP, StripView, nobody_view, strip_view, waiting_view
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, PatternBar, Sentence, Text
from gui.worker import Errand, Report

MOST_HELPERS = 6


def work_out(house: House, person: Person, catalog: Catalog, report: Report) -> Gaps:
    """Runs in the worker."""
    report(0, 1)
    return gaps(house, person, catalog)


class StripCard(Card):
    """`counted` (words for the title bar) when the answer is there; `person_wanted` from its link."""

    counted = Signal(str)
    person_wanted = Signal()

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._desk = desk
        self._errand = Errand(self)
        self._asked: tuple[House, Person] | None = None
        self.bar = PatternBar()
        self.sentence = Sentence()
        self._help = QWidget()
        self._lines = QVBoxLayout(self._help)
        self._lines.setContentsMargins(0, 0, 0, 0)
        self._help.hide()
        for widget in (self.bar, self.sentence, self._help):
            self.body.addWidget(widget)
        self.sentence.link_followed.connect(self._follow)

    def refresh(self) -> None:
        """Ask again when the house or the person has changed."""
        person = self._desk.person()
        if person is None:
            self._asked = None
            self._show(nobody_view())
            return
        asked = (self._desk.house(), person)
        if asked == self._asked:
            return
        if self._asked is None:
            self._show(waiting_view())
        self._asked = asked
        work = partial(work_out, asked[0], person, self._desk.catalog)
        self._errand.start(work, done=self._answer, failed=self._fail)

    def _answer(self, found: Gaps) -> None:
        icons = {kind.id: kind.icon for kind in self._desk.catalog.kinds}
        self._show(strip_view(found, icons))

    def _fail(self, error: Exception) -> None:
        raise error

    def _show(self, view: StripView) -> None:
        self.bar.show_marks(view.marks)
        self.sentence.show_spans(view.sentence)
        while (item := self._lines.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for row in view.helpers[:MOST_HELPERS]:
            self._lines.addWidget(Text(f"{row.name}: {row.detail}", TextRole.SMALL, Ink.SOFT, wrap=True))
        self.counted.emit(view.total)

    def _follow(self, link: str) -> None:
        if link == SHOW_HELP:
            self._help.setVisible(not self._help.isVisible())
        elif link == ADD_PERSON:
            self.person_wanted.emit()
