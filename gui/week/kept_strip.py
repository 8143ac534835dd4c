"""What the person asked to keep and to leave out, each to be taken back by a press."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from core.house.wishes import WEEKDAYS, Pin, WeekWishes
from core.knowledge import Catalog
from gui.desk.names import DAY_KIND_NAMES
from gui.theme import Space, TextRole
from gui.widgets import Card, FlowLayout, Ink, RemovableChip, Text, Tone


class KeptStrip(Card):
    """`pin_removed` (a `Pin`) and `ban_removed` (an exercise id). Hidden while there is neither."""

    pin_removed = Signal(object)
    ban_removed = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.S + 2, parent=parent)
        self._wishes = WeekWishes()
        self._flow = FlowLayout(gap=Space.S - 2)
        self.body.addLayout(self._flow)
        self.hide()

    def show_wishes(self, wishes: WeekWishes, catalog: Catalog) -> None:
        """Paint other wishes."""
        self._wishes = wishes
        self._flow.clear()
        if wishes.pins:
            self._flow.addWidget(Text("Kept by you:", TextRole.SMALL, Ink.SOFT))
        for at, pin in enumerate(wishes.pins):
            self._chip(f"{pin_name(pin, catalog)}, {WEEKDAYS[pin.weekday]}", Tone.PLAIN, f"pin {at}")
        if wishes.bans:
            self._flow.addWidget(Text("Left out by you:", TextRole.SMALL, Ink.SOFT))
        for exercise_id in wishes.bans:
            self._chip(exercise_name(exercise_id, catalog), Tone.FAIR, f"ban {exercise_id}")
        self.setVisible(bool(wishes.pins or wishes.bans))

    def chips(self) -> tuple[RemovableChip, ...]:
        """The chips shown, in order."""
        items = [self._flow.itemAt(at) for at in range(self._flow.count())]
        widgets = [item.widget() for item in items if item is not None]
        return tuple(widget for widget in widgets if isinstance(widget, RemovableChip))

    def _chip(self, words: str, tone: Tone, what: str) -> None:
        chip = RemovableChip(words, tone)
        chip.setAccessibleName(f"Stop keeping {words}" if what.startswith("pin") else f"Allow {words} again")
        chip.setProperty("what", what)
        chip.clicked.connect(self._remove)
        self._flow.addWidget(chip)

    def _remove(self) -> None:
        kind, _, which = str(self.sender().property("what")).partition(" ")
        if kind == "pin":
            self.pin_removed.emit(self._wishes.pins[int(which)])
        else:
            self.ban_removed.emit(which)


def exercise_name(exercise_id: str, catalog: Catalog) -> str:
    """The name of a movement; what was left out long ago may be in the catalog no more."""
    exercise = catalog.exercise_by_id.get(exercise_id)
    return exercise.name if exercise is not None else "a movement no longer here"


def pin_name(pin: Pin, catalog: Catalog) -> str:
    """What a pin holds: a movement, a kind of day, or both."""
    kinds = {kind.value: name for kind, name in DAY_KIND_NAMES.items()}
    kind = kinds.get(pin.kind, pin.kind) if pin.kind is not None else ""
    name = exercise_name(pin.exercise_id, catalog) if pin.exercise_id is not None else ""
    return f"{name} ({kind.lower()})" if name and kind else name or kind
