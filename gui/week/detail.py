"""One block or one day of the week, opened: what, why and how, and what can be changed."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Icon, Space, TextRole
from gui.week.detail_words import DetailView
from gui.widgets import Card, Notice, PictureButton, PrimaryButton, SecondaryButton, Text


class DetailCard(Card):
    """`pin_wanted`, `ban_wanted`, `swap_wanted` and `closed`, each without arguments: the screen knows the block."""

    pin_wanted = Signal()
    ban_wanted = Signal()
    swap_wanted = Signal()
    closed = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._columns = tuple((Text("", TextRole.SMALL_STRONG), Text("", TextRole.SMALL, wrap=True)) for _ in range(3))
        self._caution = Notice()
        self.swap = PrimaryButton("Swap it")
        self.pin = SecondaryButton("Keep it on this day")
        self.ban = SecondaryButton("Not this one")
        self.close_button = PictureButton(Icon.CLOSE, "Close the details")
        self._arrange()
        self.swap.clicked.connect(self.swap_wanted)
        self.pin.clicked.connect(self.pin_wanted)
        self.ban.clicked.connect(self.ban_wanted)
        self.close_button.clicked.connect(self.closed)

    def show_detail(self, view: DetailView, *, changeable: bool) -> None:
        """Paint another block or day; of a week that is only looked at, nothing can be changed."""
        self._title.setText(view.title)
        for (heading, text), (title, lines) in zip(self._columns, view.columns, strict=True):
            heading.setText(title)
            text.setText("\n".join(lines))
        self._caution.show_sentence(" ".join(view.cautions))
        self.pin.show_label(view.pin_label)
        self.pin.setVisible(changeable)
        self.ban.setVisible(changeable and bool(view.exercise_id))
        self.swap.setVisible(bool(view.exercise_id))
        first = view.columns[0][1]
        self.setAccessibleName(". ".join((view.title, *first)))

    def title(self) -> str:
        """The heading shown."""
        return self._title.text()

    def column(self, heading: str) -> str:
        """The text below a heading; `KeyError` if none is called so."""
        for title, text in self._columns:
            if title.text() == heading:
                return text.text()
        raise KeyError(heading)

    def headings(self) -> tuple[str, ...]:
        """The headings shown."""
        return tuple(title.text() for title, _ in self._columns)

    def caution(self) -> str:
        """The cautions shown."""
        return self._caution.sentence()

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self._title, 1)
        head.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignTop)
        columns = QHBoxLayout()
        columns.setSpacing(Space.XL)
        for heading, text in self._columns:
            column = QVBoxLayout()
            column.setSpacing(Space.XXS)
            column.addWidget(heading)
            column.addWidget(text)
            column.addStretch(1)
            columns.addLayout(column, 1)
        buttons = QHBoxLayout()
        buttons.setSpacing(Space.S)
        for button in (self.swap, self.pin, self.ban):
            buttons.addWidget(button)
        buttons.addStretch(1)
        self.body.addLayout(head)
        self.body.addLayout(columns)
        self.body.addWidget(self._caution)
        self.body.addLayout(buttons)
