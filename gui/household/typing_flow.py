"""The way of typed things: read, asked about where they are not clear, and only then handed on."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from core.errors import InputError
from core.knowledge import Catalog
from gui.household.add_bar import AddBar, AskList
from gui.household.adding import Ask, beginnings, understand


class TypingFlow(QObject):
    """Between a field and its questions. `understood` carries the readings (a tuple) that are clear now.

    Nothing typed is lost: what can't be used stays in the field, what is unclear stands as a question.
    """

    understood = Signal(object)

    def __init__(self, field: AddBar, asks: AskList, catalog: Catalog, parent: QObject) -> None:
        super().__init__(parent)
        self._field = field
        self._asks = asks
        self._catalog = catalog
        field.typed.connect(self._typing)
        field.wanted.connect(self.take)
        asks.answered.connect(self._answer)
        asks.reworded.connect(self._reword)

    def take(self, text: str) -> bool:
        """Read what stands in the field; False when something of it is still open."""
        if not text.strip():
            return not self._asks.asks()
        try:
            found = understand(text, self._catalog.kinds)
        except InputError as error:
            self._asks.show_fault(str(error))
            return False
        self._asks.show_fault("")
        self._field.clear()
        self._asks.add(found.asks)
        if found.sure:
            self.understood.emit(found.sure)
        return not self._asks.asks()

    def take_rest(self) -> bool:
        """Read whatever is still in the field; False when something is still open."""
        return self.take(self._field.field.text())

    def _typing(self, text: str) -> None:
        self._asks.show_fault("")
        self._field.show_names(beginnings(text, self._catalog))

    def _answer(self, ask: Ask, index: int) -> None:
        self.understood.emit((ask.readings[index],))

    def _reword(self, ask: Ask) -> None:
        self._field.give_back(ask.typed)
