"""The ladder of loads one can climb: arrow keys or the pointer walk its rungs.

A slider to a screen reader (its value is the rung's place), with the load and its recipe as the description.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPixmap, QWheelEvent
from PySide6.QtWidgets import QAbstractSlider, QSizePolicy, QWidget

from gui.theme import TextRole, role_font, tokens_of
from gui.widgets.drawing import draw_line, open_painter
from gui.widgets.ladder.lying import Lying
from gui.widgets.ladder.rung import RungMark, spoken
from gui.widgets.ladder.upright import Upright
from gui.widgets.text import announce
from gui.widgets.twin import Twin

_PAGE = 5


class LadderView(QAbstractSlider):
    """`rung_chosen` carries the place of the rung walked to, `rung_taken` the one entered or double-clicked.

    Rungs go from the lightest to the heaviest. Vertical for reading recipes (put it into a scroll area), horizontal
    as a strip; `empty_text` stands there instead of a ladder without rungs.
    """

    rung_chosen = Signal(int)
    rung_taken = Signal(int)

    def __init__(
        self,
        orientation: Qt.Orientation = Qt.Orientation.Vertical,
        *,
        empty_text: str = "No load yet.",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._empty_text = empty_text
        self._rungs: tuple[RungMark, ...] = ()
        self._current = -1
        self._lay: Upright | Lying = Upright.of(())
        self._wanted_kg = (0.0, 0.0)
        self._still: tuple[object, QPixmap] | None = None
        self.setOrientation(orientation)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Ladder of loads")
        self.valueChanged.connect(self._set_by_reader)
        self.show_rungs(())

    def show_rungs(self, rungs: tuple[RungMark, ...], current: int = -1) -> None:
        """Another ladder, the lightest rung first; `current` is the rung in use, -1 for none."""
        self._rungs = rungs
        upright = self.orientation() is Qt.Orientation.Vertical
        self._lay = Upright.of(rungs) if upright else Lying.of(rungs)
        self._still = None
        vertical = QSizePolicy.Policy.MinimumExpanding if upright else QSizePolicy.Policy.Fixed
        self.setSizePolicy(QSizePolicy.Policy.Expanding, vertical)
        with QSignalBlocker(self):
            self.setRange(0, max(0, len(rungs) - 1))
        self.show_current(current)
        self.updateGeometry()

    def show_current(self, current: int) -> None:
        """Mark another rung without telling anyone."""
        self._current = current if 0 <= current < len(self._rungs) else -1
        with QSignalBlocker(self):
            self.setValue(max(0, self._current))
        self.setAccessibleDescription(spoken(self._rungs, self._current))
        self.update()

    def show_wanted(self, low_kg: float, high_kg: float) -> None:
        """Mark the loads that would do on a lying ladder; (0, 0) for none."""
        self._wanted_kg = (low_kg, high_kg)
        self._still = None
        self.update()

    def current(self) -> int:
        """The rung in use, -1 for none."""
        return self._current

    def twin(self) -> Twin:
        """The ladder as a table, heaviest first as it is drawn."""
        rows = tuple((rung.load_text, rung.step_text, rung.recipe) for rung in reversed(self._rungs))
        return Twin(caption="Loads you can make", columns=("load", "step", "how"), rows=rows)

    def rung_point(self, at: int) -> QPointF:
        """A point on a rung, in widget coordinates."""
        if isinstance(self._lay, Upright):
            return QPointF(38, self._lay.y_of(at, self.height()))
        return QPointF(self._lay.x_of(at, self.width()), self.height() / 2)

    def sizeHint(self) -> QSize:
        return self._lay.size()

    def minimumSizeHint(self) -> QSize:
        return QSize(200, self.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space} and self._current >= 0:
            self.rung_taken.emit(self._current)
            return
        goal = self._goal(Qt.Key(event.key()))
        if goal is None:
            event.ignore()
            return
        self._walk(goal)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A ladder often stands in a scroll area, which keeps the wheel."""
        event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.LeftButton and self._rungs:
            self._walk(self._rung_at(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton and self._rungs:
            self._walk(self._rung_at(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if self._current >= 0:
            self.rung_taken.emit(self._current)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        if not self._rungs:
            font, ink = role_font(TextRole.BODY), tokens_of(self).ink_soft
            draw_line(painter, self.rect(), self._empty_text, font=font, ink=ink)
        focused, tokens = self.hasFocus(), tokens_of(self)
        if isinstance(self._lay, Lying):
            painter.drawPixmap(0, 0, self._still_picture(self._lay))
            self._lay.paint_current(painter, self.width(), self._current, tokens, focused=focused)
        else:
            area, seen = QRectF(self.rect()), QRectF(event.rect())
            self._lay.paint(painter, area, self._current, tokens, focused=focused, seen=seen)
        painter.end()

    def _still_picture(self, lay: Lying) -> QPixmap:
        """The strip without the rung in use, kept: that alone moves while a fill line is dragged."""
        tokens, ratio = tokens_of(self), self.devicePixelRatioF()
        key = (tokens.dark, ratio, self.width(), self.height())
        if self._still is None or self._still[0] != key:
            picture = QPixmap(round(self.width() * ratio), round(self.height() * ratio))
            picture.setDevicePixelRatio(ratio)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            lay.paint_still(painter, self.width(), tokens, self._wanted_kg)
            painter.end()
            self._still = (key, picture)
        return self._still[1]

    def _goal(self, key: Qt.Key) -> int | None:
        moves = {
            Qt.Key.Key_Up: self._current + 1,
            Qt.Key.Key_Right: self._current + 1,
            Qt.Key.Key_Down: self._current - 1,
            Qt.Key.Key_Left: self._current - 1,
            Qt.Key.Key_PageUp: self._current + _PAGE,
            Qt.Key.Key_PageDown: self._current - _PAGE,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: len(self._rungs) - 1,
        }
        return moves.get(key)

    def _walk(self, goal: int) -> None:
        held = min(len(self._rungs) - 1, max(0, goal))
        if not self._rungs or held == self._current:
            return
        self.show_current(held)
        words = spoken(self._rungs, held)  # whoever listens may show another ladder
        self.rung_chosen.emit(held)
        announce(self, words)

    def _set_by_reader(self, value: int) -> None:
        self._walk(value)

    def _rung_at(self, at: QPointF) -> int:
        if isinstance(self._lay, Upright):
            return self._lay.rung_at(at.y(), self.height())
        return self._lay.rung_at(at.x(), self.width())
