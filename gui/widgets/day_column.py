"""A day of the week as a column of blocks, each block one thing to do."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Family, Icon, Radius, Space, TextRole, family_colour, pixmap, role_font, tokens_of
from gui.widgets.drawing import draw_focus, draw_panel, open_painter, pen
from gui.widgets.text import ElidedText, Ink, Text

_WRAP = int(Qt.TextFlag.TextWordWrap | Qt.TextFlag.TextWrapAnywhere) | int(Qt.AlignmentFlag.AlignLeft)
_WORDS = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignLeft)
_BAND = 4
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
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
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
        return (detail if self._view.detail else title).bottom() + 1 + Space.S - 1

    def sizeHint(self) -> QSize:
        return QSize(128, self.heightForWidth(128))

    def minimumSizeHint(self) -> QSize:
        return QSize(72, self.heightForWidth(max(72, self.width())))

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
        painter.setFont(role_font(TextRole.SMALL_STRONG))
        painter.setPen(pen(tokens.ink))
        painter.drawText(title, _flags(self._view.title, title.width(), TextRole.SMALL_STRONG), self._view.title)
        painter.setFont(role_font(TextRole.TINY))
        painter.setPen(pen(tokens.ink_soft))
        painter.drawText(detail, _flags(self._view.detail, detail.width(), TextRole.TINY), self._view.detail)
        if self._view.pinned:
            sign = pixmap(Icon.PIN, _PIN, tokens.accent_ink, ratio=self.devicePixelRatioF())
            painter.drawPixmap(self.width() - _PIN - Space.XS, Space.XS, sign)

    def _places(self, width: int) -> tuple[QRect, QRect]:
        """Where title and detail go in a card `width` wide."""
        left = _BAND + Space.S
        pin = _PIN if self._view.pinned else 0
        title = _measure(self._view.title, TextRole.SMALL_STRONG, width - left - Space.S - pin)
        title.moveTo(left, Space.S - 2)
        detail = _measure(self._view.detail, TextRole.TINY, width - left - Space.S)
        detail.moveTo(left, title.bottom() + 1 + Space.XXS)
        return title, detail

    def _pressed(self) -> None:
        self.chosen.emit(self._view.block_id)

    def _menu(self, at: QPoint) -> None:
        self.menu_wanted.emit(self._view.block_id, self.mapToGlobal(at))


def _flags(text: str, width: int, role: TextRole) -> int:
    """Break between words; inside a word only when the word alone is too wide."""
    metrics = QFontMetrics(role_font(role))
    longest = max((metrics.horizontalAdvance(word) for word in text.split()), default=0)
    return _WRAP if longest > width else _WORDS


def _measure(text: str, role: TextRole, width: int) -> QRect:
    metrics = QFontMetrics(role_font(role))
    size = metrics.boundingRect(QRect(0, 0, max(1, width), 10_000), _flags(text, width, role), text)
    return QRect(0, 0, max(1, width), size.height() if text else 0)


class DayColumn(QFrame):
    """One day: name, minutes, kind, notes and its blocks."""

    block_chosen = Signal(str)
    block_menu_wanted = Signal(str, QPoint)

    def __init__(self, view: DayView | None = None, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = DayView(name="", minutes_text="", kind="")
        self._name = Text("", TextRole.STRONG, parent=self)
        self._minutes = ElidedText("", TextRole.TINY, Ink.SOFT, parent=self)
        self._minutes.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._kind = Text("", TextRole.SMALL_STRONG, wrap=True, parent=self)
        self._notes = Text("", TextRole.TINY, Ink.SOFT, wrap=True, parent=self)
        self._column = QVBoxLayout(self)
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
        head = QHBoxLayout()
        head.setSpacing(Space.XS)
        head.addWidget(self._name)
        head.addWidget(self._minutes, 1)
        self._blocks.setSpacing(Space.XS + 2)
        self._column.setContentsMargins(Space.M - 2, Space.M, Space.M - 2, Space.M)
        self._column.setSpacing(Space.XS + 2)
        self._column.addLayout(head)
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
