"""The three cards below the days: what the week trains, the next pours, the checks; and the card of a clash."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from core.plan.model import Clash
from gui.theme import Space, TextRole
from gui.week.present import CheckLine, FillsView
from gui.widgets import BarRow, BarTable, Card, Chip, Ink, Notice, SectionHeader, Text
from gui.widgets.page import PageScroll

PART_HEIGHT = 214


class _Part(Card):
    """A card whose content scrolls when there is more than fits."""

    def __init__(self, heading: str, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.setFixedHeight(PART_HEIGHT)
        self.heading = SectionHeader(heading)
        self.inner = QWidget()
        self.column = QVBoxLayout(self.inner)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(Space.S)
        self.body.addWidget(self.heading)
        self.body.addWidget(PageScroll(self.inner), 1)


class TrainedCard(_Part):
    """Hard sets of each pattern over the week."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__("What the week trains", parent=parent)
        self.bars = BarTable(role=TextRole.SMALL)
        self.column.addWidget(self.bars)
        self.column.addStretch(1)

    def show_rows(self, rows: tuple[BarRow, ...]) -> None:
        """Paint other rows."""
        self.bars.show_rows(rows)


class FillsCard(_Part):
    """What to pour before the next session that needs it."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__("Nothing to fill", parent=parent)
        self._lines = QGridLayout()
        self._lines.setHorizontalSpacing(Space.M)
        self._lines.setVerticalSpacing(Space.XS)
        self._lines.setColumnStretch(0, 1)
        self._note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.column.addLayout(self._lines)
        self.column.addWidget(self._note)
        self.column.addStretch(1)

    def show_fills(self, view: FillsView) -> None:
        """Paint other pours."""
        self.heading.setText(view.heading)
        self._note.setText(view.note)
        while (item := self._lines.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for row, line in enumerate(view.lines):
            name = f"{line.thing}, {line.when}" if line.when else line.thing
            self._lines.addWidget(Text(name, TextRole.BODY, wrap=True), row, 0)
            self._lines.addWidget(Text(line.volume, TextRole.BODY), row, 1)
            self._lines.addWidget(Text(line.mass, TextRole.CONTROL), row, 2)


class ChecksCard(_Part):
    """What the week is held to."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__("Checks", parent=parent)

    def show_checks(self, lines: tuple[CheckLine, ...]) -> None:
        """Paint other checks."""
        while (item := self.column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for line in lines:
            self.column.addWidget(_CheckRow(line))
        self.column.addStretch(1)


class _CheckRow(QWidget):
    def __init__(self, line: CheckLine, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        row.addWidget(Chip(line.mark, line.tone), 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(Text(line.rule, TextRole.SMALL, wrap=True), 1)


class ClashCard(Card):
    """Wishes that can't hold together, and what would help."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._wishes = Text("", TextRole.BODY, wrap=True)
        self._ways = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self.body.addWidget(SectionHeader("These wishes can’t hold together"))
        self.body.addWidget(self._wishes)
        self.body.addWidget(SectionHeader("Any one of these helps"))
        self.body.addWidget(self._ways)
        self.body.addWidget(Notice("Nothing was changed. Your last week, if you had one, is still saved."))
        self.body.addStretch(1)

    def show_clash(self, clash: Clash) -> None:
        """Paint a clash."""
        self._wishes.setText("\n".join(f"• {wish}" for wish in clash.wishes))
        self._ways.setText("\n".join(f"• {way}" for way in clash.ways_out))

    def text(self) -> str:
        """Everything it says."""
        return f"{self._wishes.text()}\n{self._ways.text()}"
