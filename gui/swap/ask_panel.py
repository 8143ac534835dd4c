"""The left side of the swap screen: which movement, at what dose, what is in the way, what to spare, who and where."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QButtonGroup, QMenu, QWidget

from core.exercise.model import Demand
from core.swap.model import Cause
from gui.desk.names import DEMAND_NAMES
from gui.swap.movement_field import MovementField
from gui.theme import Space, TextRole
from gui.widgets import ActionChip, Card, ChoiceChip, ChoiceField, FlowLayout, Ink, LineField, RemovableChip, Text, Tone

CAUSE_NAMES: dict[Cause, str] = {
    Cause.NO_GEAR: "no gear for it",
    Cause.HURTS: "it hurts or I can’t",
    Cause.TOO_HARD: "too hard",
    Cause.TOO_EASY: "too easy",
    Cause.TOO_LOUD: "too loud",
    Cause.NO_ROOM: "no room",
}
PANEL_WIDTH, NARROW_WIDTH = 280, 236
KEYS = (
    "Enter goes to the answers, ↑ ↓ walk them. There Enter uses one, Space opens it, C compares two, Escape comes back."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What stands in the panel: the texts as typed, the cause, demands to spare, place and thing by their positions."""

    movement: str
    dose: str
    cause: Cause
    spare: frozenset[Demand]
    place: int
    thing: int


class AskPanel(Card):
    """`asked` (an `Asked`) whenever anything changes, `person_chosen` (position); it looks nothing up itself.

    Another place tells only `place.chosen`, because the things to choose from change with it.
    """

    asked = Signal(object)
    person_chosen = Signal(int)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self.setFixedWidth(PANEL_WIDTH)
        self._spare: tuple[Demand, ...] = ()
        self.movement = MovementField()
        self.read_as = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.dose = LineField("Prescribed", "4 x 5 at 40 kg, effort 8")
        self.who = ChoiceField("For")
        self.place = ChoiceField("Where")
        self.thing = ChoiceField("With")
        self.causes = QButtonGroup(self)
        self._spared = QWidget()
        self._spared_flow = FlowLayout(parent=self._spared)
        self.add_spare = ActionChip("+ add")
        self._own = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._arrange()
        self.movement.edited.connect(self._tell)
        self.movement.picked.connect(self.show_movement)
        self.dose.edited.connect(self._tell)
        self.thing.chosen.connect(self._tell)
        self.who.chosen.connect(self.person_chosen)
        self.causes.idToggled.connect(self._cause_toggled)

    def asked_now(self) -> Asked:
        """What stands there now."""
        return Asked(
            movement=self.movement.text(),
            dose=self.dose.text(),
            cause=tuple(Cause)[self.causes.checkedId()],
            spare=frozenset(self._spare),
            place=self.place.index(),
            thing=self.thing.index(),
        )

    def show_movement(self, name: str) -> None:
        """Write a movement into the field and ask for it."""
        self.movement.show_text(name)
        self._tell()

    def show_read_as(self, name: str) -> None:
        """Say which movement was understood, where that is not what stands in the field."""
        self.read_as.setText(f"Read as {name}." if name else "")
        self.read_as.setVisible(bool(name))

    def show_usual_dose(self, words: str) -> None:
        """What is taken while no dose is given."""
        self.dose.edit.setPlaceholderText(words)

    def show_people(self, names: tuple[str, ...], index: int) -> None:
        """Who can be asked for; one person needs no choice."""
        self.who.show_options(names, index)
        self.who.setVisible(len(names) > 1)

    def show_places(self, names: tuple[str, ...], index: int) -> None:
        """Where it could be done."""
        self.place.show_options(names, index)

    def show_things(self, names: tuple[str, ...], index: int) -> None:
        """What every answer may have to use; the first one is anything."""
        self.thing.show_options(names, index)
        self.thing.setVisible(len(names) > 1)

    def show_own_spares(self, own: tuple[Demand, ...]) -> None:
        """What the person spares anyway."""
        self._own.setText(f"Always spared: {', '.join(DEMAND_NAMES[demand] for demand in own)}.")
        self._own.setVisible(bool(own))

    def show_spare(self, spare: tuple[Demand, ...]) -> None:
        """Paint the demands to spare."""
        self._spare = spare
        while (item := self._spared_flow.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None and widget is not self.add_spare:
                widget.hide()
                widget.deleteLater()
        for demand in spare:
            chip = RemovableChip(DEMAND_NAMES[demand], Tone.FAIR)
            chip.setProperty("demand", demand.value)
            chip.clicked.connect(self._remove_spare)
            self._spared_flow.addWidget(chip)
        self._spared_flow.addWidget(self.add_spare)
        self.add_spare.setVisible(len(spare) < len(Demand))

    def unspare(self, demand: Demand) -> None:
        """Spare one thing less, and ask again."""
        self.show_spare(tuple(one for one in self._spare if one is not demand))
        self._tell()

    def show_note(self, sentence: str) -> None:
        """The sentence on the load asked for, or what to say besides."""
        self.note.setText(sentence)
        self.note.setVisible(bool(sentence))

    def _arrange(self) -> None:
        self.add_spare.setAccessibleName("Add something to spare")
        self.add_spare.clicked.connect(self._offer_spare)
        self.body.addWidget(Text("Movement you would do", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self.movement)
        self.body.addWidget(self.read_as)
        self.body.addWidget(self.dose)
        self.body.addWidget(Text("What is in the way?", TextRole.SMALL, Ink.SOFT))
        self.body.addWidget(self._cause_chips())
        self.body.addWidget(Text("Spare these", TextRole.SMALL, Ink.SOFT))
        for widget in (self._spared, self._own, self.who, self.place, self.thing, self.note):
            self.body.addWidget(widget)
        self.body.addStretch(1)
        self.body.addWidget(Text(KEYS, TextRole.TINY, Ink.SOFT, wrap=True))
        for text in (self.read_as, self._own, self.note):
            text.hide()
        self.show_spare(())

    def _cause_chips(self) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(parent=holder)
        for number, cause in enumerate(Cause):
            chip = ChoiceChip(CAUSE_NAMES[cause])
            self.causes.addButton(chip, number)
            flow.addWidget(chip)
        self.causes.button(0).setChecked(True)
        return holder

    def _cause_toggled(self, _number: int, checked: bool) -> None:
        if checked:
            self._tell()

    def _remove_spare(self) -> None:
        self.unspare(Demand(self.sender().property("demand")))

    def _offer_spare(self) -> None:
        menu = QMenu(self)
        for demand in Demand:
            if demand not in self._spare:
                menu.addAction(DEMAND_NAMES[demand]).setData(demand.value)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.triggered.connect(self._add_spare)
        menu.popup(self._spared.mapToGlobal(self._spared.rect().bottomLeft()))

    def _add_spare(self, action: QAction) -> None:
        self.show_spare((*self._spare, Demand(action.data())))
        self._tell()

    def _tell(self, *_ignored: object) -> None:
        self.asked.emit(self.asked_now())
