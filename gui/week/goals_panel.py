"""What the week should train: none, some or a lot of each kind, and what that comes to."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import IntEnum

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QWidget

from core.errors import InputError
from core.house.wishes import DayWish, Goals
from core.plan.frame import wanted_kinds
from core.plan.model import DayKind
from gui.desk.names import DAY_KIND_NAMES
from gui.desk.wording import counted, nb
from gui.theme import Space, TextRole
from gui.widgets import Card, ChoiceChip, Notice, SectionHeader, Text


class Much(IntEnum):
    """How much of a kind of training."""

    NONE = 0
    SOME = 1
    A_LOT = 2


@dataclass(frozen=True, slots=True)
class _Scale:
    """A goal in words, and its weight for some and for a lot; the weights are judgement, no source."""

    field: str
    words: str
    some: float
    a_lot: float

    def weight(self, much: Much) -> float:
        return (0.0, self.some, self.a_lot)[much]

    def much(self, weight: float) -> Much:
        if weight <= 0:
            return Much.NONE
        return Much.SOME if weight < (self.some + self.a_lot) / 2 else Much.A_LOT


SCALES = (
    _Scale("strength", "Strength", 0.5, 1.0),
    _Scale("run_walk", "Run and walk", 0.5, 1.0),
    _Scale("loaded_walk", "Loaded walk", 0.25, 0.7),
    _Scale("mobility", "Mobility", 0.25, 0.7),
)
MUCH_WORDS = ("none", "some", "a lot")


class GoalsPanel(Card):
    """`changed` (a `Goals`) when one of the choices is pressed and the whole still makes sense."""

    changed = Signal(object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._goals = Goals()
        self._groups = {scale.field: QButtonGroup(self) for scale in SCALES}
        self.fault = Notice()
        self._summary = Text("", TextRole.BODY, wrap=True)
        self.body.addWidget(SectionHeader("What should it train?"))
        self.body.addWidget(self._grid())
        self.body.addWidget(self.fault)
        self.body.addSpacing(Space.S)
        self.body.addWidget(Text("What you get", TextRole.SMALL_STRONG))
        self.body.addWidget(self._summary)
        self.body.addStretch(1)

    def show_goals(self, goals: Goals, days: tuple[DayWish, ...]) -> None:
        """Paint the wishes."""
        self._goals = goals
        self.fault.show_sentence("")
        for scale in SCALES:
            self.chip(scale.field, scale.much(getattr(goals, scale.field))).setChecked(True)
        self._summary.setText(summary(goals, days))

    def chip(self, field: str, much: Much) -> ChoiceChip:
        """The chip of a choice."""
        found = self._groups[field].button(much)
        if not isinstance(found, ChoiceChip):
            raise TypeError(f"{field} has no chip for {much}")
        return found

    def summary(self) -> str:
        """What the week comes to, in words."""
        return self._summary.text()

    def _grid(self) -> QWidget:
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(Space.S)
        grid.setVerticalSpacing(Space.S)
        for row, scale in enumerate(SCALES):
            grid.addWidget(Text(scale.words), row, 0)
            for much in Much:
                chip = ChoiceChip(MUCH_WORDS[much])
                chip.setAccessibleName(f"{scale.words}: {MUCH_WORDS[much]}")
                self._groups[scale.field].addButton(chip, much)
                grid.addWidget(chip, row, 1 + much)
            self._groups[scale.field].idClicked.connect(self._choose)
        grid.setColumnStretch(4, 1)
        return holder

    def _choose(self, _much: int) -> None:
        """Read every choice; one that was not moved keeps its own weight."""
        weights = {}
        for scale in SCALES:
            much = Much(self._groups[scale.field].checkedId())
            weight = getattr(self._goals, scale.field)
            weights[scale.field] = weight if scale.much(weight) is much else scale.weight(much)
        try:
            goals = replace(self._goals, **weights)
        except InputError as error:
            self.fault.show_sentence(str(error))
            return
        self.fault.show_sentence("")
        if goals != self._goals:
            self.changed.emit(goals)


def summary(goals: Goals, days: tuple[DayWish, ...]) -> str:
    """The days by kind that the plan aims at, and the minutes in all."""
    if not days:
        return "Choose the days first."
    possible = frozenset(kind for kind in DayKind if kind is not DayKind.REST)
    wanted = wanted_kinds(len(days), goals, possible)
    kinds = [
        f"{nb(f'{count} × ')}{DAY_KIND_NAMES[kind].lower()}"
        for kind, count in wanted.items()
        if count and kind is not DayKind.REST
    ]
    minutes = round(sum(day.minutes for day in days))
    spare = " One of your days stays free." if wanted[DayKind.REST] == 1 else ""
    return f"{counted(minutes, 'minute')} on {counted(len(days), 'day')}: {', '.join(kinds)}.{spare}"
