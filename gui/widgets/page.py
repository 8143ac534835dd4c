"""The frame of a screen: title bar on top, below it a body that scrolls when the window is too small for it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from gui.theme import PAGE_MARGIN, Space
from gui.widgets.title_bar import TitleBar
from gui.widgets.toast import ToastLine


class Page(QWidget):
    """Put the screen's content into `body` (a vertical layout); `bar` is the title bar, `toast` the line for undo.

    With `scroll` off the body must fit by itself (screens that scroll parts of themselves).
    """

    def __init__(self, title: str, subtitle: str = "", *, scroll: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bar = TitleBar(title, subtitle, parent=self)
        self.toast = ToastLine(parent=self)
        inner = QWidget()
        inner.setObjectName("page_body")
        self.body = QVBoxLayout(inner)
        self.body.setContentsMargins(0, 0, 0, 0)
        self.body.setSpacing(Space.M + 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(PAGE_MARGIN, PAGE_MARGIN - 4, PAGE_MARGIN, PAGE_MARGIN - 4)
        column.setSpacing(Space.M + 2)
        column.addWidget(self.bar)
        column.addWidget(_scrolling(inner, self) if scroll else inner, 1)
        column.addWidget(self.toast)

    def show_title(self, title: str, subtitle: str = "") -> None:
        """Write other words on top."""
        self.bar.show_title(title, subtitle)


def _scrolling(inner: QWidget, parent: QWidget) -> QScrollArea:
    area = QScrollArea(parent)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(inner)
    return area
