"""The fields of an own entry: each shows its part of a table and reads it back, with its fault below it.

A table is what stands in a data file: names of fields and plain values. `read` raises `InputError` for a text that
can't be used; what the values mean together is checked elsewhere.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPlainTextEdit, QVBoxLayout, QWidget

from core.errors import InputError
from gui.theme import Space, TextRole
from gui.widgets import ChoiceChip, ChoiceField, FlowLayout, Ink, LineField, Text, announce

Table = dict[str, Any]
LINES_HEIGHT = 84


class Field(QWidget):
    """`edited` whenever the person changed it. `keys` are the fields of the table it stands for."""

    edited = Signal()

    def __init__(self, keys: tuple[str, ...], *, wide: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.keys = keys
        self.wide = wide
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(Space.XS)

    @abstractmethod
    def show_table(self, table: Table) -> None:
        """Paint what stands in the table."""

    @abstractmethod
    def read(self) -> Table:
        """Its part of the table; a field that is left out there has the value None."""

    @abstractmethod
    def show_fault(self, sentence: str) -> None:
        """Say below it what is wrong; an empty sentence takes that away."""

    @abstractmethod
    def fault(self) -> str:
        """The fault shown."""


class Faulted(Field):
    """A field whose parts have no line for a fault of their own."""

    def __init__(self, keys: tuple[str, ...], caption: str, note: str = "", *, parent: QWidget | None = None) -> None:
        super().__init__(keys, wide=True, parent=parent)
        self.caption = caption
        self._fault = Text("", TextRole.SMALL, Ink.BAD, wrap=True)
        self._fault.hide()
        if caption:
            self.column.addWidget(Text(caption, TextRole.SMALL, Ink.SOFT, wrap=True))
        if note:
            self.column.addWidget(Text(note, TextRole.TINY, Ink.SOFT, wrap=True))
        self.inner = QVBoxLayout()
        self.inner.setSpacing(Space.XS)
        self.column.addLayout(self.inner)
        self.column.addWidget(self._fault)

    def show_fault(self, sentence: str) -> None:
        if sentence and sentence != self._fault.text():
            announce(self, sentence)
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))

    def fault(self) -> str:
        return self._fault.text()


class LineOf(Field):
    """One line: `write` makes the text of a value, `parse` the value of a text; an empty line is None.

    `key` may name a field inside another one: `body.share`. A text nobody changed gives back the very value it was made
    from, whatever the units.
    """

    def __init__(
        self,
        key: str,
        caption: str,
        *,
        write: Callable[[Any], str] = str,
        parse: Callable[[str], Any] = str.strip,
        hint: str = "",
        wide: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__((key.partition(".")[0],), wide=wide, parent=parent)
        self.key, self._write, self._parse = key, write, parse
        self._shown: tuple[str, Any] = ("", None)
        self.line = LineField(caption, hint)
        self.column.addWidget(self.line)
        self.line.edited.connect(self.edited)

    def show_table(self, table: Table) -> None:
        outer, _, inner = self.key.partition(".")
        value = table.get(outer)
        if inner and value is not None:
            value = value.get(inner)
        self._shown = ("" if value is None else self._write(value), value)
        self.line.show_text(self._shown[0])
        self.line.show_fault("")

    def read(self) -> Table:
        text = self.line.text().strip()
        value = self._shown[1] if text == self._shown[0] else self._parse(text) if text else None
        outer, _, inner = self.key.partition(".")
        return {outer: {inner: value}} if inner else {outer: value}

    def show_fault(self, sentence: str) -> None:
        if sentence != self.line.fault():
            self.line.show_fault(sentence)

    def fault(self) -> str:
        return self.line.fault()


class WordsOf(LineOf):
    """Several words in one line, separated by commas."""

    def __init__(self, key: str, caption: str, *, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(key, caption, write=", ".join, parse=_words, hint=hint, wide=True, parent=parent)


def _words(text: str) -> list[str]:
    return [word.strip() for word in text.split(",") if word.strip()]


class LinesOf(Faulted):
    """Several sentences, one in a line."""

    def __init__(self, key: str, caption: str, note: str = "", *, parent: QWidget | None = None) -> None:
        super().__init__((key,), caption, note, parent=parent)
        self.edit = QPlainTextEdit()
        self.edit.setFixedHeight(LINES_HEIGHT)
        self.edit.setTabChangesFocus(True)
        self.edit.setAccessibleName(caption)
        self.inner.addWidget(self.edit)
        self.edit.textChanged.connect(self.edited)

    def show_table(self, table: Table) -> None:
        text = "\n".join(table.get(self.keys[0]) or ())
        if self.edit.toPlainText() != text:
            self.edit.blockSignals(True)
            self.edit.setPlainText(text)
            self.edit.blockSignals(False)
        self.show_fault("")

    def read(self) -> Table:
        lines = [line.strip() for line in self.edit.toPlainText().splitlines() if line.strip()]
        return {self.keys[0]: lines or None}


class ChoiceOf(Field):
    """One of several values, each with its words."""

    def __init__(
        self,
        key: str,
        caption: str,
        options: Sequence[tuple[Any, str]],
        usual: Any,
        *,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__((key,), parent=parent)
        self._options = list(options)
        self._usual = usual
        self.choice = ChoiceField(caption, tuple(words for _, words in options))
        self.column.addWidget(self.choice)
        self.choice.chosen.connect(self.edited)

    def show_table(self, table: Table) -> None:
        value = table.get(self.keys[0], self._usual)
        values = [one for one, _ in self._options]
        self.choice.show_index(values.index(value) if value in values else values.index(self._usual))
        self.choice.show_fault("")

    def read(self) -> Table:
        return {self.keys[0]: self._options[self.choice.index()][0]}

    def show_fault(self, sentence: str) -> None:
        if sentence != self.choice.fault():
            self.choice.show_fault(sentence)

    def fault(self) -> str:
        return self.choice.fault()


class SetOf(Faulted):
    """Any of several values, as chips to switch on and off."""

    def __init__(
        self,
        key: str,
        caption: str,
        options: Sequence[tuple[str, str]],
        note: str = "",
        *,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__((key,), caption, note, parent=parent)
        self.chips: dict[str, ChoiceChip] = {}
        self.inner.addLayout(_chips(self.chips, options))
        for chip in self.chips.values():
            chip.clicked.connect(self.edited)

    def show_table(self, table: Table) -> None:
        chosen = table.get(self.keys[0]) or ()
        for value, chip in self.chips.items():
            chip.setChecked(value in chosen)
        self.show_fault("")

    def read(self) -> Table:
        return {self.keys[0]: [value for value, chip in self.chips.items() if chip.isChecked()] or None}


class FlagsOf(Faulted):
    """Several fields that are true or not, as chips."""

    def __init__(self, caption: str, flags: Sequence[tuple[str, str]], *, parent: QWidget | None = None) -> None:
        super().__init__(tuple(key for key, _ in flags), caption, parent=parent)
        self.chips: dict[str, ChoiceChip] = {}
        self.inner.addLayout(_chips(self.chips, flags))
        for chip in self.chips.values():
            chip.clicked.connect(self.edited)

    def show_table(self, table: Table) -> None:
        for key, chip in self.chips.items():
            chip.setChecked(bool(table.get(key)))
        self.show_fault("")

    def read(self) -> Table:
        return {key: True if chip.isChecked() else None for key, chip in self.chips.items()}


def _chips(into: dict[str, ChoiceChip], options: Sequence[tuple[str, str]]) -> FlowLayout:
    flow = FlowLayout()
    for value, words in options:
        into[value] = ChoiceChip(words)
        flow.addWidget(into[value])
    return flow


def plain_number(text: str) -> float:
    """A number without a unit; a comma may stand for the point."""
    try:
        found = float(text.replace(",", "."))
    except ValueError as error:
        raise InputError(text, "is no number", "write one, like 2.5") from error
    if not 0 <= found < 1e6:
        raise InputError(text, "is out of reach", "write a number from 0 on")
    return found


def percent(text: str) -> float:
    """A share from a percentage: “64 %” is 0.64."""
    found = plain_number(text.replace("%", "").strip())
    if found > 100:
        raise InputError(text, "is more than all of it", "write 0 to 100 %")
    return round(found / 100, 4)


def percent_words(share: float) -> str:
    """“64 %”."""
    return f"{100 * share:g} %"
