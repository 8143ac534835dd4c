"""The card of one thing: what it weighs and how that is known, what it is good for and not, cautions, what to do."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.household.detail_words import DetailView, UseLine
from gui.household.panel import Panel
from gui.theme import Space, TextRole
from gui.widgets import Chip, Ink, Notice, SecondaryButton, Text


class ThingPanel(Panel):
    """`weigh_wanted`, `edit_wanted`, `remove_wanted`, without arguments: whoever shows the card knows the thing."""

    weigh_wanted = Signal()
    edit_wanted = Signal()
    remove_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._label = Text("", TextRole.SMALL, Ink.SOFT)
        self._figure = Text("", TextRole.FIGURE, wrap=True)
        self._doubt = Text("", TextRole.BODY, Ink.SOFT)
        self._known = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._good = _Uses("Good for")
        self._fair = _Uses("Works, with a drawback")
        self._bad = _Uses("Not for")
        self._caution = Notice()
        self.weigh = SecondaryButton("Weigh it")
        self.edit = SecondaryButton("Edit")
        self.remove = SecondaryButton("Remove")
        self._arrange()
        self.weigh.clicked.connect(self.weigh_wanted)
        self.edit.clicked.connect(self.edit_wanted)
        self.remove.clicked.connect(self.remove_wanted)

    def show_detail(self, view: DetailView) -> None:
        """Paint another thing."""
        self.show_head(view.title, view.facts)
        self.show_picture(view.picture)
        self._label.setText(view.label)
        self._figure.setText(view.figure)
        self._doubt.setText(view.doubt)
        self._doubt.setVisible(bool(view.doubt))
        self._known.setText(view.known)
        for uses, lines in ((self._good, view.good), (self._fair, view.fair), (self._bad, view.bad)):
            uses.show_lines(lines)
        self._caution.show_sentence(view.caution)
        self.weigh.setVisible(view.weighable)
        for button, does in ((self.weigh, "Weigh"), (self.edit, "Edit"), (self.remove, "Remove")):
            button.setAccessibleName(f"{does} {view.title}")

    def words(self) -> tuple[str, ...]:
        """Everything it says below the head, in order."""
        figure = (self._label.text(), f"{self._figure.text()} {self._doubt.text()}".strip(), self._known.text())
        uses = (word for part in (self._good, self._fair, self._bad) for word in part.words())
        return (*figure, *uses, self._caution.sentence())

    def _arrange(self) -> None:
        figures = QHBoxLayout()
        figures.setSpacing(Space.S)
        figures.addWidget(self._figure, 0, Qt.AlignmentFlag.AlignBottom)
        figures.addWidget(self._doubt, 0, Qt.AlignmentFlag.AlignBottom)
        figures.addStretch(1)
        # On one base line: the smaller words stand as high above the bottom as the large ones do.
        drop = self._figure.fontMetrics().descent() - self._doubt.fontMetrics().descent()
        self._doubt.setContentsMargins(0, 0, 0, max(0, drop))
        self._figure.setWordWrap(False)
        figure = QVBoxLayout()
        figure.setSpacing(0)
        figure.addWidget(self._label)
        figure.addLayout(figures)
        figure.addWidget(self._known)
        self.column.addLayout(figure)
        for uses in (self._good, self._fair, self._bad):
            self.column.addWidget(uses)
        self.column.addStretch(1)
        self.body.insertWidget(self.body.count() - 1, self._caution)
        for button in (self.weigh, self.edit):
            self.buttons.addWidget(button)
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.remove)


class _Uses(QWidget):
    """A heading and its lines: a chip and the reason beside it. Rows are reused."""

    def __init__(self, heading: str, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._heading = heading
        self._lines: tuple[UseLine, ...] = ()
        self._rows: list[tuple[Chip, Text]] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, Space.XS, 0, 0)
        self._grid.setHorizontalSpacing(Space.S)
        self._grid.setVerticalSpacing(Space.XS)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(Text(heading, TextRole.SMALL, Ink.SOFT), 0, 0, 1, 2)

    def show_lines(self, lines: tuple[UseLine, ...]) -> None:
        """Paint other lines; without any the heading goes as well."""
        self._lines = lines
        while len(self._rows) < len(lines):
            self._add_row()
        for at, (chip, text) in enumerate(self._rows):
            for widget in (chip, text):
                widget.setVisible(at < len(lines))
        for (chip, text), line in zip(self._rows, lines, strict=False):
            chip.show_chip(line.chip, line.tone)
            text.setText(line.text)
            for widget in (chip, text):
                widget.setToolTip(line.why)
        self.setVisible(bool(lines))
        self.setAccessibleName(f"{self._heading}: {'; '.join(_spoken(line) for line in lines)}")

    def words(self) -> tuple[str, ...]:
        """The heading and every line."""
        return (self._heading, *(f"{line.chip}: {line.text}" for line in self._lines)) if self._lines else ()

    def _add_row(self) -> None:
        chip, text = Chip(), Text("", TextRole.SMALL, wrap=True)
        row = len(self._rows) + 1
        top = Qt.AlignmentFlag.AlignTop
        self._grid.addWidget(chip, row, 0, top | Qt.AlignmentFlag.AlignLeft)
        self._grid.addWidget(text, row, 1, Qt.AlignmentFlag.AlignVCenter)
        self._rows.append((chip, text))


def _spoken(line: UseLine) -> str:
    return ", ".join(part for part in (line.chip, line.text, line.why) if part)
