"""Results of the tests of a week: how each test is done, a field for its number and for what is written down beside."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, LineField, Notice, SecondaryButton, SectionHeader, Text

FIELD_WIDTH = 132


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One number: its key (empty for the result itself), its name with the unit, and what is known of it."""

    key: str
    caption: str
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRow:
    """One test: its id, name, how it is done, and the numbers it asks for, the result first."""

    protocol_id: str
    name: str
    how: str
    asked: tuple[Asked, ...]


class ResultsPanel(Card):
    """`given` (protocol id, texts by key) on the button of a test."""

    given = Signal(str, object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._rows: tuple[ResultRow, ...] = ()
        self._fields: dict[str, dict[str, LineField]] = {}
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Space.M)
        self.stop = Notice()
        self.body.addWidget(SectionHeader("Results of the tests"))
        self.body.addWidget(self.stop)
        self.body.addLayout(self._lines)
        self.hide()

    def show_tests(self, rows: tuple[ResultRow, ...], stop: str) -> None:
        """Paint other tests, with the rule for when to stop; the same ones keep what is being typed."""
        self.stop.show_sentence(stop)
        if rows == self._rows:
            return
        self._rows = rows
        self._clear()
        for row in rows:
            self._add(row)

    def field(self, protocol_id: str, key: str = "") -> LineField:
        """The field of a number; the result itself has no key."""
        return self._fields[protocol_id][key]

    def button(self, protocol_id: str) -> SecondaryButton:
        """The button that writes a test down."""
        found = self.findChild(SecondaryButton, protocol_id)
        if found is None:
            raise KeyError(protocol_id)
        return found

    def show_fault(self, protocol_id: str, sentence: str) -> None:
        """Say below the result what is wrong."""
        self.field(protocol_id).show_fault(sentence)

    def _add(self, row: ResultRow) -> None:
        words = QVBoxLayout()
        words.setSpacing(Space.XXS)
        words.addWidget(Text(row.name, TextRole.SMALL_STRONG, wrap=True))
        words.addWidget(Text(row.how, TextRole.SMALL, Ink.SOFT, wrap=True))
        words.addStretch(1)
        line = QHBoxLayout()
        line.setSpacing(Space.M)
        line.addLayout(words, 1)
        self._fields[row.protocol_id] = {}
        for asked in row.asked:
            field = LineField(asked.caption, name=f"{row.name}: {asked.caption}")
            field.show_text(asked.text)
            field.setFixedWidth(FIELD_WIDTH)
            self._fields[row.protocol_id][asked.key] = field
            line.addWidget(field, 0, Qt.AlignmentFlag.AlignTop)
        button = SecondaryButton("Write down")
        button.setObjectName(row.protocol_id)
        button.setAccessibleName(f"Write down {row.name}")
        button.clicked.connect(self._tell)
        line.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        holder = QWidget()
        holder.setLayout(line)
        line.setContentsMargins(0, 0, 0, 0)
        self._lines.addWidget(holder)

    def _tell(self) -> None:
        protocol_id = self.sender().objectName()
        texts = {key: field.text() for key, field in self._fields[protocol_id].items()}
        self.given.emit(protocol_id, texts)

    def _clear(self) -> None:
        self._fields.clear()
        while (item := self._lines.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
