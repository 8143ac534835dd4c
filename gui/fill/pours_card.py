"""“Teach it by pouring”: the owner's own table of pours, for a container of another shape than the usual."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from core.errors import InputError
from core.loads.filling import Filling
from core.mass.gauge import gauge_of
from core.mass.model import Container
from core.mass.own_pours import poured_container, read_pours
from core.store.commands import ChangeThing
from gui.desk.desk import Desk
from gui.fill.words import length_text, volume_text, whole
from gui.theme import Icon, TextRole
from gui.widgets import Card, Ink, LineField, PictureButton, PrimaryButton, SectionHeader, Text

LEAD = (
    "Pour water in, measure how high it stands above the inner base, and write down a few, the last one full to the "
    "brim."
)
EXAMPLE = "4 cups 5.2 cm; 8 cups 9.8 cm; 12 cups 13 cm"


class PoursCard(Card):
    """`typed` with every change, `taken` when the pours are to be kept; hidden until `open`."""

    typed = Signal(str)
    taken = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.field = LineField("Your pours", EXAMPLE)
        self._answer = Text("", TextRole.BODY, wrap=True)
        self.take = PrimaryButton("Use these pours")
        close = PictureButton(Icon.CLOSE, "Close without saving", size=24)
        head = QHBoxLayout()
        head.addWidget(SectionHeader("Teach it by pouring"), 1)
        head.addWidget(close, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(head)
        self.body.addWidget(Text(LEAD, TextRole.SMALL, Ink.SOFT, wrap=True))
        for widget in (self.field, self._answer):
            self.body.addWidget(widget)
        self.body.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        self.field.edited.connect(self.typed)
        self.field.submitted.connect(self._enter)
        self.take.clicked.connect(self.taken)
        close.clicked.connect(self.hide)
        self.show_answer("", usable=False)
        self.hide()

    def open(self) -> None:
        """Show an empty card."""
        self.field.show_text("")
        self.field.show_fault("")
        self.show_answer("", usable=False)
        self.show()
        self.field.edit.setFocus()

    def show_answer(self, sentence: str, *, usable: bool) -> None:
        """What the pours make of it."""
        self._answer.setText(sentence)
        self._answer.setVisible(bool(sentence))
        self.take.setVisible(usable)

    def answer(self) -> str:
        """What it says."""
        return self._answer.text()

    def _enter(self, _text: str) -> None:
        if self.take.isVisible():
            self.taken.emit()


class PoursFlow(QObject):
    """From typed pours to a container of that shape, kept with one undoable change."""

    def __init__(self, desk: Desk, card: PoursCard, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._filling: Filling | None = None
        self._container: Container | None = None
        card.typed.connect(self._work)
        card.taken.connect(self._take)

    def show_filling(self, filling: Filling | None) -> None:
        """Another container."""
        before = self._filling
        self._filling = filling
        if filling is None or before is None or before.thing.id != filling.thing.id:
            self._card.hide()

    def _work(self, text: str) -> None:
        """Faults are said once a whole pour stands there."""
        self._container = None
        self._card.show_answer("", usable=False)
        filling = self._filling
        if filling is None or not text.strip():
            return
        try:
            pours = read_pours(text, self._desk.house().cup_l)
            self._container = poured_container(filling.container, pours)
        except InputError as error:
            self._card.show_answer(str(error), usable=False)
            return
        half_l = self._container.nominal_l.value / 2
        gauge = gauge_of(replace(filling.setting, container=self._container), ())
        system = filling.system
        now, before = (length_text(one.height_of_volume(half_l), system) for one in (gauge, filling.gauge))
        sentence = f"Half full, {volume_text(half_l, system)}, it then stands at {now} (before: {before})."
        self._card.show_answer(whole(sentence), usable=True)

    def _take(self) -> None:
        filling, container = self._filling, self._container
        if filling is not None and container is not None:
            thing = filling.thing
            if self._desk.do(ChangeThing(replace(thing, facts=replace(thing.facts, container=container)))):
                self._card.hide()
