"""The vessel one can fill by hand: drag its line, or move it with the keys or the wheel.

A slider to every screen reader. It only paints what it is shown and says what the hand wants; what the new height
weighs is for its owner to find out and to show.
"""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, QSignalBlocker, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPixmap,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractSlider, QSizePolicy, QWidget

from gui.theme import TextRole, Tokens, role_font, tokens_of
from gui.widgets.drawing import draw_line, line_height, open_painter, text_width
from gui.widgets.text import announce
from gui.widgets.vessel.frame import VesselFrame
from gui.widgets.vessel.gauge import KNOB, Label, paint_dimension, paint_knob, paint_marks, paint_reading, scale_labels
from gui.widgets.vessel.painter import paint_contents_text, paint_empty, paint_fill
from gui.widgets.vessel.picture import EMPTY, ScaleTick, Silhouette, VesselFill

_MM_PER_CM = 10
_SETTLE_MS = 300
_GRIP = 16.0
_SCALE_GAP = 36.0
_LEFT_ROOM = 52.0

_PLAIN = Silhouette(outline=((10.0, 0.0), (10.0, 30.0)))


class VesselView(QAbstractSlider):
    """`height_changed` (cm) with every move of the hand, `height_committed` (cm) once it rests. `show_*` only paint."""

    height_changed = Signal(float)
    height_committed = Signal(float)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._silhouette = _PLAIN
        self._fill = EMPTY
        self._ticks: tuple[ScaleTick, ...] = ()
        self._scale_caption = ""
        self._height_cm = 0.0
        self._limit_cm = _PLAIN.rim_cm
        self._steps_cm = (0.1, 1.0)
        self._grip_offset = 0.0
        self._dragging = False
        self._pending = False
        self.setOrientation(Qt.Orientation.Vertical)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMouseTracking(True)
        self.setAccessibleName("Fill line")
        self._body_font, self._heading_font = role_font(TextRole.BODY), role_font(TextRole.HEADING)
        self._label_font, self._mass_font = role_font(TextRole.SMALL), role_font(TextRole.STRONG)
        self._labels: tuple[Label, ...] = ()
        self._usual_width = text_width(self._mass_font, "88.8 kg ± 0.8")
        self._mass_width = 0
        self._framed: tuple[object, VesselFrame, QPainterPath] | None = None
        self._still: tuple[object, QPixmap] | None = None
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(_SETTLE_MS)
        self._settle.timeout.connect(self._commit)
        self.valueChanged.connect(self._set_by_reader)
        self.show_vessel(_PLAIN)

    # --- what it shows ---

    def show_vessel(self, silhouette: Silhouette, *, limit_cm: float | None = None, name: str = "") -> None:
        """Another vessel; its line can be moved from the base up to `limit_cm` (the rim when not given)."""
        self._silhouette = silhouette
        self._still = None
        self._limit_cm = silhouette.rim_cm if limit_cm is None else limit_cm
        with QSignalBlocker(self):
            self.setRange(0, round(self._limit_cm * _MM_PER_CM))
        self.setAccessibleName(f"Fill line of {name}" if name else "Fill line")
        self.update()

    def show_fill(self, fill: VesselFill) -> None:
        """Another fill; while the hand holds the line, its height stays where the hand is."""
        if fill.mass_text != self._fill.mass_text:
            self._mass_width = text_width(self._mass_font, fill.mass_text)
        self._fill = fill
        if not self._dragging:
            self._height_cm = fill.height_cm
            self._tell_slider()
        self.setAccessibleDescription(fill.spoken)
        self.update()

    def show_scale(self, ticks: tuple[ScaleTick, ...], caption: str = "what it weighs") -> None:
        """Another scale beside the vessel; none hides it."""
        self._ticks = ticks
        self._still = None
        self._scale_caption = caption
        self.updateGeometry()
        self.update()

    def set_steps(self, single_cm: float, page_cm: float) -> None:
        """How far one arrow key or wheel notch, and one page key, move the line."""
        self._steps_cm = (single_cm, page_cm)

    def height_cm(self) -> float:
        """Where the line stands."""
        return self._height_cm

    def is_dragging(self) -> bool:
        """Whether the hand holds the line."""
        return self._dragging

    def line_point(self) -> QPointF:
        """The middle of the grip, in widget coordinates."""
        frame = self._frame()
        return QPointF(frame.right_x(self._height_cm), frame.y_of(self._height_cm))

    def y_of_height(self, height_cm: float) -> float:
        """The y at which a height is drawn."""
        return self._frame().y_of(height_cm)

    # --- the hand ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is not Qt.MouseButton.LeftButton or not self._reaches(event.position()):
            event.ignore()
            return
        line_y = self.line_point().y()
        grabbed = abs(event.position().y() - line_y) <= _GRIP
        self._grip_offset = event.position().y() - line_y if grabbed else 0.0
        self._dragging = True
        self._move(self._frame().height_of(event.position().y() - self._grip_offset))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._dragging:
            self._move(self._frame().height_of(event.position().y() - self._grip_offset))
            return
        over = self._reaches(event.position())
        self.setCursor(Qt.CursorShape.SizeVerCursor if over else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._dragging and event.button() is Qt.MouseButton.LeftButton:
            self._dragging = False
            self._commit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        notches = event.angleDelta().y() / 120
        if notches:
            self._move(self._height_cm + notches * self._steps_cm[0])
            self._settle.start()
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        goal = self._goal(Qt.Key(event.key()))
        if goal is None:
            event.ignore()
            return
        self._move(goal)
        self._settle.start()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._commit()
        self.update()

    def _goal(self, key: Qt.Key) -> float | None:
        single, page = self._steps_cm
        moves = {
            Qt.Key.Key_Up: self._height_cm + single,
            Qt.Key.Key_Right: self._height_cm + single,
            Qt.Key.Key_Down: self._height_cm - single,
            Qt.Key.Key_Left: self._height_cm - single,
            Qt.Key.Key_PageUp: self._height_cm + page,
            Qt.Key.Key_PageDown: self._height_cm - page,
            Qt.Key.Key_Home: 0.0,
            Qt.Key.Key_End: self._limit_cm,
        }
        return moves.get(key)

    def _move(self, height_cm: float) -> None:
        held = min(self._limit_cm, max(0.0, height_cm))
        if held == self._height_cm:
            return
        self._height_cm = held
        self._pending = True
        self._tell_slider()
        self.update()
        self.height_changed.emit(held)

    def _commit(self) -> None:
        self._settle.stop()
        if not self._pending:
            return
        self._pending = False
        self.height_committed.emit(self._height_cm)
        announce(self, self._fill.spoken)

    def _tell_slider(self) -> None:
        with QSignalBlocker(self):
            self.setValue(round(self._height_cm * _MM_PER_CM))

    def _set_by_reader(self, value: int) -> None:
        """A screen reader moved the slider."""
        self._move(value / _MM_PER_CM)
        self._commit()

    def _reaches(self, at: QPointF) -> bool:
        """Whether a press there takes the line: the grip, or anywhere inside the vessel."""
        frame, line = self._frame(), self.line_point()
        if abs(at.x() - line.x()) <= KNOB + 4 and abs(at.y() - line.y()) <= KNOB + 4:
            return True
        inside = frame.y_of(self._silhouette.rim_cm) <= at.y() <= frame.base_y
        return inside and abs(at.x() - frame.axis_x) <= self._silhouette.widest_cm * frame.scale

    # --- painting ---

    def sizeHint(self) -> QSize:
        return QSize(620, 600)

    def minimumSizeHint(self) -> QSize:
        return QSize(round(_LEFT_ROOM + 130 + self._right_room()), 260)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, frame, fill = tokens_of(self), self._frame(), self._held_fill()
        painter = open_painter(self)
        painter.drawPixmap(0, 0, self._still_picture(frame, tokens))
        paint_fill(painter, frame, self._body(), fill, tokens)
        paint_contents_text(painter, frame, fill, self._heading_font, tokens)
        if fill.height_text:
            paint_dimension(painter, frame.widest_left_x() - 24, frame, fill, self._body_font, tokens)
        if self._ticks:
            paint_reading(painter, self._scale_x(frame), frame, self._labels, fill, self._mass_font, tokens)
        paint_knob(painter, self.line_point(), fill, tokens, focused=self.hasFocus())
        painter.end()

    def _still_picture(self, frame: VesselFrame, tokens: Tokens) -> QPixmap:
        """The empty vessel and its scale, kept: a drag moves only the fill."""
        ratio = self.devicePixelRatioF()
        key = (frame, tokens.dark, ratio, self.width(), self.height())
        if self._still is None or self._still[0] != key:
            picture = QPixmap(round(self.width() * ratio), round(self.height() * ratio))
            picture.setDevicePixelRatio(ratio)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_empty(painter, frame, self._body(), tokens)
            self._paint_scale(painter, frame, tokens)
            painter.end()
            self._still = (key, picture)
        return self._still[1]

    def _paint_scale(self, painter: QPainter, frame: VesselFrame, tokens: Tokens) -> None:
        if not self._ticks:
            return
        x, small = self._scale_x(frame), self._label_font
        self._labels = scale_labels(x, frame, self._ticks, small)
        paint_marks(painter, x, frame, self._ticks, small, tokens)
        top = frame.y_of(max(tick.height_cm for tick in self._ticks)) - 2 * line_height(small)
        place = QRectF(x, top, self.width() - x, line_height(small))
        draw_line(painter, place, self._scale_caption, font=small, ink=tokens.ink_soft)

    def _held_fill(self) -> VesselFill:
        """The fill as shown, with the line where the hand holds it."""
        return replace(self._fill, height_cm=self._height_cm)

    def _scale_x(self, frame: VesselFrame) -> float:
        return max(frame.widest_right_x(), frame.right_x(self._silhouette.shoulder_cm()) + KNOB) + _SCALE_GAP

    def _frame(self) -> VesselFrame:
        """The vessel between its dimension line and its scale."""
        right = self._right_room()
        key = (self._silhouette, self.width(), self.height(), right)
        if self._framed is None or self._framed[0] != key:
            wide, tall = max(40.0, self.width() - _LEFT_ROOM - right), max(60.0, self.height() - 36)
            frame = VesselFrame.inside(self._silhouette, QRectF(_LEFT_ROOM, 18, wide, tall))
            self._framed = (key, frame, frame.body())
        return self._framed[1]

    def _body(self) -> QPainterPath:
        """The outline in that frame."""
        self._frame()
        return QPainterPath() if self._framed is None else self._framed[2]

    def _right_room(self) -> float:
        return _SCALE_GAP + 46 + KNOB + self._label_width() if self._ticks else KNOB + 20

    def _label_width(self) -> float:
        """Room for the widest words beside the scale, whatever the mass in hand."""
        return max(self._usual_width, self._mass_width) + 20
