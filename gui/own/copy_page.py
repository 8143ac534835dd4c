"""Beginning a new entry: its name, and the movement or kind of thing of the catalog that is most like it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from core.house.own import OwnKind
from gui.swap.movement_field import MovementField
from gui.theme import Space, TextRole
from gui.widgets import ActionChip, Card, FlowLayout, Ink, LineField, Text

TITLES = {OwnKind.EXERCISE: "A new movement", OwnKind.THING: "A new kind of thing"}
NOTES = {
    OwnKind.EXERCISE: "Begin from the movement most like it: everything is copied, and you change what is different.",
    OwnKind.THING: "Begin from the thing most like it: everything is copied, and you change what is different.",
}


class CopyPage(Card):
    """`typed` (what it is like) while typing; `begun` (name of the original) when one is chosen."""

    typed = Signal(str)
    begun = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._title = Text("", TextRole.HEADING)
        self._note = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self.name = LineField("Its name", "Lock beam push")
        self.like = MovementField()
        self._near = FlowLayout()
        self.chips: list[ActionChip] = []
        for widget in (self._title, self._note, self.name):
            self.body.addWidget(widget)
        self.body.addWidget(Text("It is most like", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self.like)
        self.body.addLayout(self._near)
        self.like.edited.connect(self.typed)
        self.like.picked.connect(self.begun)
        self.like.entered.connect(self._enter)

    def show_new(self, kind: OwnKind, name: str) -> None:
        """Ask for a new entry, with a name somebody typed elsewhere."""
        self._title.setText(TITLES[kind])
        self._note.setText(NOTES[kind])
        self.name.show_text(name)
        self.like.show_text("")
        self.like.edit.setPlaceholderText("squat, pull-up, row" if kind is OwnKind.EXERCISE else "bucket, sack, chair")
        self.like.edit.setAccessibleName("It is most like")

    def show_near(self, names: tuple[str, ...]) -> None:
        """Offer originals."""
        self._near.clear()
        self.chips = []
        for name in names:
            chip = ActionChip(name)
            chip.setAccessibleName(f"Begin from {name}")
            chip.setProperty("original", name)
            chip.clicked.connect(self._begin)
            self.chips.append(chip)
            self._near.addWidget(chip)

    def _begin(self) -> None:
        self.begun.emit(self.sender().property("original"))

    def _enter(self) -> None:
        if self.chips:
            self.begun.emit(self.chips[0].property("original"))
