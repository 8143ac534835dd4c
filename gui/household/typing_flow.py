"""The way of typed things: read, asked about where they are not clear, and only then handed on."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject

from core.errors import InputError
from core.knowledge import Catalog
from core.things.quick_add import ReadThing
from gui.household.add_bar import AddBar, AskList
from gui.household.adding import Ask, beginnings, understand

Keep = Callable[[tuple[ReadThing, ...]], bool]


class TypingFlow(QObject):
    """Between a field and its questions. `keep` gets the readings that are clear; False when it could not save them.

    Nothing typed is lost: what can't be used or saved stays in the field, what is unclear stands as a question.
    """

    def __init__(self, field: AddBar, asks: AskList, catalog: Catalog, keep: Keep, parent: QObject) -> None:
        super().__init__(parent)
        self._keep = keep
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
        if found.sure and not self._keep(found.sure):
            return False
        self._field.clear()
        self._asks.add(found.asks)
        return not self._asks.asks()

    def take_rest(self) -> bool:
        """Read whatever is still in the field; False when something is still open."""
        return self.take(self._field.field.text())

    def _typing(self, text: str) -> None:
        self._asks.show_fault("")
        self._field.show_names(beginnings(text, self._catalog))

    def _answer(self, ask: Ask, index: int) -> None:
        if not self._keep((ask.readings[index],)):
            self._asks.add((ask,))

    def _reword(self, ask: Ask) -> None:
        self._field.give_back(ask.typed)
