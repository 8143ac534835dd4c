"""The card on the right: a head that stays, a middle that scrolls, buttons that stay."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import AnyPicture, Icon, Space, TextRole, ThingPicture
from gui.widgets import Card, Ink, PictureButton, PictureLabel, Text
from gui.widgets.page import PageScroll

PICTURE = 40


class Panel(Card):
    """Put content into `column` and buttons into `buttons`; `closer` is there for panels one can leave."""

    def __init__(self, picture: AnyPicture = ThingPicture.OTHER, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._picture = PictureLabel(picture, PICTURE)
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.closer = PictureButton(Icon.CLOSE, "Close")
        self.closer.hide()
        self.body.addLayout(self._head())
        inner = QWidget()
        self.column = QVBoxLayout(inner)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(Space.S)
        self.scroller = PageScroll(inner)
        self.body.addWidget(self.scroller, 1)
        self.buttons = QHBoxLayout()
        self.buttons.setSpacing(Space.S)
        self.body.addLayout(self.buttons)

    def show_head(self, title: str, note: str = "") -> None:
        """Paint another title and the line below it."""
        self._title.setText(title)
        self._note.setText(note)
        self._note.setVisible(bool(note))
        self.setAccessibleName(title)

    def show_picture(self, picture: AnyPicture) -> None:
        """Paint another drawing."""
        self._picture.show_picture(picture)

    def title(self) -> str:
        """The title shown."""
        return self._title.text()

    def note(self) -> str:
        """The line below the title."""
        return self._note.text()

    def _head(self) -> QHBoxLayout:
        words = QVBoxLayout()
        words.setSpacing(Space.XXS)
        words.addWidget(self._title)
        words.addWidget(self._note)
        words.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(Space.M)
        row.addWidget(self._picture, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        row.addWidget(self.closer, 0, Qt.AlignmentFlag.AlignTop)
        return row
