"""Patterns or muscles with how much each counts: a row each, the leading one first."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.own.field import Faulted, Table
from gui.theme import Icon, Space, TextRole
from gui.widgets import ChoiceField, LinkButton, PictureButton

SHARES: tuple[tuple[float, str], ...] = (
    (1.0, "leads"),
    (0.7, "much"),
    (0.5, "half"),
    (0.3, "some"),
    (0.2, "a little"),
)


class WeightsOf(Faulted):
    """A table of name and weight (0 to 1); weights that are none of the usual words stand as numbers."""

    def __init__(
        self,
        key: str,
        caption: str,
        names: Mapping[str, str],
        most: int,
        note: str = "",
        *,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__((key,), caption, note, parent=parent)
        self._names = dict(names)
        self._most = most
        self.rows: list[_Row] = []
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Space.XS)
        self.add = LinkButton("Add another", TextRole.SMALL)
        self.add.setAccessibleName(f"Add another: {caption}")
        self.add.clicked.connect(self._add_next)
        self.inner.addLayout(self._lines)
        self.inner.addWidget(self.add)

    def show_table(self, table: Table) -> None:
        weights = table.get(self.keys[0]) or {}
        for row in tuple(self.rows):
            self._drop(row)
        for name, weight in weights.items():
            self._append(name, float(weight))
        self._show_add()
        self.show_fault("")

    def read(self) -> Table:
        return {self.keys[0]: {row.name(): row.weight() for row in self.rows}}

    def _add_next(self) -> None:
        taken = {row.name() for row in self.rows}
        free = next(name for name in self._names if name not in taken)
        self._append(free, 1.0 if not self.rows else 0.5)
        self._show_add()
        self.edited.emit()

    def _append(self, name: str, weight: float) -> None:
        row = _Row(self._names, name, weight)
        row.which.chosen.connect(self.edited)
        row.share.chosen.connect(self.edited)
        row.drop.clicked.connect(partial(self._remove, row))
        self.rows.append(row)
        self._lines.addWidget(row)

    def _remove(self, row: _Row) -> None:
        self._drop(row)
        self._show_add()
        self.edited.emit()

    def _drop(self, row: _Row) -> None:
        self.rows.remove(row)
        self._lines.removeWidget(row)
        row.hide()
        row.deleteLater()

    def _show_add(self) -> None:
        self.add.setVisible(len(self.rows) < self._most)


class _Row(QWidget):
    def __init__(self, names: dict[str, str], name: str, weight: float) -> None:
        super().__init__()
        self._values = list(names)
        self._shares = [share for share, _ in SHARES]
        words = [word for _, word in SHARES]
        if weight not in self._shares:
            self._shares.append(weight)
            words.append(f"{weight:g}")
        self.which = ChoiceField("", tuple(names.values()), name="Which")
        self.which.show_index(self._values.index(name))
        self.share = ChoiceField("", tuple(words), name="How much")
        self.share.show_index(self._shares.index(weight))
        self.drop = PictureButton(Icon.CLOSE, f"Leave out {names[name]}", size=24)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        row.addWidget(self.which, 3)
        row.addWidget(self.share, 2)
        row.addWidget(self.drop)

    def name(self) -> str:
        return self._values[self.which.index()]

    def weight(self) -> float:
        return self._shares[self.share.index()]
