"""One place on the right side: where somebody trains, changed in place; a new one is added once it has a name."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from core.errors import InputError
from core.house.model import Place
from core.store.commands import AddPlace, ChangePlace, RemovePlace
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.household.chip_row import ChipRow
from gui.household.line_form import LineForm
from gui.household.panel import Panel
from gui.household.people_typed import PlaceLine, place_lines, read_quiet, with_place_line
from gui.theme import Icon
from gui.widgets import PrimaryButton, SecondaryButton

NEW = ""
OUTDOORS, NEIGHBOURS, WET = "outdoors", "neighbours", "wet"
_TRAITS = ((OUTDOORS, "outdoors"), (NEIGHBOURS, "neighbours below"), (WET, "wet ground"))
_QUIET = (PlaceLine.QUIET_FROM, PlaceLine.QUIET_TO)
_OWN_LINES = (PlaceLine.NAME, PlaceLine.CEILING, PlaceLine.FLOOR, PlaceLine.WALK)


class PlaceSide(Panel):
    """`added` (id) after a new place was added, `removed` after one was taken out."""

    added = Signal(str)
    removed = Signal()

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(Icon.HOUSE, parent=parent)
        self._desk = desk
        self._place_id = NEW
        self.form = LineForm()
        self.traits = ChipRow("What it is like")
        self.add = PrimaryButton("Add")
        self.remove = SecondaryButton("Remove")
        self.column.addWidget(self.form)
        self.column.addWidget(self.traits)
        self.column.addStretch(1)
        self.buttons.addWidget(self.add)
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.remove)
        self.closer.show()
        self.form.edited.connect(self._keep_line)
        self.traits.edited.connect(self._keep_traits)
        self.add.clicked.connect(self._add)
        self.remove.clicked.connect(self._remove)

    def show_place(self, place_id: str) -> None:
        """Show a place, or with `NEW` empty lines."""
        self._place_id = place_id
        place = self._place()
        self.show_head(place.name if place is not None else "Where else do you train?")
        self.form.show_lines(place_lines(place, self._desk.units()))
        on = _traits_of(place) if place is not None else ()
        self.traits.show_chips(tuple((key, words, key in on) for key, words in _TRAITS))
        self.add.setVisible(place is None)
        self.remove.setVisible(place is not None)
        self.remove.setAccessibleName(f"Remove {place.name}" if place is not None else "")
        if place is None:
            self.form.field(PlaceLine.NAME).edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def refresh(self) -> None:
        """Paint the place as it is on disk; what is half typed for a new one stays."""
        if self._place_id != NEW and self._place() is not None:
            self.show_place(self._place_id)

    def place_id(self) -> str:
        """Which place it shows."""
        return self._place_id

    def _place(self) -> Place | None:
        return self._desk.place(self._place_id)

    def _keep_line(self, key: PlaceLine, text: str) -> None:
        place = self._place()
        if place is None:
            return
        try:
            changed = self._with_line(place, key, text)
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        if changed == place:
            self.form.show_fault(key, "")
        elif not self._desk.do(ChangePlace(changed)):
            self.refresh()

    def _with_line(self, place: Place, key: PlaceLine, text: str) -> Place:
        if key in _QUIET:
            return replace(place, quiet=read_quiet(*(self.form.text(line) for line in _QUIET)))
        return with_place_line(place, key, text, self._desk.units())

    def _keep_traits(self, chosen: tuple[str, ...]) -> None:
        place = self._place()
        if place is not None:
            self._desk.do(ChangePlace(_with_traits(place, chosen)))

    def _add(self) -> None:
        place = self._typed()
        if place is not None and self._desk.do(AddPlace(place)):
            self.added.emit(place.id)

    def _typed(self) -> Place | None:
        """The new place; None after every line that can't be used has said so."""
        made = Place(id=NEW, name="")
        sound = True
        for key in (*_OWN_LINES, PlaceLine.QUIET_FROM):
            read = self.form.read(key, partial(self._with_line, made, key))
            made, sound = (made, False) if read is None else (read, sound)
        if not sound:
            return None
        taken = {place.id for place in self._desk.house().places}
        return _with_traits(replace(made, id=free_id(made.name, taken)), self.traits.chosen())

    def _remove(self) -> None:
        if self._place() is not None and self._desk.do(RemovePlace(self._place_id)):
            self.removed.emit()


def _traits_of(place: Place) -> tuple[str, ...]:
    flags = ((OUTDOORS, place.outdoors), (NEIGHBOURS, place.neighbours), (WET, place.wet))
    return tuple(key for key, on in flags if on)


def _with_traits(place: Place, chosen: tuple[str, ...]) -> Place:
    return replace(place, outdoors=OUTDOORS in chosen, neighbours=NEIGHBOURS in chosen, wet=WET in chosen)
