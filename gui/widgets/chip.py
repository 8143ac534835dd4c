"""Chips: a short word on a tinted ground, to read, to choose or to take away."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QLabel, QSizePolicy, QWidget

from gui.theme import Icon, Space, TextRole, Tokens, pixmap, role_font, tokens_of
from gui.widgets.buttons import label_of, set_label
from gui.widgets.drawing import CENTRE, LEFT, draw_focus, draw_line, draw_panel, line_height, open_painter, text_width

_CROSS = 12


class Tone(StrEnum):
    """What a chip says beside its words; the words alone must be enough, the tint only repeats it."""

    GOOD = "good"
    FAIR = "fair"
    BAD = "bad"
    PLAIN = "plain"
    SELECTED = "selected"


def tone_colours(tone: Tone, tokens: Tokens) -> tuple[str, str]:
    """Ground and ink of `tone`."""
    pairs = {
        Tone.GOOD: (tokens.good, tokens.good_ink),
        Tone.FAIR: (tokens.fair, tokens.fair_ink),
        Tone.BAD: (tokens.bad, tokens.bad_ink),
        Tone.PLAIN: (tokens.plain, tokens.plain_ink),
        Tone.SELECTED: (tokens.selected, tokens.selected_ink),
    }
    return pairs[tone]


def chip_height(font: QFont) -> int:
    """Height of a chip whose words are in `font`."""
    return line_height(font) + Space.S + 1


def chip_width(font: QFont, text: str) -> int:
    """Width of a chip that shows `text` whole."""
    return text_width(font, text) + 2 * (Space.M - 2)


def draw_chip(painter: QPainter, area: QRectF, text: str, tone: Tone, font: QFont, tokens: Tokens) -> None:
    """A chip inside another widget's picture; `text` is shortened when `area` is too narrow."""
    ground, ink = tone_colours(tone, tokens)
    draw_panel(painter, area, ground, radius=area.height() / 2)
    inner = area.adjusted(Space.M - 2, 0, -(Space.M - 2), 0)
    draw_line(painter, inner, text, font=font, ink=ink, align=CENTRE)


class Chip(QLabel):
    """A chip to read."""

    def __init__(self, text: str = "", tone: Tone = Tone.PLAIN, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tone = tone
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(role_font(TextRole.SMALL))
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setText(text)

    def show_chip(self, text: str, tone: Tone) -> None:
        """Show other words in another tone."""
        self._tone = tone
        self.setText(text)
        self.update()

    def tone(self) -> Tone:
        """The tone it is painted in."""
        return self._tone

    def sizeHint(self) -> QSize:
        return QSize(chip_width(self.font(), self.text()), chip_height(self.font()))

    def minimumSizeHint(self) -> QSize:
        return QSize(min(self.sizeHint().width(), 48), self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        draw_chip(painter, QRectF(self.rect()), self.text(), self._tone, self.font(), tokens_of(self))
        painter.end()


class _PressChip(QAbstractButton):
    """What the chips one can press share."""

    def __init__(self, text: str, tone: Tone, parent: QWidget | None) -> None:
        super().__init__(parent)
        self._tone = tone
        self.setFont(role_font(TextRole.SMALL))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        set_label(self, text)

    def label(self) -> str:
        """The words as a person reads them."""
        return label_of(self)

    def sizeHint(self) -> QSize:
        return QSize(chip_width(self.font(), self.label()) + self._extra(), chip_height(self.font()))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def _extra(self) -> int:
        return 0

    def _paint(self, painter: QPainter, tone: Tone) -> str:
        tokens = tokens_of(self)
        ground, ink = tone_colours(tone, tokens)
        edge = ink if self.underMouse() else ""
        draw_panel(painter, self.rect(), ground, radius=self.height() / 2, edge=edge)
        place = QRectF(self.rect()).adjusted(Space.M - 2, 0, -(Space.M - 2), 0)
        draw_line(painter, place, self.label(), font=self.font(), ink=ink, align=LEFT)
        if self.hasFocus():
            draw_focus(painter, self.rect(), ink, radius=self.height() / 2)
        return ink


class ChoiceChip(_PressChip):
    """A chip to switch on and off; in an exclusive QButtonGroup, one of several."""

    def __init__(self, text: str, tone: Tone = Tone.PLAIN, *, parent: QWidget | None = None) -> None:
        super().__init__(text, tone, parent)
        self.setCheckable(True)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        self._paint(painter, Tone.SELECTED if self.isChecked() else self._tone)
        painter.end()


class ActionChip(_PressChip):
    """A chip that does something at once, such as “+ add”."""

    def __init__(self, text: str, tone: Tone = Tone.PLAIN, *, parent: QWidget | None = None) -> None:
        super().__init__(text, tone, parent)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        self._paint(painter, self._tone)
        painter.end()


class RemovableChip(_PressChip):
    """A chip with a cross; pressing it anywhere (or Delete) asks to take it away through `clicked`."""

    def __init__(self, text: str, tone: Tone = Tone.FAIR, *, parent: QWidget | None = None) -> None:
        super().__init__(text, tone, parent)
        self.setAccessibleName(f"Remove {text}")

    def _extra(self) -> int:
        return _CROSS + Space.XS + 1

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        ink = self._paint(painter, self._tone)
        cross = pixmap(Icon.CLOSE, _CROSS, ink, ratio=self.devicePixelRatioF())
        painter.drawPixmap(self.width() - Space.S - _CROSS, (self.height() - _CROSS) // 2 + 1, cross)
        painter.end()
