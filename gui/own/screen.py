"""The screen of own movements and kinds of things: listed, added by copying, edited, removed, taken in and given out.

It comes from Swap and Household and goes back there. Every deed is a command of the record, and can be undone.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QStackedWidget, QWidget

from catalog.own import table_of
from catalog.own_copy import copied
from core.errors import FillmarkError
from core.exercise.find import find_exercises
from core.house.model import House
from core.house.own import OwnEntry, OwnKind
from core.store.commands import AddOwn, ChangeOwn, LoadHouse, RemoveOwn
from core.store.values import ChangeSet, Kind
from gui.desk.desk import Desk, Jump
from gui.household.adding import adding, one_of_kind, things_of
from gui.own.copy_page import CopyPage
from gui.own.editor import Editor
from gui.own.field import Table
from gui.own.files import own_in, own_text
from gui.own.near_kinds import near_kinds
from gui.own.own_list import OwnList
from gui.shell.entry import ScreenName
from gui.theme import MovePicture, Space
from gui.widgets import EmptyState, Page, SecondaryButton
from gui.widgets.page import PageScroll, on_top

TITLE, SUBTITLE = "Your own", "movements and kinds of things the catalog lacks"
NEAR_NAMES = 8
FILE_KIND = "Fillmark household (*.toml)"
FILE_NAME = "own-movements-and-things.toml"
BACK = {OwnKind.EXERCISE: "Back to Swap", OwnKind.THING: "Back to your household"}
SCREENS = {OwnKind.EXERCISE: ScreenName.SWAP, OwnKind.THING: ScreenName.HOUSEHOLD}
NEXT = {OwnKind.EXERCISE: "See its swaps", OwnKind.THING: "Add one to your household"}


class OwnScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(TITLE, SUBTITLE, scroll=False, gutter=False, parent=parent)
        self._desk = desk
        self._kind = OwnKind.EXERCISE
        self._editing = ""
        self._saved = ""
        self.list = OwnList()
        self.copy = CopyPage()
        self.editor = Editor()
        self.back = SecondaryButton(BACK[self._kind])
        self._blank = EmptyState(
            MovePicture.MOBILITY,
            "Nothing chosen",
            "What you add here is checked like the catalog and used like it: swapped, planned, filled and printed.",
            "New movement",
        )
        self._stack = QStackedWidget()
        self._arrange()
        self._connect()
        self._show_list()

    def show_jump(self, jump: Jump) -> None:
        """Begin an entry of a kind, from an original where one is named; an own one is edited."""
        kind = jump.own or OwnKind.EXERCISE
        own = self._own(jump.exercise_id or "")
        if own is not None:
            self._edit(own.id)
        elif jump.exercise_id:
            self._kind = kind
            self._begin_from(jump.exercise_id, "")
        else:
            self._begin(kind, jump.name)

    def close_work(self) -> None:
        """Wait until nothing works in the background any more."""
        self.editor.close_work()

    def is_editing(self) -> bool:
        """Whether the form is shown."""
        return self._stack.currentWidget() is self.editor

    def is_beginning(self) -> bool:
        """Whether a new entry is asked about."""
        return self._stack.currentWidget() is self._copy_page

    def _arrange(self) -> None:
        self.bar.add_action(self.back)
        self._copy_page = PageScroll(on_top(self.copy))
        for page in (self._blank, self._copy_page, self.editor):
            self._stack.addWidget(page)
        row = QHBoxLayout()
        row.setSpacing(Space.S)
        left = PageScroll(self.list)
        left.setFixedWidth(self.list.width() + Space.L)
        row.addWidget(left)
        row.addWidget(self._stack, 1)
        self.body.addLayout(row, 1)

    def _connect(self) -> None:
        self.list.wanted.connect(self._edit)
        self.list.new_wanted.connect(self._begin)
        self.list.import_wanted.connect(self._ask_file)
        self.list.export_wanted.connect(self._ask_place)
        self.copy.typed.connect(self._show_near)
        self.copy.begun.connect(self._begin_named)
        self.editor.saved.connect(self._save)
        self.editor.left.connect(self._leave)
        self.editor.removed.connect(self._remove)
        self.editor.copied.connect(self._copy_own)
        self.back.clicked.connect(self._go_back)
        self.toast.action_wanted.connect(self._go_on)
        self._blank.acted.connect(self.list.new[OwnKind.EXERCISE].click)
        self._desk.changed.connect(self._refresh)

    def _own(self, entry_id: str) -> OwnEntry | None:
        return next((entry for entry in self._desk.house().own if entry.id == entry_id), None)

    def _begin(self, kind: OwnKind, name: str = "") -> None:
        """Ask what the new entry is called and what it is like."""
        self._turn_to(kind)
        self._editing = ""
        self.copy.show_new(kind, name)
        self._show_near(name)
        self._stack.setCurrentWidget(self._copy_page)
        self._show_list()
        first = self.copy.like if name else self.copy.name
        first.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _begin_named(self, original: str) -> None:
        catalog = self._desk.catalog
        listed = catalog.exercises if self._kind is OwnKind.EXERCISE else catalog.kinds
        found = next((one.id for one in listed if one.name == original), None)
        if found is not None:
            self._begin_from(found, self.copy.name.text().strip())

    def _begin_from(self, original_id: str, name: str) -> None:
        """Open the form on a copy of an entry of the catalog."""
        catalog = self._desk.catalog
        listed = catalog.exercise_by_id if self._kind is OwnKind.EXERCISE else catalog.kind_by_id
        original = listed[original_id].name
        table = copied(self._kind, original_id, self._desk.house().own)
        table["name"] = name or f"My {original[:1].lower()}{original[1:]}"
        self._editing = ""
        self._open(table, original)

    def _copy_own(self, entry_id: str) -> None:
        self._begin_from(entry_id, "")

    def _edit(self, entry_id: str) -> None:
        own = self._own(entry_id)
        if own is not None:
            self._turn_to(own.kind)
            self._editing = entry_id
            self._open(table_of(own), "")

    def _open(self, table: Table, origin: str) -> None:
        self.editor.edit(self._kind, table, self._desk.catalog, self._desk.units(), origin=origin)
        self._stack.setCurrentWidget(self.editor)
        self.editor.focus_name()
        self._show_list()

    def _show_near(self, text: str) -> None:
        catalog = self._desk.catalog
        if self._kind is OwnKind.EXERCISE:
            names = tuple(one.exercise.name for one in find_exercises(text, catalog, NEAR_NAMES))
        else:
            names = near_kinds(text, catalog, NEAR_NAMES)
        self.copy.show_near(names)

    def _save(self, entry: OwnEntry) -> None:
        there = self._own(entry.id) is not None
        if self._desk.do(ChangeOwn(entry) if there else AddOwn(entry)):
            self._saved = self._editing = entry.id
            self.editor.show_saved(table_of(entry), self._desk.catalog)
            self._show_list()
            done = "Changed" if there else "Added"
            self.toast.say(f"{done} {entry.name}.", undo=True, action=NEXT[entry.kind])

    def _remove(self, entry_id: str) -> None:
        if self._desk.do(RemoveOwn(entry_id)):
            self._leave()

    def _leave(self) -> None:
        self._editing = ""
        self.editor.stop()
        self._stack.setCurrentWidget(self._blank)
        self._show_list()

    def _go_back(self) -> None:
        self._desk.jump.emit(Jump(screen=SCREENS[self._kind]))

    def _go_on(self) -> None:
        """What one wants with a new entry: a movement is looked at in Swap, a thing joins the household."""
        own = self._own(self._saved)
        if own is None:
            return
        if own.kind is OwnKind.EXERCISE:
            self._desk.jump.emit(Jump(screen=ScreenName.SWAP, exercise_id=own.id))
            return
        taken = (thing.id for thing in self._desk.house().things)
        things = things_of((one_of_kind(self._desk.catalog.kind_by_id[own.id]),), taken)
        if self._desk.do(adding(things)):
            self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD, thing_id=things[0].id))

    def _ask_file(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, "Take in movements and things", "", FILE_KIND)
        if name:
            self.take_in(Path(name))

    def take_in(self, path: Path) -> None:
        """Add what a file holds; entries with the same id are replaced. One undo takes all of it back."""
        try:
            entries = own_in(path, self._desk.catalog)
        except FillmarkError as error:
            self.toast.say(str(error))
            return
        if self._desk.do(LoadHouse(House(name=self._desk.house().name, own=entries))):
            many = len(entries)
            self.toast.say(f"Took in {many} own {'entry' if many == 1 else 'entries'}.", undo=True)

    def _ask_place(self) -> None:
        name, _ = QFileDialog.getSaveFileName(self, "Save your movements and things", FILE_NAME, FILE_KIND)
        if name:
            self.give_out(Path(name))

    def give_out(self, path: Path) -> None:
        """Write all own entries to a file."""
        try:
            path.write_text(own_text(self._desk.house().own, self._desk.catalog), encoding="utf-8")
        except OSError as error:
            self.toast.say(f"“{path.name}” can’t be written ({error.strerror}); choose another place.")
            return
        self.toast.say(f"Saved as {path.name}.")

    def _turn_to(self, kind: OwnKind) -> None:
        self._kind = kind
        self.back.show_label(BACK[kind])

    def _show_list(self) -> None:
        self.list.show_own(self._desk.house().own, self._editing, self._desk.unusable_own())

    def _refresh(self, change: ChangeSet) -> None:
        if Kind.CATALOG not in change.kinds:
            return
        if self._editing and self._own(self._editing) is None:
            self._leave()
        self._show_list()
