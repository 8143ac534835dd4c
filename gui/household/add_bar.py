"""The field in which things are added by typing, and below the title what was typed and needs an answer."""

from __future__ import annotations

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtWidgets import QCompleter, QHBoxLayout, QVBoxLayout, QWidget

from gui.household.adding import Ask
from gui.theme import Icon, Space, TextRole
from gui.widgets import ActionChip, Card, FlowLayout, Ink, LineField, LinkButton, PictureButton, PrimaryButton, Text

EXAMPLE, SHORT_EXAMPLE = "Add a thing: “2 five-litre bottles”", "“2 five-litre bottles”"
WIDTH, SHORT_WIDTH = 262, 214


class AddBar(QWidget):
    """`typed` (text) while typing, `wanted` (text) on Enter or the button."""

    typed = Signal(str)
    wanted = Signal(str)

    def __init__(self, example: str = EXAMPLE, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shortens = example == EXAMPLE
        self.field = LineField("", example, name="Add a thing")
        self.show_short(False)
        self.button = PrimaryButton("Add")
        self._names = QStringListModel(self)
        completer = QCompleter(self._names, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.field.edit.setCompleter(completer)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        row.addWidget(self.field, 1)
        row.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        self.field.edited.connect(self.typed)
        self.field.submitted.connect(self.wanted)
        self.button.clicked.connect(self._press)

    def show_short(self, short: bool) -> None:
        """Take less room, with an example that fits it."""
        self.field.setMinimumWidth(SHORT_WIDTH if short else WIDTH)
        if self._shortens:
            self.field.edit.setPlaceholderText(SHORT_EXAMPLE if short else EXAMPLE)

    def show_names(self, names: tuple[str, ...]) -> None:
        """Offer these below the field."""
        self._names.setStringList(list(names))

    def clear(self) -> None:
        """Everything typed has found its place."""
        self.field.show_text("")
        self._names.setStringList([])

    def give_back(self, text: str) -> None:
        """Put words back into the field, after what stands there already."""
        there = self.field.text().strip()
        self.field.show_text(f"{there}, {text}" if there else text)
        self.field.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _press(self) -> None:
        self.wanted.emit(self.field.text())


class AskList(Card):
    """A fault of what was typed, and a question per thing that could not be read for sure. Hidden while empty.

    `answered` (ask, index of the answer), `reworded` (ask) to type it differently; either takes the question away.
    """

    answered = Signal(object, int)
    reworded = Signal(object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._fault = Text("", TextRole.BODY, Ink.BAD, wrap=True)
        self._rows: list[_AskRow] = []
        self._column = QVBoxLayout()
        self._column.setSpacing(Space.S)
        self.body.addWidget(self._fault)
        self.body.addLayout(self._column)
        self.show_fault("")

    def show_fault(self, sentence: str) -> None:
        """Say what can't be used of what stands in the field."""
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))
        self._show_if_any()

    def fault(self) -> str:
        """The fault shown."""
        return self._fault.text()

    def add(self, asks: tuple[Ask, ...]) -> None:
        """Ask these too."""
        for ask in asks:
            row = _AskRow(ask)
            row.answered.connect(self._answer)
            row.reworded.connect(self._reword)
            row.dropped.connect(self._drop)
            self._rows.append(row)
            self._column.addWidget(row)
        self._show_if_any()

    def asks(self) -> tuple[Ask, ...]:
        """What is still asked."""
        return tuple(row.ask for row in self._rows)

    def rows(self) -> tuple[_AskRow, ...]:
        """The rows shown."""
        return tuple(self._rows)

    def clear(self) -> None:
        """Drop every question and the fault."""
        for row in tuple(self._rows):
            self._drop(row)
        self.show_fault("")

    def _answer(self, row: _AskRow, index: int) -> None:
        self._drop(row)
        self.answered.emit(row.ask, index)

    def _reword(self, row: _AskRow) -> None:
        self._drop(row)
        self.reworded.emit(row.ask)

    def _drop(self, row: _AskRow) -> None:
        self._rows.remove(row)
        self._column.removeWidget(row)
        row.hide()
        row.deleteLater()
        self._show_if_any()

    def _show_if_any(self) -> None:
        self.setVisible(bool(self._rows) or bool(self._fault.text()))


class _AskRow(QWidget):
    """One question with its answers."""

    answered = Signal(object, int)
    reworded = Signal(object)
    dropped = Signal(object)

    def __init__(self, ask: Ask, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.ask = ask
        self.setAccessibleName(ask.sentence)
        holder = QWidget()
        flow = FlowLayout(gap=Space.S, parent=holder)
        self.answers = tuple(ActionChip(words) for words in ask.answers)
        for chip in self.answers:
            chip.clicked.connect(self._answer)
            flow.addWidget(chip)
        self.other = LinkButton("In other words", TextRole.SMALL)
        self.other.clicked.connect(self._reword)
        flow.addWidget(self.other)
        self.drop = PictureButton(Icon.CLOSE, f"Leave out: {ask.typed}", size=24)
        self.drop.clicked.connect(self._drop)
        words = QVBoxLayout()
        words.setSpacing(Space.XS)
        words.addWidget(Text(ask.sentence, TextRole.BODY, wrap=True))
        words.addWidget(holder)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addLayout(words, 1)
        row.addWidget(self.drop, 0, Qt.AlignmentFlag.AlignTop)

    def _answer(self) -> None:
        sender = self.sender()
        self.answered.emit(self, next(at for at, chip in enumerate(self.answers) if chip is sender))

    def _reword(self) -> None:
        self.reworded.emit(self)

    def _drop(self) -> None:
        self.dropped.emit(self)
