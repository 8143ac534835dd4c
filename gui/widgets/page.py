"""The frame of a screen: title bar on top, below it a body that scrolls when the window is too small for it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from gui.theme import PAGE_MARGIN, Space
from gui.widgets.title_bar import TitleBar
from gui.widgets.toast import ToastLine

GUTTER = 14
"""Room for a scroll bar at the right edge of whatever scrolls."""


class Page(QWidget):
    """Put the screen's content into `body` (a vertical layout); `bar` is the title bar, `toast` the line for undo.

    With `scroll` off the body must fit by itself (screens that scroll parts of themselves). With `gutter` off too it
    reaches into the room for a scroll bar on the right: for a screen with a `PageScroll` at that edge.
    """

    def __init__(
        self,
        title: str,
        subtitle: str = "",
        *,
        scroll: bool = True,
        gutter: bool = True,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.bar = TitleBar(title, subtitle, parent=self)
        self.toast = ToastLine(parent=self)
        inner = QWidget()
        inner.setObjectName("page_body")
        self.body = QVBoxLayout(inner)
        self.body.setContentsMargins(0, 0, 0, 0)
        self.body.setSpacing(Space.M + 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(PAGE_MARGIN, PAGE_MARGIN - 4, PAGE_MARGIN - GUTTER, PAGE_MARGIN - 4)
        column.setSpacing(Space.M + 2)
        column.addLayout(_inset(self.bar))
        column.addWidget(PageScroll(inner, parent=self) if scroll else _Still(inner, self, gutter=gutter), 1)
        column.addLayout(_inset(self.toast))

    def show_title(self, title: str, subtitle: str = "") -> None:
        """Write other words on top."""
        self.bar.show_title(title, subtitle)


class PageScroll(QScrollArea):
    """Scrolls `inner` when it must. The bar has a gutter of its own, so that content is equally wide either way."""

    def __init__(self, inner: QWidget, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._frame = QWidget()
        self._frame.setObjectName("page_body")
        self._row = QHBoxLayout(self._frame)
        self._row.setContentsMargins(0, 0, GUTTER, 0)
        self._row.addWidget(inner)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(self._frame)
        self.verticalScrollBar().rangeChanged.connect(self._make_room)

    def _make_room(self, _low: int, high: int) -> None:
        bar = self.verticalScrollBar().sizeHint().width() if high else 0
        self._row.setContentsMargins(0, 0, max(0, GUTTER - bar), 0)


def on_top(card: QWidget) -> QWidget:
    """A card no taller than what it holds, at the top of its page."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(card)
    column.addStretch(1)
    return holder


class _Still(QWidget):
    def __init__(self, inner: QWidget, parent: QWidget, *, gutter: bool) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, GUTTER if gutter else 0, 0)
        row.addWidget(inner)


def _inset(widget: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setContentsMargins(0, 0, GUTTER, 0)
    row.addWidget(widget)
    return row
