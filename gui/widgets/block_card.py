"""A block of a day: one thing to do, as a card to press."""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from gui.theme import Family, Icon, Radius, Space, TextRole, family_colour, pixmap, role_font, tokens_of
from gui.widgets.drawing import draw_focus, draw_lines, draw_panel, line_height, open_painter, wrapped

NARROW = 104
_BAND = 4
_PIN = 12
_STEPS = {
    Qt.Key.Key_Up: QPoint(0, -1),
    Qt.Key.Key_Down: QPoint(0, 1),
    Qt.Key.Key_Left: QPoint(-1, 0),
    Qt.Key.Key_Right: QPoint(1, 0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockView:
    """One block: what to do, how much (each line of it a paragraph), in which family's colour; `block_id` is only
    handed back.
    """

    block_id: str
    title: str
    detail: str
    family: Family
    pinned: bool = False


@dataclass(frozen=True, slots=True)
class _Words:
    """Wrapped lines and where they go."""

    lines: tuple[str, ...]
    area: QRectF

    @classmethod
    def laid(cls, text: str, role: TextRole, corner: QPointF, width: float) -> _Words:
        font = role_font(role)
        lines = tuple(line for part in text.splitlines() for line in wrapped(font, part, width))
        return cls(lines, QRectF(corner.x(), corner.y(), max(1.0, width), len(lines) * line_height(font)))


class BlockCard(QAbstractButton):
    """A block to press; its words wrap, so it grows with a long name instead of cutting it.

    `walked` carries the step of an arrow key (x sideways, y along the day).
    """

    chosen = Signal(str)
    menu_wanted = Signal(str, QPoint)
    walked = Signal(QPoint)

    def __init__(self, view: BlockView, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = view
        self._open = False
        self._laid: dict[int, tuple[_Words, _Words]] = {}
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
        self._laid.clear()
        pinned = ", pinned" if view.pinned else ""
        words = (view.title, *view.detail.splitlines())
        self.setAccessibleName(f"{', '.join(words)}{pinned}")
        self.updateGeometry()
        self.update()

    def view(self) -> BlockView:
        """What it shows."""
        return self._view

    def show_open(self, opened: bool) -> None:
        """Draw it as the one whose details are shown."""
        self._open = opened
        self.update()

    def is_open(self) -> bool:
        """Whether it is drawn as the one whose details are shown."""
        return self._open

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        title, detail = self._places(width)
        return math.ceil((detail if self._view.detail else title).area.bottom()) + Space.S - 1

    def sizeHint(self) -> QSize:
        return QSize(128, self.heightForWidth(128))

    def minimumSizeHint(self) -> QSize:
        return QSize(72, 2 * Space.L)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None:
            self.walked.emit(step)
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        else:
            super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.ApplicationFontChange, QEvent.Type.StyleChange}:
            self._laid.clear()
            self.updateGeometry()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        fill = tokens.track if self.underMouse() or self.isDown() else tokens.surface_soft
        draw_panel(painter, self.rect(), fill, radius=Radius.BLOCK)
        painter.save()
        painter.setClipRect(QRectF(0, 0, _BAND, self.height()))
        draw_panel(painter, self.rect(), family_colour(self._view.family, tokens), radius=Radius.BLOCK)
        painter.restore()
        if self._open:
            draw_panel(painter, self.rect(), "", radius=Radius.BLOCK, edge=tokens.accent)
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
        """Where title and detail go in a card `width` wide; a layout asks for the same widths over and over."""
        if width not in self._laid:
            self._laid[width] = self._placed(width)
        return self._laid[width]

    def _placed(self, width: int) -> tuple[_Words, _Words]:
        """A narrow card spends less on its edges."""
        side = Space.XS if width < NARROW else Space.S
        left = _BAND + side
        wide = width - left - side
        pin = _PIN if self._view.pinned else 0
        title = _Words.laid(self._view.title, TextRole.SMALL_STRONG, QPointF(left, Space.S - 2), wide - pin)
        below = QPointF(left, title.area.bottom() + Space.XXS)
        return title, _Words.laid(self._view.detail, TextRole.TINY, below, wide)

    def _pressed(self) -> None:
        self.chosen.emit(self._view.block_id)

    def _menu(self, at: QPoint) -> None:
        self.menu_wanted.emit(self._view.block_id, self.mapToGlobal(at))
