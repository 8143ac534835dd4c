"""Taking a way out: a thing joins the household, another place is asked for, less is spared, another reason counts."""

from __future__ import annotations

from PySide6.QtCore import QObject

from core.exercise.model import Demand
from gui.desk.desk import Desk
from gui.household.adding import adding, one_of_kind, things_of
from gui.swap.ask_panel import AskPanel
from gui.swap.question import place_ids
from gui.swap.ways_card import WaysCard


class WaysFlow(QObject):
    """Carries out what the card's buttons say; the panel then asks again by itself."""

    def __init__(self, desk: Desk, panel: AskPanel, card: WaysCard, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._panel = panel
        card.have.connect(self._have)
        card.look.connect(self._look)
        card.unspare.connect(self._unspare)
        card.drop.connect(self._drop)

    def _have(self, kind_id: str) -> None:
        """The person has one after all."""
        taken = (thing.id for thing in self._desk.house().things)
        self._desk.do(adding(things_of((one_of_kind(self._desk.catalog.kind_by_id[kind_id]),), taken)))

    def _look(self, place_id: str) -> None:
        index = place_ids(self._desk).index(place_id)
        self._panel.place.show_index(index)
        self._panel.place.chosen.emit(index)

    def _unspare(self, demand: str) -> None:
        self._panel.unspare(Demand(demand))

    def _drop(self, _cause: str) -> None:
        self._panel.causes.button(0).click()
