"""The strip that shows which movement patterns a house can train."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Family, Space, TextRole
from gui.widgets.meter import MeterBar
from gui.widgets.text import Ink, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternMark:
    """One pattern: its name, how many movements there are in words, and how well it is covered (0 to 1)."""

    name: str
    count_text: str
    share: float
    family: Family


class PatternBar(QWidget):
    """Equal columns, one per pattern: bar, count, name; a pattern without movements keeps its place, unfilled."""

    def __init__(self, marks: tuple[PatternMark, ...] = (), *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._cells: list[_Cell] = []
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(Space.S + 2)
        self.setAccessibleName("Movement patterns")
        self.show_marks(marks)

    def show_marks(self, marks: tuple[PatternMark, ...]) -> None:
        """Paint another house."""
        while len(self._cells) < len(marks):
            cell = _Cell(self)
            self._row.addWidget(cell, 1, Qt.AlignmentFlag.AlignTop)
            self._cells.append(cell)
        for at, cell in enumerate(self._cells):
            cell.setVisible(at < len(marks))
        for cell, mark in zip(self._cells, marks, strict=False):
            cell.show_mark(mark)


class _Cell(QWidget):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XXS)
        self._bar = MeterBar(thickness=6, parent=self)
        self._count = Text("", TextRole.STRONG, parent=self)
        self._name = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        column.addWidget(self._bar)
        column.addSpacing(Space.XXS)
        column.addWidget(self._count)
        column.addWidget(self._name)

    def show_mark(self, mark: PatternMark) -> None:
        self._bar.show_family(mark.family)
        self._bar.show_share(mark.share, name=mark.name, value_text=mark.count_text)
        self._name.setText(mark.name)
        self._count.setText(mark.count_text)
        self._count.set_ink(Ink.PLAIN if mark.share > 0 else Ink.SOFT)
