"""The ribbon of weeks: one bar per week of a block, the present one in accent."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy, QWidget

from gui.theme import Radius, Space, TextRole, role_font, tokens_of
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, open_painter

_TALLEST = 38


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekMark:
    """One week: its label, its effort against the hardest week (0 to 1), whether it is the present one, and whether it
    is another one that is looked at.
    """

    label: str
    share: float
    spoken: str
    current: bool = False
    looked_at: bool = False


class EffortBars(QWidget):
    """Bars to look at and to choose a week with; `week_chosen` carries its place in the tuple."""

    week_chosen = Signal(int)

    def __init__(self, marks: tuple[WeekMark, ...] = (), *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bars: list[_WeekBar] = []
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(Space.XS + 2)
        self.setAccessibleName("Effort by week")
        self.show_weeks(marks)

    def show_weeks(self, marks: tuple[WeekMark, ...]) -> None:
        """Paint another block."""
        while len(self._bars) < len(marks):
            bar = _WeekBar(len(self._bars), self)
            bar.pressed_at.connect(self.week_chosen)
            self._row.addWidget(bar, 1)
            self._bars.append(bar)
        for at, bar in enumerate(self._bars):
            bar.setVisible(at < len(marks))
        for bar, mark in zip(self._bars, marks, strict=False):
            bar.show_mark(mark)


class _WeekBar(QAbstractButton):
    pressed_at = Signal(int)

    def __init__(self, place: int, parent: QWidget) -> None:
        super().__init__(parent)
        self._place = place
        self._mark = WeekMark(label="", share=0.0, spoken="")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.clicked.connect(self._pressed)

    def show_mark(self, mark: WeekMark) -> None:
        self._mark = mark
        seen = ", this week" if mark.current else ", looked at" if mark.looked_at else ""
        self.setAccessibleName(f"{mark.label}, {mark.spoken}{seen}")
        self.setToolTip(mark.spoken)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        else:
            super().keyPressEvent(event)  # arrows walk to the bar beside it

    def sizeHint(self) -> QSize:
        return QSize(56, _TALLEST + Space.XS + line_height(role_font(TextRole.SMALL)))

    def minimumSizeHint(self) -> QSize:
        return QSize(30, self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        tall = max(4.0, min(1.0, self._mark.share) * _TALLEST)
        bar = QRectF(0, _TALLEST - tall, self.width(), tall)
        fill = tokens.accent if self._mark.current else tokens.bar_quiet
        edge = tokens.accent if self._mark.looked_at else ""
        draw_panel(painter, bar, fill, radius=min(4.0, tall / 2), edge=edge, width=2.0)
        shown = self._mark.current or self._mark.looked_at
        role = TextRole.SMALL_STRONG if shown else TextRole.SMALL
        words = QRectF(0, _TALLEST + Space.XS, self.width(), self.height() - _TALLEST - Space.XS)
        ink = tokens.ink if shown or self.underMouse() else tokens.ink_soft
        draw_line(painter, words, self._mark.label, font=role_font(role), ink=ink, align=CENTRE)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()

    def _pressed(self) -> None:
        self.pressed_at.emit(self._place)
