"""One thing on the right side: its card, or the form to change it. Every change is saved at once."""

from __future__ import annotations

import datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from core.errors import InputError
from core.exercise.model import Use
from core.store.commands import ChangeThing, SetOwnCheck
from core.things.corrections import Corrections, corrected
from core.things.model import Hazard, OwnCheck, Thing
from gui.desk.desk import Desk, Jump
from gui.desk.names import thing_picture
from gui.household.detail_words import Viewpoint, detail_view, materials_at_hand
from gui.household.thing_edit_panel import ThingEditPanel
from gui.household.thing_panel import ThingPanel
from gui.household.thing_typed import ThingLine, edit_view, read_line, read_took_kg
from gui.household.use_words import movements_by_use
from gui.shell.entry import ScreenName


class ThingSide(QStackedWidget):
    """`remove_wanted` (id) from the button; `left` when the form is closed and the card is back."""

    remove_wanted = Signal(str)
    left = Signal()

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._thing_id = ""
        self._movements: dict[Use, str] | None = None
        self.card = ThingPanel()
        self.form = ThingEditPanel()
        self.addWidget(self.card)
        self.addWidget(self.form)
        self._connect()

    def show_thing(self, thing_id: str) -> None:
        """Show the card of a thing; the form stays open while it is the same thing."""
        again = thing_id == self._thing_id
        if not again:
            self.setCurrentWidget(self.card)
        self._thing_id = thing_id
        self._show(again=again)

    def open_form(self) -> None:
        """Show the form, the cursor in its first line."""
        self._show(again=False)
        self.setCurrentWidget(self.form)
        self.form.form.field(ThingLine.NAME).edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def refresh(self) -> None:
        """Paint the thing as it is on disk; what is half typed in its form stays."""
        self._show(again=True)

    def _show(self, *, again: bool) -> None:
        thing = self._thing()
        if thing is None:
            return
        house, units = self._desk.house(), self._desk.units()
        kind = self._desk.catalog.kind_by_id.get(thing.kind_id)
        self.card.show_detail(detail_view(thing, kind.name if kind is not None else "", self._viewpoint()))
        self.form.show_edit(edit_view(thing, house, units), thing_picture(thing.icon), _today(), again=again)

    def _connect(self) -> None:
        self.card.weigh_wanted.connect(self._weigh)
        self.card.edit_wanted.connect(self.open_form)
        self.card.remove_wanted.connect(self._remove)
        self.form.line_edited.connect(self._keep_line)
        self.form.hazards_edited.connect(self._keep_hazards)
        self.form.places_edited.connect(self._keep_places)
        self.form.check_edited.connect(self._keep_check)
        self.form.check_withdrawn.connect(self._withdraw_check)
        self.form.done.connect(self._close_form)

    def _thing(self) -> Thing | None:
        return next((thing for thing in self._desk.house().things if thing.id == self._thing_id), None)

    def _viewpoint(self) -> Viewpoint:
        if self._movements is None:
            self._movements = movements_by_use(self._desk.catalog)
        house = self._desk.house()
        return Viewpoint(
            house=house,
            person=self._desk.person(),
            system=self._desk.units(),
            materials=materials_at_hand(house, self._desk.catalog),
            movements=self._movements,
        )

    def _weigh(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.FILL, thing_id=self._thing_id))

    def _remove(self) -> None:
        self.remove_wanted.emit(self._thing_id)

    def _close_form(self) -> None:
        self.setCurrentWidget(self.card)
        self.left.emit()

    def _keep_line(self, key: ThingLine, text: str) -> None:
        thing = self._thing()
        if thing is None:
            return
        kind = self._desk.catalog.kind_by_id.get(thing.kind_id)
        try:
            changed = corrected(thing, read_line(key, text, self._desk.units()), kind)
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        if changed == thing:
            self.form.form.field(key).show_value(self._line_text(thing, key))
        elif not self._desk.do(ChangeThing(changed)):
            self.form.form.field(key).take_back()

    def _line_text(self, thing: Thing, key: ThingLine) -> str:
        lines = edit_view(thing, self._desk.house(), self._desk.units()).lines
        return next((line.text for line in lines if line.key is key), "")

    def _keep_hazards(self, hazards: frozenset[Hazard]) -> None:
        self._keep(Corrections(hazards=hazards))

    def _keep_places(self, place_ids: tuple[str, ...]) -> None:
        self._keep(Corrections(place_ids=place_ids))

    def _keep(self, told: Corrections) -> None:
        thing = self._thing()
        if thing is not None:
            kind = self._desk.catalog.kind_by_id.get(thing.kind_id)
            if not self._desk.do(ChangeThing(corrected(thing, told, kind))):
                self.refresh()

    def _keep_check(self, text: str, day: datetime.date) -> None:
        if not text.strip():
            self._withdraw_check()
            return
        try:
            took_kg = read_took_kg(text, self._desk.units())
        except InputError as error:
            self.form.check.took.show_fault(str(error))
            return
        if not self._desk.do(SetOwnCheck(self._thing_id, OwnCheck(date=day, took_kg=took_kg))):
            self.form.check.took.take_back()

    def _withdraw_check(self) -> None:
        thing = self._thing()
        if thing is not None and thing.own_check is not None:
            self._desk.do(SetOwnCheck(thing.id, None))


def _today() -> datetime.date:
    return datetime.date.today()  # noqa: DTZ011  # the local day of the person in front of it
