"""Words that change many times a second without moving anything: their place keeps its size until they need more lines.

A `QLabel` asks its whole window to be laid out anew with every text it is given; a mass that follows a dragged fill
line can't wait for that.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.theme import TextRole, role_font
from gui.widgets.drawing import LEFT, RIGHT, line_height, open_painter, text_width, wrapped
from gui.widgets.text import Ink


class SteadyText(QWidget):
    """Plain text, wrapped to the width there is; its font is set once. Spoken by its accessible name.

    With `hold` it is as wide as its words once needed, never narrower again, and stays on one line. `right` sets the
    words to the right.
    """

    def __init__(
        self,
        role: TextRole = TextRole.BODY,
        ink: Ink = Ink.PLAIN,
        *,
        hold: bool = False,
        right: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._font = role_font(role)
        self._ink = ink
        self._hold = hold
        self._align = RIGHT if right else LEFT
        self._text = ""
        self._lines: tuple[str, ...] = ("",)
        self._widest = 0
        self._tall = line_height(self._font)
        policy = QSizePolicy.Policy.Fixed if hold else QSizePolicy.Policy.Preferred
        self.setSizePolicy(policy, QSizePolicy.Policy.Fixed)

    def setText(self, text: str) -> None:
        """Show other words."""
        if text == self._text:
            return
        self._text = text
        self.setAccessibleName(text)
        self._break()
        self.update()

    def text(self) -> str:
        """The words shown."""
        return self._text

    def is_cut(self) -> bool:
        """Whether some of the words have no room."""
        widest = max(text_width(self._font, line) for line in self._lines)
        return widest > self.width() + 2 or self._tall * len(self._lines) > self.height()

    def sizeHint(self) -> QSize:
        wide = self._widest if self._hold else 40
        return QSize(wide, self._tall * len(self._lines))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._break()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        painter.setFont(self._font)
        painter.setPen(self.palette().color(self._ink.value))
        for at, line in enumerate(self._lines):
            place = QRectF(0, at * self._tall, self.width(), self._tall)
            painter.drawText(place, int(self._align | Qt.TextFlag.TextSingleLine), line)
        painter.end()

    def _break(self) -> None:
        """Find the lines; ask for room only when more of it is needed."""
        before = self.sizeHint()
        if self._hold:
            self._lines = (self._text,)
            self._widest = max(self._widest, text_width(self._font, self._text))
        elif text_width(self._font, self._text) <= self.width():
            self._lines = (self._text,)
        else:
            self._lines = wrapped(self._font, self._text, self.width())
        if self.sizeHint() != before:
            self.updateGeometry()


class SteadyFigure(QWidget):
    """A large figure and, on the same line, its ± in softer ink."""

    _GAP = 8

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fonts = role_font(TextRole.HUGE), role_font(TextRole.TITLE)
        self._words = ("", "")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def show_figure(self, figure: str, doubt: str) -> None:
        """Show another."""
        self._words = (figure, doubt)
        self.setAccessibleName(self.text())
        self.update()

    def text(self) -> str:
        """Both, as one reads them."""
        return " ".join(word for word in self._words if word)

    def sizeHint(self) -> QSize:
        return QSize(120, line_height(self._fonts[0]))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        left, base = 0.0, QFontMetricsF(self._fonts[0]).ascent()
        for font, words, ink in zip(self._fonts, self._words, (Ink.PLAIN, Ink.SOFT), strict=True):
            painter.setFont(font)
            painter.setPen(self.palette().color(ink.value))
            painter.drawText(QPointF(left, base), words)
            left += text_width(font, words) + self._GAP
        painter.end()
