"""A titled group of fields on a card, in two columns; wide fields take both."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from gui.own.field import Field
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, Text


class Section(Card):
    """`fields` in the order they are read."""

    def __init__(self, title: str, note: str, fields: tuple[Field, ...], *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self.title = title
        self.fields = fields
        self.body.addWidget(Text(title, TextRole.HEADING, wrap=True))
        if note:
            self.body.addWidget(Text(note, TextRole.SMALL, Ink.SOFT, wrap=True))
        grid = QGridLayout()
        grid.setHorizontalSpacing(Space.L)
        grid.setVerticalSpacing(Space.M)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        row = column = 0
        for field in fields:
            if field.wide and column:
                row, column = row + 1, 0
            grid.addWidget(field, row, column, 1, 2 if field.wide else 1, Qt.AlignmentFlag.AlignTop)
            row, column = (row + 1, 0) if field.wide or column else (row, 1)
        self.body.addLayout(grid)
