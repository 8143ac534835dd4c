"""The form of one entry on the right side: changed in place, or a new one that is added once its lines are complete.

What can't be saved stays as typed. A kind of entry (a person, a place) says in a subclass what its lines are and which
commands keep it; ids are strings, and `NEW` stands for an entry that is not there yet.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterable
from enum import StrEnum
from functools import partial
from typing import Generic, Protocol, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from core.store.commands import Command
from gui.desk.desk import Desk
from gui.household.line_form import Line, LineForm
from gui.household.panel import Panel
from gui.theme import Icon
from gui.widgets import PrimaryButton, SecondaryButton

NEW = ""


class Named(Protocol):
    """What every entry has."""

    @property
    def id(self) -> str: ...

    @property
    def name(self) -> str: ...


E = TypeVar("E", bound=Named)


class EntrySide(Panel, Generic[E]):
    """`added` (id) after a new entry was added, `removed` after one was taken out."""

    added = Signal(str)
    removed = Signal()

    def __init__(self, desk: Desk, picture: Icon, choices: tuple[QWidget, ...], parent: QWidget | None) -> None:
        super().__init__(picture, parent=parent)
        self._desk = desk
        self._entry_id = NEW
        self.form = LineForm()
        self.add = PrimaryButton("Add")
        self.remove = SecondaryButton("Remove")
        for widget in (self.form, *choices):
            self.column.addWidget(widget)
        self.column.addStretch(1)
        self.buttons.addWidget(self.add)
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.remove)
        self.closer.show()
        self.form.edited.connect(self._keep_line)
        self.add.clicked.connect(self._add)
        self.remove.clicked.connect(self._remove)

    def show_entry(self, entry_id: str) -> None:
        """Show an entry, or with `NEW` empty lines."""
        self._entry_id = entry_id
        entry = self.entry()
        lines = self._lines(entry)
        self.form.show_lines(lines)
        self._show_rest(entry)
        if entry is None:
            self.form.field(lines[0].key).edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def refresh(self) -> None:
        """Paint the entry as it is on disk; what is half typed stays."""
        entry = self.entry()
        if entry is not None:
            self.form.show_lines_again(self._lines(entry))
            self._show_rest(entry)

    def entry_id(self) -> str:
        """Which one it shows."""
        return self._entry_id

    def entry(self) -> E | None:
        """The one shown, as it is on disk."""
        return next((entry for entry in self._entries() if entry.id == self._entry_id != NEW), None)

    @abstractmethod
    def _entries(self) -> Iterable[E]:
        """All there are."""

    @abstractmethod
    def _question(self) -> str:
        """The title over a new one."""

    @abstractmethod
    def _lines(self, entry: E | None) -> tuple[Line, ...]:
        """What stands in its lines; the name comes first."""

    @abstractmethod
    def _show_choices(self, entry: E | None) -> None:
        """Paint what is chosen rather than typed."""

    @abstractmethod
    def _with_line(self, entry: E, key: StrEnum, text: str) -> E:
        """The entry with one line as typed; `InputError` when it can't be used."""

    @abstractmethod
    def _blank(self) -> E:
        """A new one with what is chosen, before its lines are read."""

    @abstractmethod
    def _adding(self, entry: E) -> Command:
        """Adds it, with an id of its own."""

    @abstractmethod
    def _changing(self, entry: E) -> Command:
        """Keeps a change."""

    @abstractmethod
    def _removing(self, entry_id: str) -> Command:
        """Takes it out."""

    def _show_rest(self, entry: E | None) -> None:
        self.show_head(entry.name if entry is not None else self._question())
        self._show_choices(entry)
        self.add.setVisible(entry is None)
        self.remove.setVisible(entry is not None)
        self.remove.setAccessibleName(f"Remove {entry.name}" if entry is not None else "")

    def _change(self, changed: E) -> bool:
        return self._desk.do(self._changing(changed))

    def _keep_line(self, key: StrEnum, text: str) -> None:
        entry = self.entry()
        if entry is None:
            return
        changed = self.form.read(key, partial(self._with_line, entry, key))
        if changed == entry:
            self._write_out(key, entry)
        elif changed is not None and not self._change(changed):
            self.form.field(key).take_back()

    def _write_out(self, key: StrEnum, entry: E) -> None:
        """Nothing changed: the line as it is usually written, unless it is half of something."""
        text = next(line.text for line in self._lines(entry) if line.key == key)
        if text:
            self.form.field(key).show_value(text)

    def _add(self) -> None:
        made = self._typed()
        before = {entry.id for entry in self._entries()}
        if made is not None and self._desk.do(self._adding(made)):
            self.added.emit(next(entry.id for entry in self._entries() if entry.id not in before))

    def _typed(self) -> E | None:
        """The new one; None after every line that can't be used has said so."""
        made, sound = self._blank(), True
        for line in self._lines(None):
            read = self.form.read(line.key, partial(self._with_line, made, line.key))
            made, sound = (made, False) if read is None else (read, sound)
        return made if sound else None

    def _remove(self) -> None:
        if self.entry() is not None and self._desk.do(self._removing(self._entry_id)):
            self.removed.emit()
