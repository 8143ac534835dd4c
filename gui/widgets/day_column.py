"""A day of the week as a column of blocks, each block one thing to do."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QFrame, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Radius, Space, TextRole, tokens_of
from gui.widgets.block_card import BlockCard
from gui.widgets.day_head import DayHead, DayView
from gui.widgets.drawing import draw_panel, open_painter, pen
from gui.widgets.text import Ink, Text

NARROW = 124


class DayColumn(QFrame):
    """One day: name, minutes, kind, notes and its blocks. Up and Down walk the blocks; Tab stops once in them.

    `head_chosen` when the day itself is pressed; `beside_wanted` (step, row) when an arrow leads to the next day. A
    movable day is dragged by its head: `dragged` and `dropped` carry the place on the screen, `drag_ended` comes before
    `dropped` and alone when the drag is given up; `shifted` (step) is the same by keys.
    """

    head_chosen = Signal()
    block_chosen = Signal(str)
    block_menu_wanted = Signal(str, QPoint)
    beside_wanted = Signal(int, int)
    dragged = Signal(QPoint)
    dropped = Signal(QPoint)
    drag_ended = Signal()
    shifted = Signal(int)

    def __init__(self, view: DayView | None = None, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = DayView(name="", minutes_text="", kind="")
        self._cards: list[BlockCard] = []
        self._target = False
        self._head = DayHead(self)
        self._foot = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._column = QVBoxLayout(self)
        self._blocks = QVBoxLayout()
        self._arrange()
        self._head.clicked.connect(self.head_chosen)
        self._head.walked.connect(self._walk)
        self._head.dragged.connect(self.dragged)
        self._head.dropped.connect(self.dropped)
        self._head.drag_ended.connect(self.drag_ended)
        self._head.shifted.connect(self.shifted)
        if view is not None:
            self.show_day(view)

    def show_day(self, view: DayView) -> None:
        """Paint another day; its blocks are made anew, unless it is the same day."""
        if view == self._view:
            return
        self._view = view
        self._head.show_day(view)
        self._foot.setText(view.foot)
        self._foot.setVisible(bool(view.foot))
        self.setAccessibleName(f"{view.name}, {view.kind}, {view.minutes_text}")
        self._fill_blocks()
        self.update()

    def view(self) -> DayView:
        """What it shows."""
        return self._view

    def head(self) -> QAbstractButton:
        """The day itself, to press."""
        return self._head

    def cards(self) -> tuple[BlockCard, ...]:
        """The blocks from top to bottom."""
        return tuple(self._cards)

    def set_movable(self, movable: bool) -> None:
        """Whether the session can be dragged to another day."""
        self._head.set_movable(movable)

    def show_target(self, target: bool) -> None:
        """Draw it as the day a session would be dropped on."""
        self._target = target
        self.update()

    def is_target(self) -> bool:
        """Whether it is drawn as the day a session would be dropped on."""
        return self._target

    def show_open(self, block_id: str) -> None:
        """Draw the block with this id (or none) as the one whose details are shown."""
        for card in self._cards:
            card.show_open(card.view().block_id == block_id)

    def take_focus(self, row: int) -> bool:
        """Bring the keyboard to the block in this row, or the last one; False when there is none."""
        if not self._cards:
            return False
        place = min(row, len(self._cards) - 1)
        for at, card in enumerate(self._cards):
            card.setFocusPolicy(Qt.FocusPolicy.StrongFocus if at == place else Qt.FocusPolicy.ClickFocus)
        self._cards[place].setFocus(Qt.FocusReason.OtherFocusReason)
        return True

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow column spends less on its edges."""
        super().resizeEvent(event)
        side = Space.XS if self.width() < NARROW else Space.S
        self._column.setContentsMargins(side, Space.M - 2, side, Space.M)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        if self._view.rest:
            edge = pen(tokens.control_line)
            edge.setDashPattern([4, 4])
            painter.setPen(edge)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), Radius.CARD, Radius.CARD)
        else:
            edge_colour, width = (tokens.accent, 2.0) if self._view.today else (tokens.line, 1.0)
            draw_panel(painter, self.rect(), tokens.surface, radius=Radius.CARD, edge=edge_colour, width=width)
        if self._target:
            draw_panel(painter, self.rect(), tokens.accent_soft, radius=Radius.CARD, edge=tokens.accent, width=2.0)
        painter.end()

    def _arrange(self) -> None:
        self._blocks.setSpacing(Space.XS + 2)
        self._column.setContentsMargins(Space.S, Space.M - 2, Space.S, Space.M)
        self._column.setSpacing(Space.XS + 2)
        self._column.addWidget(self._head)
        self._column.addLayout(self._blocks)
        self._column.addWidget(self._foot)
        self._column.addStretch(1)
        self._foot.setContentsMargins(Space.XXS, 0, Space.XXS, 0)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumWidth(96)

    def _fill_blocks(self) -> None:
        while (item := self._blocks.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.hide()
                old.deleteLater()
        self._cards = [BlockCard(block, parent=self) for block in self._view.blocks]
        for at, card in enumerate(self._cards):
            card.chosen.connect(self.block_chosen)
            card.menu_wanted.connect(self.block_menu_wanted)
            card.walked.connect(self._walk)
            card.setFocusPolicy(Qt.FocusPolicy.ClickFocus if at else Qt.FocusPolicy.StrongFocus)
            self._blocks.addWidget(card)

    def _walk(self, step: QPoint) -> None:
        row = next((at for at, card in enumerate(self._cards) if card.hasFocus()), -1)
        if step.x():
            self.beside_wanted.emit(step.x(), max(0, row))
        elif row + step.y() >= 0:
            self.take_focus(row + step.y())
        elif self._head.isEnabled():
            self._head.setFocus(Qt.FocusReason.OtherFocusReason)
