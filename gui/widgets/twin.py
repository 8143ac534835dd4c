"""Every drawn chart has a twin made of words: a table one can switch to, and a sentence a screen reader speaks."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QStackedWidget,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from gui.theme import Space, TextRole
from gui.widgets.buttons import LinkButton, set_label
from gui.widgets.text import Text

_TALLEST = 420


@dataclass(frozen=True, slots=True, kw_only=True)
class Twin:
    """What a chart shows, as a table of ready texts."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


class TableTwin(QWidget):
    """A chart with its caption and a switch to the same facts as a table.

    `show_twin` paints the table and gives the chart its spoken name; call it whenever the chart changes.
    """

    def __init__(self, chart: QWidget, twin: Twin, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._chart = chart
        self._caption = Text("", TextRole.HEADING, parent=self)
        self._switch = LinkButton("Show as table", TextRole.SMALL, parent=self)
        self._table = _Table(self)
        self._stack = _Front(self)
        self._stack.addWidget(chart)
        self._stack.addWidget(self._table)
        self._dress_table()
        self._arrange()
        self._switch.clicked.connect(self._turn)
        self.show_twin(twin)

    def show_twin(self, twin: Twin) -> None:
        """Paint other facts into the table and speak them for the chart."""
        self._caption.setText(twin.caption)
        self._table.setAccessibleName(twin.caption)
        self._chart.setAccessibleName(twin.caption)
        self._chart.setAccessibleDescription("; ".join(", ".join(row) for row in twin.rows))
        self._table.setColumnCount(len(twin.columns))
        self._table.setHorizontalHeaderLabels(list(twin.columns))
        self._table.setRowCount(len(twin.rows))
        for at, row in enumerate(twin.rows):
            for column, text in enumerate(row):
                self._table.setItem(at, column, QTableWidgetItem(text))

    def shows_table(self) -> bool:
        """Whether the table is in front."""
        return self._stack.currentWidget() is self._table

    def _turn(self) -> None:
        as_table = not self.shows_table()
        self._stack.setCurrentWidget(self._table if as_table else self._chart)
        self._stack.updateGeometry()
        set_label(self._switch, "Show as picture" if as_table else "Show as table")
        self._switch.updateGeometry()

    def _dress_table(self) -> None:
        self._table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self._table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self._table.setAlternatingRowColors(True)
        self._table.setShowGrid(False)
        self._table.setTabKeyNavigation(False)
        self._table.verticalHeader().hide()
        self._table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self._table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self._caption, 1)
        head.addWidget(self._switch)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XS)
        column.addLayout(head)
        column.addWidget(self._stack, 1)


class _Front(QStackedWidget):
    """As large as what is in front, not as the largest page."""

    def sizeHint(self) -> QSize:
        front = self.currentWidget()
        return super().sizeHint() if front is None else front.sizeHint()

    def minimumSizeHint(self) -> QSize:
        front = self.currentWidget()
        return super().minimumSizeHint() if front is None else front.minimumSizeHint()


class _Table(QTableWidget):
    """As tall as its rows, up to a bound where it scrolls."""

    def sizeHint(self) -> QSize:
        rows = sum(self.rowHeight(at) for at in range(self.rowCount()))
        return QSize(300, min(_TALLEST, rows + self.horizontalHeader().sizeHint().height() + 4))

    def minimumSizeHint(self) -> QSize:
        return QSize(160, min(120, self.sizeHint().height()))
