"""Surfaces that hold other things: cards, section headers, cautions, empty states."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from gui.theme import AnyPicture, Icon, Radius, Space, TextRole, pixmap, tokens_of
from gui.widgets.buttons import PrimaryButton
from gui.widgets.drawing import draw_panel, open_painter, picture_for
from gui.widgets.text import Ink, Text


class Card(QFrame):
    """A white panel; put content into `body`. `set_chosen` draws the accent edge, `dashed` the empty, quiet kind."""

    def __init__(self, *, padding: int = Space.L, gap: int = Space.S, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._chosen = False
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(padding, padding, padding, padding)
        self.body.setSpacing(gap)

    def set_chosen(self, chosen: bool) -> None:
        """Draw this card as the one in hand."""
        self._chosen = chosen
        self.update()

    def is_chosen(self) -> bool:
        """Whether it is drawn as the one in hand."""
        return self._chosen

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        edge, width = (tokens.accent, 2.0) if self._chosen else (tokens.line, 1.0)
        draw_panel(painter, self.rect(), tokens.surface, radius=Radius.CARD, edge=edge, width=width)
        painter.end()


class PictureLabel(QLabel):
    """A drawing that follows the theme; decoration, so a screen reader passes over it unless it has a name."""

    def __init__(self, picture: AnyPicture, size: int, *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture = picture
        self._size = size
        self.setFixedSize(size, size)
        self.setAccessibleName(name)
        self._tint()

    def show_picture(self, picture: AnyPicture) -> None:
        """Paint another drawing."""
        self._picture = picture
        self._tint()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.DevicePixelRatioChange}:
            self._tint()

    def _tint(self) -> None:
        self.setPixmap(picture_for(self, self._picture, self._size, tokens_of(self)))


class SectionHeader(Text):
    """The heading above a group."""

    def __init__(self, text: str, *, parent: QWidget | None = None) -> None:
        super().__init__(text, TextRole.HEADING, parent=parent)


class Notice(QFrame):
    """A calm amber strip for a caution."""

    def __init__(self, sentence: str = "", *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(Space.M, Space.M - 2, Space.M, Space.M - 2)
        row.setSpacing(Space.S)
        self._sign = QLabel(self)
        self._sign.setFixedSize(18, 18)
        self._text = Text("", TextRole.SMALL, wrap=True, parent=self)
        row.addWidget(self._sign, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._text, 1)
        self._tint()
        self.show_sentence(sentence)

    def show_sentence(self, sentence: str) -> None:
        """Show another caution; with none, the strip goes away."""
        self._text.setText(sentence)
        self.setAccessibleName(f"Caution: {sentence}")
        self.setVisible(bool(sentence))

    def sentence(self) -> str:
        """The caution shown."""
        return self._text.text()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange:
            self._tint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = open_painter(self)
        draw_panel(painter, self.rect(), tokens_of(self).fair, radius=Radius.BLOCK)
        painter.end()

    def _tint(self) -> None:
        self._sign.setPixmap(pixmap(Icon.CAUTION, 18, tokens_of(self).fair_ink, ratio=self.devicePixelRatioF()))


class EmptyState(QWidget):
    """What a screen shows before there is anything: a drawing, a sentence, one button."""

    acted = Signal()

    def __init__(
        self, picture: AnyPicture, heading: str, sentence: str, action: str, *, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setSpacing(Space.M)
        column.addStretch(2)
        self.button = PrimaryButton(action, parent=self)
        self.button.clicked.connect(self.acted)
        title = Text(heading, TextRole.HEADING, parent=self)
        text = Text(sentence, TextRole.BODY, Ink.SOFT, wrap=True, parent=self)
        text.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        text.setFixedWidth(380)
        for widget in (PictureLabel(picture, 96, parent=self), title, text, self.button):
            column.addWidget(widget, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
        self.setAccessibleName(f"{heading}. {sentence}")
