"""Why the week trains some patterns not at all; looked into off the GUI thread, as every load of the house counts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QObject, Signal

from core.exercise.model import Family
from core.fit.setting import Setting
from core.house.model import House, Person
from core.house.wishes import WeekWishes
from core.knowledge import Catalog
from core.plan.untrained import Untrained, why_untrained
from gui.worker import Errand, Report

Reasons = Mapping[Family, Untrained]


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyOrder:
    """The families without a set, and what the reason depends on: bans, person, house and the places of the week."""

    families: tuple[Family, ...]
    bans: tuple[str, ...]
    person: Person
    house: House
    place_ids: tuple[str, ...]


def look_into(order: WhyOrder, catalog: Catalog, report: Report) -> Reasons:
    """The reason for each family. Runs in the worker."""
    places = [place for place in order.house.places if place.id in order.place_ids]
    settings = [Setting(order.house, order.person, catalog.material_by_id, place) for place in places]
    wishes = WeekWishes(bans=order.bans)
    found: dict[Family, Untrained] = {}
    for done, family in enumerate(order.families):
        if settings and report(done, len(order.families)):
            found[family] = why_untrained(family, wishes, settings, catalog)
    return found


class WhyNone(QObject):
    """`known` (the reasons) once they are; asking again for the same is answered at once."""

    known = Signal(object)

    def __init__(self, catalog: Catalog, parent: QObject) -> None:
        super().__init__(parent)
        self._catalog = catalog
        self._errand = Errand(self)
        self._asked: WhyOrder | None = None
        self._found: Reasons = {}

    def reasons(self, order: WhyOrder) -> Reasons:
        """What is known already; `known` tells the rest."""
        if order == self._asked:
            return self._found
        self._asked, self._found = order, {}
        if order.families:
            self._errand.start(partial(look_into, order, self._catalog), done=self._show, failed=self._fail)
        return self._found

    def close(self) -> None:
        """Wait until nothing is looked into."""
        self._errand.close()

    def _show(self, found: Reasons) -> None:
        self._found = found
        self.known.emit(found)

    def _fail(self, error: Exception) -> None:
        raise error
