"""The fields above the vessel: which thing, filled with what, how it lies or how warm it is, and how full."""

from __future__ import annotations

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QComboBox, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.widgets import ChoiceField, LineField, LinkButton

COLUMNS = 4
STRETCH = (4, 4, 3, 3)
COLUMNS_FROM, LEAST_WIDTH = 560, 300
"""From this width on all fields stand in one line; below it two by two."""


class Controls(QWidget):
    """`thing_chosen`, `fill_chosen`, `packing_chosen` carry places in the lists, `level_typed` a text.

    `level_entered` and `warmth_entered` come on Enter or when the field is left: then faults are said.
    """

    thing_chosen = Signal(int)
    fill_chosen = Signal(int)
    packing_chosen = Signal(int)
    level_typed = Signal(str)
    level_entered = Signal(str)
    warmth_entered = Signal(str)
    reasons_wanted = Signal()
    pours_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.thing = ChoiceField("Container or load")
        self.fill = ChoiceField("Filled with")
        self.level = LineField("How full", "14 L, 80 %, 18 cm, full")
        self.warmth = LineField("Water is at", "12 °C")
        self.packing = ChoiceField("How it lies")
        self.reasons = LinkButton("Other fills, and why not", TextRole.SMALL)
        self.pours = LinkButton("Teach it by pouring", TextRole.SMALL)
        self._columns = 0
        self._container = True
        for field in (self.thing, self.fill, self.packing):
            narrowable(field.box)
        self._grid = QGridLayout()
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(Space.M)
        self._grid.setVerticalSpacing(Space.S)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XXS)
        column.addLayout(self._grid)
        links = QHBoxLayout()
        links.addSpacing(-Space.XS)  # so that its words stand below the others, not its edge
        links.addWidget(self.reasons)
        links.addWidget(self.pours)
        links.addStretch(1)
        column.addLayout(links)
        self._place(COLUMNS)
        self._connect()

    def show_things(self, names: tuple[str, ...], index: int) -> None:
        """Offer these things."""
        self.thing.show_options(names, index)

    def show_filling(self, fills: tuple[str, ...], fill: int, packings: tuple[str, ...], packing: int) -> None:
        """A container: offer these fills, and these ways to lie (one or none means there is no choice)."""
        self.fill.show_options(fills, fill)
        self.packing.show_options(packings, packing)
        self._show_fields(container=True)
        self.packing.setVisible(len(packings) > 1)

    def show_warmth(self, text: str, *, asked: bool) -> None:
        """The temperature, asked for only where it matters."""
        self.warmth.show_text(text)
        self.warmth.setVisible(asked)

    def show_level(self, text: str) -> None:
        """How full it is, unless somebody is typing there."""
        if not self.level.edit.hasFocus():
            self.level.show_text(text)
            self.level.show_fault("")

    def show_fixed(self) -> None:
        """A thing that is not filled: only the choice of things stays."""
        self._show_fields(container=False)
        for field in (self.packing, self.warmth):
            field.hide()

    def minimumSizeHint(self) -> QSize:
        return QSize(LEAST_WIDTH, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place(COLUMNS if self.width() >= COLUMNS_FROM else 2)

    def _connect(self) -> None:
        self.thing.chosen.connect(self.thing_chosen)
        self.fill.chosen.connect(self.fill_chosen)
        self.packing.chosen.connect(self.packing_chosen)
        self.level.edited.connect(self.level_typed)
        self.level.edit.editingFinished.connect(self._level_left)
        self.warmth.edit.editingFinished.connect(self._warmth_left)
        self.reasons.clicked.connect(self.reasons_wanted)
        self.pours.clicked.connect(self.pours_wanted)

    def _show_fields(self, *, container: bool) -> None:
        self._container = container
        for field in (self.fill, self.level, self.reasons, self.pours):
            field.setVisible(container)
        self._stretch()

    def _place(self, columns: int) -> None:
        if columns == self._columns:
            return
        self._columns = columns
        fields = (self.thing, self.fill, self.level, self.warmth, self.packing)
        for at, field in enumerate(fields):
            place = min(at, 3)  # warmth and packing share a place: never is more than one of them asked for
            self._grid.addWidget(field, place // columns, place % columns)
        self._stretch()

    def _stretch(self) -> None:
        """Equal columns; the one field of a thing that is not filled gets half of the line."""
        shares = STRETCH if self._container and self._columns == COLUMNS else (1, 1)
        for column, share in enumerate((*shares, 0, 0)[:COLUMNS]):
            self._grid.setColumnStretch(column, share)

    def _level_left(self) -> None:
        if self.level.edit.isModified():
            self.level.edit.setModified(False)
            self.level_entered.emit(self.level.text())

    def _warmth_left(self) -> None:
        if self.warmth.edit.isModified():
            self.warmth.edit.setModified(False)
            self.warmth_entered.emit(self.warmth.text())


def narrowable(box: QComboBox) -> None:
    """Long names must not widen the field; the list that opens shows them whole."""
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    box.setMinimumContentsLength(6)
