"""One block or one day of the week, opened: what, why and how, and what can be changed."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Icon, Space, TextRole
from gui.week.detail_words import DetailView
from gui.widgets import Card, Notice, PictureButton, PrimaryButton, SecondaryButton, Text

MOST_COLUMNS = 4


class DetailCard(Card):
    """`pin_wanted`, `ban_wanted`, `swap_wanted`, `move_wanted`, `went_wanted` and `closed`, each without arguments: the
    screen knows the block or the day. `reshaped` when it may need another height.
    """

    pin_wanted = Signal()
    ban_wanted = Signal()
    swap_wanted = Signal()
    move_wanted = Signal()
    went_wanted = Signal()
    closed = Signal()
    reshaped = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._columns = tuple(_Column() for _ in range(MOST_COLUMNS))
        self._caution = Notice()
        self.swap = PrimaryButton("Swap it")
        self.went = PrimaryButton("How it went")
        self.move_button = SecondaryButton("Move to another day")
        self.pin = SecondaryButton("Keep it on this day")
        self.ban = SecondaryButton("Not this one")
        self.close_button = PictureButton(Icon.CLOSE, "Close the details")
        self._arrange()
        self.swap.clicked.connect(self.swap_wanted)
        self.move_button.clicked.connect(self.move_wanted)
        self.went.clicked.connect(self.went_wanted)
        self.pin.clicked.connect(self.pin_wanted)
        self.ban.clicked.connect(self.ban_wanted)
        self.close_button.clicked.connect(self.closed)

    def show_detail(self, view: DetailView, *, changeable: bool, markable: bool = False) -> None:
        """Paint another block or day; of a week that is only looked at, nothing can be changed.

        Of a markable day one can say how it went.
        """
        self._title.setText(view.title)
        shown = (*view.columns, *[("", ())] * (MOST_COLUMNS - len(view.columns)))
        for column, (title, lines) in zip(self._columns, shown, strict=True):
            column.show_lines(title, lines)
        self._caution.show_sentence(" ".join(view.cautions))
        self.pin.show_label(view.pin_label)
        self.pin.setVisible(changeable)
        self.ban.setVisible(changeable and bool(view.exercise_id))
        self.move_button.setVisible(changeable and not view.exercise_id)
        self.swap.setVisible(bool(view.exercise_id))
        self.went.setVisible(markable and not view.exercise_id)
        self.setAccessibleName(". ".join((view.title, *view.columns[0][1])))

    def title(self) -> str:
        """The heading shown."""
        return self._title.text()

    def column(self, heading: str) -> str:
        """The text below a heading; `KeyError` if none is called so."""
        for column in self._columns:
            if column.heading() == heading:
                return column.words()
        raise KeyError(heading)

    def headings(self) -> tuple[str, ...]:
        """The headings shown."""
        return tuple(column.heading() for column in self._columns if column.heading())

    def caution(self) -> str:
        """The cautions shown."""
        return self._caution.sentence()

    def event(self, event: QEvent) -> bool:
        handled = super().event(event)
        if event.type() is QEvent.Type.LayoutRequest:
            self.reshaped.emit()
        return handled

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(Space.S)
        head.addWidget(self._title, 1)
        for button in (self.swap, self.went, self.move_button, self.pin, self.ban):
            head.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        head.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignTop)
        columns = QHBoxLayout()
        columns.setSpacing(Space.XL)
        for column in self._columns:
            columns.addWidget(column, 1)
        self.body.addLayout(head)
        self.body.addLayout(columns)
        self.body.addWidget(self._caution)
        self.body.addStretch(1)


class _Column(QWidget):
    """A heading and what stands below it; gone while it has no heading."""

    def __init__(self) -> None:
        super().__init__()
        self._heading = Text("", TextRole.SMALL_STRONG)
        self._lines: list[Text] = []
        self._column = QVBoxLayout()
        self._column.setSpacing(Space.XXS)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XXS)
        column.addWidget(self._heading)
        column.addLayout(self._column)
        column.addStretch(1)

    def show_lines(self, heading: str, lines: tuple[str, ...]) -> None:
        """A label a line, so that one that wraps stays apart from the next."""
        self._heading.setText(heading)
        while len(self._lines) < len(lines):
            self._lines.append(Text("", TextRole.SMALL, wrap=True))
            self._column.addWidget(self._lines[-1])
        for at, label in enumerate(self._lines):
            label.setText(lines[at] if at < len(lines) else "")
            label.setVisible(at < len(lines))
        self.setVisible(bool(heading))

    def heading(self) -> str:
        return self._heading.text()

    def words(self) -> str:
        return "\n".join(line.text() for line in self._lines if line.text())
