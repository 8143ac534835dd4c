"""A printed page on the screen: white paper with what stands on it, as large as fits or twice as large to read."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from core.paper.drawn import Drawn, DrawnBox, DrawnLine, DrawnPage, DrawnText
from gui.theme import tokens_of
from gui.widgets.drawing import open_painter

PAPER, INK = "#ffffff", 0
LARGER = 2.2
_EDGE = 6.0


class PaperView(QWidget):
    """Shows a `DrawnPage`. Paper is white in every theme, as it will come out of the printer."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._page: DrawnPage | None = None
        self._zoom = 1.0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.show_page(None, "No page yet")

    def show_page(self, page: DrawnPage | None, name: str) -> None:
        """Another page; `name` is what a screen reader calls it, its words are the description."""
        self._page = page
        self.setAccessibleName(name)
        self.setAccessibleDescription(page.words if page is not None else "")
        self.update()

    def show_larger(self, larger: bool) -> None:
        """Twice as large to read, or whole."""
        self._zoom = LARGER if larger else 1.0
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(round(420 * self._zoom), round(580 * self._zoom))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint() if self._zoom > 1 else QSize(200, 260)

    def paintEvent(self, event: QPaintEvent) -> None:
        page = self._page
        if page is None:
            return
        painter = open_painter(self)
        wide, tall = self.width() - 2 * _EDGE, self.height() - 2 * _EDGE
        scale = min(wide / page.width_mm, tall / page.height_mm)
        left, top = (self.width() - page.width_mm * scale) / 2, (self.height() - page.height_mm * scale) / 2
        paper = QRectF(left, top, page.width_mm * scale, page.height_mm * scale)
        painter.fillRect(paper, QColor(PAPER))
        painter.setPen(QPen(QColor(tokens_of(self).line), 1))
        painter.drawRect(paper)
        painter.translate(left, top)
        painter.scale(scale, scale)
        for mark in page.marks:
            _paint(painter, mark)
        painter.end()


def _paint(painter: QPainter, mark: Drawn) -> None:
    if isinstance(mark, DrawnText):
        _paint_text(painter, mark)
        return
    ink = QColor.fromRgbF(mark.grey, mark.grey, mark.grey)
    painter.setPen(QPen(ink, mark.thick_mm) if mark.thick_mm else Qt.PenStyle.NoPen)
    if isinstance(mark, DrawnLine):
        painter.drawLine(QLineF(mark.x1_mm, mark.y1_mm, mark.x2_mm, mark.y2_mm))
    elif isinstance(mark, DrawnBox):
        area = QRectF(mark.left_mm, mark.top_mm, mark.width_mm, mark.height_mm)
        painter.setBrush(Qt.BrushStyle.NoBrush if mark.thick_mm else ink)
        painter.drawRect(area)


def _paint_text(painter: QPainter, mark: DrawnText) -> None:
    """A font of the screen, drawn as wide as the printed words are."""
    font = QFont("DejaVu Sans")
    font.setPixelSize(40)
    font.setBold(mark.bold)
    wide = QFontMetricsF(font).horizontalAdvance(mark.text)
    if wide <= 0:
        return
    painter.save()
    painter.translate(mark.x_mm, mark.y_mm)
    painter.scale(mark.width_mm / wide, mark.size_mm / 40)
    painter.setFont(font)
    painter.setPen(QColor(INK, INK, INK))
    painter.drawText(QPointF(0, 0), mark.text)
    painter.restore()
