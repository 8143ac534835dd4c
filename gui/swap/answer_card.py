"""One answer on a card: picture, dose, chips and closeness; reasons, cues and cautions open in place."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.swap.present import AnswerView
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    Chip,
    ClosenessBars,
    FlowLayout,
    Ink,
    LinkButton,
    Notice,
    PictureLabel,
    PrimaryButton,
    SecondaryButton,
    Text,
)

PICTURE = 72
SIDE_WIDTH = 156


class AnswerCard(Card):
    """`used` (exercise id) when the person wants it in the week; `picked` when the card itself is chosen."""

    used = Signal(str)
    picked = Signal(str)

    def __init__(self, view: AnswerView, *, first: bool, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._view = view
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(f"{view.name}: {view.dose}. {view.things}. How close: {view.total} of 100.")
        self.set_chosen(first)
        self._more = LinkButton("Why, and how")
        self._more.clicked.connect(self._toggle)
        use = PrimaryButton("Use this") if first else SecondaryButton("Use this")
        use.setAccessibleName(f"Use {view.name}")
        use.clicked.connect(self._use)
        row = QHBoxLayout()
        row.setSpacing(Space.L)
        row.addWidget(PictureLabel(view.picture, PICTURE), 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(self._middle(), 1)
        row.addLayout(self._side(use))
        self.body.addLayout(row)
        self._details = _Details(view, self)
        self._details.hide()
        self.body.addWidget(self._details)

    def view(self) -> AnswerView:
        """What the card shows."""
        return self._view

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        self.picked.emit(self._view.exercise_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._use()
        elif event.key() == Qt.Key.Key_Space:
            self._toggle()
        else:
            super().keyPressEvent(event)

    def _middle(self) -> QVBoxLayout:
        view = self._view
        column = QVBoxLayout()
        column.setSpacing(Space.XS)
        column.addWidget(Text(view.name, TextRole.HEADING, wrap=True))
        column.addWidget(Text(view.relation, TextRole.SMALL, Ink.SOFT, wrap=True))
        column.addWidget(Text(view.things, TextRole.BODY, wrap=True))
        column.addWidget(Text(view.dose, TextRole.HEADING, wrap=True))
        chips = QWidget()
        flow = FlowLayout(parent=chips)
        for text, tone in view.chips:
            flow.addWidget(Chip(text, tone))
        column.addWidget(chips)
        column.addWidget(self._more, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        return column

    def _side(self, use: QWidget) -> QVBoxLayout:
        bars = ClosenessBars(self._view.total, self._view.parts)
        bars.setFixedWidth(SIDE_WIDTH)
        column = QVBoxLayout()
        column.setSpacing(Space.S)
        column.addWidget(bars)
        column.addStretch(1)
        column.addWidget(use, 0, Qt.AlignmentFlag.AlignRight)
        return column

    def _toggle(self) -> None:
        opening = not self._details.isVisible()
        self._details.setVisible(opening)
        self._more.show_label("Less" if opening else "Why, and how")

    def _use(self) -> None:
        self.used.emit(self._view.exercise_id)


class _Details(QWidget):
    """Reasons, cues and cautions."""

    def __init__(self, view: AnswerView, parent: QWidget) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(PICTURE + Space.L, 0, 0, 0)
        column.setSpacing(Space.XS)
        for title, lines in (("Why", view.reasons), ("How", view.cues)):
            if lines:
                column.addWidget(Text(title, TextRole.SMALL_STRONG))
                column.addWidget(Text("\n".join(lines), TextRole.SMALL, Ink.SOFT, wrap=True))
        for caution in view.cautions:
            column.addWidget(Notice(caution))
