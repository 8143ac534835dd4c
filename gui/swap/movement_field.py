"""The field a movement is typed into: half a name, any alias, with slips; names that come near are offered below it."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QCompleter, QListView, QWidget

from gui.widgets import SearchField


class MovementField(SearchField):
    """`picked` (a name) from the list; `entered` on Enter when nothing in the list is marked, or on the down arrow."""

    picked = Signal(str)
    entered = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__("squat, pull-up, easy run", name="Movement you would do", parent=parent)
        self._names = QStandardItemModel(self)
        self._list = QCompleter(self._names, self)
        self._list.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        self._list.setCompletionRole(Qt.ItemDataRole.UserRole)
        self._list.setMaxVisibleItems(8)
        self._view = QListView()
        self._list.setPopup(self._view)
        self._list.setWidget(self.edit)
        self._list.activated.connect(self._pick)
        self.submitted.connect(self._enter)

    def show_near(self, near: tuple[tuple[str, str], ...]) -> None:
        """Offer names, each with the alias that answered (empty where the name itself did)."""
        self._names.clear()
        for name, alias in near:
            item = QStandardItem(f"{name} · {alias}" if alias else name)
            item.setData(name, Qt.ItemDataRole.UserRole)
            self._names.appendRow(item)
        if near and self.edit.hasFocus():
            self._list.complete()
        else:
            self.hide_near()

    def hide_near(self) -> None:
        """Take the list away."""
        self._view.hide()

    def popup(self) -> QListView:
        """The list below the field."""
        return self._view

    def offered(self) -> tuple[str, ...]:
        """What the list offers, as a person reads it."""
        return tuple(self._names.item(row).text() for row in range(self._names.rowCount()))

    def _pick(self, text: str) -> None:
        self.picked.emit(text)

    def _enter(self) -> None:
        if not self._marked().isValid():
            self.entered.emit()

    def _marked(self) -> QModelIndex:
        return self._view.currentIndex() if self._view.isVisible() else QModelIndex()
