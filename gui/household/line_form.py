"""A few captioned lines to type in, each told as soon as it is left or confirmed, each with its own fault below it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from core.errors import InputError
from gui.theme import Space
from gui.widgets import LineField

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line: its key, caption, what stands in it, an example, and whether it takes the whole width."""

    key: StrEnum
    caption: str
    text: str = ""
    example: str = ""
    wide: bool = False


class TypedField(LineField):
    """A line that tells `committed` once per change, on Enter or when it is left; an unchanged text is never told."""

    committed = Signal(str)

    def __init__(self, caption: str, example: str = "", *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(caption, example, name=name, parent=parent)
        self._kept: str | None = ""
        self._stored = ""
        self.edit.editingFinished.connect(self._finish)

    def show_value(self, text: str) -> None:
        """Write what is kept; a fault about something else goes."""
        self._kept = self._stored = text
        self.show_text(text)
        self.show_fault("")

    def show_again(self, text: str) -> None:
        """Write what is kept, unless it is what was kept before: then what is being typed or is wrong stays."""
        if text != self._stored:
            self.show_value(text)

    def take_back(self) -> None:
        """It could not be kept: what is typed stays, and is told again on the next Enter."""
        self._kept = None

    def _finish(self) -> None:
        text = self.edit.text()
        if text != self._kept:
            self._kept = text
            self.committed.emit(text)


class LineForm(QWidget):
    """Lines in two columns. `edited` (key, text) once per change of a line."""

    edited = Signal(object, str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fields: dict[StrEnum, TypedField] = {}
        self._captions: tuple[tuple[StrEnum, str], ...] = ()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(Space.M)
        self._grid.setVerticalSpacing(Space.S)
        for column in (0, 1):
            self._grid.setColumnStretch(column, 1)

    def show_lines(self, lines: tuple[Line, ...]) -> None:
        """Paint other lines; fields stay the same while their keys and captions do, so that the cursor stays put."""
        captions = tuple((line.key, line.caption) for line in lines)
        if captions != self._captions:
            self._rebuild(lines)
            self._captions = captions
        for line in lines:
            self._fields[line.key].show_value(line.text)

    def show_lines_again(self, lines: tuple[Line, ...]) -> None:
        """Paint the same lines after a change: a line that did not change keeps what is typed in it."""
        if tuple((line.key, line.caption) for line in lines) != self._captions:
            self.show_lines(lines)
        for line in lines:
            self._fields[line.key].show_again(line.text)

    def field(self, key: StrEnum) -> TypedField:
        """The field of a line."""
        return self._fields[key]

    def has(self, key: StrEnum) -> bool:
        """Whether there is such a line."""
        return key in self._fields

    def text(self, key: StrEnum) -> str:
        """What stands in a line."""
        return self._fields[key].text()

    def show_fault(self, key: StrEnum, sentence: str) -> None:
        """Say below a line what is wrong with it."""
        self._fields[key].show_fault(sentence)

    def read(self, key: StrEnum, reader: Callable[[str], T]) -> T | None:
        """What `reader` makes of a line; None after the line has said why it can't be used."""
        try:
            found = reader(self.text(key))
        except InputError as error:
            self.show_fault(key, str(error))
            return None
        self.show_fault(key, "")
        return found

    def _rebuild(self, lines: tuple[Line, ...]) -> None:
        for field in self._fields.values():
            self._grid.removeWidget(field)
            field.hide()
            field.deleteLater()
        self._fields = {}
        row = column = 0
        for line in lines:
            if line.wide and column:
                row, column = row + 1, 0
            field = TypedField(line.caption, line.example)
            field.setProperty("line", line.key.value)
            field.committed.connect(self._tell)
            self._fields[line.key] = field
            self._grid.addWidget(field, row, column, 1, 2 if line.wide else 1, Qt.AlignmentFlag.AlignTop)
            row, column = (row + 1, 0) if line.wide or column else (row, 1)

    def _tell(self, text: str) -> None:
        sender = self.sender()
        key = next(key for key, field in self._fields.items() if field is sender)
        self.edited.emit(key, text)
