"""From a typed wanted mass to the fill that reaches it, or to why none does and what would."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from core.errors import InputError, Unreachable
from core.loads.filling import Filling, OtherWay, other_ways
from core.loads.measures import Measure, cup_of, measures_of, read_measure
from core.mass.model import Fill, HeightLevel, Level, Material, VolumeLevel
from core.quantity.display import UnitSystem
from core.quantity.units import parse_mass_kg
from gui.desk.desk import Desk
from gui.fill.asked import choices_for
from gui.fill.goal_card import NOTHING, GoalCard, GoalView
from gui.fill.present import goal_spans
from gui.fill.words import volume_text, whole

EXAMPLES = {UnitSystem.METRIC: "12 kg", UnitSystem.US: "26 lb"}
UNITS = {UnitSystem.METRIC: "kg", UnitSystem.US: "lb"}
MOST_WAYS = 3


class GoalFlow(QObject):
    """`line_wanted` (a level of the thing in hand) and `way_taken` (an `OtherWay`)."""

    line_wanted = Signal(object)
    way_taken = Signal(object)

    def __init__(self, desk: Desk, card: GoalCard, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._filling: Filling | None = None
        self._fill: Fill | None = None
        self._ways: tuple[OtherWay, ...] = ()
        card.asked.connect(self._ask)
        card.poured_with.connect(self._pour_with)
        card.line_wanted.connect(self._want_line)
        card.way_taken.connect(self._take_way)

    def show_filling(self, filling: Filling | None) -> None:
        """Another container or fill; the mass asked for stays."""
        self._filling = filling
        self._card.setVisible(filling is not None)
        if filling is None:
            return
        house, system = self._desk.house(), self._desk.units()
        names = tuple(one.name for one in measures_of(house, filling.thing)[1:])
        self._card.show_examples(EXAMPLES[system], f"{volume_text(house.cup_l, system)} cup", names)
        self._ask(self._card.field.text())

    def _ask(self, text: str) -> None:
        self._fill, self._ways = None, ()
        self._card.field.show_fault("")
        if self._filling is None or not text.strip():
            self._card.show_goal(NOTHING)
            return
        try:
            wanted_kg = parse_mass_kg(text, UNITS[self._desk.units()])
            self._fill = self._filling.to(wanted_kg, self._possible(self._filling))
        except Unreachable as refusal:
            self._refuse(str(refusal), refusal.wanted_kg)
        except InputError as error:
            self._card.field.show_fault(str(error))
            self._card.show_goal(NOTHING)
        else:
            self._card.show_goal(GoalView(spans=goal_spans(self._filling, self._fill, self._measure())))

    def _pour_with(self, _text: str) -> None:
        self._ask(self._card.field.text())

    def _measure(self) -> Measure:
        """What is poured with; a fault is said below its field, and the cup is taken."""
        house, field = self._desk.house(), self._card.measure
        if self._filling is None:
            return cup_of(house)
        try:
            found = read_measure(field.text(), house, self._filling.thing)
        except InputError as error:
            field.show_fault(str(error))
            return cup_of(house)
        field.show_fault("")
        return found

    def _possible(self, filling: Filling) -> tuple[Material, ...]:
        """What else the container could be filled with, at hand or not: the refusal names the lightest that reaches."""
        choices = choices_for(filling.thing, self._desk.house(), self._desk.catalog)
        return tuple(one.material for one in choices if not one.why_not or not one.at_hand)

    def _refuse(self, sentence: str, wanted_kg: float) -> None:
        if self._filling is None:
            return
        found = other_ways(self._filling, self._desk.house(), self._desk.catalog.materials, wanted_kg)
        self._ways = tuple(way for way, _ in zip(found, range(MOST_WAYS), strict=False))
        labels = tuple(self._label(way) for way in self._ways)
        if not labels:
            sentence += " Nothing else you list reaches it either."
        self._card.show_goal(GoalView(refusal=whole(sentence), ways=labels))

    def _label(self, way: OtherWay) -> str:
        fill = f"{volume_text(way.fill.volume_l, self._desk.units())} {way.material.name.lower()}"
        if way.added is not None:
            many = f"{way.count} × " if way.count > 1 else ""
            return f"{fill} in this one, and add {many}{way.added.name}"
        name = "This one" if self._filling is not None and way.thing.id == self._filling.thing.id else way.thing.name
        return f"{name} with {fill}"

    def _want_line(self) -> None:
        if self._fill is not None:
            self.line_wanted.emit(level_of(self._fill))

    def _take_way(self, place: int) -> None:
        if place < len(self._ways):
            self.way_taken.emit(self._ways[place])


def level_of(fill: Fill) -> Level:
    """The level a fill stands at: its line, or its volume where there is none."""
    if fill.height_cm is None:
        return VolumeLevel(volume_l=fill.volume_l)
    return HeightLevel(height_cm=fill.height_cm)
