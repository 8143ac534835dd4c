"""Bars that show a share: one meter, tables of labelled meters, and the split of a load.

A share is a number from 0 to 1 that somebody else computed; bars only draw it. To a screen reader a meter is a
progress bar.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QGridLayout, QProgressBar, QSizePolicy, QVBoxLayout, QWidget

from gui.theme import Family, Space, TextRole, family_colour, tokens_of
from gui.widgets.drawing import draw_panel, open_painter
from gui.widgets.steady import SteadyText
from gui.widgets.text import Ink, Text

_STEPS = 1000


class MeterBar(QProgressBar):
    """A thin bar filled to `share`; `name` and `value_text` are what is spoken."""

    def __init__(self, *, family: Family = Family.SQUAT, thickness: int = 7, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._family = family
        self._share = 0.0
        self.setRange(0, _STEPS)
        self.setTextVisible(False)
        self.setFixedHeight(thickness)
        self.setMinimumWidth(36)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_share(self, share: float, *, name: str = "", value_text: str = "") -> None:
        """Fill to `share` (0 to 1, held inside)."""
        self._share = min(1.0, max(0.0, share))
        _set_value(self, round(self._share * _STEPS))
        self.setAccessibleName(name)
        self.setAccessibleDescription(value_text)
        self.update()

    def show_family(self, family: Family) -> None:
        """Paint in the colour of another family."""
        self._family = family
        self.update()

    def share(self) -> float:
        """The share drawn."""
        return self._share

    def sizeHint(self) -> QSize:
        return QSize(96, self.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        radius = self.height() / 2
        draw_panel(painter, self.rect(), tokens.track, radius=radius)
        if self._share > 0:
            wide = max(float(self.height()) * 0.6, self._share * self.width())
            bar = QRectF(0, 0, wide, self.height())
            draw_panel(painter, bar, family_colour(self._family, tokens), radius=min(radius, wide / 2))
        painter.end()


@dataclass(frozen=True, slots=True, kw_only=True)
class BarRow:
    """One labelled bar: words, how far it is filled (0 to 1), what stands at its end."""

    label: str
    share: float
    value_text: str
    family: Family = Family.SQUAT


class BarTable(QWidget):
    """Labelled bars one below the other, in three columns that line up; rows are reused, so it may follow a drag."""

    def __init__(
        self, rows: tuple[BarRow, ...] = (), *, role: TextRole = TextRole.SMALL, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._role = role
        self._lines: list[tuple[SteadyText, MeterBar, SteadyText]] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(Space.M)
        self._grid.setVerticalSpacing(Space.S - 1)
        self._grid.setColumnStretch(1, 1)
        self.show_rows(rows)

    def show_rows(self, rows: tuple[BarRow, ...]) -> None:
        """Paint other rows."""
        while len(self._lines) < len(rows):
            self._add_line()
        for at, line in enumerate(self._lines):
            for widget in line:
                widget.setVisible(at < len(rows))
        for (label, bar, value), row in zip(self._lines, rows, strict=False):
            label.setText(row.label)
            value.setText(row.value_text)
            bar.show_family(row.family)
            bar.show_share(row.share, name=row.label, value_text=row.value_text)

    def _add_line(self) -> None:
        at = len(self._lines)
        label = SteadyText(self._role, hold=True, parent=self)
        bar = MeterBar(parent=self)
        value = SteadyText(self._role, Ink.SOFT, hold=True, right=True, parent=self)
        for column, widget in enumerate((label, bar, value)):
            self._grid.addWidget(
                widget, at, column, Qt.AlignmentFlag(0) if column != 1 else Qt.AlignmentFlag.AlignVCenter
            )
        self._lines.append((label, bar, value))


class BudgetBars(BarTable):
    """Where the ± comes from: one row per contributor, largest first, as given."""

    def __init__(self, rows: tuple[BarRow, ...] = (), *, parent: QWidget | None = None) -> None:
        super().__init__(rows, role=TextRole.BODY, parent=parent)
        self.setAccessibleName("Where the ± comes from")


class ClosenessBars(QWidget):
    """How close a swap is: a total on top, its parts as bars below."""

    def __init__(self, total_text: str = "", rows: tuple[BarRow, ...] = (), *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("How close")
        head = QGridLayout()
        head.setColumnStretch(0, 1)
        self._total = Text(total_text, TextRole.SMALL_STRONG, parent=self)
        head.addWidget(Text("how close", TextRole.SMALL, Ink.SOFT, parent=self), 0, 0)
        head.addWidget(self._total, 0, 1)
        self._bars = BarTable(rows, role=TextRole.TINY, parent=self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XS)
        column.addLayout(head)
        column.addWidget(self._bars)

    def show_closeness(self, total_text: str, rows: tuple[BarRow, ...]) -> None:
        """Paint another answer's closeness."""
        self._total.setText(total_text)
        self._bars.show_rows(rows)


class LoadBar(QProgressBar):
    """One bar split in two: contents in accent, the empty container in outline; the words below say the same."""

    def __init__(self, *, thickness: int = 10, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._share = 0.0
        self.setRange(0, _STEPS)
        self.setTextVisible(False)
        self.setFixedHeight(thickness)
        self.setAccessibleName("Contents and container")

    def show_split(self, contents_share: float, spoken: str) -> None:
        """`contents_share` of the whole load is contents (0 to 1); `spoken` is the split in words."""
        self._share = min(1.0, max(0.0, contents_share))
        _set_value(self, round(self._share * _STEPS))
        self.setAccessibleDescription(spoken)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        radius = self.height() / 2
        draw_panel(painter, self.rect(), tokens.outline, radius=radius)
        if self._share > 0:
            painter.setClipRect(QRectF(0, 0, self._share * self.width(), self.height()))
            draw_panel(painter, self.rect(), tokens.accent, radius=radius)
        painter.end()


def _set_value(bar: QProgressBar, value: int) -> None:
    """Tell a screen reader the value. A progress bar repaints at once when its value changes, which a drag can't wait
    for; so it is held back, and painted with everything else.
    """
    bar.setUpdatesEnabled(False)
    bar.setValue(value)
    bar.setUpdatesEnabled(True)
