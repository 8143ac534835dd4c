"""A day of the week as a column of blocks, each block one thing to do."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QBoxLayout, QFrame, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Radius, Space, TextRole, role_font, tokens_of
from gui.widgets.block_card import BlockCard, BlockView
from gui.widgets.drawing import draw_focus, draw_panel, open_painter, pen, text_width
from gui.widgets.text import ElidedText, Ink, Text

NARROW = 124
_BESIDE, _BELOW = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True, slots=True, kw_only=True)
class DayView:
    """One day: name, minutes in words, kind of day, quiet notes above the blocks (“warm-up 8 min”), the blocks, and a
    quiet line below them; a rest day is dashed.
    """

    name: str
    minutes_text: str
    kind: str
    notes: tuple[str, ...] = ()
    blocks: tuple[BlockView, ...] = ()
    foot: str = ""
    rest: bool = False
    today: bool = False


class _DayHead(QAbstractButton):
    """Name, minutes, kind and notes of a day, to press as one."""

    walked = Signal(QPoint)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._name = Text("", TextRole.STRONG, parent=self)
        self._minutes = ElidedText("", TextRole.TINY, Ink.SOFT, parent=self)
        self._kind = Text("", TextRole.SMALL_STRONG, wrap=True, parent=self)
        self._notes = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._line = QBoxLayout(_BESIDE)
        self._line.setSpacing(Space.XXS)
        self._line.addWidget(self._name)
        self._line.addWidget(self._minutes, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(Space.XXS, Space.XXS, Space.XXS, Space.XXS)
        column.setSpacing(Space.XS + 2)
        column.addLayout(self._line)
        column.addWidget(self._kind)
        column.addWidget(self._notes)
        for label in (self._name, self._minutes, self._kind, self._notes):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)

    def show_day(self, view: DayView) -> None:
        self._name.setText(view.name)
        self._minutes.show_text(view.minutes_text)
        self._kind.setText(view.kind)
        self._kind.set_ink(Ink.SOFT if view.rest else Ink.PLAIN)
        self._notes.setText("\n".join(view.notes))
        self._notes.setVisible(bool(view.notes))
        self.setEnabled(not view.rest)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus if view.rest else Qt.FocusPolicy.TabFocus)
        words = (view.name, view.kind, view.minutes_text, *view.notes)
        self.setAccessibleName(", ".join(word for word in words if word))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow column the minutes go below the name; any name counts as three wide letters, so days agree."""
        super().resizeEvent(event)
        wanted = text_width(role_font(TextRole.STRONG), "Wed") + self._minutes.sizeHint().width() + Space.XS
        beside = wanted <= self.width() - 2 * Space.XXS
        self._line.setDirection(_BESIDE if beside else _BELOW)
        self._minutes.setAlignment(_RIGHT if beside else _LEFT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        elif event.key() == Qt.Key.Key_Down:
            self.walked.emit(QPoint(0, 1))
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        if self.underMouse() and self.isEnabled():
            draw_panel(painter, self.rect(), tokens.surface_soft, radius=Radius.BLOCK)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()


class DayColumn(QFrame):
    """One day: name, minutes, kind, notes and its blocks. Up and Down walk the blocks; Tab stops once in them.

    `head_chosen` when the day itself is pressed; `beside_wanted` (step, row) when an arrow leads to the next day.
    """

    head_chosen = Signal()
    block_chosen = Signal(str)
    block_menu_wanted = Signal(str, QPoint)
    beside_wanted = Signal(int, int)

    def __init__(self, view: DayView | None = None, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = DayView(name="", minutes_text="", kind="")
        self._cards: list[BlockCard] = []
        self._head = _DayHead(self)
        self._foot = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._column = QVBoxLayout(self)
        self._blocks = QVBoxLayout()
        self._arrange()
        self._head.clicked.connect(self.head_chosen)
        self._head.walked.connect(self._walk)
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
