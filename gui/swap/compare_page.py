"""Two answers side by side, line by line: what to take, dose, closeness, why, what each asks and doesn't carry over."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.swap.badges import Badges
from gui.swap.present import AnswerView
from gui.theme import Space, TextRole
from gui.widgets import Card, ClosenessBars, Ink, LinkButton, Notice, PictureLabel, PrimaryButton, Text

PICTURE = 56


class ComparePage(Card):
    """`used` (exercise id) by either button; `left` by the link or Escape."""

    used = Signal(str)
    left = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self.back = LinkButton("Back to the answers")
        self.back.clicked.connect(self.left)
        self.uses: list[PrimaryButton] = []
        self._table = QWidget()
        head = QHBoxLayout()
        head.addWidget(Text("Side by side", TextRole.HEADING), 1)
        head.addWidget(self.back)
        self.body.addLayout(head)
        self.body.addWidget(self._table)
        self.body.addStretch(1)

    def show_two(self, first: AnswerView, second: AnswerView) -> None:
        """Paint two answers."""
        self._table.hide()
        self.body.removeWidget(self._table)
        self._table.deleteLater()
        self.uses = []
        self._table = QWidget()
        grid = QGridLayout(self._table)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(Space.XL)
        grid.setVerticalSpacing(Space.S)
        for column, view in enumerate((first, second)):
            grid.setColumnStretch(column, 1)
            self._fill(grid, column, view)
        self.body.insertWidget(1, self._table)
        self.setAccessibleName(f"{first.name} beside {second.name}")

    def texts(self) -> tuple[str, ...]:
        """Everything that can be read in the two columns."""
        return tuple(text.text() for text in self._table.findChildren(Text))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def _fill(self, grid: QGridLayout, column: int, view: AnswerView) -> None:
        bars = ClosenessBars(view.total, view.parts)
        use = PrimaryButton("Use this")
        use.setAccessibleName(f"Use {view.name}")
        use.setProperty("exercise_id", view.exercise_id)
        use.clicked.connect(self._use)
        self.uses.append(use)
        cells: tuple[QWidget, ...] = (
            _head(view),
            _paragraph("Take", (view.things,), Ink.PLAIN),
            _paragraph("Dose", (view.dose,), Ink.PLAIN),
            _paragraph("Set-up", (_sentence(view.set_up),)),
            bars,
            _paragraph("Why", view.reasons),
            _paragraph("Asks of you", (_sentence(", ".join(view.demands)) or "Nothing beyond the movement itself.",)),
            _paragraph("Does not carry over", view.not_carried or ("Nothing that can be told from here.",)),
            _cautions(view.cautions),
        )
        for row, cell in enumerate(cells):
            grid.addWidget(cell, row, column, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(use, len(cells), column, Qt.AlignmentFlag.AlignLeft)

    def _use(self) -> None:
        self.used.emit(self.sender().property("exercise_id"))


def _head(view: AnswerView) -> QWidget:
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(Space.M)
    badges = Badges()
    badges.show_badges(view.badges)
    words = QVBoxLayout()
    words.setSpacing(Space.XXS)
    words.addWidget(Text(view.name, TextRole.HEADING, wrap=True))
    words.addWidget(Text(view.relation, TextRole.SMALL, Ink.SOFT, wrap=True))
    words.addWidget(badges, 0, Qt.AlignmentFlag.AlignLeft)
    words.addStretch(1)
    row.addWidget(PictureLabel(view.picture, PICTURE), 0, Qt.AlignmentFlag.AlignTop)
    row.addLayout(words, 1)
    return holder


def _paragraph(title: str, lines: tuple[str, ...], ink: Ink = Ink.SOFT) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Space.XXS)
    column.addWidget(Text(title, TextRole.SMALL_STRONG))
    role = TextRole.BODY if ink is Ink.PLAIN else TextRole.SMALL
    for line in lines:
        column.addWidget(Text(line, role, ink, wrap=True))
    return holder


def _cautions(cautions: tuple[str, ...]) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Space.S)
    for caution in cautions:
        column.addWidget(Notice(caution))
    return holder


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}." if text else ""
