"""The editor of one own entry: sections to fill, faults beside their fields as one types, saving when there is none.

What the form does not show (the inner shape of a vessel, steps of a flight) stays as it was in the entry copied.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import Any

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from core.errors import InputError
from core.exercise.model import DoseKind
from core.house.own import OwnEntry, OwnKind
from core.knowledge import Catalog
from core.quantity.display import UnitSystem
from gui.own.checking import Checked, Checking
from gui.own.fault_places import placed
from gui.own.field import Field, LineOf, Table
from gui.own.movement_form import movement_sections
from gui.own.section import Section
from gui.own.thing_form import thing_sections
from gui.theme import Space, TextRole
from gui.widgets import Card, Ink, LinkButton, PrimaryButton, SecondaryButton, Text
from gui.widgets.page import GUTTER, PageScroll

PAUSE_MS = 150


class Editor(QWidget):
    """`saved` (an `OwnEntry`), `left` without saving, `removed` (id) and `copied` (id) of the entry that is edited."""

    saved = Signal(object)
    left = Signal()
    removed = Signal(str)
    copied = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.checking = Checking(self)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self._check)
        self._kind = OwnKind.EXERCISE
        self._table: Table = {}
        self._read_table: Table = {}
        self._unread: frozenset[Field] = frozenset()
        self._catalog: Catalog | None = None
        self._entry: OwnEntry | None = None
        self.sections: tuple[Section, ...] = ()
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._from = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._fault = Text("", TextRole.SMALL, Ink.BAD, wrap=True)
        self.save = PrimaryButton("Save")
        self.leave = SecondaryButton("Leave without saving")
        self.remove = LinkButton("Remove it")
        self.copy = LinkButton("Copy it")
        self._column = QVBoxLayout()
        self._arrange()
        self.save.clicked.connect(self._save)
        self.leave.clicked.connect(self.left)
        self.remove.clicked.connect(self._remove)
        self.copy.clicked.connect(self._copy)
        self.checking.checked.connect(self._show_checked)

    def edit(self, kind: OwnKind, table: Table, catalog: Catalog, system: UnitSystem, *, origin: str = "") -> None:
        """Show a table to change; one with an id is there already. `origin` names what it was copied from."""
        self._kind, self._table, self._catalog, self._entry = kind, copy.deepcopy(table), catalog, None
        for section in self.sections:
            self._column.removeWidget(section)
            section.hide()
            section.deleteLater()
        movement = kind is OwnKind.EXERCISE
        self.sections = movement_sections(catalog, system) if movement else thing_sections(table, system)
        for section in self.sections:
            self._column.addWidget(section)
        for field in self.fields():
            field.show_table(self._table)
            field.edited.connect(self._wait)
        self._show_head(origin)
        self._check()

    def show_saved(self, table: Table, catalog: Catalog) -> None:
        """What the form shows is now an entry of the catalog; the form stays as it is."""
        self._table, self._catalog = copy.deepcopy(table), catalog
        self._show_head("")
        self._check()

    def field(self, key: str) -> Field:
        """The field that stands for a key of the table."""
        return next(field for field in self.fields() if key in field.keys)

    def fields(self) -> Iterator[Field]:
        """Every field, in order."""
        for section in self.sections:
            yield from section.fields

    def title(self) -> str:
        """What is edited."""
        return self._title.text()

    def fault(self) -> str:
        """What is wrong with the entry as a whole."""
        return self._fault.text()

    def focus_name(self) -> None:
        """Put the cursor into the name."""
        name = self.field("name")
        if isinstance(name, LineOf):
            name.line.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def is_busy(self) -> bool:
        """Whether what was typed last is still to be checked."""
        return self._pause.isActive() or self.checking.is_busy()

    def stop(self) -> None:
        """Nobody waits for a check any more."""
        self._pause.stop()
        self.checking.stop()

    def check_now(self) -> None:
        """Check at once what stands in the form, for pictures of it."""
        self._check()
        if self._catalog is not None:
            self.checking.check_now(self._kind, self._read_table, self._catalog)

    def close_work(self) -> None:
        """Stop, and wait until no thread is left."""
        self._pause.stop()
        self.checking.close()

    def _wait(self) -> None:
        """Check when the fingers rest; nothing is saved before that."""
        self._entry = None
        self.save.setEnabled(False)
        self._pause.start()

    def _check(self) -> None:
        """Read every field and check the whole; a field that can't be read says so, and counts as it was before."""
        self._entry = None
        self.save.setEnabled(False)
        self._pause.stop()
        read: Table = copy.deepcopy(self._table)
        faults = {field: self._read(field, read) for field in self.fields()}
        self._unread = frozenset(field for field, sentence in faults.items() if sentence)
        for field in self._unread:
            field.show_fault(faults[field])
        self._show_by_dose(read)
        if self._kind is OwnKind.EXERCISE and read.get("dose") != DoseKind.REPS:
            read["rep_s"] = 1.0
        self._read_table = read
        if self._catalog is not None:
            self.checking.ask(self._kind, read, self._catalog)

    def _show_head(self, origin: str) -> None:
        there = bool(self._table.get("id"))
        what = "movement" if self._kind is OwnKind.EXERCISE else "kind of thing"
        self._title.setText(str(self._table["name"]) if there else f"A new {what}")
        self._from.setText(f"Copied from {origin}. Change what is different." if origin else "")
        self._from.setVisible(bool(origin))
        for button in (self.remove, self.copy):
            button.setVisible(there)

    def _show_by_dose(self, read: Table) -> None:
        """How long a repetition takes is only asked where repetitions are counted."""
        if self._kind is OwnKind.EXERCISE:
            self.field("rep_s").setVisible(read.get("dose") == DoseKind.REPS)

    def _read(self, field: Field, into: Table) -> str:
        try:
            _merge(into, field.read())
        except InputError as fault:
            return str(fault)
        return ""

    def _show_checked(self, checked: Checked) -> None:
        self._entry = None if self._unread else checked.entry
        self.save.setEnabled(self._entry is not None)
        keys = [key for field in self.fields() for key in field.keys]
        faults = placed(checked.sentences, self._read_table, keys)
        for field in self.fields():
            if field not in self._unread:
                field.show_fault(" ".join(faults[key] for key in field.keys if key in faults))
        self._fault.setText(faults.get("", ""))
        self._fault.setVisible("" in faults)

    def _save(self) -> None:
        if self._entry is not None:
            self.saved.emit(self._entry)

    def _remove(self) -> None:
        self.removed.emit(str(self._table["id"]))

    def _copy(self) -> None:
        self.copied.emit(str(self._table["id"]))

    def _arrange(self) -> None:
        head = Card(gap=Space.S)
        top = QHBoxLayout()
        top.addWidget(self._title, 1)
        top.addWidget(self.copy)
        top.addWidget(self.remove)
        buttons = QHBoxLayout()
        buttons.setSpacing(Space.S)
        buttons.addWidget(self.save)
        buttons.addWidget(self.leave)
        buttons.addStretch(1)
        head.body.addLayout(top)
        head.body.addWidget(self._from)
        head.body.addWidget(self._fault)
        head.body.addLayout(buttons)
        self._fault.hide()
        inner = QWidget()
        holder = QVBoxLayout(inner)
        holder.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Space.M)
        holder.addLayout(self._column)
        holder.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        above = QHBoxLayout()
        above.setContentsMargins(0, 0, GUTTER, 0)
        above.addWidget(head)
        column.addLayout(above)
        column.addWidget(PageScroll(inner), 1)


def _merge(into: Table, part: dict[str, Any]) -> None:
    """Put a field's part into the table; None takes a field out."""
    for key, value in part.items():
        if value is None:
            into.pop(key, None)
        elif isinstance(value, dict) and key == "body":
            into[key] = {**into.get(key, {}), **value}
        else:
            into[key] = value
