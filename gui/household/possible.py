"""What the household lets somebody do, worked out off the GUI thread whenever the house or the person changes."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from core.errors import FillmarkError
from core.house.model import House, Person
from core.knowledge import Catalog
from gui.desk.desk import Desk
from gui.household.gap_words import StripView, nobody_view, strip_view, waiting_view
from gui.worker import Errand, Report

if TYPE_CHECKING:
    from core.swap.gaps import Gaps

SOON_MS = 50
"""The screen is painted first, and a few changes in a row are one question."""


def work_out(house: House, person: Person, catalog: Catalog, report: Report) -> Gaps:
    """Runs in the worker, where also what it needs is loaded."""
    from core.swap.gaps import gaps

    report(0, 1)
    return gaps(house, person, catalog)


class Possible(QObject):
    """`told` (a `StripView`): at once that nobody trains or that it is being worked out, then the answer."""

    told = Signal(object)

    def __init__(self, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._errand = Errand(self)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(SOON_MS)
        self._soon.timeout.connect(self._ask)
        self._asked: tuple[House, Person] | None = None
        self._icons = {kind.id: kind.icon for kind in desk.catalog.kinds}
        self._view = nobody_view()

    def view(self) -> StripView:
        """What was told last."""
        return self._view

    def refresh(self) -> None:
        """Ask again when the house or the person has changed; the last answer stands until the new one is there."""
        person = self._desk.person()
        if person is None:
            self._asked = None
            self._soon.stop()
            self._errand.stop()
            self._tell(nobody_view())
            return
        asked = (self._desk.house(), person)
        if asked == self._asked:
            return
        if self._asked is None:
            self._tell(waiting_view())
        self._asked = asked
        self._soon.start()

    def is_busy(self) -> bool:
        """Whether an answer is still awaited."""
        return self._soon.isActive() or self._errand.is_busy()

    def close(self) -> None:
        """Wait until no thread is left."""
        self._soon.stop()
        self._errand.close()

    def _ask(self) -> None:
        if self._asked is not None:
            work = partial(work_out, *self._asked, self._desk.catalog)
            self._errand.start(work, done=self._answer, failed=self._fail)

    def _answer(self, found: Gaps) -> None:
        self._tell(strip_view(found, self._icons))

    def _fail(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self._desk.refused.emit(str(error))

    def _tell(self, view: StripView) -> None:
        self._view = view
        self.told.emit(view)
