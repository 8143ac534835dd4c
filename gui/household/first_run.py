"""The first page: who trains, what is in the house (pictures to tick), which days. One button plans the first week."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QHBoxLayout, QWidget

from core.errors import InputError
from core.house.model import Experience, House, Person, Place
from core.house.wishes import WEEKDAYS, DayWish, WeekWishes
from core.knowledge import Catalog
from core.quantity.display import UnitSystem
from core.quantity.units import parse_time_min
from core.things.model import ThingKind
from gui.desk.names import thing_picture
from gui.household.adding import one_of_kind, things_of
from gui.household.people_typed import read_body_mass_kg, read_height_cm, read_name
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    ChoiceChip,
    FlowLayout,
    Ink,
    LineField,
    LinkButton,
    PictureLabel,
    PrimaryButton,
    SectionHeader,
    Text,
)

T = TypeVar("T")

COMMON_KINDS = (
    "bottle_litre_and_half",
    "bottle_two_litre",
    "milk_jug_gallon",
    "water_carrier",
    "bucket_ten",
    "tin_food",
    "rice_bag",
    "daypack",
    "backpack",
    "tote_bag",
    "book_large",
    "brick",
    "dining_chair",
    "armchair",
    "sofa",
    "kitchen_table",
    "step_stool",
    "stairs",
    "towel",
    "broom",
    "cushion",
    "exercise_mat",
    "dumbbell",
    "resistance_band",
)
USUAL_COUNT: dict[str, int] = {"bottle_litre_and_half": 2, "bottle_two_litre": 2, "tin_food": 6, "book_large": 4}
USUAL_DAYS = (1, 3, 5)
HOME = Place(id="home", name="Home", floor_m2=4.0, walk_m=5.0)
OUTDOORS = Place(id="outdoors", name="Outdoors", floor_m2=20.0, walk_m=1000.0, outdoors=True)
EXPERIENCES = ((Experience.NEW, "new to it"), (Experience.SOME, "some"), (Experience.TRAINED, "trained"))


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstHouse:
    """What the page yields: a house with one person, two places and the ticked things, and the week wished for."""

    house: House
    wishes: WeekWishes


def common_kinds(catalog: Catalog) -> tuple[ThingKind, ...]:
    """The kinds to tick: the usual list where the catalog has them, filled up with what most homes have."""
    named = [catalog.kind_by_id[kind_id] for kind_id in COMMON_KINDS if kind_id in catalog.kind_by_id]
    listed = {kind.id for kind in named}
    usual = [kind for kind in catalog.kinds if kind.common == 2 and kind.id not in listed and not kind.facts.fixed]
    return tuple((named + usual)[: len(COMMON_KINDS)])


class FirstRun(QWidget):
    """`ready` (a `FirstHouse`) on the button once everything is sound; `demo_wanted` from the quiet link."""

    ready = Signal(object)
    demo_wanted = Signal()

    def __init__(self, catalog: Catalog, system: UnitSystem, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._catalog = catalog
        self._system = system
        metric = system is UnitSystem.METRIC
        self.name = LineField("Your name", "Ines")
        self.body_mass = LineField("Body mass", "68 kg" if metric else "150 lb")
        self.stature = LineField("Height", "171 cm" if metric else "5 ft 7 in")
        self.minutes = LineField("Minutes a day", "40 min")
        self.minutes.show_text("40 min")
        self.experience = QButtonGroup(self)
        self.ticks = tuple((kind, ChoiceChip(_tick_name(kind))) for kind in common_kinds(catalog))
        self.days = tuple(ChoiceChip(name[:3]) for name in WEEKDAYS)
        self.plan = PrimaryButton("Plan my first week")
        self.demo = LinkButton("Look around with an invented household")
        self._arrange()
        self.plan.clicked.connect(self._finish)
        self.demo.clicked.connect(self.demo_wanted)

    def _arrange(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(Space.L)
        grid.addWidget(self._who(), 0, 0)
        grid.addWidget(self._when(), 0, 1)
        grid.addWidget(self._what(), 1, 0, 1, 2)
        row = QHBoxLayout()
        row.addWidget(self.plan)
        row.addWidget(self.demo)
        row.addStretch(1)
        grid.addLayout(row, 2, 0, 1, 2)
        grid.setRowStretch(3, 1)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)

    def _who(self) -> Card:
        card = Card()
        card.body.addWidget(SectionHeader("Who trains?"))
        fields = QHBoxLayout()
        for field in (self.name, self.body_mass, self.stature):
            fields.addWidget(field, 1)
        card.body.addLayout(fields)
        card.body.addWidget(Text("How used to strength work?", TextRole.SMALL, Ink.SOFT))
        chips = QWidget()
        flow = FlowLayout(parent=chips)
        for number, (_, words) in enumerate(EXPERIENCES):
            chip = ChoiceChip(words)
            self.experience.addButton(chip, number)
            flow.addWidget(chip)
        self.experience.button(0).setChecked(True)
        card.body.addWidget(chips)
        card.body.addStretch(1)
        return card

    def _when(self) -> Card:
        card = Card()
        card.body.addWidget(SectionHeader("Which days, and how long?"))
        card.body.addWidget(self.minutes)
        chips = QWidget()
        flow = FlowLayout(parent=chips)
        for weekday, chip in enumerate(self.days):
            chip.setCheckable(True)
            chip.setChecked(weekday in USUAL_DAYS)
            chip.setAccessibleName(WEEKDAYS[weekday])
            flow.addWidget(chip)
        card.body.addWidget(chips)
        hint = "Warm-up and cool-down are inside the minutes. You can change each day later."
        card.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        card.body.addStretch(1)
        return card

    def _what(self) -> Card:
        card = Card()
        card.body.addWidget(SectionHeader("What is in the house?"))
        hint = "Tick what you have. Exact sizes and other things can follow; nothing has to be bought."
        card.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        tiles = QWidget()
        flow = FlowLayout(column_width=190, parent=tiles)
        for kind, chip in self.ticks:
            chip.setCheckable(True)
            tile = QWidget()
            row = QHBoxLayout(tile)
            row.setContentsMargins(0, 0, 0, 0)
            row.addWidget(PictureLabel(thing_picture(kind.icon), 40))
            row.addWidget(chip, 1)
            row.addStretch(1)
            flow.addWidget(tile)
        card.body.addWidget(tiles)
        return card

    def _finish(self) -> None:
        person = self._person()
        wishes = self._wishes()
        if person is None or wishes is None:
            return
        readings = [one_of_kind(kind, USUAL_COUNT.get(kind.id, 1)) for kind, chip in self.ticks if chip.isChecked()]
        things = things_of(readings, ())
        house = House(name="Household", places=(HOME, OUTDOORS), things=things, people=(person,))
        self.ready.emit(FirstHouse(house=house, wishes=wishes))

    def _person(self) -> Person | None:
        """The person typed; None after each faulty field has said what is wrong."""
        name = _kept(self.name, read_name)
        mass_kg = _kept(self.body_mass, self._mass)
        height_cm = _kept(self.stature, self._height)
        if name is None or mass_kg is None or height_cm is None:
            return None
        experience = EXPERIENCES[self.experience.checkedId()][0]
        return Person(id="me", name=name, body_mass_kg=mass_kg, height_cm=height_cm, experience=experience)

    def _mass(self, text: str) -> float:
        return read_body_mass_kg(text, self._system)

    def _height(self, text: str) -> float:
        return read_height_cm(text, self._system)

    def _wishes(self) -> WeekWishes | None:
        chosen = [weekday for weekday, chip in enumerate(self.days) if chip.isChecked()]
        if not chosen:
            self.minutes.show_fault("No day is ticked: tick at least one to plan for.")
            return None
        days = _kept(self.minutes, lambda text: _days(text, chosen))
        return None if days is None else WeekWishes(days=days)


def _days(text: str, chosen: list[int]) -> tuple[DayWish, ...]:
    minutes = parse_time_min(text)
    return tuple(DayWish(weekday=weekday, minutes=minutes) for weekday in chosen)


def _kept(field: LineField, read: Callable[[str], T]) -> T | None:
    """What stands in a field, read; None after the field has said what is wrong with it."""
    try:
        found = read(field.text())
    except InputError as error:
        field.show_fault(str(error))
        return None
    field.show_fault("")
    return found


def _tick_name(kind: ThingKind) -> str:
    count = USUAL_COUNT.get(kind.id, 1)
    return kind.name if count == 1 else f"{count} × {kind.name.lower()}"
