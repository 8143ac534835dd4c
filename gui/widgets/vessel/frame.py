"""Where a vessel stands inside a rectangle: one scale for both directions, so it is drawn in true proportion."""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from gui.widgets.vessel.picture import Handle, Silhouette, Top

_TOP_SHARES = {Top.CAP: 0.05, Top.SPOUT: 0.05, Top.LID: 0.04, Top.TIED: 0.06}
"""Height of what closes a vessel, as a share of the vessel's."""
_ROUNDING_CM = 1.8


def _headroom_cm(silhouette: Silhouette) -> float:
    """What is drawn above the rim: cap or handle."""
    cap = _TOP_SHARES.get(silhouette.top, 0.0) * silhouette.rim_cm
    arches = {Handle.BAIL: 0.9 * silhouette.outline[-1][0], Handle.TOP: 0.5 * silhouette.outline[-1][0]}
    return max(cap, arches.get(silhouette.handle, 0.0))


def _overhang_cm(silhouette: Silhouette) -> float:
    """What stands out at the side beyond the widest place; a handle on a shoulder hardly does."""
    side = 0.3 if _is_straight(silhouette) else 0.12
    return {Handle.SIDE: side, Handle.EARS: 0.22}.get(silhouette.handle, 0.0) * silhouette.widest_cm


def _is_straight(silhouette: Silhouette) -> bool:
    """Whether it is about as wide at the rim as anywhere."""
    return silhouette.outline[-1][0] > 0.9 * silhouette.widest_cm


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselFrame:
    """Scale (pixels per cm), the axis and the base line; turns centimetres into points and back."""

    silhouette: Silhouette
    scale: float
    axis_x: float
    base_y: float

    @classmethod
    def inside(cls, silhouette: Silhouette, area: QRectF) -> VesselFrame:
        """The largest upright vessel that fits into `area`, centred, standing in its middle."""
        tall = silhouette.rim_cm + _headroom_cm(silhouette)
        wide = 2 * (silhouette.widest_cm + _overhang_cm(silhouette))
        scale = max(0.1, min(area.height() / tall, area.width() / wide))
        base = area.bottom() - (area.height() - tall * scale) / 2
        return cls(silhouette=silhouette, scale=scale, axis_x=area.center().x(), base_y=base)

    def y_of(self, height_cm: float) -> float:
        """The y of a height above the base."""
        return self.base_y - height_cm * self.scale

    def height_of(self, y: float) -> float:
        """The height at a y, held between base and rim."""
        return min(self.silhouette.rim_cm, max(0.0, (self.base_y - y) / self.scale))

    def point(self, half_cm: float, height_cm: float) -> QPointF:
        """A point right of the axis; a negative half width lies left."""
        return QPointF(self.axis_x + half_cm * self.scale, self.y_of(height_cm))

    def right_x(self, height_cm: float) -> float:
        """The right wall at a height."""
        return self.axis_x + self.silhouette.half_width_at(height_cm) * self.scale

    def widest_left_x(self) -> float:
        """The left edge of the widest place."""
        return self.axis_x - self.silhouette.widest_cm * self.scale

    def widest_right_x(self) -> float:
        """The right edge of the widest place, handle included."""
        return self.axis_x + (self.silhouette.widest_cm + _overhang_cm(self.silhouette)) * self.scale

    def body(self) -> QPainterPath:
        """The closed outline with softly rounded corners, rim corners sharp."""
        right = [self.point(half, height) for half, height in self.silhouette.outline]
        left = [self.point(-half, height) for half, height in reversed(self.silhouette.outline)]
        points = right + left
        rim = {len(right) - 1, len(right)}
        return _rounded(points, sharp=rim, radius=_ROUNDING_CM * self.scale)

    def cap(self) -> QRectF:
        """What closes it, on the rim; of no height where it stands open."""
        silhouette = self.silhouette
        rim = silhouette.outline[-1][0]
        widths = {
            Top.CAP: 0.78 * rim,
            Top.SPOUT: 0.22 * silhouette.widest_cm,
            Top.LID: rim + 0.05 * silhouette.widest_cm,
            Top.TIED: 0.3 * rim,
        }
        half = widths.get(silhouette.top, 0.0) * self.scale
        tall = _TOP_SHARES.get(silhouette.top, 0.0) * silhouette.rim_cm * self.scale
        return QRectF(self.axis_x - half, self.y_of(self.silhouette.rim_cm) - tall, 2 * half, tall + 1)

    def handle(self) -> QPainterPath:
        """The middle line of the handle, empty when there is none."""
        makers = {
            Handle.SIDE: self._side_handle,
            Handle.BAIL: self._bail,
            Handle.TOP: self._top_handle,
            Handle.EARS: self._ears,
        }
        maker = makers.get(self.silhouette.handle)
        return maker() if maker else QPainterPath()

    def _side_handle(self) -> QPainterPath:
        silhouette = self.silhouette
        shoulder, rim = silhouette.shoulder_cm(), silhouette.rim_cm
        if _is_straight(silhouette):
            return self._loop(0.82 * rim, 0.35 * rim)
        high = shoulder + 0.6 * (rim - shoulder)
        start = self.point(silhouette.half_width_at(high), high)
        low = max(0.0, shoulder - 0.03 * rim)
        end = self.point(silhouette.half_width_at(low) - 0.04 * silhouette.widest_cm, low)
        out = end.x() + 0.04 * silhouette.widest_cm * self.scale
        path = QPainterPath(start)
        path.cubicTo(QPointF(start.x() + 0.62 * (out - start.x()), start.y()), QPointF(out, start.y()), end)
        return path

    def _loop(self, high_cm: float, low_cm: float, side: float = 1.0) -> QPainterPath:
        """A handle standing out from a straight wall."""
        reach = 0.8 * _overhang_cm(self.silhouette)
        top_half, low_half = self.silhouette.half_width_at(high_cm), self.silhouette.half_width_at(low_cm)
        path = QPainterPath(self.point(side * top_half, high_cm))
        path.cubicTo(
            self.point(side * (top_half + 1.5 * reach), high_cm),
            self.point(side * (low_half + 1.5 * reach), low_cm),
            self.point(side * low_half, low_cm),
        )
        return path

    def _ears(self) -> QPainterPath:
        rim = self.silhouette.rim_cm
        path = self._loop(0.86 * rim, 0.66 * rim)
        path.addPath(self._loop(0.86 * rim, 0.66 * rim, side=-1.0))
        return path

    def _bail(self) -> QPainterPath:
        half, rim = self.silhouette.outline[-1]
        return self._arch(half, rim, 0.85 * half)

    def _top_handle(self) -> QPainterPath:
        half, rim = self.silhouette.outline[-1]
        return self._arch(0.7 * half, rim, 0.45 * half)

    def _arch(self, half_cm: float, foot_cm: float, rise_cm: float) -> QPainterPath:
        path = QPainterPath(self.point(-half_cm, foot_cm))
        top = foot_cm + rise_cm * 4 / 3
        path.cubicTo(self.point(-half_cm, top), self.point(half_cm, top), self.point(half_cm, foot_cm))
        return path


def _rounded(points: list[QPointF], *, sharp: set[int], radius: float) -> QPainterPath:
    """A closed path through `points` with each corner rounded, as far as its neighbours leave room."""
    path = QPainterPath()
    count = len(points)
    for at, corner in enumerate(points):
        reach = 0.0 if at in sharp else radius
        before = _towards(corner, points[at - 1], reach)
        after = _towards(corner, points[(at + 1) % count], reach)
        if at == 0:
            path.moveTo(before)
        else:
            path.lineTo(before)
        path.quadTo(corner, after)
    path.closeSubpath()
    return path


def _towards(start: QPointF, end: QPointF, reach: float) -> QPointF:
    """The point `reach` from `start` on the way to `end`, at most half way."""
    long = math.hypot(end.x() - start.x(), end.y() - start.y())
    share = min(0.5, reach / long) if long > 0 else 0.0
    return start + (end - start) * share
