"""The pictures Fillmark draws with: one typed list of names, and a loader that tints them.

A picture is an SVG file of ours in `resources/icons`, drawn in `currentColor` (ink), `var(--accent)` (the load or thing
that matters) and `var(--ground)` (what lies behind, to hide a line). Colours are put in when a pixmap is made, at the
device pixel ratio asked for, so a picture is sharp at 200 % and right in both themes. Qt's pixmap cache keeps them.
"""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap, QPixmapCache
from PySide6.QtSvg import QSvgRenderer

_FOLDER = Path(__file__).resolve().parents[2] / "resources" / "icons"


class Icon(StrEnum):
    """Small signs for the window itself."""

    HOUSE = "nav-house"
    VESSEL = "nav-vessel"
    SWAP = "nav-swap"
    CALENDAR = "nav-calendar"
    CLOCK = "nav-clock"
    TREND = "nav-trend"
    PEOPLE = "nav-people"
    GEAR = "nav-gear"
    MARK = "mark"
    PLUS = "sign-plus"
    MINUS = "sign-minus"
    CLOSE = "sign-close"
    CHECK = "sign-check"
    CAUTION = "sign-caution"
    SEARCH = "sign-search"
    UNDO = "sign-undo"
    PENCIL = "sign-pencil"
    PRINTER = "sign-printer"
    CHEVRON_DOWN = "sign-chevron-down"
    CHEVRON_RIGHT = "sign-chevron-right"
    TABLE = "sign-table"
    PIN = "sign-pin"


class ThingPicture(StrEnum):
    """Line drawings of what stands about in a house."""

    JUG = "thing-jug"
    BOTTLE = "thing-bottle"
    BUCKET = "thing-bucket"
    TIN = "thing-tin"
    SACK = "thing-sack"
    BACKPACK = "thing-backpack"
    TOTE = "thing-tote"
    BOX = "thing-box"
    BOOK = "thing-book"
    BRICK = "thing-brick"
    DUMBBELL = "thing-dumbbell"
    KETTLEBELL = "thing-kettlebell"
    BARBELL = "thing-barbell"
    PLATE = "thing-plate"
    BALL = "thing-ball"
    RINGS = "thing-rings"
    PAN = "thing-pan"
    BAND = "thing-band"
    TOWEL = "thing-towel"
    ROPE = "thing-rope"
    CHAIR = "thing-chair"
    STOOL = "thing-stool"
    BENCH = "thing-bench"
    SOFA = "thing-sofa"
    STAIRS = "thing-stairs"
    WALL = "thing-wall"
    DOOR_FRAME = "thing-door-frame"
    BEAM = "thing-beam"
    RAIL = "thing-rail"
    MAT = "thing-mat"
    PATH = "thing-path"
    TYRE = "thing-tyre"
    STICK = "thing-stick"
    PILLOW = "thing-pillow"
    BARROW = "thing-barrow"
    OTHER = "thing-other"


class MovePicture(StrEnum):
    """A figure for each movement pattern; the load is drawn in the accent colour."""

    SQUAT = "move-squat"
    HINGE = "move-hinge"
    LUNGE = "move-lunge"
    PUSH_LEVEL = "move-push-level"
    PUSH_OVERHEAD = "move-push-overhead"
    PULL_LEVEL = "move-pull-level"
    PULL_OVERHEAD = "move-pull-overhead"
    CARRY = "move-carry"
    TRUNK = "move-trunk"
    BRACE_SIDE = "move-brace-side"
    BRACE_TWIST = "move-brace-twist"
    GROUND_TO_OVERHEAD = "move-ground-to-overhead"
    WALK = "move-walk"
    MARCH = "move-march"
    RUN = "move-run"
    CLIMB = "move-climb"
    JUMP = "move-jump"
    QUICK_FEET = "move-quick-feet"
    MOBILITY = "move-mobility"
    WARM_UP = "move-warm-up"
    COOL_DOWN = "move-cool-down"


class UsePicture(StrEnum):
    """How a thing serves: the figure in ink, what serves it in the accent colour; `BODY` is the body alone."""

    BODY = "use-body"
    HUG = "use-hug"
    FRONT = "use-front"
    ONE_HAND = "use-one-hand"
    TWO_HANDS = "use-two-hands"
    PAIR = "use-pair"
    BACK = "use-back"
    SHOULDER = "use-shoulder"
    OVERHEAD = "use-overhead"
    BETWEEN_FEET = "use-between-feet"
    DRAG = "use-drag"
    SWING = "use-swing"
    STEP = "use-step"
    SIT = "use-sit"
    HANDS = "use-hands"
    FEET = "use-feet"
    BALANCE = "use-balance"
    ROW_EDGE = "use-row-edge"
    HANG_BAR = "use-hang-bar"
    ANCHOR = "use-anchor"
    TOWEL = "use-towel"
    BAND = "use-band"
    STICK = "use-stick"
    SLIDER = "use-slider"
    PAD = "use-pad"
    WALL = "use-wall"
    DOOR_FRAME = "use-door-frame"
    FLOOR = "use-floor"
    STAIRS = "use-stairs"
    ROUTE = "use-route"
    BARBELL = "use-barbell"
    RACK = "use-rack"
    FLAT_BENCH = "use-flat-bench"
    MACHINE = "use-machine"
    CABLE = "use-cable"
    RINGS = "use-rings"


AnyPicture = Icon | ThingPicture | MovePicture | UsePicture


def picture_path(name: AnyPicture) -> Path:
    """The SVG file of `name`."""
    return _FOLDER / f"{name.value}.svg"


def chevron_file(*, dark: bool) -> str:
    """Path of the combo-box arrow, with forward slashes; a stylesheet can only name files, so each theme has one."""
    return (_FOLDER / ("arrow-dark.svg" if dark else "arrow-light.svg")).as_posix()


def tick_file(*, dark: bool) -> str:
    """Path of the tick in a ticked box, likewise."""
    return (_FOLDER / ("tick-dark.svg" if dark else "tick-light.svg")).as_posix()


def pixmap(name: AnyPicture, size: int, ink: str, *, accent: str = "", ground: str = "", ratio: float = 1.0) -> QPixmap:
    """`name` drawn `size` x `size` device-independent pixels in `ink`; `accent` defaults to `ink`."""
    key = f"fillmark/{name.value}/{size}/{ink}/{accent}/{ground}/{ratio:.3f}"
    kept = QPixmap()
    if QPixmapCache.find(key, kept):
        return kept
    drawn = _draw(name, size, ink, accent or ink, ground or "none", ratio)
    QPixmapCache.insert(key, drawn)
    return drawn


def icon(name: AnyPicture, size: int, ink: str, *, accent: str = "") -> QIcon:
    """A QIcon holding the plain and the double-density pixmap, for actions and menus."""
    made = QIcon(pixmap(name, size, ink, accent=accent))
    made.addPixmap(pixmap(name, size, ink, accent=accent, ratio=2.0))
    return made


def _draw(name: AnyPicture, size: int, ink: str, accent: str, ground: str, ratio: float) -> QPixmap:
    text = picture_path(name).read_text(encoding="utf-8")
    text = text.replace("currentColor", ink).replace("var(--accent)", accent).replace("var(--ground)", ground)
    picture = QPixmap(round(size * ratio), round(size * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(QColor(Qt.GlobalColor.transparent))
    painter = QPainter(picture)
    QSvgRenderer(QByteArray(text.encode())).render(painter, QRectF(0, 0, size, size))
    painter.end()
    return picture
