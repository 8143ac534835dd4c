"""Fields to type and choose in, each with its caption above and, when needed, a sentence about a fault below."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import (
    QComboBox,
    QLineEdit,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from gui.theme import Icon, Space, TextRole, icon, tokens_of
from gui.widgets.text import Ink, Text, announce


class _Field(QWidget):
    """Caption, control, fault sentence, one above the other."""

    def __init__(self, caption: str, control: QWidget, name: str, parent: QWidget | None) -> None:
        super().__init__(parent)
        self._control = control
        self._caption = Text(caption, TextRole.SMALL, Ink.SOFT, parent=self)
        self._caption.setVisible(bool(caption))
        self._caption.setBuddy(control)
        self._fault = Text("", TextRole.SMALL, Ink.BAD, wrap=True, parent=self)
        self._fault.hide()
        control.setAccessibleName(name or caption)
        self.setFocusProxy(control)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.XS)
        for widget in (self._caption, control, self._fault):
            column.addWidget(widget)

    def show_fault(self, sentence: str) -> None:
        """Say below the field what is wrong with it; an empty sentence takes it away."""
        if sentence == self._fault.text():
            return
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))
        self._control.setAccessibleDescription(sentence)
        self._control.setProperty("fault", "true" if sentence else "false")
        self._control.style().unpolish(self._control)
        self._control.style().polish(self._control)
        if sentence:
            announce(self._control, sentence)

    def fault(self) -> str:
        """The fault shown, or nothing."""
        return self._fault.text()


class LineField(_Field):
    """One line to type in. `edited` while typing, `submitted` on Enter; typing takes the fault away.

    `edit` is the QLineEdit itself, for completers and validators.
    """

    edited = Signal(str)
    submitted = Signal(str)

    def __init__(
        self, caption: str = "", placeholder: str = "", *, name: str = "", parent: QWidget | None = None
    ) -> None:
        self.edit = QLineEdit()
        super().__init__(caption, self.edit, name or caption or placeholder, parent)
        self.edit.setPlaceholderText(placeholder)
        self.edit.textEdited.connect(self._typed)
        self.edit.returnPressed.connect(self._entered)

    def text(self) -> str:
        """What stands in the field."""
        return self.edit.text()

    def show_text(self, text: str) -> None:
        """Write into the field without telling anyone; leaves a field alone that already says so."""
        if self.edit.text() != text:
            self.edit.setText(text)

    def _typed(self, text: str) -> None:
        if self.fault():
            self.show_fault("")
        self.edited.emit(text)

    def _entered(self) -> None:
        self.submitted.emit(self.edit.text())


class SearchField(LineField):
    """A line to find something by a half-typed name."""

    def __init__(self, placeholder: str, *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__("", placeholder, name=name, parent=parent)
        ink = tokens_of(self).ink_soft
        self._lens = self.edit.addAction(icon(Icon.SEARCH, 16, ink), QLineEdit.ActionPosition.LeadingPosition)
        self._lens.setText("Search")
        self.edit.setClearButtonEnabled(True)
        for button in self.edit.findChildren(QToolButton):
            button.setAccessibleName(button.text() or "Clear this line")

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange:
            self._lens.setIcon(icon(Icon.SEARCH, 16, tokens_of(self).ink_soft))


class _Box(QComboBox):
    """Shortens its words with … where there is no room, and then tells them whole as a tool tip."""

    def paintEvent(self, event: QPaintEvent) -> None:
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        style, part = self.style(), QStyle.SubControl.SC_ComboBoxEditField
        room = style.subControlRect(QStyle.ComplexControl.CC_ComboBox, option, part, self).width()
        whole = self.currentText()
        shown = self.fontMetrics().elidedText(whole, Qt.TextElideMode.ElideRight, room - Space.XS)
        self.setToolTip(escape(whole) if shown != whole else "")
        option.currentText = shown
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()


class ChoiceField(_Field):
    """One of several; `chosen` carries the index the person picked, never one a program set."""

    chosen = Signal(int)

    def __init__(
        self, caption: str, options: tuple[str, ...] = (), *, name: str = "", parent: QWidget | None = None
    ) -> None:
        self.box = _Box()
        super().__init__(caption, self.box, name or caption, parent)
        self.box.addItems(list(options))
        self.box.activated.connect(self.chosen)

    def show_options(self, options: tuple[str, ...], index: int = 0) -> None:
        """Offer other options, `index` chosen."""
        self.box.clear()
        self.box.addItems(list(options))
        self.box.setCurrentIndex(index)

    def show_index(self, index: int) -> None:
        """Show another choice without telling anyone."""
        self.box.setCurrentIndex(index)

    def index(self) -> int:
        """The index chosen."""
        return self.box.currentIndex()
