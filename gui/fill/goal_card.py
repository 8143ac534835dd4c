"""“Fill it to a weight”: a wanted mass in, how to fill out; or why it can't be, and what would reach it."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCompleter, QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Space, TextRole
from gui.widgets import Card, LineField, LinkButton, SectionHeader, Sentence, Span, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalView:
    """How to fill it (`spans`), or why not (`refusal`); `ways` are labels of other ways to the same mass."""

    spans: tuple[Span, ...] = ()
    refusal: str = ""
    ways: tuple[str, ...] = ()


NOTHING = GoalView()


class GoalCard(Card):
    """`asked` with every change of the text, `line_wanted` to draw that fill, `way_taken` a place in `ways`.

    `poured_with` carries what stands in the field of the measure.
    """

    asked = Signal(str)
    poured_with = Signal(str)
    line_wanted = Signal()
    way_taken = Signal(int)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.field = LineField("The whole should weigh", "12 kg", name="Wanted mass of the whole")
        self.measure = LineField("Poured with", "250 mL cup")
        self._sentence = Sentence()
        self._refusal = Text("", TextRole.BODY, wrap=True)
        self._line = LinkButton("Set the line there", TextRole.SMALL)
        self._ways = QVBoxLayout()
        self._ways.setSpacing(Space.XXS)
        self.body.addWidget(SectionHeader("Fill it to a weight"))
        fields = QHBoxLayout()
        fields.setSpacing(Space.M)
        for field in (self.field, self.measure):
            fields.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(fields)
        for widget in (self._sentence, self._refusal):
            self.body.addWidget(widget)
        links = QVBoxLayout()
        links.addWidget(self._line, 0, Qt.AlignmentFlag.AlignLeft)
        links.addLayout(self._ways)
        aligned = QHBoxLayout()
        aligned.addSpacing(-Space.XS)  # so that their words stand below the others, not their edges
        aligned.addLayout(links)
        self.body.addLayout(aligned)
        self.field.edited.connect(self.asked)
        self.field.submitted.connect(self._enter)
        self.measure.edited.connect(self.poured_with)
        self._line.clicked.connect(self.line_wanted)
        self.show_goal(NOTHING)

    def show_examples(self, mass: str, measure: str, measures: tuple[str, ...]) -> None:
        """Examples in the person's units; `measures` are names that may be typed for what they pour with."""
        self.field.edit.setPlaceholderText(mass)
        self.measure.edit.setPlaceholderText(measure)
        completer = QCompleter(list(measures), self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.measure.edit.setCompleter(completer)

    def show_goal(self, view: GoalView) -> None:
        """Paint an answer."""
        self._sentence.show_spans(view.spans)
        self._refusal.setText(view.refusal)
        for widget, shown in ((self._sentence, view.spans), (self._line, view.spans), (self._refusal, view.refusal)):
            widget.setVisible(bool(shown))
        while (item := self._ways.takeAt(0)) is not None:
            old = item.widget()
            if old is not None:
                old.hide()
                old.deleteLater()
        for place, label in enumerate(view.ways):
            self._ways.addWidget(self._way(place, label), 0, Qt.AlignmentFlag.AlignLeft)

    def text(self) -> str:
        """The answer or refusal shown."""
        return self._refusal.text() or self._sentence.plain_text()

    def ways(self) -> tuple[LinkButton, ...]:
        """The buttons of the other ways."""
        items = (self._ways.itemAt(at) for at in range(self._ways.count()))
        widgets = (None if item is None else item.widget() for item in items)
        return tuple(widget for widget in widgets if isinstance(widget, LinkButton))

    def _way(self, place: int, label: str) -> LinkButton:
        button = LinkButton(label, TextRole.SMALL)
        button.setProperty("place", place)
        button.clicked.connect(self._take_way)
        return button

    def _take_way(self) -> None:
        button = self.sender()
        if button is not None:
            self.way_taken.emit(int(button.property("place")))

    def _enter(self, text: str) -> None:
        self.asked.emit(text)
        if self._line.isVisible():
            self.line_wanted.emit()
