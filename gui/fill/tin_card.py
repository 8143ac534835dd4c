"""What a tin's own label says: net mass, drained mass or its size, and the mass that makes."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, LineField, PrimaryButton, SectionHeader, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class TinTyped:
    """What stands on the card, as typed."""

    net: str
    drained: str
    size: str


class TinCard(Card):
    """`typed` (a `TinTyped`) with every change, `taken` when the mass is to be kept."""

    typed = Signal(object)
    taken = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.net = LineField("Net mass on the label", "400 g")
        self.drained = LineField("Drained mass", "240 g")
        self.measure = LineField("Size, if there is no label", "603x700 or No. 10")
        self._answer = Text("", TextRole.BODY, wrap=True)
        self.take = PrimaryButton("Use this mass")
        grid = QGridLayout()
        grid.setHorizontalSpacing(Space.M)
        grid.setVerticalSpacing(Space.S)
        grid.addWidget(self.net, 0, 0)
        grid.addWidget(self.drained, 0, 1)
        grid.addWidget(self.measure, 1, 0, 1, 2)
        self.body.addWidget(SectionHeader("What the tin says"))
        self.body.addWidget(
            Text("Net mass is the food with its liquid, without the tin.", TextRole.SMALL, Ink.SOFT, wrap=True)
        )
        self.body.addLayout(grid)
        self.body.addWidget(self._answer)
        self.body.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        for field in self.fields():
            field.edited.connect(self._tell)
        self.take.clicked.connect(self.taken)
        self.show_answer("", usable=False)

    def fields(self) -> tuple[LineField, LineField, LineField]:
        """Net, drained, size."""
        return self.net, self.drained, self.measure

    def begin(self, net: str) -> None:
        """What is known of another tin."""
        for field, text in zip(self.fields(), (net, "", ""), strict=True):
            field.show_text(text)
            field.show_fault("")
        self.show_answer("", usable=False)

    def show_answer(self, sentence: str, *, usable: bool) -> None:
        """The mass that makes, or why none."""
        self._answer.setText(sentence)
        self._answer.setVisible(bool(sentence))
        self.take.setVisible(usable)

    def answer(self) -> str:
        """What it says."""
        return self._answer.text()

    def now(self) -> TinTyped:
        """What stands on the card."""
        net, drained, size = (field.text().strip() for field in self.fields())
        return TinTyped(net=net, drained=drained, size=size)

    def _tell(self, *_ignored: object) -> None:
        self.typed.emit(self.now())
