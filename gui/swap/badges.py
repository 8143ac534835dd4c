"""The uses of an answer as small pictures on a quiet ground: how the load is held, what one stands or leans on."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from gui.swap.present import Badge
from gui.theme import Radius, Space, UsePicture, tokens_of
from gui.widgets.drawing import draw_panel, open_painter, picture_for

SIDE, INSET = 34, 3


class Badges(QWidget):
    """At most a few pictures in a row; each tells its words as a tool tip and to a screen reader."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tiles: list[_Tile] = []
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(Space.XS)
        self._row.setAlignment(Qt.AlignmentFlag.AlignHCenter)

    def show_badges(self, badges: tuple[Badge, ...]) -> None:
        """Paint other uses."""
        while len(self._tiles) < len(badges):
            tile = _Tile(self)
            self._tiles.append(tile)
            self._row.addWidget(tile)
        for at, tile in enumerate(self._tiles):
            tile.setVisible(at < len(badges))
            if at < len(badges):
                tile.show_badge(badges[at])

    def words(self) -> tuple[str, ...]:
        """The uses shown, in words."""
        return tuple(tile.toolTip() for tile in self._tiles if not tile.isHidden())


class _Tile(QWidget):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._picture = UsePicture.BODY
        self.setFixedSize(SIDE, SIDE)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_badge(self, badge: Badge) -> None:
        self._picture = badge.picture
        self.setToolTip(badge.words)
        self.setAccessibleName(badge.words)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(SIDE, SIDE)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        draw_panel(painter, self.rect(), tokens.surface_soft, radius=Radius.BLOCK)
        painter.drawPixmap(INSET, INSET, picture_for(self, self._picture, SIDE - 2 * INSET, tokens))
        painter.end()
