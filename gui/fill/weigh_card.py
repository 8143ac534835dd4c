"""The form of a weighing on its card, opened when wanted; beside it the card of the weighings there are."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.fill.weigh_form import WeighForm
from gui.theme import Icon, Space, TextRole
from gui.widgets import Card, Ink, LinkButton, PictureButton, SectionHeader, Text


class WeighCard(Card):
    """Holds `form`; hidden until `open`, and closed without asking."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.form = WeighForm()
        self.close_button = PictureButton(Icon.CLOSE, "Close without saving", size=24)
        self.close_button.clicked.connect(self.shut)
        head = QHBoxLayout()
        head.addWidget(SectionHeader("What did the scale say?"), 1)
        head.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(head)
        self.body.addWidget(self.form)
        self.hide()

    def open(self) -> None:
        """Show the form."""
        self.show()

    def shut(self) -> None:
        """Close the form; what is typed there is forgotten."""
        self.hide()

    def is_open(self) -> bool:
        """Whether the form is open."""
        return not self.isHidden()


class ReadingsCard(Card):
    """What the scale said before, and what that taught. `removed` and `fill_wanted` carry the place of a reading."""

    removed = Signal(int)
    fill_wanted = Signal(int)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Space.S)
        self._lessons = Text("", TextRole.SMALL, wrap=True)
        self.body.addWidget(SectionHeader("Weighings"))
        self.body.addLayout(self._rows)
        self.body.addWidget(self._lessons)
        self.show_readings((), ())

    def show_readings(self, rows: tuple[tuple[str, bool], ...], lessons: tuple[str, ...]) -> None:
        """Paint other readings (their text, and whether their fill can be shown) and what they taught."""
        while (item := self._rows.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for place, (text, has_fill) in enumerate(rows):
            self._rows.addWidget(self._row(place, text, has_fill=has_fill))
        self._lessons.setText("\n".join(lessons))
        self._lessons.setVisible(bool(lessons))
        self.setVisible(bool(rows))

    def lessons(self) -> str:
        """What the readings taught."""
        return self._lessons.text()

    def rows(self) -> tuple[str, ...]:
        """The readings as listed."""
        items = (self._rows.itemAt(at) for at in range(self._rows.count()))
        widgets = [item.widget() for item in items if item is not None]
        return tuple(label.text() for row in widgets if row is not None for label in row.findChildren(Text))

    def _row(self, place: int, text: str, *, has_fill: bool) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(Space.S)
        line.addWidget(Text(text, TextRole.SMALL, Ink.SOFT, wrap=True), 1)
        if has_fill:
            show = LinkButton("show", TextRole.SMALL)
            show.setAccessibleName(f"Show this fill: {text}")
            show.setProperty("place", place)
            show.clicked.connect(self._show)
            line.addWidget(show, 0, Qt.AlignmentFlag.AlignTop)
        remove = PictureButton(Icon.CLOSE, f"Remove this weighing: {text}", size=24)
        remove.setProperty("place", place)
        remove.clicked.connect(self._remove)
        line.addWidget(remove, 0, Qt.AlignmentFlag.AlignTop)
        return row

    def _show(self) -> None:
        button = self.sender()
        if button is not None:
            self.fill_wanted.emit(int(button.property("place")))

    def _remove(self) -> None:
        button = self.sender()
        if button is not None:
            self.removed.emit(int(button.property("place")))
