"""The household itself on the right side: its name, the cup it pours with, and the fills at hand."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from core.errors import InputError
from core.store.changes import HouseFacts
from core.store.commands import ChangeHouse
from gui.desk.desk import Desk
from gui.household.line_form import LineForm
from gui.household.panel import Panel
from gui.household.people_typed import HouseLine, house_lines, read_cup_l, read_name
from gui.theme import Icon, Space, TextRole
from gui.widgets import ChoiceField, FlowLayout, Ink, RemovableChip, Text, Tone

FILL_HINT = "What you can pour or pack into your containers. Denser fills make heavier loads from the same container."


class HouseSide(Panel):
    """Every change is saved at once."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(Icon.HOUSE, parent=parent)
        self._desk = desk
        self._others: tuple[str, ...] = ()
        self.form = LineForm()
        self.fills = QWidget()
        self._flow = FlowLayout(gap=Space.XS, parent=self.fills)
        self.more = ChoiceField("", name="Add a fill")
        self.show_head("This household")
        self.column.addWidget(self.form)
        self.column.addLayout(self._fill_part())
        self.column.addStretch(1)
        self.closer.show()
        self.form.edited.connect(self._keep_line)
        self.more.chosen.connect(self._add_fill)

    def refresh(self) -> None:
        """Paint the house as it is on disk; what is half typed stays."""
        house = self._desk.house()
        self.form.show_lines_again(house_lines(house, self._desk.units()))
        self._flow.clear()
        names = self._desk.catalog.material_by_id
        for fill in house.fills:
            chip = RemovableChip(names[fill].name if fill in names else fill, Tone.PLAIN)
            chip.setProperty("fill", fill)
            chip.clicked.connect(self._remove_fill)
            self._flow.addWidget(chip)
        usable = [one for one in self._desk.catalog.materials if one.as_fill and one.id not in house.fills]
        ranked = sorted(usable, key=lambda one: one.name)
        self._others = tuple(one.id for one in ranked)
        self.more.show_options(("Add a fill…", *(one.name for one in ranked)))

    def open_form(self) -> None:
        """The cursor in the name."""
        self.refresh()
        self.form.show_lines(house_lines(self._desk.house(), self._desk.units()))
        self.form.field(HouseLine.NAME).edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _fill_part(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setContentsMargins(0, Space.S, 0, 0)
        column.setSpacing(Space.XS)
        column.addWidget(Text("Fills at hand", TextRole.SMALL, Ink.SOFT))
        column.addWidget(self.fills)
        column.addWidget(self.more)
        column.addWidget(Text(FILL_HINT, TextRole.SMALL, Ink.SOFT, wrap=True))
        return column

    def _keep_line(self, key: HouseLine, text: str) -> None:
        house = self._desk.house()
        try:
            name = read_name(text) if key is HouseLine.NAME else house.name
            cup_l = read_cup_l(text, self._desk.units()) if key is HouseLine.CUP else house.cup_l
        except InputError as error:
            self.form.show_fault(key, str(error))
            return
        if not self._keep(HouseFacts(name=name, fills=house.fills, cup_l=cup_l)):
            self.form.field(key).take_back()

    def _remove_fill(self) -> None:
        gone = self.sender().property("fill")
        house = self._desk.house()
        kept = tuple(fill for fill in house.fills if fill != gone)
        self._keep(HouseFacts(name=house.name, fills=kept, cup_l=house.cup_l))

    def _add_fill(self, index: int) -> None:
        house = self._desk.house()
        if index > 0:
            fills = (*house.fills, self._others[index - 1])
            self._keep(HouseFacts(name=house.name, fills=fills, cup_l=house.cup_l))

    def _keep(self, facts: HouseFacts) -> bool:
        kept = self._desk.do(ChangeHouse(facts))
        if kept:
            self.refresh()
        return kept
