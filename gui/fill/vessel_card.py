"""The left side: the fields, the vessel with its scale, and the ladder of this container's loads; or a fixed thing."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from gui.fill.controls import Controls
from gui.theme import Space, TextRole, ThingPicture
from gui.widgets import (
    Card,
    ElidedText,
    Ink,
    LadderView,
    PictureLabel,
    RungMark,
    TableTwin,
    Text,
    VesselView,
)

CAPTION = "Loads it makes, cup by cup"


class VesselCard(Card):
    """`controls`, `vessel` and `ladder` are for the screen to fill and to listen to."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self.controls = Controls()
        self.vessel = VesselView()
        self.ladder = LadderView(Qt.Orientation.Horizontal)
        self._twin = TableTwin(self.ladder, self.ladder.twin())
        self._fixed = _FixedThing()
        filled = QWidget()
        column = QVBoxLayout(filled)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.S)
        column.addWidget(self.vessel, 1)
        column.addWidget(self._twin)
        self._filled = filled
        self._stack = QStackedWidget()
        for widget in (filled, self._fixed):
            self._stack.addWidget(widget)
        self.body.addWidget(self.controls)
        self.body.addWidget(self._stack, 1)

    def show_rungs(self, rungs: tuple[RungMark, ...]) -> None:
        """Another ladder."""
        self.ladder.show_rungs(rungs)
        twin = self.ladder.twin()
        self._twin.show_twin(type(twin)(caption=CAPTION, columns=twin.columns, rows=twin.rows))

    def show_filled(self) -> None:
        """The vessel in front."""
        self._stack.setCurrentWidget(self._filled)

    def show_fixed(self, picture: ThingPicture, title: str, lines: tuple[str, ...]) -> None:
        """A thing that is not filled in front."""
        self._fixed.show_thing(picture, title, lines)
        self._stack.setCurrentWidget(self._fixed)


class _FixedThing(QWidget):
    """A drawing with its name and a few facts."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture = PictureLabel(ThingPicture.OTHER, 160)
        self._title = ElidedText("", TextRole.TITLE)
        self._title.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self._lines = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self._lines.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        column = QVBoxLayout(self)
        column.setSpacing(Space.M)
        column.addStretch(2)
        column.addWidget(self._picture, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(self._title)
        column.addWidget(self._lines)
        column.addStretch(3)

    def show_thing(self, picture: ThingPicture, title: str, lines: tuple[str, ...]) -> None:
        """Paint another thing."""
        self._picture.show_picture(picture)
        self._title.show_text(title)
        self._lines.setText("\n".join(lines))
