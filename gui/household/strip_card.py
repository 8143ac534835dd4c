"""The strip of movement patterns, the biggest gap in a sentence, and in place the list of what else would help."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.household.gap_words import SHOW_HELP, HelpRow, StripView
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    ElidedText,
    FlowLayout,
    Ink,
    LinkButton,
    PatternBar,
    PictureLabel,
    SecondaryButton,
    Sentence,
)
from gui.widgets.page import GUTTER, PageScroll

AT_FIRST, MORE = 6, 12
MOST_LINES = 3
"""Lines of the list that are seen at once; further ones are scrolled to."""


class StripCard(Card):
    """`have` (kind id) when somebody owns one of what would help; `followed` for any other link of the sentence."""

    have = Signal(str)
    followed = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._helpers: tuple[HelpRow, ...] = ()
        self._most = AT_FIRST
        self.bar = PatternBar()
        self.sentence = Sentence()
        self._rows = QWidget()
        self._flow = FlowLayout(gap=Space.S, column_width=320, parent=self._rows)
        self.more = LinkButton("Show more", TextRole.SMALL)
        self.less = LinkButton("Close this list", TextRole.SMALL)
        self.list = self._made_list()
        self.list.hide()
        for widget in (self.bar, self.sentence, self.list):
            self.body.addWidget(widget)
        self.sentence.link_followed.connect(self._follow)
        self.more.clicked.connect(self._show_more)
        self.less.clicked.connect(self.list.hide)

    def show_strip(self, view: StripView) -> None:
        """Paint another answer; an open list stays open."""
        self.bar.show_marks(view.marks)
        self.sentence.show_spans(view.sentence)
        if view.helpers != self._helpers:
            self._helpers = view.helpers
            self._show_rows()
        if not view.helpers:
            self.list.hide()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_list()

    def rows(self) -> tuple[_Help, ...]:
        """The rows of the list."""
        found = (self._flow.itemAt(at) for at in range(self._flow.count()))
        widgets = (item.widget() for item in found if item is not None)
        return tuple(widget for widget in widgets if isinstance(widget, _Help))

    def _made_list(self) -> QWidget:
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)
        column.addStretch(1)
        self._scroll = PageScroll(inner)
        foot = QHBoxLayout()
        foot.addWidget(self.more)
        foot.addStretch(1)
        foot.addWidget(self.less)
        whole = QWidget()
        around = QVBoxLayout(whole)
        around.setContentsMargins(0, 0, 0, 0)
        around.setSpacing(Space.S)
        around.addWidget(self._scroll)
        around.addLayout(foot)
        return whole

    def _fit_list(self) -> None:
        """As tall as its rows, up to a few lines of them."""
        margins = self.body.contentsMargins()
        needed = self._flow.heightForWidth(self.width() - margins.left() - margins.right() - GUTTER)
        line = max((row.sizeHint().height() for row in self.rows()), default=0) + self._flow.gap()
        self._scroll.setFixedHeight(min(needed, MOST_LINES * line))

    def _follow(self, link: str) -> None:
        if link == SHOW_HELP:
            self._fit_list()
            self.list.setVisible(self.list.isHidden())
        else:
            self.followed.emit(link)

    def _show_more(self) -> None:
        self._most += MORE
        self._show_rows()

    def _show_rows(self) -> None:
        self._flow.clear()
        for row in self._helpers[: self._most]:
            made = _Help(row)
            made.have.connect(self.have)
            self._flow.addWidget(made)
        self.more.setVisible(len(self._helpers) > self._most)
        self._fit_list()


class _Help(QWidget):
    """One thing that would help, and a button for whoever has it."""

    have = Signal(str)

    def __init__(self, row: HelpRow, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.row = row
        self.button = SecondaryButton("I have one")
        self.button.setAccessibleName(f"I have one: {row.name}, {row.detail}")
        self.button.clicked.connect(self._tell)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(ElidedText(row.name, TextRole.STRONG))
        words.addWidget(ElidedText(row.detail, TextRole.SMALL, Ink.SOFT))
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(Space.M)
        line.addWidget(PictureLabel(row.picture, 36), 0, Qt.AlignmentFlag.AlignVCenter)
        line.addLayout(words, 1)
        line.addWidget(self.button)

    def _tell(self) -> None:
        self.have.emit(self.row.kind_id)
