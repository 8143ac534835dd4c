"""What opens below an answer: why, how, what its numbers mean, what it asks of the body and doesn't carry over."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from gui.swap.present import AnswerView
from gui.theme import Space, TextRole
from gui.widgets import Ink, Notice, Text

TWO_COLUMNS = 460
Paragraphs = tuple[tuple[str, tuple[str, ...]], ...]


class AnswerDetails(QWidget):
    """Titled paragraphs in two columns (one below the other when narrow), then cautions."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._texts: tuple[str, ...] = ()
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._columns.setSpacing(Space.L)
        self._cautions = QVBoxLayout()
        self._cautions.setSpacing(Space.S)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Space.XS, 0, 0)
        column.setSpacing(Space.S)
        column.addLayout(self._columns)
        column.addLayout(self._cautions)

    def show_answer(self, view: AnswerView) -> None:
        """Paint another answer."""
        _empty(self._columns)
        _empty(self._cautions)
        numbers = tuple(f"{part}: {meaning}" for part, meaning in view.meaning)
        asks = f"{_capital(', '.join(view.demands))}." if view.demands else "Nothing beyond the movement itself."
        lost = view.not_carried or ("Nothing that can be told from here.",)
        left: Paragraphs = (("Why", view.reasons), ("How", view.cues))
        right: Paragraphs = (("How close, in words", numbers), ("Asks of you", (asks,)), ("Does not carry over", lost))
        for paragraphs in (left, right):
            self._columns.addWidget(_column(paragraphs), 1)
        for caution in view.cautions:
            self._cautions.addWidget(Notice(caution))
        self._texts = (*view.reasons, *view.cues, *numbers, asks, *lost, *view.cautions)

    def texts(self) -> tuple[str, ...]:
        """Every sentence shown."""
        return self._texts

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        beside = self.width() >= TWO_COLUMNS
        self._columns.setDirection(QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom)


def _column(paragraphs: Paragraphs) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Space.XXS)
    for title, lines in paragraphs:
        if lines:
            column.addWidget(Text(title, TextRole.SMALL_STRONG))
            for line in lines:
                column.addWidget(Text(line, TextRole.SMALL, Ink.SOFT, wrap=True))
            column.addSpacing(Space.S)
    column.addStretch(1)
    return holder


def _empty(layout: QBoxLayout) -> None:
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
