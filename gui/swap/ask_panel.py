"""The left side of the swap screen: which movement, at what dose, what is in the way, what to spare, where."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QCompleter, QMenu, QWidget

from core.exercise.model import Demand
from core.swap.model import Cause
from gui.desk.names import DEMAND_NAMES
from gui.theme import Space, TextRole
from gui.widgets import (
    ActionChip,
    Card,
    ChoiceChip,
    ChoiceField,
    FlowLayout,
    Ink,
    LineField,
    RemovableChip,
    SearchField,
    Text,
    Tone,
)

CAUSE_NAMES: dict[Cause, str] = {
    Cause.NO_GEAR: "no gear for it",
    Cause.HURTS: "it hurts or I can’t",
    Cause.TOO_HARD: "too hard",
    Cause.TOO_EASY: "too easy",
    Cause.TOO_LOUD: "too loud",
    Cause.NO_ROOM: "no room",
}
PANEL_WIDTH = 280


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What stands in the panel: the texts as typed, the cause, demands to spare, the place's position in the list."""

    movement: str
    dose: str
    cause: Cause
    spare: frozenset[Demand]
    place: int


class AskPanel(Card):
    """`asked` (an `Asked`) whenever anything changes; the panel looks nothing up itself."""

    asked = Signal(object)
    typed = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self.setFixedWidth(PANEL_WIDTH)
        self._spare: tuple[Demand, ...] = ()
        self.movement = SearchField("Back squat with a bar", name="Movement you would do")
        self.dose = LineField("Prescribed", "4 x 5 at 40 kg, effort 8")
        self.place = ChoiceField("Where")
        self._names = QStringListModel(self)
        self._causes = QButtonGroup(self)
        self._spared = QWidget()
        self._spared_flow = FlowLayout(parent=self._spared)
        self.note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._complete()
        self._arrange()
        self.movement.edited.connect(self._movement_typed)
        self.movement.submitted.connect(self._tell)
        self.dose.edited.connect(self._tell)
        self.place.chosen.connect(self._tell)
        self._causes.idToggled.connect(self._cause_toggled)

    def asked_now(self) -> Asked:
        """What stands there now."""
        return Asked(
            movement=self.movement.text(),
            dose=self.dose.text(),
            cause=tuple(Cause)[self._causes.checkedId()],
            spare=frozenset(self._spare),
            place=self.place.index(),
        )

    def show_suggestions(self, names: tuple[str, ...]) -> None:
        """Offer these names below the field."""
        self._names.setStringList(list(names))

    def show_movement(self, name: str) -> None:
        """Write a movement into the field and ask for it."""
        self.movement.show_text(name)
        self._tell()

    def show_spare(self, spare: tuple[Demand, ...]) -> None:
        """Paint the demands to spare."""
        self._spare = spare
        self._spared_flow.clear()
        for demand in spare:
            chip = RemovableChip(DEMAND_NAMES[demand], Tone.FAIR)
            chip.setProperty("demand", demand.value)
            chip.clicked.connect(self._remove_spare)
            self._spared_flow.addWidget(chip)
        add = ActionChip("+ add")
        add.setAccessibleName("Add something to spare")
        add.clicked.connect(self._offer_spare)
        self._spared_flow.addWidget(add)

    def show_note(self, sentence: str) -> None:
        """The sentence at the bottom."""
        self.note.setText(sentence)

    def _complete(self) -> None:
        completer = QCompleter(self._names, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.activated.connect(self._picked)
        self.movement.edit.setCompleter(completer)

    def _arrange(self) -> None:
        self.body.addWidget(Text("Movement you would do", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self.movement)
        self.body.addWidget(self.dose)
        self.body.addWidget(Text("What is in the way?", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self._cause_chips())
        self.body.addWidget(Text("Spare these", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self._spared)
        self.body.addWidget(self.place)
        self.body.addStretch(1)
        self.body.addWidget(self.note)
        self.show_spare(())

    def _cause_chips(self) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(parent=holder)
        for number, cause in enumerate(Cause):
            chip = ChoiceChip(CAUSE_NAMES[cause])
            self._causes.addButton(chip, number)
            flow.addWidget(chip)
        self._causes.button(0).setChecked(True)
        return holder

    def _movement_typed(self, text: str) -> None:
        self.typed.emit(text)
        self._tell()

    def _picked(self, name: str) -> None:
        self.movement.show_text(name)
        self._tell()

    def _cause_toggled(self, _number: int, checked: bool) -> None:
        if checked:
            self._tell()

    def _remove_spare(self) -> None:
        gone = self.sender().property("demand")
        self.show_spare(tuple(demand for demand in self._spare if demand.value != gone))
        self._tell()

    def _offer_spare(self) -> None:
        menu = QMenu(self)
        for demand in Demand:
            if demand not in self._spare:
                menu.addAction(DEMAND_NAMES[demand]).setData(demand.value)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.triggered.connect(self._add_spare)
        menu.popup(self._spared.mapToGlobal(self._spared.rect().bottomLeft()))

    def _add_spare(self, action: object) -> None:
        data = getattr(action, "data", None)
        if callable(data):
            self.show_spare((*self._spare, Demand(data())))
            self._tell()

    def _tell(self, *_ignored: object) -> None:
        self.asked.emit(self.asked_now())
