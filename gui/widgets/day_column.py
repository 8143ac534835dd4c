"""A day of the week as a column of blocks, each block one thing to do."""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QBoxLayout, QFrame, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Family, Icon, Radius, Space, TextRole, family_colour, pixmap, role_font, tokens_of
from gui.widgets.drawing import draw_focus, draw_lines, draw_panel, line_height, open_painter, pen, text_width, wrapped
from gui.widgets.text import ElidedText, Ink, Text

_BAND = 4
_BESIDE, _BELOW = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_PIN = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockView:
    """One block: what to do, how much, in which family's colour; `block_id` is only handed back."""

    block_id: str
    title: str
    detail: str
    family: Family
    pinned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class DayView:
    """One day: name, minutes in words, kind of day, quiet notes (“warm-up 8 min”), blocks; a rest day is dashed."""

    name: str
    minutes_text: str
    kind: str
    notes: tuple[str, ...] = ()
    blocks: tuple[BlockView, ...] = ()
    rest: bool = False
    today: bool = False


@dataclass(frozen=True, slots=True)
class _Words:
    """Wrapped lines and where they go."""

    lines: tuple[str, ...]
    area: QRectF

    @classmethod
    def laid(cls, text: str, role: TextRole, corner: QPointF, width: float) -> _Words:
        font = role_font(role)
        lines = wrapped(font, text, width) if text else ()
        return cls(lines, QRectF(corner.x(), corner.y(), max(1.0, width), len(lines) * line_height(font)))


class BlockCard(QAbstractButton):
    """A block to press; its words wrap, so it grows with a long name instead of cutting it."""

    chosen = Signal(str)
    menu_wanted = Signal(str, QPoint)

    def __init__(self, view: BlockView, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = view
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.clicked.connect(self._pressed)
        self.customContextMenuRequested.connect(self._menu)
        self.show_block(view)

    def show_block(self, view: BlockView) -> None:
        """Paint another block."""
        self._view = view
        pinned = ", pinned" if view.pinned else ""
        self.setAccessibleName(f"{view.title}, {view.detail}{pinned}")
        self.updateGeometry()
        self.update()

    def view(self) -> BlockView:
        """What it shows."""
        return self._view

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        title, detail = self._places(width)
        return math.ceil((detail if self._view.detail else title).area.bottom()) + Space.S - 1

    def sizeHint(self) -> QSize:
        return QSize(128, self.heightForWidth(128))

    def minimumSizeHint(self) -> QSize:
        return QSize(72, 2 * Space.L)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        fill = tokens.track if self.underMouse() or self.isDown() else tokens.surface_soft
        draw_panel(painter, self.rect(), fill, radius=Radius.BLOCK)
        painter.save()
        painter.setClipRect(QRectF(0, 0, _BAND, self.height()))
        draw_panel(painter, self.rect(), family_colour(self._view.family, tokens), radius=Radius.BLOCK)
        painter.restore()
        self._paint_words(painter)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()

    def _paint_words(self, painter: QPainter) -> None:
        tokens = tokens_of(self)
        title, detail = self._places(self.width())
        draw_lines(painter, title.area, title.lines, font=role_font(TextRole.SMALL_STRONG), ink=tokens.ink)
        draw_lines(painter, detail.area, detail.lines, font=role_font(TextRole.TINY), ink=tokens.ink_soft)
        if self._view.pinned:
            sign = pixmap(Icon.PIN, _PIN, tokens.accent_ink, ratio=self.devicePixelRatioF())
            painter.drawPixmap(self.width() - _PIN - Space.XS, Space.XS, sign)

    def _places(self, width: int) -> tuple[_Words, _Words]:
        """Where title and detail go in a card `width` wide."""
        left = _BAND + Space.S
        wide = width - left - Space.S
        pin = _PIN if self._view.pinned else 0
        title = _Words.laid(self._view.title, TextRole.SMALL_STRONG, QPointF(left, Space.S - 2), wide - pin)
        below = QPointF(left, title.area.bottom() + Space.XXS)
        return title, _Words.laid(self._view.detail, TextRole.TINY, below, wide)

    def _pressed(self) -> None:
        self.chosen.emit(self._view.block_id)

    def _menu(self, at: QPoint) -> None:
        self.menu_wanted.emit(self._view.block_id, self.mapToGlobal(at))


class DayColumn(QFrame):
    """One day: name, minutes, kind, notes and its blocks."""

    block_chosen = Signal(str)
    block_menu_wanted = Signal(str, QPoint)

    def __init__(self, view: DayView | None = None, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = DayView(name="", minutes_text="", kind="")
        self._name = Text("", TextRole.STRONG, parent=self)
        self._minutes = ElidedText("", TextRole.TINY, Ink.SOFT, parent=self)
        self._kind = Text("", TextRole.SMALL_STRONG, wrap=True, parent=self)
        self._notes = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._column = QVBoxLayout(self)
        self._head = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._blocks = QVBoxLayout()
        self._arrange()
        if view is not None:
            self.show_day(view)

    def show_day(self, view: DayView) -> None:
        """Paint another day; blocks are made anew."""
        self._view = view
        self._name.setText(view.name)
        self._minutes.show_text(view.minutes_text)
        self._kind.setText(view.kind)
        self._kind.set_ink(Ink.SOFT if view.rest else Ink.PLAIN)
        self._notes.setText("\n".join(view.notes))
        self._notes.setVisible(bool(view.notes))
        self.setAccessibleName(f"{view.name}, {view.kind}, {view.minutes_text}")
        self._fill_blocks()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow column the minutes go below the name; any name counts as three wide letters, so days agree."""
        super().resizeEvent(event)
        room = self.width() - 2 * Space.M
        beside = text_width(role_font(TextRole.STRONG), "Wed") + self._minutes.sizeHint().width() + Space.XS <= room
        self._head.setDirection(_BESIDE if beside else _BELOW)
        self._minutes.setAlignment(_RIGHT if beside else _LEFT)

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
        self._head.setSpacing(Space.XXS)
        self._head.addWidget(self._name)
        self._head.addWidget(self._minutes, 1)
        self._blocks.setSpacing(Space.XS + 2)
        self._column.setContentsMargins(Space.M - 2, Space.M, Space.M - 2, Space.M)
        self._column.setSpacing(Space.XS + 2)
        self._column.addLayout(self._head)
        self._column.addWidget(self._kind)
        self._column.addWidget(self._notes)
        self._column.addLayout(self._blocks)
        self._column.addStretch(1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumWidth(96)

    def _fill_blocks(self) -> None:
        while (item := self._blocks.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.hide()
                old.deleteLater()
        for block in self._view.blocks:
            card = BlockCard(block, parent=self)
            card.chosen.connect(self.block_chosen)
            card.menu_wanted.connect(self.block_menu_wanted)
            self._blocks.addWidget(card)
