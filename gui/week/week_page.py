"""One week on a page: ribbon, seven days as columns, three cards below; the whole scrolls, an opened block is docked.

The columns are as high as their longest day, and take what room is left over in a large window.
"""

from __future__ import annotations

from PySide6.QtCore import QPoint, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Space
from gui.week.detail import DetailCard
from gui.week.detail_words import DetailView
from gui.week.kept_strip import KeptStrip
from gui.week.parts import ChecksCard, FillsCard, TrainedCard
from gui.week.preview_bar import PreviewBar
from gui.week.results_panel import ResultsPanel
from gui.week.ribbon import Ribbon
from gui.widgets import BlockCard, DayColumn, DayView
from gui.widgets.page import GUTTER, PageScroll

REST_SHARE, DAY_SHARE = 3, 4
LEAST_HEIGHT = 300
DOCK_SHARE = 0.45
"""The most of the height that opened details take; what is longer scrolls."""


class WeekPage(QWidget):
    """`block_wanted` (shown id), `menu_wanted` (shown id, where on the screen), `day_wanted` (weekday), and
    `move_wanted` (weekday a session is on, weekday it should go to).
    """

    block_wanted = Signal(str)
    menu_wanted = Signal(str, QPoint)
    day_wanted = Signal(int)
    move_wanted = Signal(int, int)

    def __init__(self, ribbon: Ribbon, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.ribbon = ribbon
        self.preview = PreviewBar()
        self.results = ResultsPanel()
        self.kept = KeptStrip()
        self.columns = tuple(DayColumn() for _ in range(7))
        self.trained, self.fills, self.checks = TrainedCard(), FillsCard(), ChecksCard()
        self.detail = DetailCard()
        self._dock = PageScroll(self.detail)
        self.detail.reshaped.connect(self._fit_dock)
        self._days = QHBoxLayout()
        self._scroll = PageScroll(self._inner())
        self._arrange()
        for weekday, column in enumerate(self.columns):
            column.setProperty("weekday", weekday)
            column.block_chosen.connect(self.block_wanted)
            column.block_menu_wanted.connect(self.menu_wanted)
            column.head_chosen.connect(self._day_pressed)
            column.beside_wanted.connect(self._walk)
            column.dragged.connect(self._drag)
            column.dropped.connect(self._drop)
            column.drag_ended.connect(self._end_drag)
            column.shifted.connect(self._shift)

    def show_days(self, views: tuple[DayView, ...], *, movable: bool) -> None:
        """Paint seven days, with sessions to drag or not; the keyboard stays where it was."""
        before = self._focused()
        for at, (column, view) in enumerate(zip(self.columns, views, strict=True)):
            column.show_day(view)
            column.set_movable(movable and not view.rest)
            self._days.setStretch(at, REST_SHARE if view.rest else DAY_SHARE)
        if before is not None:
            self.columns[before[0]].take_focus(before[1])

    def open_detail(self, view: DetailView, shown_id: str, *, changeable: bool, markable: bool) -> None:
        """Dock the details of a block or a day below the week."""
        self.detail.show_detail(view, changeable=changeable, markable=markable)
        self._dock.show()
        self._fit_dock()
        self._dock.verticalScrollBar().setValue(0)
        for column in self.columns:
            column.show_open(shown_id)
        card = self.card(shown_id)
        if card is not None:
            self._scroll.ensureWidgetVisible(card, 0, Space.L)

    def close_detail(self) -> None:
        """Take the details away; the keyboard goes back to the block they were of."""
        opened = next((card for card in self._cards() if card.is_open()), None)
        focused = QApplication.focusWidget()
        within = focused is not None and self.detail.isAncestorOf(focused)
        self._dock.hide()
        for column in self.columns:
            column.show_open("")
        if opened is not None and within:
            opened.setFocus()

    def card(self, shown_id: str) -> BlockCard | None:
        """The card of a block."""
        return next((card for card in self._cards() if card.view().block_id == shown_id), None)

    def _cards(self) -> list[BlockCard]:
        return [card for column in self.columns for card in column.cards()]

    def _inner(self) -> QWidget:
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        self._days.setSpacing(Space.S - 2)
        for day in self.columns:
            day.setMinimumHeight(LEAST_HEIGHT)
            self._days.addWidget(day, DAY_SHARE)
        parts = QHBoxLayout()
        parts.setSpacing(Space.M)
        for part, share in ((self.trained, 11), (self.fills, 10), (self.checks, 10)):
            parts.addWidget(part, share)
        for widget in (self.ribbon, self.preview, self.results, self.kept):
            column.addWidget(widget)
        column.addLayout(self._days, 1)
        column.addLayout(parts)
        self.preview.hide()
        return inner

    def _arrange(self) -> None:
        self._dock.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addWidget(self._scroll, 1)
        column.addWidget(self._dock)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_dock()

    def _fit_dock(self) -> None:
        """As high as the details need at this width, up to a share of the page."""
        if self._dock.isHidden():
            return
        wanted = self.detail.heightForWidth(self.width() - GUTTER)
        self._dock.setFixedHeight(max(0, min(wanted, round(DOCK_SHARE * self.height()))))

    def _focused(self) -> tuple[int, int] | None:
        for at, column in enumerate(self.columns):
            for row, card in enumerate(column.cards()):
                if card.hasFocus():
                    return at, row
        return None

    def _day_pressed(self) -> None:
        self.day_wanted.emit(int(self.sender().property("weekday")))

    def _day_at(self, place: QPoint) -> int | None:
        """The day below a place on the screen."""
        inside = (at for at, column in enumerate(self.columns) if column.rect().contains(column.mapFromGlobal(place)))
        return next(inside, None)

    def _drag(self, place: QPoint) -> None:
        source, target = int(self.sender().property("weekday")), self._day_at(place)
        for at, column in enumerate(self.columns):
            column.show_target(at == target and at != source)

    def _end_drag(self) -> None:
        for column in self.columns:
            column.show_target(False)

    def _drop(self, place: QPoint) -> None:
        source, target = int(self.sender().property("weekday")), self._day_at(place)
        if target is not None and target != source:
            self.move_wanted.emit(source, target)

    def _shift(self, step: int) -> None:
        source = int(self.sender().property("weekday"))
        if 0 <= source + step < len(self.columns):
            self.move_wanted.emit(source, source + step)

    def _walk(self, step: int, row: int) -> None:
        """Go on to the next day that has blocks."""
        at = int(self.sender().property("weekday")) + step
        while 0 <= at < len(self.columns):
            if self.columns[at].take_focus(row):
                self._scroll.ensureWidgetVisible(self.columns[at].cards()[0], 0, Space.L)
                return
            at += step
