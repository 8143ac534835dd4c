"""A layout that wraps its items like words, and grows as tall as the width it gets makes it.

Works inside a resizable QScrollArea and nested in box layouts, because it answers `heightForWidth`.
"""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget

from gui.theme import Space


class FlowLayout(QLayout):
    """Items from left to right, then on the next line.

    With `column_width` every item gets an equal share of the line, at least that wide: a grid that fills its width.
    """

    def __init__(self, *, gap: int = Space.S, column_width: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self._column_width = column_width
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)
        self.invalidate()

    def clear(self) -> None:
        """Take every item out and let its widget go."""
        while (item := self.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()

    def set_column_width(self, column_width: int) -> None:
        """Another least width of the columns."""
        self._column_width = column_width
        self.invalidate()

    def gap(self) -> int:
        """Between items, and between lines."""
        return self._gap

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        if not 0 <= index < len(self._items):
            return None
        self.invalidate()
        return self._items.pop(index)

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        margins = self.contentsMargins()
        places = self._places(width - margins.left() - margins.right())
        tallest = max((place.bottom() + 1 for place in places), default=0)
        return tallest + margins.top() + margins.bottom()

    def sizeHint(self) -> QSize:
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        margins = self.contentsMargins()
        size = QSize(0, 0)
        for item in self._shown():
            size = size.expandedTo(item.minimumSize())
        return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom())

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        inner = rect.marginsRemoved(self.contentsMargins())
        for item, place in zip(self._shown(), self._places(inner.width()), strict=True):
            item.setGeometry(place.translated(inner.topLeft()))

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _places(self, width: int) -> list[QRect]:
        """Where each shown item goes in a line of `width`, from the origin."""
        columns = self._column(width)
        places: list[QRect] = []
        line: list[QRect] = []
        corner = QPoint(0, 0)
        for item in self._shown():
            size = self._size(item, columns, width)
            if line and corner.x() + size.width() > width:
                places += _levelled(line)
                corner = QPoint(0, corner.y() + _tallest(line) + self._gap)
                line = []
            line.append(QRect(corner, size))
            corner = corner + QPoint(size.width() + self._gap, 0)
        return places + _levelled(line)

    def _column(self, width: int) -> int:
        """Width of one column, 0 when items keep their own width."""
        if not self._column_width:
            return 0
        many = max(1, (width + self._gap) // (self._column_width + self._gap))
        return max(1, (width - (many - 1) * self._gap) // many)

    @staticmethod
    def _size(item: QLayoutItem, column: int, width: int) -> QSize:
        wanted = item.sizeHint()
        wide = column or min(wanted.width(), max(width, item.minimumSize().width()))
        tall = item.heightForWidth(wide) if item.hasHeightForWidth() else wanted.height()
        return QSize(wide, tall)


def _tallest(line: list[QRect]) -> int:
    return max((place.height() for place in line), default=0)


def _levelled(line: list[QRect]) -> list[QRect]:
    """Low items stand at half the height of their line."""
    tall = _tallest(line)
    return [place.translated(0, (tall - place.height()) // 2) for place in line]
