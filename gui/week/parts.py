"""The three cards below the days: what the week trains, the next pours, the checks."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.week.part_words import CheckLine, FillLine, FillsView
from gui.widgets import BarRow, BarTable, Card, Chip, Ink, SectionHeader, Text

LONGEST_MARK = "not met"


class TrainedCard(Card):
    """Hard sets of each pattern over the week."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.bars = BarTable(role=TextRole.SMALL)
        self._rows: tuple[BarRow, ...] = ()
        self.body.addWidget(SectionHeader("What the week trains"))
        self.body.addWidget(self.bars)
        self.body.addStretch(1)

    def show_rows(self, rows: tuple[BarRow, ...]) -> None:
        """Paint other rows."""
        self._rows = rows
        self.bars.show_rows(rows)

    def rows(self) -> tuple[BarRow, ...]:
        """The rows shown."""
        return self._rows


class FillsCard(Card):
    """What to pour before each session that needs it, the next one first."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._view = FillsView(heading="", days=(), note="")
        self._heading = SectionHeader("")
        self._lines = QGridLayout()
        self._lines.setHorizontalSpacing(Space.M)
        self._lines.setVerticalSpacing(Space.XS)
        self._lines.setColumnStretch(0, 1)
        self._note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.body.addWidget(self._heading)
        self.body.addLayout(self._lines)
        self.body.addWidget(self._note)
        self.body.addStretch(1)

    def show_fills(self, view: FillsView) -> None:
        """Paint other pours."""
        if view == self._view:
            return
        self._view = view
        self._heading.setText(view.heading)
        self._note.setText(view.note)
        _empty(self._lines)
        for at, day in enumerate(view.days):
            if at:
                self._lines.addWidget(Text(day.heading, TextRole.SMALL_STRONG), self._lines.rowCount(), 0, 1, 3)
            for line in day.lines:
                self._add(line)

    def _add(self, line: FillLine) -> None:
        row = self._lines.rowCount()
        name = f"{line.thing}, {line.when}" if line.when else line.thing
        cells = (
            Text(name, TextRole.SMALL, wrap=True),
            Text(line.volume, TextRole.SMALL),
            Text(line.mass, TextRole.SMALL_STRONG),
        )
        for column, cell in enumerate(cells):
            if column:
                cell.setAlignment(Qt.AlignmentFlag.AlignRight)
            self._lines.addWidget(cell, row, column, Qt.AlignmentFlag.AlignTop)

    def view(self) -> FillsView:
        """What it shows."""
        return self._view


class ChecksCard(Card):
    """What the week is held to."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._lines: tuple[CheckLine, ...] = ()
        self._column = QVBoxLayout()
        self._column.setSpacing(Space.S)
        self.body.addWidget(SectionHeader("Checks"))
        self.body.addLayout(self._column)
        self.body.addStretch(1)

    def show_checks(self, lines: tuple[CheckLine, ...]) -> None:
        """Paint other checks."""
        if lines == self._lines:
            return
        self._lines = lines
        _empty(self._column)
        for line in lines:
            self._column.addWidget(_CheckRow(line))

    def lines(self) -> tuple[CheckLine, ...]:
        """The checks shown."""
        return self._lines


class _CheckRow(QWidget):
    def __init__(self, line: CheckLine, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(Text(line.rule, TextRole.SMALL, wrap=True))
        if line.note:
            words.addWidget(Text(line.note, TextRole.SMALL, Ink.SOFT, wrap=True))
        mark = QHBoxLayout()
        mark.addWidget(Chip(line.mark, line.tone), 0, Qt.AlignmentFlag.AlignTop)
        mark.addStretch(1)
        holder = QWidget()
        holder.setLayout(mark)
        mark.setContentsMargins(0, 0, 0, 0)
        holder.setFixedWidth(Chip(LONGEST_MARK, line.tone).sizeHint().width())
        row.addWidget(holder)
        row.addLayout(words, 1)


def _empty(layout: QGridLayout | QVBoxLayout) -> None:
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
